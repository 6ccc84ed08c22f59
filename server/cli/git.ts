/** What is asked of git, by the git program: revisions and the texts in them. Nothing is ever written. */
import { spawnSync } from "node:child_process";
import { askedFor, committedFiles, committedTexts, gitCommands } from "../house/committed.ts";
import { UsageError } from "./usage-error.ts";

export interface Git {
  /** Where the folder stands in the repository: empty at its top, else `bar/` with a slash behind. */
  readonly prefix: string;
  /** Nothing has been committed on this branch. */
  readonly isUnborn: boolean;
  /** The commit that a revision means. Throws a `UsageError` where it means none. */
  commit(revision: string): string;
  /** The commit where two lines of work parted; absent where they have nothing in common, as in a shallow clone. */
  mergeBase(one: string, other: string): string | undefined;
  /** The texts of the house's files in a commit by their paths from the repository's top, with forward slashes. */
  textsAt(commit: string): Map<string, string>;
  /** Whether a path, from the folder, was there at the last commit. */
  wasThere(path: string): boolean;
  /** The folder of the working tree, and which of its files are this repository's, by their paths from there. Throws a `UsageError` where there is none. */
  workTree(): { readonly folder: string; isOwn(path: string): boolean };
}

/** The repository that holds a folder, bare or not. Throws a `UsageError` where there is none, or no git. */
export function gitIn(folder: string): Git {
  const run = (parameters: readonly string[], input?: string): Buffer => {
    // What it says is understood below, so it is not to say it in another language.
    const env = { ...process.env, LC_ALL: "C" };
    const { error, status, stdout, stderr } = spawnSync("git", parameters, { cwd: folder, env, input, maxBuffer: 2 ** 31 - 1 });
    if (error) throw new UsageError("The git program could not be started.", "Install git, or put it on the PATH.");
    if (status !== 0) throw refusal(String(stderr).trim(), folder);
    return stdout;
  };
  const lines = (...parameters: string[]) => String(run(parameters)).split("\n").filter(Boolean);
  const answer = (...parameters: string[]): string | undefined => {
    try {
      return lines(...parameters)[0];
    } catch {
      return undefined;
    }
  };
  const [isBare, isInside] = lines("rev-parse", "--is-bare-repository", "--is-inside-work-tree").map((said) => said === "true");
  const revision = (text: string) => answer("rev-parse", "--verify", "--quiet", "--end-of-options", `${text}^{commit}`);
  const isUnborn =
    answer("rev-parse", "--verify", "--quiet", "HEAD") === undefined && answer("symbolic-ref", "--quiet", "HEAD") !== undefined;
  return {
    prefix: isInside ? (lines("rev-parse", "--show-prefix")[0] ?? "") : "",
    isUnborn,
    commit(text) {
      const found = revision(text);
      if (found) return found;
      if (isUnborn && text === "HEAD") throw new UsageError("Nothing is committed here yet.", "Commit the specs once, then compare.");
      throw new UsageError(`There is no revision “${text}” here.`, isShallow(answer) ? fetchMore : nameOne);
    },
    mergeBase: (one, other) => answer("merge-base", one, other),
    wasThere: (path) => !isUnborn && answer("ls-tree", "HEAD", "--", path) !== undefined,
    workTree() {
      if (isBare) throw new UsageError("A bare repository has no working tree.", "Name two revisions, such as HEAD~1..HEAD.");
      if (!isInside) throw new UsageError("This is git's own folder, no working tree.", "Run it in the folder that holds `.git`.");
      const listed = (...parameters: string[]) => String(run(["ls-files", "-z", "--full-name", ...parameters, "--", ":/"])).split("\0");
      const own = new Set(listed("--cached", "--others", "--exclude-standard"));
      for (const row of listed("--stage")) if (!row.startsWith(plainFile)) own.delete(row.slice(row.indexOf("\t") + 1));
      return { folder: lines("rev-parse", "--show-toplevel")[0]!, isOwn: (path) => own.has(path) };
    },
    textsAt: (commit) => textsOf(run, commit),
  };
}

const fetchMore = "This clone is shallow: fetch more of its history first.";
const nameOne = "Name a commit, a branch or a tag, such as HEAD~1.";
/** How the mode of a file begins that is neither a link nor another repository. */
const plainFile = "100";

function isShallow(answer: (...parameters: string[]) => string | undefined): boolean {
  return answer("rev-parse", "--is-shallow-repository") === "true";
}

/** What git refuses, and what to do about it. One row each; what no row knows is left to git to explain. */
const advices: readonly { readonly says: RegExp; advice(folder: string): string }[] = [
  { says: /not a git repository/, advice: () => "Run it inside a git repository." },
  {
    says: /dubious ownership/,
    advice: (folder) => `The folder is another account's. If you trust it: git config --global --add safe.directory "${folder}".`,
  },
  {
    says: /promisor|could not fetch|unable to read|bad object|missing|not a tree object/,
    advice: () => "Part of the history is not here: `git fetch` brings it, `git fsck` says what is broken.",
  },
];

function refusal(said: string, folder: string): UsageError {
  const { advice } = advices.find(({ says }) => says.test(said)) ?? { advice: () => "`git status` in the same folder may say more." };
  return new UsageError(`git says: ${said.split("\n")[0]}`, advice(folder));
}

function textsOf(run: (parameters: readonly string[], input?: string) => Buffer, commit: string): Map<string, string> {
  const found = committedFiles(run(gitCommands.list(commit)));
  return found.length > 0 ? committedTexts(found, run(gitCommands.print, askedFor(found))) : new Map();
}
