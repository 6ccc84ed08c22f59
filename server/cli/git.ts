/** What is asked of git, by the git program: revisions and the texts in them. Nothing is ever written. */
import { spawnSync } from "node:child_process";
import { askedFor, committedFiles, committedTexts, gitCommands } from "../house/committed.ts";
import { gitNotStarted, noSuchRevision, nothingCommitted, type Refusal, refusalOf } from "../house/git-refusals.ts";
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
    if (error) throw refused(gitNotStarted);
    if (status !== 0) throw refused(refusalOf(String(stderr), folder));
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
      if (isUnborn && text === "HEAD") throw refused(nothingCommitted);
      throw refused(noSuchRevision(text, isShallow(answer)));
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

/** How the mode of a file begins that is neither a link nor another repository. */
const plainFile = "100";

function isShallow(answer: (...parameters: string[]) => string | undefined): boolean {
  return answer("rev-parse", "--is-shallow-repository") === "true";
}

function refused({ problem, todo }: Refusal): UsageError {
  return new UsageError(problem, todo);
}

function textsOf(run: (parameters: readonly string[], input?: string) => Buffer, commit: string): Map<string, string> {
  const found = committedFiles(run(gitCommands.list(commit)));
  return found.length > 0 ? committedTexts(found, run(gitCommands.print, askedFor(found))) : new Map();
}
