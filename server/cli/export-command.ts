/** `mutchkin export`: stock and specs as CSV, drinks as recipes. */
import { resolve } from "node:path";
import { exportTable } from "../reports/export-csv.ts";
import { exportRecipes } from "../reports/export-recipes.ts";
import { exitCodes } from "./exit-codes.ts";
import type { Exported } from "./exported.ts";
import { openHouse } from "./session.ts";
import type { Terminal } from "./terminal.ts";
import { UsageError } from "./usage-error.ts";
import { writeText } from "./write-text.ts";

export interface ExportOptions {
  /** A file; absent: standard output. */
  readonly out?: string;
}

/** Only what stands in the asked files is exported. Says what an entry holds and the export does not; answers the exit code. */
export function exportCommand(what: Exported, paths: readonly string[], options: ExportOptions, terminal: Terminal): number {
  const session = openHouse(paths, terminal);
  const entries = session.documents.flatMap(({ tree }) => tree.entries);
  const { text, leftOut } = what === "recipes" ? exportRecipes(session.house, entries) : exportTable(session.house, entries, what);
  const complete = session.finish();
  for (const sentence of leftOut) terminal.complain(`${sentence}\n`);
  if (options.out === undefined) terminal.print(text);
  else writeNew(options.out, text, terminal);
  return complete ? exitCodes.clean : exitCodes.failed;
}

/** Throws a `UsageError` where something stands already: what is there may have been worked on. */
export function writeNew(name: string, text: string, { files, currentFolder }: Terminal): void {
  const path = resolve(currentFolder, name);
  if (files.kindOf(path)) {
    throw new UsageError(`“${name}” is there already, and may have been worked on.`, "Name another file, or take that one away first.");
  }
  writeText(files, path, name, text);
}
