/**
 * Installs an editor into the git-ignored `.editor/`, if it is not there in the wanted version:
 * `node tests/editor/setup.mjs [steady|newest|web]`. No compiler is needed: nothing native is built.
 */
import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { chosenEditor } from "./editors.mjs";

const editor = chosenEditor();
const stampFile = join(editor.folder, "stamp");
const stamp = editor.packages.join(" ");

if (existsSync(stampFile) && readFileSync(stampFile, "utf8") === stamp) {
  console.log(`${editor.title} is installed.`);
} else {
  console.log(`Installing ${editor.title} …`);
  rmSync(editor.folder, { recursive: true, force: true });
  mkdirSync(editor.folder, { recursive: true });
  writeFileSync(join(editor.folder, "package.json"), '{ "private": true }\n');
  npm(editor.folder, ["install", ...editor.packages, "--ignore-scripts"]);
  if (editor.name !== "web") npm(editor.server, ["install", "--omit=dev", "--ignore-scripts"]);
  // Last, so that an install that was cut short is done again.
  writeFileSync(stampFile, stamp);
}

function npm(folder, parameters) {
  const { status } = spawnSync("npm", [...parameters, "--no-audit", "--no-fund", "--loglevel=error"], { cwd: folder, stdio: "inherit" });
  if (status !== 0) throw new Error(`npm ${parameters[0]} failed in ${folder}: the editor could not be installed.`);
}
