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
  const isPath = first === undefined || (isThere(files, git, currentFolder, first) && !isRevision(git, first));
  const [revision, paths] = isPath ? ["HEAD", asked] : [first!, asked.slice(1)];
  const { from, to, names } = endsOf(git, revision);
  const unread: Sides["unread"][number][] = [];
  const [before, after] = [git.textsAt(from), to === undefined ? workingTree(files, git, unread) : git.textsAt(to)];
  const isIn = (wanted: string) => (path: string) => wanted === "" || path === wanted || path.startsWith(`${wanted}/`);
  const wanted = paths.map((path) => ({ path, isIn: isIn(relativeTo(git, currentFolder, path)) }));
  const known = [...before.keys(), ...after.keys(), ...unread.map(({ path }) => path)];
  for (const { path, isIn } of wanted) {
    if (known.some(isIn) || isFolder(files, currentFolder, path)) continue;
    throw new UsageError(
      `There are no specs at “${path}” on either side.`,
      "Check the spelling, or leave the path out to compare everything.",
    );
  }
  return {
    ...housesOf(before, after),
    names,
    pathOf,
    wanted: (uri) => wanted.length === 0 || wanted.some(({ isIn }) => isIn(pathOf(uri))),
    unread,
  };
}

/** Two commits, the later one absent for the working tree. Three dots start where the two parted, as they do for git. */
function endsOf(git: Git, revision: string): { from: string; to?: string; names: Sides["names"] } {
  const [, left, dots, right] = /^(.*?)(\.{2,3})(.*)$/.exec(revision) ?? [];
  if (!dots) return { from: git.commit(revision || "HEAD"), names: { before: revision || "HEAD", after: "the working tree" } };
  const [one, other] = [left || "HEAD", right || "HEAD"];
  const [from, to] = [git.commit(one), git.commit(other)];
  if (dots === "..") return { from, to, names: { before: one, after: other } };
  const parted = git.mergeBase(from, to);
  if (parted) return { from: parted, to, names: { before: `where ${one} and ${other} parted`, after: other } };
  throw new UsageError(
    `${one} and ${other} have no commit in common here.`,
    `Fetch more of the history, or compare their ends: ${one}..${other}.`,
  );
}

const pathOf = (uri: string) => decodeURIComponent(uri.slice(top.length + 1));

function isFolder(files: Files, currentFolder: string, path: string): boolean {
  return files.kindOf(resolve(currentFolder, path)) === "folder";
}

function isThere(files: Files, git: Git, currentFolder: string, path: string): boolean {
  return files.kindOf(resolve(currentFolder, path)) !== undefined || git.wasThere(path);
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
  const { folder, isOwn } = git.workTree();
  return textsIn(files, folder, unread, isOwn);
}

function ofFolders(files: Files, currentFolder: string, before: string, after: string): Sides {
  const unread: Sides["unread"][number][] = [];
  const texts = (path: string) => textsIn(files, resolve(currentFolder, path), unread);
  return { ...housesOf(texts(before), texts(after)), names: { before, after }, pathOf, wanted: () => true, unread };
}

function textsIn(files: Files, folder: string, unread: { path: string; why: string }[], isOwn = (_: string) => true): Map<string, string> {
  const texts = new Map<string, string>();
  for (const path of files.list(folder, "deep")) {
    const name = relative(folder, path).split(sep).join("/");
    if (!isOwn(name)) continue;
    try {
      texts.set(name, files.read(path));
    } catch (cause) {
      if (!(cause instanceof Unreadable)) throw cause;
      unread.push({ path: name, why: cause.message });
    }
  }
  return texts;
}

/** A text that is the same on both sides is read once: then its drinks are computed again only where they can differ. */
function housesOf(before: ReadonlyMap<string, string>, after: ReadonlyMap<string, string>): Houses {
  const sides = { before: new House({ larder: readLarder(), roots: [top] }), after: new House({ larder: readLarder(), roots: [top] }) };
  const add = (house: House, path: string, given: ReturnType<typeof readHouseFile>) => {
    if (given) house.setDocument({ uri: `${top}/${path.split("/").map(encodeURIComponent).join("/")}`, version: null, ...given });
  };
  const known = new Map<string, ReturnType<typeof readHouseFile>>();
  for (const [path, text] of before) {
    const given = readHouseFile(path, text);
    known.set(path, given);
    add(sides.before, path, given);
  }
  for (const [path, text] of after) add(sides.after, path, before.get(path) === text ? known.get(path) : readHouseFile(path, text));
  return sides;
}
