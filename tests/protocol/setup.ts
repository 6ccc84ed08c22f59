/**
 * Before the tests that run the shipped programs: builds dist/ where it is missing or older than what
 * it is made from, once for all of them.
 */
import { execFileSync } from "node:child_process";
import { readdirSync, statSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

const project = fileURLToPath(new URL("../../", import.meta.url));
const sources = ["grammar", "server", "client", "build.mjs", "package-lock.json"];
const programs = ["client", "server", "browser", "worker", "cli"].map((name) => `dist/${name}.js`);

export function setup() {
  const built = Math.min(...programs.map((path) => changedAt(join(project, path))));
  if (Math.max(...sources.map((path) => newestUnder(join(project, path)))) > built)
    execFileSync(process.execPath, ["build.mjs"], { cwd: project, stdio: ["ignore", "inherit", "inherit"] });
}

/** Milliseconds since the epoch; 0 where there is no such file. */
const changedAt = (path: string): number => statSync(path, { throwIfNoEntry: false })?.mtimeMs ?? 0;

function newestUnder(path: string): number {
  if (!statSync(path).isDirectory()) return changedAt(path);
  // A folder's own time tells of a deleted file.
  return readdirSync(path).reduce((newest, name) => Math.max(newest, newestUnder(join(path, name))), changedAt(path));
}
