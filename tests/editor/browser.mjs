/** What every workbench needs: a headless browser, a free port, a copy of the specs, patience. */
import { execFileSync } from "node:child_process";
import { cpSync, existsSync, mkdirSync, writeFileSync } from "node:fs";
import { createServer } from "node:net";
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

export const quietSettings = {
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

/** The samples and the suite's own specs, to be written in, and a repository that holds them as they are. */
export function copySpecs(workspace) {
  cpSync(join(root, "samples"), join(workspace, "samples"), { recursive: true });
  cpSync(join(root, "tests/editor/specs"), join(workspace, "specs"), { recursive: true });
  const who = ["-c", "user.name=Bar", "-c", "user.email=bar@halyard.invalid", "-c", "commit.gpgsign=false"];
  for (const command of [
    ["init", "-q", "-b", "main"],
    ["add", "-A"],
    ["commit", "-q", "-m", "The house as it was"],
  ])
    execFileSync("git", [...who, ...command], { cwd: workspace });
}

/**
 * An empty page in a browser of its own, whose console goes to the log. Closing its context ends the
 * browser. It has a `profile`, since webviews come from another origin, whose workers a browser refuses
 * by default and always where it keeps nothing.
 */
export async function openPage(profile, log) {
  const preferences = { profile: { cookie_controls_mode: 0, block_third_party_cookies: false } };
  mkdirSync(join(profile, "Default"), { recursive: true });
  writeFileSync(join(profile, "Default/Preferences"), JSON.stringify(preferences));
  const context = await chromium.launchPersistentContext(profile, {
    viewport: { width: 1100, height: 700 },
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
  const page = context.pages()[0] ?? (await context.newPage());
  page.on("console", (message) => log.push(`[page] ${message.text()}`));
  return page;
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

export function freePort() {
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
