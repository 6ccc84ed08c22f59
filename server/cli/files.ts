/** The one place where the command line reads the disk, and writes to it when it is told to. */
import { chmodSync, lstatSync, mkdtempSync, readFileSync, realpathSync, renameSync, rmSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fdir } from "fdir";
import { houseFiles, isHouseFile } from "../house/house-files.ts";

export interface Files {
  /** What stands at a path, links followed; absent where nothing does that this account may see. */
  kindOf(path: string): "file" | "folder" | undefined;
  /** The absolute paths of the specs and the Markdown files of a folder, in order; of its subfolders too unless `shallow`. */
  list(folder: string, depth: "shallow" | "deep"): readonly string[];
  /** The whole text, byte order mark and line breaks as they are. Throws an `Unreadable` with a plain reason. */
  read(path: string): string;
  /** Puts a text, or bytes, in the place of a file's, all of it or nothing; makes the file if it is not there. Throws an `Unwritable` with a plain reason. */
  write(path: string, text: string | Uint8Array): void;
}

/** A file that is there and cannot be read. */
export class Unreadable extends Error {}
/** A file that is as it was, since it cannot be changed. */
export class Unwritable extends Error {}

/** Folders that hold no specs, however deep they are. */
const skipped = new Set<string>(houseFiles.passOver);

const decoder = new TextDecoder("utf-8", { fatal: true, ignoreBOM: true });

export const disk: Files = {
  kindOf(path) {
    try {
      const stats = statSync(path);
      return stats.isDirectory() ? "folder" : stats.isFile() ? "file" : undefined;
    } catch {
      return undefined;
    }
  },
  list(folder, depth) {
    const walk = new fdir()
      .withFullPaths()
      .exclude((name) => skipped.has(name))
      .filter(isHouseFile);
    return (depth === "shallow" ? walk.withMaxDepth(0) : walk).crawl(folder).sync().sort();
  },
  write(path, text) {
    try {
      const old = lstatSync(path, { throwIfNoEntry: false });
      const file = old ? realpathSync(path) : path;
      const beside = mkdtempSync(`${file}.`);
      try {
        // Written beside it first: a full disk must not leave half a file.
        const fresh = join(beside, "new");
        writeFileSync(fresh, text);
        if (old) chmodSync(fresh, statSync(file).mode);
        renameSync(fresh, file);
      } finally {
        rmSync(beside, { recursive: true });
      }
    } catch (cause) {
      throw new Unwritable(reasonOf(cause), { cause });
    }
  },
  read(path) {
    const bytes = readBytes(path);
    try {
      return decoder.decode(bytes);
    } catch {
      throw new Unreadable("it is not text in UTF-8; save it again with that encoding");
    }
  },
};

const reasons: Record<string, string> = {
  EACCES: "this account may not",
  EPERM: "this account may not",
  EROFS: "the disk is read-only",
  ENOSPC: "the disk is full",
  ENOENT: "it is a link to something that is not there",
  EISDIR: "it is a folder",
};

function readBytes(path: string): Uint8Array {
  try {
    return readFileSync(path);
  } catch (cause) {
    throw new Unreadable(reasonOf(cause), { cause });
  }
}

function reasonOf(cause: unknown): string {
  const { code = "", message } = cause as NodeJS.ErrnoException;
  return reasons[code] ?? message;
}
