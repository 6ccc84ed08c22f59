/** The one place where the command line reads the disk; nothing here ever writes. */
import { readFileSync, statSync } from "node:fs";
import { fdir } from "fdir";

export interface Files {
  /** What stands at a path, links followed; absent where nothing does that this account may see. */
  kindOf(path: string): "file" | "folder" | undefined;
  /** The absolute paths of the `.drink` files of a folder, in order; of its subfolders too unless `shallow`. */
  list(folder: string, depth: "shallow" | "deep"): readonly string[];
  /** The whole text, byte order mark and line breaks as they are. Throws an `Unreadable` with a plain reason. */
  read(path: string): string;
}

/** A file that is there and cannot be read. */
export class Unreadable extends Error {}

/** Folders that hold no specs, however deep they are. */
const skipped = new Set(["node_modules", ".git", ".hg", ".svn", "dist"]);

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
      .filter((path) => path.endsWith(".drink"));
    return (depth === "shallow" ? walk.withMaxDepth(0) : walk).crawl(folder).sync().sort();
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
  EACCES: "this account may not read it",
  EPERM: "this account may not read it",
  ENOENT: "it is a link to something that is not there",
  EISDIR: "it is a folder",
};

function readBytes(path: string): Uint8Array {
  try {
    return readFileSync(path);
  } catch (cause) {
    const { code = "", message } = cause as NodeJS.ErrnoException;
    throw new Unreadable(reasons[code] ?? message, { cause });
  }
}
