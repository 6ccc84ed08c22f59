/** The commands and their options. What each prints is made elsewhere; this decides on words, streams and exit codes. */
import { Argument, Command, CommanderError, InvalidArgumentError, Option, type OptionValues } from "commander";
import { version } from "../../package.json";
import { cardStyles } from "../reports/cards-css.ts";
import { type ReportName, reportNames } from "../reports/report-names.ts";
import { adjustCommand } from "./adjust-command.ts";
import { assessCommand } from "./assess-command.ts";
import { batchCommand } from "./batch-command.ts";
import { addBook } from "./book-options.ts";
import { cardCommand, cardFormats, paperNames } from "./card-command.ts";
import { checkCommand } from "./check-command.ts";
import { checkFormatNames } from "./check-formats.ts";
import { costCommand, costFormats } from "./cost-command.ts";
import { diffCommand, diffFormats } from "./diff-command.ts";
import { addExchange } from "./exchange-commands.ts";
import { exitCodes } from "./exit-codes.ts";
import type { Files } from "./files.ts";
import { formatCommand } from "./format-command.ts";
import { outCommand } from "./out-command.ts";
import { prepCommand, prepFormats } from "./prep-command.ts";
import type { Terminal } from "./terminal.ts";
import { UsageError } from "./usage-error.ts";

/** Runs one command line, without `node` and the program's own name. Answers the exit code; never throws. */
export async function run(argv: readonly string[], terminal: Terminal): Promise<number> {
  let code: number = exitCodes.clean;
  let hasWritten = false;
  const write: Files["write"] = (path, text) => {
    terminal.files.write(path, text);
    hasWritten = true;
  };
  const program = commands({ ...terminal, files: { ...terminal.files, write } }, (ended) => {
    code = ended;
  });
  try {
    await program.parseAsync([...argv], { from: "user" });
    return code;
  } catch (cause) {
    if (cause instanceof CommanderError) return cause.exitCode === 0 ? exitCodes.clean : exitCodes.failed;
    if (cause instanceof UsageError) terminal.complain(`${cause.message}\n${cause.todo}\n`);
    else terminal.complain(internalError(cause, terminal.debug, hasWritten));
    return exitCodes.failed;
  }
}

