/** The two states that `mutchkin diff` compares: revisions, the working tree, folders. */
import { relative, resolve, sep } from "node:path";
import type { Houses } from "../house/compare/pair.ts";
import { House } from "../house/house.ts";
import { readHouseFile } from "../house/house-files.ts";
import { readLarder } from "../larder/larder.ts";
import { type Files, Unreadable } from "./files.ts";
import { type Git, gitIn } from "./git.ts";
import { UsageError } from "./usage-error.ts";

export interface Sides extends Houses {
  readonly names: { readonly before: string; readonly after: string };
  /** From the top of what is compared, with forward slashes: both sides name a file alike. */
  readonly pathOf: (uri: string) => string;
  readonly wanted: (uri: string) => boolean;
  readonly unread: readonly { readonly path: string; readonly why: string }[];
}

const top = "file:///specs";

/** `HEAD~1..HEAD`, `main` (against the working tree), `old/ new/`, and paths behind; nothing is HEAD against the working tree. */
export function sidesOf(files: Files, currentFolder: string, asked: readonly string[]): Sides {
  const [first, second] = asked;
  if (asked.length === 2 && isFolder(files, currentFolder, first!) && isFolder(files, currentFolder, second!)) {
    return ofFolders(files, currentFolder, first!, second!);
  }
  const git = gitIn(currentFolder);
  const isPath =
    first === undefined || (!first.includes("..") && files.kindOf(resolve(currentFolder, first)) !== undefined && !isRevision(git, first));
  const [revision, paths] = isPath ? ["HEAD", asked] : [first!, asked.slice(1)];
  const [from, to] = revision.includes("..") ? revision.split(/\.{2,3}/) : [revision, undefined];
  const commit = git.commit(from || "HEAD");
  const unread: Sides["unread"][number][] = [];
  const after = to === undefined ? workingTree(files, git, unread) : git.textsAt(git.commit(to || "HEAD"));
  const wantedPaths = paths.map((path) => relativeTo(git, currentFolder, path));
  return {
    before: houseOf(git.textsAt(commit)),
    after: houseOf(after),
    names: { before: from || "HEAD", after: to === undefined ? "the working tree" : to || "HEAD" },
    pathOf,
    wanted: (uri) =>
      wantedPaths.length === 0 || wantedPaths.some((path) => path === "" || pathOf(uri) === path || pathOf(uri).startsWith(`${path}/`)),
    unread,
  };
}

const pathOf = (uri: string) => decodeURIComponent(uri.slice(top.length + 1));

function isFolder(files: Files, currentFolder: string, path: string): boolean {
  return files.kindOf(resolve(currentFolder, path)) === "folder";
}

function isRevision(git: Git, text: string): boolean {
  try {
    return git.commit(text) !== "";
  } catch {
    return false;
  }
}

function relativeTo(git: Git, currentFolder: string, path: string): string {
  const inside = relative(currentFolder, resolve(currentFolder, path)).split(sep).join("/");
  return resolve("/", git.prefix, inside).split(sep).join("/").slice(1);
}

function workingTree(files: Files, git: Git, unread: { path: string; why: string }[]): Map<string, string> {
  const folder = git.lines("rev-parse", "--show-toplevel")[0];
  if (!folder) throw new UsageError("A bare repository has no working tree.", "Name two revisions, such as HEAD~1..HEAD.");
  return textsIn(files, folder, unread);
}

function ofFolders(files: Files, currentFolder: string, before: string, after: string): Sides {
  const unread: Sides["unread"][number][] = [];
  const house = (path: string) => houseOf(textsIn(files, resolve(currentFolder, path), unread));
  return { before: house(before), after: house(after), names: { before, after }, pathOf, wanted: () => true, unread };
}

function textsIn(files: Files, folder: string, unread: { path: string; why: string }[]): Map<string, string> {
  const texts = new Map<string, string>();
  for (const path of files.list(folder, "deep")) {
    const name = relative(folder, path).split(sep).join("/");
    try {
      texts.set(name, files.read(path));
    } catch (cause) {
      if (!(cause instanceof Unreadable)) throw cause;
      unread.push({ path: name, why: cause.message });
    }
  }
  return texts;
}

function houseOf(texts: ReadonlyMap<string, string>): House {
  const house = new House({ larder: readLarder(), roots: [top] });
  for (const [path, text] of texts) {
    const given = readHouseFile(path, text);
    if (given) house.setDocument({ uri: `${top}/${path.split("/").map(encodeURIComponent).join("/")}`, version: null, ...given });
  }
  return house;
}
