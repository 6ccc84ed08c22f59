/** `export` and `import` with their options. */
import { Argument, type Command, Option } from "commander";
import { type Exported, exported } from "./exported.ts";
import type { Terminal } from "./terminal.ts";

export function addExchange(program: Command, terminal: Terminal, ended: (code: number) => void): void {
  program
    .command("export")
    .summary("stock and specs as CSV, drinks as recipes for the web")
    .description("Prints what stands in specs as a table for a spreadsheet, or as recipes in schema.org's JSON-LD.")
    .addArgument(new Argument("<what>", "what of them").choices(exported))
    .addArgument(new Argument("[paths...]", "files and folders; the current folder where none is given").argOptional())
    .option("--out <file>", "to a new file; otherwise it is printed")
    .action(async (what: Exported, paths: string[], options) => {
      // The other commands start faster without what only these two need.
      const { exportCommand } = await import("./export-command.ts");
      ended(exportCommand(what, paths, options, terminal));
    });
  program
    .command("import")
    .summary("make specs of such a file, and say what was not understood")
    .description("Prints the specs that a table or a recipe comes to; what was not understood stands in comments, and is told.")
    .argument("<file>", "CSV in UTF-8 (commas, semicolons or tabs), JSON-LD, or a saved page that holds some")
    .addOption(new Option("--as <what>", "what it holds, where its columns do not say").choices(exported))
    .option("--out <place>", "to a new file, or to one in this folder that is named after it")
    .addOption(new Option("--report <format>", "how to tell what was not understood").choices(["text", "json"]).default("text"))
    .action(async (file: string, options) => {
      const { importCommand } = await import("./import-command.ts");
      ended(importCommand(file, options, terminal));
    });
}
