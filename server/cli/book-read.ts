/** The book that a folder declares, read from the disk or from a commit. */
import { realpathSync } from "node:fs";
import { dirname, join, relative, sep } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import type { Entry } from "../../grammar/tree.ts";
import { type Book, type BookFiles, readBook } from "../house/book/book.ts";
import { showList } from "../house/show.ts";
import { bytesOf } from "./book-output.ts";
import { type Files, Unreadable } from "./files.ts";
import type { Gathered } from "./gather.ts";
import { UsageError } from "./usage-error.ts";

/** Where a book is declared, and the folder that its chapters lie in. */
export interface BookPlace {
  readonly entry: Entry;
  readonly folder: string;
}

/** The one book among the texts that were asked for. Throws a `UsageError` where there is none, or several. */
export function bookPlace({ house, documents }: Gathered, asked: string): BookPlace {
  const books = documents.flatMap(({ tree }) => tree.entries.filter(({ kind, name }) => kind === "book" && name));
  const [entry] = books;
  if (!entry) {
    const where = asked === "." ? "this folder" : `“${asked}”`;
    throw new UsageError(`No book is declared in ${where}.`, "Write `book Its Title` in a .drink file beside the chapters.");
  }
  if (books.length === 1) return { entry, folder: dirname(fileURLToPath(house.getDocumentOf(entry).uri)) };
  const names = showList(books.map(({ name }) => `“${name!.text}”`));
  throw new UsageError(`There are several books here: ${names}.`, "Name the folder of the one that is wanted.");
}

/** Where an earlier build wrote Markdown, which is no chapter: the folder of the output, if the chapters are not in it themselves. */
export function writtenIn(folder: string, output: string): string {
  return `${folder}${sep}`.startsWith(`${output}${sep}`) ? join(output, "markdown") : output;
}

/** Reads the chapters. What an earlier build wrote to `output` is none. */
export function readBookAt({ house }: Pick<Gathered, "house">, { entry, folder }: BookPlace, files: Files, output?: string): Book {
  return readBook(house, entry, { texts: textsIn(files, folder, output), picture: (file) => pictureIn(folder, file) });
}

/** Only what really lies in the folder: what a link or a path leads out to is not the book's to print. */
function pictureIn(folder: string, file: string): Uint8Array | undefined {
  try {
    const path = realpathSync(join(folder, ...file.split("/")));
    return path.startsWith(`${realpathSync(folder)}${sep}`) ? bytesOf(path) : undefined;
  } catch {
    return undefined;
  }
}

function textsIn(files: Files, folder: string, output: string | undefined): BookFiles["texts"] {
  const paths = files.list(folder, "deep").filter((path) => /\.(?:md|markdown)$/.test(path));
  const written = output === undefined ? undefined : `${writtenIn(folder, output)}${sep}`;
  return paths.flatMap((path) => {
    if (written !== undefined && path.startsWith(written)) return [];
    try {
      return [{ file: relative(folder, path).split(sep).join("/"), uri: pathToFileURL(path).href, text: files.read(path) }];
    } catch (cause) {
      // The house was read from the same files, and has told of this one.
      if (cause instanceof Unreadable) return [];
      throw cause;
    }
  });
}
