/** Builds a book again whenever a file that it is made of is saved. */
import { type FSWatcher, watch } from "node:fs";
import { dirname, join, sep } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { chaptersOf } from "../house/book/chapter-files.ts";
import { houseFiles, isHouseFile, readHouseFile } from "../house/house-files.ts";
import { type Files, Unreadable } from "./files.ts";
import type { Gathered } from "./gather.ts";

/** An editor saves a file in several steps, and a checkout many files: practice, no source. */
const quietMs = 120;

/**
 * Calls `changed` with the paths that were saved, after each pause, one call at a time; ends with the signal.
 * What is below `output` is passed over.
 */
export function watchFolder(
  folder: string,
  output: string,
  changed: (paths: readonly string[]) => Promise<void>,
  signal: AbortSignal,
): Promise<void> {
  const waiting = new Set<string>();
  let timer: NodeJS.Timeout | undefined;
  let working: Promise<void> = Promise.resolve();
  return new Promise((resolve, reject) => {
    let watcher: FSWatcher | undefined;
    const end = (cause?: unknown) => {
      clearTimeout(timer);
      watcher?.close();
      working.then(() => (cause === undefined ? resolve() : reject(cause)), reject);
    };
    const build = () => {
      const paths = [...waiting].sort();
      waiting.clear();
      working = working.then(() => changed(paths));
      working.catch(end);
    };
    try {
      watcher = watch(folder, { recursive: true }, (_event, name) => {
        const path = name === null ? folder : join(folder, name);
        const isOthers = name?.split(sep).some((part) => houseFiles.passOver.includes(part));
        if (isOthers || path === output || path.startsWith(`${output}${sep}`)) return;
        waiting.add(path);
        clearTimeout(timer);
        timer = setTimeout(build, quietMs);
      });
      watcher.on("error", end);
    } catch (cause) {
      reject(cause);
      return;
    }
    if (signal.aborted) end();
    else signal.addEventListener("abort", () => end(), { once: true });
  });
}

/** The lowest folder that holds every text of the house, and another folder: what a book is made of may lie above its chapters. */
export function folderOfAll({ house }: Pick<Gathered, "house">, folder: string): string {
  let top = folder;
  for (const { uri } of house.documents()) {
    const path = fileURLToPath(uri);
    while (!path.startsWith(top.endsWith(sep) ? top : `${top}${sep}`)) top = dirname(top);
  }
  return top;
}

/** Takes saved files into the house; answers whether any of them may matter to the book. */
export function takeIn({ house }: Pick<Gathered, "house">, files: Files, paths: readonly string[]): boolean {
  const isChapter = chaptersOf(house);
  for (const path of paths.filter(isHouseFile)) {
    const uri = pathToFileURL(path).href;
    const given = textOf(files, path);
    const read = given === undefined ? undefined : readHouseFile(path, given, isChapter(uri));
    if (read) house.setDocument({ uri, version: null, ...read });
    else house.removeDocument(uri);
  }
  return paths.some((path) => isHouseFile(path) || /\.(?:png|jpe?g|gif|svg)$/i.test(path));
}

function textOf(files: Files, path: string): string | undefined {
  if (files.kindOf(path) !== "file") return undefined;
  try {
    return files.read(path);
  } catch (cause) {
    if (cause instanceof Unreadable) return undefined;
    throw cause;
  }
}
