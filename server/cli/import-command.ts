/** `mutchkin import`: a table or recipes as specs. */
import { basename, extname, join, resolve } from "node:path";
import { showCount } from "../house/show.ts";
import { importCsv } from "../reports/import-csv.ts";
import { importRecipes } from "../reports/import-recipes.ts";
import { importJson, importText } from "../reports/import-text.ts";
import type { Imported, Unimportable } from "../reports/imported.ts";
import { exitCodes } from "./exit-codes.ts";
import { writeNew } from "./export-command.ts";
import type { Exported } from "./exported.ts";
import { Unreadable } from "./files.ts";
import type { Terminal } from "./terminal.ts";
import { UsageError } from "./usage-error.ts";

export interface ImportOptions {
  readonly as?: Exported;
  /** A file or a folder; absent: standard output. */
  readonly out?: string;
  readonly report: "text" | "json";
}

/** Prints the specs, or writes them to a new file; what was not understood goes to standard error. Answers the exit code. */
export function importCommand(file: string, { as, out, report }: ImportOptions, terminal: Terminal): number {
  const made = madeOf(readText(file, terminal), file, as);
  if ("problem" in made) throw new UsageError(made.problem, made.todo);
  if (out === undefined) terminal.print(made.text);
  else {
    const name = newName(file, out, terminal);
    writeNew(name, made.text, terminal);
    terminal.print(`Wrote ${showCount(made.entries, "entry", "entries")} to ${name}\n`);
  }
  terminal.complain(
    report === "json"
      ? importJson(made)
      : importText(made, terminal.watched ? terminal.look : { ...terminal.look, width: Number.POSITIVE_INFINITY }),
  );
  return made.misread.length > 0 ? exitCodes.findings : exitCodes.clean;
}

function madeOf(text: string, file: string, as: ImportOptions["as"]): Imported | Unimportable {
  const looksSo = as === undefined && (/\.(?:json|jsonld|html?)$/i.test(file) || /^\uFEFF?\s*[[{<]/.test(text));
  if (as === "recipes" || looksSo) return importRecipes(text);
  return importCsv(text, as);
}

/** In a folder the new file is named after the imported one. */
function newName(file: string, out: string, { files, currentFolder }: Terminal): string {
  const name = files.kindOf(resolve(currentFolder, out)) === "folder" ? join(out, `${basename(file, extname(file))}.drink`) : out;
  if (name.endsWith(".drink")) return name;
  throw new UsageError(`“${name}” is no name for specs.`, "Name a file that ends in .drink, or a folder that is there.");
}

function readText(file: string, { files, currentFolder }: Terminal): string {
  const path = resolve(currentFolder, file);
  if (files.kindOf(path) !== "file") throw new UsageError(`There is no file “${file}”.`, "Check the spelling.");
  try {
    return files.read(path);
  } catch (cause) {
    if (!(cause instanceof Unreadable)) throw cause;
    throw new UsageError(
      `“${file}” could not be read: ${cause.message}.`,
      "In a spreadsheet this is “CSV UTF-8” where it asks how to save.",
    );
  }
}