function commands(terminal: Terminal, ended: (code: number) => void): Command {
  const program = new Command("mutchkin")
    .description("Drink specs as plain text: checked, computed and explained.")
    .usage("<command> [paths…] [options]")
    .version(version, "--version", "print the version")
    .helpOption("-h, --help", "print this page, or a command's own")
    .helpCommand(false)
    // That a command has options goes without saying: the room is for what it does.
    .configureHelp({ subcommandTerm: (command) => `${command.name()} ${command.usage().replace("[options]", "").trim()}`.trim() })
    .addHelpText("after", examples)
    .showHelpAfterError("Try `mutchkin --help`.")
    .configureOutput({
      writeOut: terminal.print,
      writeErr: terminal.complain,
      getOutHelpWidth: () => terminal.look.width,
      getErrHelpWidth: () => terminal.look.width,
      outputError: (text, write) => write(text.replace(/^error: ./, (start) => start.slice(-1).toUpperCase())),
    })
    .exitOverride();
  const format = () => new Option("--format <format>", "how to print it").choices(["text", "json"]).default("text");
  const formats = (names: readonly string[]) => new Option("--format <format>", "how to print it").choices(names).default("text");
  const menusAndPaths = () =>
    new Argument("[menus and paths...]", "names of menus, files and folders; all menus of this folder where none is given").argOptional();
  const paths = () => new Argument("[paths...]", "files and folders; the current folder where none is given").argOptional();

  program
    .command("check")
    .summary("say what is wrong with specs, and what to do")
    .description("Says what is wrong with specs, why it matters, and what to do.")
    .addArgument(paths())
    .addOption(new Option("--format <format>", "how to print it").choices(checkFormatNames).default("text"))
    .option("--max-warnings <count>", "warnings that are let pass", wholeNumber, 0)
    .option("--fix", "first put right, in the files, whatever leaves each drink the same drink")
    .option("--changed-since <revision>", "only what is new since this git revision, and all in the entries touched since then")
    .option("--baseline <file>", "let the findings stand that this file lists")
    .option("--write-baseline <file>", "write all findings to this file instead of printing them")
    .option("--out", "list the drinks that are off tonight instead, for what says `status: out`")
    .addHelpText("after", checkExamples)
    .action((asked: string[], options) =>
      ended(options.out ? outCommand(asked, alone(options), terminal) : checkCommand(asked, options, terminal)),
    );
  program
    .command("assess")
    .summary("compute drinks and preps, and print them as a table")
    .description("Computes strength, volume, dilution, sweetness, acid and temperature of drinks, and what preps are made of.")
    .addArgument(paths())
    .option("--drink <name>", "only this drink, and the preps in it")
    .option("--explain", "show the sum behind every figure: which pour brought what, by which formula, on which assumptions")
    .addOption(format())
    .action((asked: string[], options) => ended(assessCommand(asked, options, terminal)));
  program
    .command("adjust")
    .summary("bring a drink or a prep to a target by the amount of one pour")
    .description("Finds the nearest amount that can be measured at which a drink or a prep is as wanted, and says what is left over.")
    .addArgument(paths())
    .option("--drink <name>", "the drink")
    .option("--prep <name>", "or the prep")
    .requiredOption("--to <target>", "such as “ratio 8”, “strength 18 %”, “66 brix”, “acid of lime juice”")
    .option("--with <pour>", "the pour that is changed or added; without it, each that does it is shown")
    .option("--write", "put the change into the file")
    .addOption(format())
    .action((asked: string[], options) => ended(adjustCommand(asked, options, terminal)));
  program
    .command("batch")
    .summary("mix a drink ahead: amounts, water and the label")
    .description("Scales a drink to bottles: amounts as the bar measures them, the water its ice would have given, work, label, cautions.")
    .argument("<drink>", "its name")
    .addArgument(paths())
    .option("--serves <count>", "for so many serves")
    .option("--volume <volume>", "or so much in the bottles, such as “5 l”")
    .option("--fill", "or as many whole serves as one bottle holds")
    .option("--bottle <volume>", "how large the bottles are; otherwise as the house says")
    .option("--water", "put in the water that the ice would have given, however the drink is made")
    .option("--no-water", "leave it out, for a drink that still meets its ice")
    .option("--made <day>", "the day on the label, such as 2026-11-28; otherwise today")
    .addOption(format())
    .action((drink: string, asked: string[], options) => ended(batchCommand(drink, asked, options, terminal)));
  program
    .command("card")
    .summary("print service cards, four to a page, for the wall of the bar")
    .description("Prints a card for each drink in type that reads at arm's length: both systems of units, method, glass, allergens, fill.")
    .addArgument(
      new Argument("[drinks, menus and paths...]", "names of drinks and menus, files and folders; all drinks of this folder").argOptional(),
    )
    .option("--out <file>", "where to, such as cards.pdf or cards.html: its ending says what it becomes; otherwise a page is printed here")
    .addOption(new Option("--ink <style>", "a light tint, or black on white only").choices(cardStyles).default("light"))
    .addOption(new Option("--page <size>", "the paper; otherwise that of the house's country").choices(paperNames))
    .addOption(new Option("--format <format>", "what it becomes, where the file does not say").choices(cardFormats))
    .action(async (asked: string[], options) => ended(await cardCommand(asked, options, terminal)));
  program
    .command("diff")
    .summary("say what changed between two states of specs, as drinks")
    .description(
      "Says what changed between two revisions, a revision and the working tree, or two folders: as drinks, with what it does to each.",
    )
    .addArgument(new Argument("[what...]", "REV or REV..REV (HEAD where none is named), or two folders; then paths").argOptional())
    .addOption(new Option("--format <format>", "how to print it").choices(diffFormats).default("text"))
    .action((asked: string[], options) => ended(diffCommand(asked, options, terminal)));
  program
    .command("cost")
    .summary("say what each drink of a menu costs and brings in")
    .description("Tells for each drink of a menu its cost, price, tax, share and margin, and what another price of a stock would change.")
    .addArgument(menusAndPaths())
    .option("--if <change>", "suppose a price, such as “aged rum +10 %” or “aged rum 24.00 per 700 ml”; repeatable", collected)
    .addOption(formats(costFormats))
    .action((asked: string[], options) => ended(costCommand(asked, options, terminal)));
  program
    .command("prep")
    .summary("say what to make and buy for an evening")
    .description("Tells what to make and what to buy for so many covers of a menu: preps in their order, bottles and fruit in whole packs.")
    .addArgument(menusAndPaths())
    .requiredOption("--covers <number>", "how many guests", wholeNumber)
    .option("--drinks-per-cover <number>", "how many drinks each of them has", anyNumber, 1)
    .option("--mix <file>", "shares of the drinks: `Its Name: 3` on a line, or CSV; otherwise each is as likely")
    .option("--date <day>", "the day it is made, such as 2026-11-28; otherwise today")
    .addOption(formats(prepFormats))
    .action((asked: string[], options) => ended(prepCommand(asked, options, terminal)));
  addBook(program, terminal, ended);
  program
    .command("format")
    .summary("put specs into their canonical form")
    .description(
      "Puts specs into their canonical form. Only blanks change, and the case of the words that open a line; what does not read is left.",
    )
    .addArgument(paths())
    .option("--check", "change nothing, only say which files would change")
    .option("--print", "change nothing, print the specs in their form")
    .action((asked: string[], options) => ended(formatCommand(asked, options, terminal)));
  addExchange(program, terminal, ended);
  program
    .command("schema")
    .summary("print the JSON Schema of a report")
    .description("Prints the JSON Schema of what `--format json` prints.")
    .addArgument(new Argument("[report]", "whose report").choices(reportNames).default("assess"))
    .action(async (report: ReportName) => {
      // Only this command needs the schemas themselves; the others start faster without them.
      const { jsonSchemaOf } = await import("../reports/json-schema.ts");
      terminal.print(`${JSON.stringify(jsonSchemaOf(report), null, 2)}\n`);
    });
  program
    .command("lsp")
    .summary("start the language server, for an editor")
    .description("Starts the language server, for any editor that speaks the protocol.")
    .requiredOption("--stdio", "talk over standard input and output")
    .action(() => terminal.startServer());
  return program;
}

