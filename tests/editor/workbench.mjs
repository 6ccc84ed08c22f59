/** Starts VS Code's server and opens its workbench in a headless browser. */
import { spawn } from "node:child_process";
import { cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { chromium } from "playwright-core";
import { root } from "./editors.mjs";

const browsers = [
  process.env.CHROMIUM,
  "/usr/bin/chromium",
  "/usr/bin/chromium-browser",
  "/usr/bin/google-chrome",
  "/usr/bin/google-chrome-stable",
];

const quietSettings = {
  "security.workspace.trust.enabled": false,
  "workbench.startupEditor": "none",
  "workbench.secondarySideBar.defaultVisibility": "hidden",
  "telemetry.telemetryLevel": "off",
  "extensions.autoCheckUpdates": false,
  "chat.disableAIFeatures": true,
  "window.commandCenter": false,
  "editor.minimap.enabled": false,
  // A heading that stays in view lies over the words below it.
  "editor.stickyScroll.enabled": false,
};

/**
 * Opens a copy of the samples and of the suite's own specs. With `suite`, that file's `run` is called
 * in the extension host and `report()` waits for what it wrote; with `vsix`, the packaged extension
 * is installed instead of being loaded from this checkout; without a `folder`, none is opened.
 */
export async function openWorkbench({ editor, suite, vsix, folder = true, settings = {} }) {
  const home = mkdtempSync(join(tmpdir(), "mutchkin-editor-"));
  const workspace = join(home, "workspace");
  const reportFile = join(home, "report.json");
  const log = [];
  let server;
  let browser;
  // The whole group: its extension host would linger.
  const endServer = () => {
    if (server && server.exitCode === null) process.kill(-server.pid, "SIGKILL");
  };
  process.once("exit", endServer);
  const close = async () => {
    process.off("exit", endServer);
    await browser?.close();
    endServer();
    rmSync(home, { recursive: true, force: true, maxRetries: 5, retryDelay: 100 });
  };
  try {
    cpSync(join(root, "samples"), join(workspace, "samples"), { recursive: true });
    cpSync(join(root, "tests/editor/specs"), join(workspace, "specs"), { recursive: true });
    mkdirSync(join(home, "data/User"), { recursive: true });
    writeFileSync(join(home, "data/User/settings.json"), JSON.stringify({ ...quietSettings, ...settings }));
    const folders = ["--server-data-dir", join(home, "data"), "--extensions-dir", join(home, "extensions")];
    if (vsix) await installed(startServer(editor, [...folders, "--install-extension", vsix], {}, log));

    const port = await freePort();
    server = startServer(
      editor,
      [
        ...folders,
        "--host",
        "127.0.0.1",
        "--port",
        port,
        "--without-connection-token",
        "--user-data-dir",
        join(home, "data"),
        "--telemetry-level",
        "off",
        "--enable-smoke-test-driver",
      ],
      { MUTCHKIN_SUITE_REPORT: reportFile },
      log,
    );
    const address = `http://127.0.0.1:${port}/`;
    await until("the editor's server to answer", 60_000, async () => (await fetch(address).catch(() => undefined))?.ok);

    browser = await chromium.launch({
      executablePath: findBrowser(),
      args: [
        "--no-sandbox",
        "--disable-gpu",
        "--disable-quic",
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
      ],
    });
    const page = await browser.newPage({ viewport: { width: 1100, height: 700 } });
    page.on("console", (message) => log.push(`[page] ${message.text()}`));
    const remote = (path) => `vscode-remote://127.0.0.1:${port}${path}`;
    const payload = [
      ...(vsix ? [] : [["extensionDevelopmentPath", remote(root)]]),
      ...(suite ? [["extensionTestsPath", remote(suite)]] : []),
    ];
    const query = new URLSearchParams({ ...(folder ? { folder: workspace } : { ew: "true" }), payload: JSON.stringify(payload) });
    await page.goto(`${address}?${query}`);
    const report = () => until("the suite to end", 300_000, () => existsSync(reportFile) && JSON.parse(readFileSync(reportFile, "utf8")));
    return { page, workspace, log, report, close };
  } catch (cause) {
    console.error(log.join("\n"));
    await close();
    throw cause;
  }
}

/** Asks again and again until there is an answer; fails by name. */
export async function until(what, milliseconds, ask) {
  const end = Date.now() + milliseconds;
  while (Date.now() < end) {
    const answer = await ask();
    if (answer) return answer;
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  throw new Error(`Waited ${milliseconds / 1000} s for ${what}.`);
}

function startServer(editor, parameters, environment, log) {
  // An editor that this is started from must not tell the new one what to do.
  const own = Object.fromEntries(Object.entries(process.env).filter(([name]) => !name.startsWith("VSCODE_")));
  const server = spawn(editor.node, [join(editor.server, "out/server-main.js"), "--accept-server-license-terms", ...parameters], {
    env: { ...own, ...environment },
    detached: true,
    stdio: ["ignore", "pipe", "pipe"],
  });
  for (const stream of [server.stdout, server.stderr]) stream.on("data", (text) => log.push(`[server] ${text}`.trimEnd()));
  return server;
}

function installed(server) {
  return new Promise((resolve, reject) =>
    server.on("exit", (code) => (code === 0 ? resolve() : reject(new Error("The packaged extension could not be installed.")))),
  );
}

function freePort() {
  return new Promise((resolve) => {
    const probe = createServer().listen(0, "127.0.0.1", () => {
      const { port } = probe.address();
      probe.close(() => resolve(String(port)));
    });
  });
}

function findBrowser() {
  const found = browsers.find((path) => path && existsSync(path));
  if (!found) throw new Error("No Chromium was found. Install one, or name it in the variable CHROMIUM.");
  return found;
}
