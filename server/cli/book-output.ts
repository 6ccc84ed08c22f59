/** The folder that a book is written to: never a file in it that somebody else wrote, or changed since. */
import { createHash } from "node:crypto";
import { mkdirSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { type Files, Unwritable } from "./files.ts";
import { UsageError } from "./usage-error.ts";
import { writeText } from "./write-text.ts";

/** A file of the book by its path in the folder, with forward slashes. */
export interface OutputFile {
  readonly name: string;
  readonly content: string | Uint8Array;
}

/** Which files were written here, and what was in them. */
const listName = ".mutchkin-book.json";

/**
 * Writes what is not there as it is, and answers the names of that. Throws a `UsageError`, before anything
 * is written, where a file stands in the way that was not written by this or has been changed.
 */
export function writeBook(files: Files, folder: string, shown: string, output: readonly OutputFile[]): string[] {
  const known = listIn(folder);
  const changed: (OutputFile & { readonly path: string })[] = [];
  for (const file of output) {
    const path = join(folder, ...file.name.split("/"));
    const there = bytesOf(path);
    if (there && hashOf(there) === hashOf(file.content)) continue;
    if (there && known[file.name] !== hashOf(there)) throw inTheWay(`${shown}/${file.name}`, file.name in known);
    changed.push({ ...file, path });
  }
  for (const { name, path, content } of changed) {
    makeFolder(dirname(path), `${shown}/${name}`);
    writeText(files, path, `${shown}/${name}`, content);
  }
  const list = { ...known, ...Object.fromEntries(output.map(({ name, content }) => [name, hashOf(content)])) };
  const sorted = Object.fromEntries(Object.entries(list).sort(([one], [other]) => (one < other ? -1 : 1)));
  const text = `${JSON.stringify(sorted, null, 2)}\n`;
  if (text !== bytesOf(join(folder, listName))?.toString("utf8")) writeText(files, join(folder, listName), `${shown}/${listName}`, text);
  return changed.map(({ name }) => name);
}

function inTheWay(name: string, isOurs: boolean): UsageError {
  return isOurs
    ? new UsageError(
        `“${name}” was changed since the book was last written, and writing it again would lose that.`,
        "Move it away, or carry the change over to the chapters and delete it.",
      )
    : new UsageError(
        `“${name}” stands there already, and this command did not write it.`,
        "Move it away, or name another folder with --out.",
      );
}

function makeFolder(folder: string, name: string): void {
  try {
    mkdirSync(folder, { recursive: true });
  } catch (cause) {
    const why = cause instanceof Unwritable ? cause.message : "its folder could not be made";
    throw new UsageError(`“${name}” could not be written: ${why}.`, "Name another folder with --out.");
  }
}

function listIn(folder: string): Record<string, string> {
  try {
    const list: unknown = JSON.parse(readFileSync(join(folder, listName), "utf8"));
    return typeof list === "object" && list !== null ? (list as Record<string, string>) : {};
  } catch {
    return {};
  }
}

/** The bytes of a file; absent where none can be read. */
export function bytesOf(path: string): Buffer | undefined {
  try {
    return readFileSync(path);
  } catch {
    return undefined;
  }
}

function hashOf(content: string | Uint8Array): string {
  return createHash("sha256").update(content).digest("hex");
}
