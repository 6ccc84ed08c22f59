/** Starts VS Code's server and opens its workbench in a headless browser. */
import { spawn } from "node:child_process";
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { copySpecs, freePort, openPage, quietSettings, until } from "./browser.mjs";
import { root } from "./editors.mjs";

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
  let page;
  // The whole group: its extension host would linger.
  const endServer = () => {
    if (server && server.exitCode === null) process.kill(-server.pid, "SIGKILL");
  };
  process.once("exit", endServer);
  const close = async () => {
    process.off("exit", endServer);
    await page?.context().close();
    endServer();
    rmSync(home, { recursive: true, force: true, maxRetries: 5, retryDelay: 100 });
  };
  try {
    copySpecs(workspace);
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

    page = await openPage(join(home, "profile"), log);
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
