/** The command `book` and its options. */
import { Argument, type Command, InvalidArgumentError } from "commander";
import { changesCommand } from "./book-changes.ts";
import { type BookOptions, bookCommand } from "./book-command.ts";
import { type BookForm, bookForms } from "./book-printer.ts";
import type { Terminal } from "./terminal.ts";
import { UsageError } from "./usage-error.ts";

/** Adds it to the program, which is told the exit code. */
export function addBook(program: Command, terminal: Terminal, ended: (code: number) => void): void {
  program
    .command("book")
    .summary("build a book of chapters and specs: Markdown, HTML, Word, PDF")
    .description("Builds a book: chapters in Markdown, with the specs, values, indexes and tables that their directives ask for.")
    .addArgument(new Argument("[folder]", "the folder that declares the `book`").default("."))
    .option("--out <folder>", "where to; a file there that this did not write is never overwritten")
    .option("--to <forms>", `what it becomes: ${bookForms.join(", ")}`, forms, ["md", "html", "docx"])
    .option("--watch", "build again whenever a file is saved, until Ctrl-C")
    .option("--changes-since <revision>", "build nothing; print what prints differently since this git revision, for the editor")
    .action(async (folder: string, { changesSince, ...options }: Partial<BookOptions> & { changesSince?: string }) => {
      if (changesSince !== undefined) return ended(changesCommand(folder, changesSince, terminal));
      if (options.out === undefined) throw new UsageError("It is not said where the book goes.", "Name a folder: `--out build`.");
      return ended(await bookCommand(folder, options as BookOptions, terminal, interrupted));
    });
}

function forms(text: string): BookForm[] {
  const asked = text.split(",").map((one) => one.trim().toLowerCase());
  const unknown = asked.find((one) => !bookForms.some((form) => form === one));
  if (unknown !== undefined) throw new InvalidArgumentError(`Allowed are ${bookForms.join(", ")}, with commas between them.`);
  return bookForms.filter((form) => asked.includes(form));
}

function interrupted(): AbortSignal {
  const controller = new AbortController();
  process.once("SIGINT", () => controller.abort());
  return controller.signal;
}
