/** Revisions by the git program, which runs beside the server: it is never waited for while somebody types. Nothing is ever written. */
import { spawn } from "node:child_process";
import { existsSync } from "node:fs";
import { dirname, relative, resolve, sep } from "node:path";
import { URI } from "vscode-uri";
import { askedFor, committedFiles, committedTexts, gitCommands, textFrom } from "../house/committed.ts";
import { gitNotStarted, noSuchRevision, nothingCommitted, type Refusal, refusalOf } from "../house/git-refusals.ts";
import type { NoRevision, Revision, RevisionKind, Revisions } from "./environment.ts";

/** Nobody looks further down a list; any other revision can be typed. */
const mostCommits = 50;
const mostRefs = 500;

/** What lists revisions, each a line of a name, a date and a subject with this sign between them. One row each. */
const between = "\x1f";
const refs = (...of: string[]) => [
  "for-each-ref",
  "--sort=-creatordate",
  `--count=${mostRefs}`,
  "--format=%(refname:short)%1f%(creatordate:short)%1f%(subject)",
  ...of,
];
const listings: Readonly<Record<RevisionKind, readonly string[]>> = {
  branches: refs("refs/heads", "refs/remotes"),
  tags: refs("refs/tags"),
  // A signature would be checked by a program that the repository names.
  commits: ["log", "--no-show-signature", `--max-count=${mostCommits}`, "--format=%h%x1f%cs%x1f%s", "--end-of-options", "HEAD"],
};

export const gitRevisions: Revisions = {
  list: (folder, kind, stop) =>
    orProblem(async () => {
      const git = gitIn(pathOf(folder), stop);
      await git.run(["rev-parse", "--git-dir"]);
      // A repository without a commit has no log, and that is no fault of anybody's.
      if (kind === "commits" && !(await git.answers("rev-parse", "--verify", "--quiet", "HEAD"))) return [];
      const rows = textFrom(await git.run(listings[kind]))
        .split("\n")
        .filter(Boolean);
      return rows.map(revisionOn).filter(({ name }) => !name.endsWith("/HEAD"));
    }),

  textsAt: (folder, revision, stop) =>
    orProblem(async () => {
      const path = nearest(pathOf(folder));
      const git = gitIn(path, stop);
      const up = (await git.says("rev-parse", "--show-cdup")).trimEnd();
      const top = resolve(path, up);
      const commit = await commitOf(git, revision);
      const files = committedFiles(await git.run(gitCommands.list(commit)));
      const texts = files.length > 0 ? committedTexts(files, await git.run(gitCommands.print, undefined, askedFor(files))) : new Map();
      const uriOf = (name: string) => URI.file(resolve(top, ...name.split("/"))).toString();
      return {
        commit,
        top: URI.file(top).toString(),
        texts: new Map([...texts].map(([name, text]) => [uriOf(name), text])),
        ignored: (await git.says(...ignoredBelow)).split("\0").filter(Boolean).map(uriOf),
      };
    }),

  textAt: (uri, commit, stop) =>
    orProblem(async () => {
      if (!/^[0-9a-f]{40,64}$/.test(commit)) throw new Refused(`“${commit}” is no commit's name.`);
      const path = pathOf(uri);
      const folder = nearest(dirname(path));
      const name = relative(folder, path).split(sep).join("/");
      const absent = "It is not in that commit.";
      return { text: textFrom(await gitIn(folder, stop).run(["cat-file", "blob", `${commit}:./${name}`], absent)) };
    }),
};

/** Why git was not asked, or would not answer. */
class Refused extends Error {}

async function orProblem<T>(ask: () => Promise<T>): Promise<T | NoRevision> {
  try {
    return await ask();
  } catch (cause) {
    if (cause instanceof Refused) return { problem: cause.message };
    throw cause;
  }
}

function revisionOn(row: string): Revision {
  const [name = "", date = "", subject = ""] = row.split(between);
  return { name, date, subject };
}

function told({ problem, todo }: Refusal): string {
  return `${problem} ${todo}`;
}

/** The commit that a revision means. */
async function commitOf({ answers, says }: Git, revision: string): Promise<string> {
  const found = await says("rev-parse", "--verify", "--quiet", "--end-of-options", `${revision}^{commit}`).catch(() => "");
  if (found) return found.trim();
  if (revision === "HEAD" && (await answers("symbolic-ref", "--quiet", "HEAD"))) throw new Refused(told(nothingCommitted));
  throw new Refused(told(noSuchRevision(revision, (await says("rev-parse", "--is-shallow-repository")).trim() === "true")));
}

function pathOf(uri: string): string {
  const { scheme, fsPath } = URI.parse(uri);
  if (scheme !== "file") throw new Refused("This text is on no disk, so git cannot say what it was. Save it in a folder first.");
  return fsPath;
}

/** A folder may be gone since the revision that is asked about. */
function nearest(folder: string): string {
  let at = folder;
  while (!existsSync(at) && dirname(at) !== at) at = dirname(at);
  return at;
}

/** A folder of which all is ignored as one, however much is in it. */
const ignoredBelow = ["ls-files", "--others", "--ignored", "--exclude-standard", "--directory", "-z", "--full-name", "--", ":/"];

type Git = ReturnType<typeof gitIn>;

function gitIn(folder: string, stop: AbortSignal) {
  /** `otherwise`: what to say instead of git's own words. */
  const run = (parameters: readonly string[], otherwise?: string, input = ""): Promise<Uint8Array> =>
    new Promise((settle, reject) => {
      // Nobody is there to be asked for a password, and what is said is matched in English.
      const env = { ...process.env, GIT_TERMINAL_PROMPT: "0", GIT_OPTIONAL_LOCKS: "0", LC_ALL: "C" };
      const git = spawn("git", parameters, { cwd: nearest(folder), env, signal: stop, windowsHide: true });
      const printed: Uint8Array[] = [];
      let said = "";
      git.stdout.on("data", (bytes: Uint8Array) => printed.push(bytes));
      git.stderr.setEncoding("utf8").on("data", (text: string) => {
        said += text;
      });
      // A git that has ended early makes the write fail; its exit says so better.
      git.stdin.on("error", () => undefined).end(input);
      git.on("error", () => reject(new Refused(stop.aborted ? "It was stopped." : told(gitNotStarted))));
      git.on("close", (code) =>
        code === 0 ? settle(Buffer.concat(printed)) : reject(new Refused(otherwise ?? told(refusalOf(said, folder)))),
      );
    });
  const answers = (...parameters: string[]) =>
    run(parameters).then(
      () => true,
      () => false,
    );
  const says = async (...parameters: string[]) => textFrom(await run(parameters));
  return { run, answers, says };
}
