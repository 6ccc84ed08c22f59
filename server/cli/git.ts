/** What is asked of git, by the git program: revisions and the texts in them. Nothing is ever written. */
import { spawnSync } from "node:child_process";
import { houseFiles, isHouseFile } from "../house/house-files.ts";
import { UsageError } from "./usage-error.ts";

export interface Git {
  /** Where the folder stands in the repository: empty at its top, else `bar/` with a slash behind. */
  readonly prefix: string;
  /** The commit that a revision means. Throws a `UsageError` where it means none. */
  commit(revision: string): string;
  /** The commit where two lines of work parted; absent where they have nothing in common, as in a shallow clone. */
  mergeBase(one: string, other: string): string | undefined;
  /** The texts of the house's files in a commit by their paths from the repository's top, with forward slashes. */
  textsAt(commit: string): Map<string, string>;
  /** One line of output each. Throws a `UsageError` with what git says. */
  lines(...parameters: string[]): string[];
}

/** The repository that holds a folder, bare or not. Throws a `UsageError` where there is none, or no git. */
export function gitIn(folder: string): Git {
  const run = (parameters: readonly string[], input?: string): Buffer => {
    const { error, status, stdout, stderr } = spawnSync("git", parameters, { cwd: folder, input, maxBuffer: 2 ** 31 - 1 });
    if (error) throw new UsageError("The git program could not be started.", "Install git, or put it on the PATH.");
    if (status !== 0) throw new UsageError(`git says: ${String(stderr).trim().split("\n")[0]}`, "Run it inside a git repository.");
    return stdout;
  };
  const lines = (...parameters: string[]) => String(run(parameters)).split("\n").filter(Boolean);
  const prefix = lines("rev-parse", "--is-bare-repository")[0] === "true" ? "" : (lines("rev-parse", "--show-prefix")[0] ?? "");
  return {
    prefix,
    lines,
    commit(revision) {
      try {
        return lines("rev-parse", "--verify", "--quiet", "--end-of-options", `${revision}^{commit}`)[0]!;
      } catch {
        const shallow = lines("rev-parse", "--is-shallow-repository")[0] === "true";
        throw new UsageError(
          `There is no revision “${revision}” here.`,
          shallow ? "This clone is shallow: fetch more of its history first." : "Name a commit, a branch or a tag, such as HEAD~1.",
        );
      }
    },
    mergeBase(one, other) {
      try {
        return lines("merge-base", one, other)[0];
      } catch {
        return undefined;
      }
    },
    textsAt: (commit) => textsOf(run, commit),
  };
}

function textsOf(run: (parameters: readonly string[], input?: string) => Buffer, commit: string): Map<string, string> {
  const found: { path: string; id: string }[] = [];
  for (const row of String(run(["ls-tree", "-r", "-z", "--full-tree", commit])).split("\0")) {
    const [, type, id, path] = /^\d+ (\w+) (\w+)\t([\s\S]+)$/.exec(row) ?? [];
    const isOthers = path?.split("/").some((part) => houseFiles.passOver.includes(part)) ?? true;
    if (type === "blob" && id && path && isHouseFile(path) && !isOthers) found.push({ path, id });
  }
  const texts = new Map<string, string>();
  if (found.length === 0) return texts;
  const all = run(["cat-file", "--batch"], found.map(({ id }) => `${id}\n`).join(""));
  let at = 0;
  for (const { path } of found) {
    const end = all.indexOf(10, at);
    const size = Number(all.subarray(at, end).toString().split(" ")[2]);
    texts.set(path, all.subarray(end + 1, end + 1 + size).toString());
    at = end + 1 + size + 1;
  }
  return texts;
}
