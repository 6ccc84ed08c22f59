/**
 * The suite in a desktop VS Code, where one can be had: `npm run test:editor:electron`.
 *
 * Name an installed one in the variable VSCODE_EXECUTABLE (on Linux `/usr/share/code/code`, on macOS
 * `…/Visual Studio Code.app/Contents/MacOS/Electron`); without it, the newest is downloaded.
 */
import { cpSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { runTests } from "@vscode/test-electron";
import { root } from "./editors.mjs";

const workspace = mkdtempSync(join(tmpdir(), "mutchkin-desktop-"));
try {
  cpSync(join(root, "samples"), join(workspace, "samples"), { recursive: true });
  cpSync(join(root, "tests/editor/specs"), join(workspace, "specs"), { recursive: true });
  await runTests({
    vscodeExecutablePath: process.env.VSCODE_EXECUTABLE,
    extensionDevelopmentPath: root,
    extensionTestsPath: join(root, "tests/editor/suite.js"),
    launchArgs: [workspace, "--disable-extensions", "--disable-workspace-trust"],
  });
  console.log("The suite passed.");
} catch (cause) {
  console.error(`The suite failed, or no desktop VS Code could be had: ${cause}`);
  process.exitCode = 1;
} finally {
  rmSync(workspace, { recursive: true, force: true, maxRetries: 5 });
}
