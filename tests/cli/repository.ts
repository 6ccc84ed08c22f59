/** A git repository made for one test. */
import { execFileSync } from "node:child_process";
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { folderOf } from "./command.ts";

/** The first commit holds the files (`=== path` starts one). Nothing of the machine's own configuration counts. */
export function repositoryOf(text: string): {
  readonly folder: string;
  git(...parameters: string[]): string;
  write(path: string, text: string): void;
} {
  const folder = folderOf(text);
  const env = { ...process.env, GIT_CONFIG_GLOBAL: "/dev/null", GIT_CONFIG_SYSTEM: "/dev/null" };
  const who = ["-c", "user.name=A Bartender", "-c", "user.email=bar@example.org"];
  const git = (...parameters: string[]) =>
    execFileSync("git", [...who, ...parameters], { cwd: folder, env, encoding: "utf8", stdio: "pipe" });
  git("init", "-q", "-b", "main");
  git("add", "-A");
  git("commit", "-q", "-m", "The house as it was");
  return { folder, git, write: (path, changed) => writeFileSync(join(folder, path), changed) };
}
