/** `mutchkin book`: builds a book from a folder of chapters and specs. */
import { relative, resolve, sep } from "node:path";
import type { Book } from "../house/book/book.ts";
import { usedOnce } from "../house/book/used-once.ts";
import { showCount } from "../house/show.ts";
import { check, reportOf } from "../reports/check.ts";
import { countsText } from "../reports/check-text.ts";
import { writeBook } from "./book-output.ts";
import { type BookForm, bookPrinter } from "./book-printer.ts";
import { type BookPlace, bookPlace, readBookAt, writtenIn } from "./book-read.ts";
import { folderOfAll, takeIn, watchFolder } from "./book-watch.ts";
import { exitCodes } from "./exit-codes.ts";
import { openHouse, type Session } from "./session.ts";
import type { Terminal } from "./terminal.ts";
import { UsageError } from "./usage-error.ts";

export interface BookOptions {
  readonly out: string;
  readonly to: readonly BookForm[];
  readonly watch?: boolean;
}

/** Builds the book; answers the exit code. Nothing is written while something in it is wrong. Watching ends with the signal. */
export async function bookCommand(asked: string, options: BookOptions, terminal: Terminal, ended: () => AbortSignal): Promise<number> {
  const session = openHouse([asked], terminal);
  const place = bookPlace(session, asked);
  const print = bookPrinter(options.to);
  const output = resolve(terminal.currentFolder, options.out);
  const once = () => build({ session, asked, place, print, output, options, terminal });
  const code = await once();
  if (!session.finish()) return exitCodes.failed;
  if (!options.watch) return code;
  terminal.print("Watching. Ctrl-C ends it.\n");
  const changed = async (paths: readonly string[]) => {
    if (!takeIn(session, terminal.files, paths)) return;
    try {
      await once();
    } catch (cause) {
      // What stands in the way now may be gone with the next save.
      if (!(cause instanceof UsageError)) throw cause;
      terminal.complain(`${cause.message}\n${cause.todo}\n`);
    }
  };
  await watchFolder(folderOfAll(session, place.folder), writtenIn(place.folder, output), changed, ended());
  return exitCodes.clean;
}

interface Build {
  readonly session: Session;
  /** The folder as it was written. */
  readonly asked: string;
  readonly place: BookPlace;
  readonly print: ReturnType<typeof bookPrinter>;
  readonly output: string;
  readonly options: BookOptions;
  readonly terminal: Terminal;
}

async function build({ session, asked, place, print, output, options: { out, watch }, terminal }: Build): Promise<number> {
  const book = readBookAt(session, freshPlace(session, place), terminal.files, output);
  if (book.problems.length > 0) {
    terminal.print(problemText(book, relative(terminal.currentFolder, place.folder).split(sep).join("/")));
    return exitCodes.findings;
  }
  const printed = await print(book);
  const written = writeBook(terminal.files, output, out, printed.files);
  terminal.print(wroteText(book, printed.chapters, out, written));
  if (!watch) terminal.print(onceText(book) + remarksText(session, asked));
  return exitCodes.clean;
}

/** What is found in the texts and keeps nothing from being printed. */
function remarksText({ house, documents, rules, report }: Session, asked: string): string {
  const found = check(house, documents, { rules, report, pathOf: (uri) => uri });
  const counts = countsText(reportOf(found));
  return counts && `What the rules find in its texts: ${counts}. \`mutchkin check ${asked}\` lists them.\n`;
}

/** While it is watched the `book` itself may be edited, and is another entry then. */
function freshPlace({ house }: Session, place: BookPlace): BookPlace {
  if (house.findDocumentOf(place.entry)) return place;
  const all = [...house.documents()].flatMap(({ tree }) => tree.entries);
  const entry = all.find(({ kind, name }) => kind === "book" && name);
  if (!entry) throw new UsageError("The `book` is gone.", "Write `book Its Title` in a .drink file beside the chapters.");
  return { ...place, entry };
}

function problemText({ problems }: Book, folder: string): string {
  const top = folder === "" ? "" : `${folder}/`;
  const lines = problems.map(({ file, line, column, what, todo }) => `${top}${file}:${line}:${column} error  ${what}\n    ${todo}\n`);
  return `${lines.join("")}\n${showCount(problems.length, "error")}; nothing was written.\n`;
}

/** Nothing is wrong with it, but the reader has to buy it. */
function onceText({ house, recipes }: Book): string {
  const once = usedOnce(
    house,
    recipes.map(({ recipe }) => recipe.entry),
  );
  const names = once.map(({ name, recipe }) => `${name} (${recipe.name!.text})`);
  return names.length > 0 ? `Bottles for one recipe alone: ${names.join(", ")}.\n` : "";
}

function wroteText({ title, chapters, recipes }: Book, printed: number, out: string, written: readonly string[]): string {
  const what = `“${title}”: ${showCount(chapters.length, "chapter")}, ${printed} printed anew; ${showCount(recipes.length, "recipe")}.`;
  return `${what} ${written.length > 0 ? `Wrote to ${out}: ${written.join(", ")}.` : "Everything is as it was."}\n`;
}
