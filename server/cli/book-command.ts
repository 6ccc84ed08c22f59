/** `mutchkin book`: builds a book from a folder of chapters and specs. */
import { dirname, join, relative, resolve, sep } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import type { Entry } from "../../grammar/tree.ts";
import { type Book, type BookFiles, readBook } from "../house/book/book.ts";
import { showCount, showList } from "../house/show.ts";
import { bytesOf, writeBook } from "./book-output.ts";
import { type BookForm, bookPrinter } from "./book-printer.ts";
import { exitCodes } from "./exit-codes.ts";
import { type Files, Unreadable } from "./files.ts";
import { openHouse, type Session } from "./session.ts";
import type { Terminal } from "./terminal.ts";
import { UsageError } from "./usage-error.ts";

export interface BookOptions {
  readonly out: string;
  readonly to: readonly BookForm[];
  readonly watch?: boolean;
}

/** Builds the book; answers the exit code. Nothing is written while something in it is wrong. */
export async function bookCommand(asked: string | undefined, options: BookOptions, terminal: Terminal): Promise<number> {
  const session = openHouse([asked ?? "."], terminal);
  const entry = bookEntry(session, asked);
  const print = bookPrinter(options.to);
  const code = await build(session, entry, print, options, terminal);
  return session.finish() ? code : exitCodes.failed;
}

async function build(
  session: Session,
  entry: Entry,
  print: ReturnType<typeof bookPrinter>,
  { out }: BookOptions,
  terminal: Terminal,
): Promise<number> {
  const { house, pathOf } = session;
  const folder = dirname(fileURLToPath(house.getDocumentOf(entry).uri));
  const output = resolve(terminal.currentFolder, out);
  const book = readBook(house, entry, bookFiles(terminal.files, folder, output));
  if (book.problems.length > 0) {
    const top = dirname(pathOf(house.getDocumentOf(entry).uri));
    terminal.print(problemText(book, top === "." ? "" : `${top}/`));
    return exitCodes.findings;
  }
  const printed = await print(book);
  const written = writeBook(terminal.files, output, out, printed.files);
  terminal.print(wroteText(book, printed.chapters, out, written));
  return exitCodes.clean;
}

/** The one book that the folder declares. */
function bookEntry({ documents }: Session, asked: string | undefined): Entry {
  const books = documents.flatMap(({ tree }) => tree.entries.filter(({ kind, name }) => kind === "book" && name));
  const [book] = books;
  if (!book) {
    const where = asked ? `“${asked}”` : "this folder";
    throw new UsageError(`No book is declared in ${where}.`, "Write `book Its Title` in a .drink file beside the chapters.");
  }
  if (books.length === 1) return book;
  const names = showList(books.map(({ name }) => `“${name!.text}”`));
  throw new UsageError(`There are several books here: ${names}.`, "Name the folder of the one that is wanted.");
}

/** The texts in the book's folder and below, but for what an earlier build wrote there. */
function bookFiles(files: Files, folder: string, output: string): BookFiles {
  const paths = files.list(folder, "deep").filter((path) => /\.(?:md|markdown)$/.test(path) && !path.startsWith(`${output}${sep}`));
  const texts = paths.flatMap((path) => {
    try {
      return [{ file: relative(folder, path).split(sep).join("/"), uri: pathToFileURL(path).href, text: files.read(path) }];
    } catch (cause) {
      if (cause instanceof Unreadable) return [];
      throw cause;
    }
  });
  return { texts, picture: (file) => bytesOf(join(folder, ...file.split("/"))) };
}

function problemText({ problems }: Book, folder: string): string {
  const lines = problems.map(({ file, line, column, what, todo }) => `${folder}${file}:${line}:${column} error  ${what}\n    ${todo}\n`);
  return `${lines.join("")}\n${showCount(problems.length, "error")}; nothing was written.\n`;
}

function wroteText({ title, chapters, recipes }: Book, printed: number, out: string, written: readonly string[]): string {
  const what = `“${title}”: ${showCount(chapters.length, "chapter")}, ${printed} printed anew, ${showCount(recipes.length, "recipe")}.`;
  const wrote = written.length > 0 ? `Wrote ${written.map((name) => `${out}/${name}`).join(", ")}.` : "Everything is as it was.";
  return `${what}\n${wrote}\n`;
}
