/**
 * From paths on a command line to a house: the texts that were asked for, and beside them every text
 * that gives their names a meaning.
 */
import { dirname, join, relative, resolve, sep } from "node:path";
import { pathToFileURL } from "node:url";
import { read } from "../../grammar/read.ts";
import { chaptersOf } from "../house/book/chapter-files.ts";
import type { SpecDocument } from "../house/document.ts";
import { House } from "../house/house.ts";
import { isHouseFile, readHouseFile } from "../house/house-files.ts";
import { readLarder } from "../larder/larder.ts";
import { type Files, Unreadable } from "./files.ts";
import { UsageError } from "./usage-error.ts";

export interface Gathered {
  readonly house: House;
  /** The texts that were asked for, in the order of their paths. */
  readonly documents: readonly SpecDocument[];
  /** How a text's file is named to the reader: from the current folder, with forward slashes. */
  pathOf(uri: string): string;
  /** Files that could not be read, with the reason; nothing is known of what stands in them. */
  readonly unread: readonly { readonly path: string; readonly why: string }[];
}

/** Told how far the reading is. */
export type Progress = (done: number, total: number) => void;

/** A house is looked for no further up than this, nor above the checkout that holds the path. */
const levelsUp = 10;

/** Throws a `UsageError` for a path where nothing stands, that is no spec, or that holds none. */
export function gather(files: Files, currentFolder: string, paths: readonly string[], progress: Progress): Gathered {
  const asked = new Set<string>();
  const around = new Set<string>();
  const roots = new Set<string>();
  for (const path of paths.length > 0 ? paths : ["."]) {
    const at = resolve(currentFolder, path);
    const own = specsAt(files, at, path);
    for (const spec of own) asked.add(spec);
    const folder = files.kindOf(at) === "folder" ? at : dirname(at);
    const outermost = outermostHouse(files, folder);
    roots.add(outermost ?? folder);
    for (const spec of outermost ? files.list(outermost, "deep") : files.list(folder, "shallow")) around.add(spec);
  }
  const house = new House({ larder: readLarder(), roots: outerFolders(roots).map(uriOf) });
  const documents = new Map<string, SpecDocument>();
  const unread: { path: string; why: string }[] = [];
  const pathByUri = new Map<string, string>();
  const all = [...new Set([...around, ...asked])].sort();
  const withoutSpecs: string[] = [];
  const take = (path: string, isChapter = false) => {
    const name = nameFrom(currentFolder, path);
    try {
      const given = readHouseFile(path, files.read(path), isChapter);
      if (!given) {
        withoutSpecs.push(path);
        return;
      }
      const document: SpecDocument = { uri: uriOf(path), version: null, ...given };
      house.setDocument(document);
      pathByUri.set(document.uri, name);
      if (asked.has(path)) documents.set(path, document);
    } catch (cause) {
      if (!(cause instanceof Unreadable)) throw cause;
      unread.push({ path: name, why: cause.message });
    }
  };
  for (const [index, path] of all.entries()) {
    progress(index, all.length);
    take(path);
  }
  if (documents.size === 0 && unread.length === 0) throw nothingThere(paths);
  // Only now it is known which books there are.
  const isChapter = chaptersOf(house);
  for (const path of [...withoutSpecs]) if (isChapter(uriOf(path))) take(path, true);
  const inOrder = all.flatMap((path) => documents.get(path) ?? []);
  return { house, documents: inOrder, unread, pathOf: (uri) => pathByUri.get(uri) ?? uri };
}

function specsAt(files: Files, at: string, asWritten: string): readonly string[] {
  const kind = files.kindOf(at);
  if (!kind) {
    throw new UsageError(
      `There is no file or folder “${asWritten}”.`,
      "Check the spelling, or leave the path out to take the current folder.",
    );
  }
  if (kind === "file") {
    if (isHouseFile(at)) return [at];
    throw new UsageError(`“${asWritten}” is not a spec.`, whatHoldsSpecs);
  }
  return files.list(at, "deep");
}

const whatHoldsSpecs = "Name a file that ends in .drink, a Markdown file with blocks tagged `drink`, or a folder that holds some.";

function nothingThere(paths: readonly string[]): UsageError {
  const here = paths.every((path) => path === ".");
  const where = here ? "this folder" : paths.map((path) => `“${path}”`).join(", ");
  return new UsageError(`There are no specs in ${where}.`, whatHoldsSpecs);
}

/** The highest folder with a `house` that still governs this one; absent where there is none. */
function outermostHouse(files: Files, from: string): string | undefined {
  let outermost: string | undefined;
  let folder = from;
  for (let level = 0; level <= levelsUp; level++) {
    if (files.list(folder, "shallow").some((path) => path.endsWith(".drink") && holdsHouse(files, path))) outermost = folder;
    const above = dirname(folder);
    if (above === folder || files.kindOf(join(folder, ".git"))) break;
    folder = above;
  }
  return outermost;
}

function holdsHouse(files: Files, path: string): boolean {
  try {
    const text = files.read(path);
    return /(?:^|[\r\n])\uFEFF?house\b/.test(text) && read(text).entries.some((entry) => entry.kind === "house");
  } catch (cause) {
    if (cause instanceof Unreadable) return false;
    throw cause;
  }
}

/** The folders that lie in no other of them. */
function outerFolders(folders: Iterable<string>): string[] {
  const all = [...folders];
  return all.filter((one) => !all.some((other) => other !== one && one.startsWith(other.endsWith(sep) ? other : `${other}${sep}`)));
}

function uriOf(path: string): string {
  return pathToFileURL(path).href.replace(/\/$/, "");
}

function nameFrom(currentFolder: string, path: string): string {
  const inside = relative(currentFolder, path);
  return (inside.startsWith("..") ? path : inside).split(sep).join("/");
}