const examples = `
Examples:
  mutchkin check                                         the specs below this folder
  mutchkin check --out                                   the drinks that are off tonight
  mutchkin assess --drink "Lantern Sour"                 one drink, with all its figures
  mutchkin adjust --drink "Lantern Sour" --to "ratio 9"  which pour brings it there
  mutchkin diff main..HEAD                               what a branch does to the drinks
  mutchkin batch "Lantern Sour" --serves 40              mixed ahead, for the kitchen wall
  mutchkin cost "Winter card"                            what its drinks cost and bring in
  mutchkin prep "Winter card" --covers 80                what to make and buy for an evening
  mutchkin format --check                                which files are not in canonical form

Exit codes:
  0  nothing found, or hints and information only
  1  errors, too many warnings, a target not reached, files to format, cells not understood
  2  the command could not be carried out; the reason is on standard error
`;

const checkExamples = `
Examples:
  mutchkin check --format sarif > mutchkin.sarif    for code scanning
  mutchkin check --changed-since origin/main        what a branch brought about
  mutchkin check --fix                              put right what is safe, then check
  mutchkin check --write-baseline old.json          start with what is there today
  mutchkin check --baseline old.json                what has come since
`;

/** The list of what is off is no check: what belongs to one is refused rather than passed over. */
function alone(options: OptionValues): { readonly format: "text" | "json" } {
  const { format, out: _, maxWarnings, ...others } = options;
  if (maxWarnings > 0 || Object.keys(others).length > 0 || (format !== "text" && format !== "json")) {
    throw new UsageError("`--out` only lists what is off.", "It goes with `--format text` or `json`, and with no other option.");
  }
  return { format };
}

/** Of an option that may stand several times. */
function collected(text: string, before: readonly string[] = []): readonly string[] {
  return [...before, text];
}

function anyNumber(text: string): number {
  if (/^\d+(?:\.\d+)?$/.test(text) && Number(text) > 0) return Number(text);
  throw new InvalidArgumentError("Give a number above 0, such as 1.5.");
}

function wholeNumber(text: string): number {
  if (/^\d+$/.test(text)) return Number(text);
  throw new InvalidArgumentError("Give a whole number, such as 3.");
}

function internalError(cause: unknown, debug: boolean, hasWritten: boolean): string {
  const what = cause instanceof Error ? cause.message : String(cause);
  const stack = debug && cause instanceof Error ? `${cause.stack}\n` : "Run it again with MUTCHKIN_DEBUG=1 to see where.\n";
  const files = hasWritten ? "Files were written before that: look at what changed in them." : "No file was changed.";
  return `Mutchkin itself failed: ${what}\n${files} Please report this with the spec that brought it about.\n${stack}`;
}
