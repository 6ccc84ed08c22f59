/** `mutchkin card`: service cards, to be printed. */
import { resolve } from "node:path";
import { type PaperName, papers } from "../reports/card-paper.ts";
import type { CardReport } from "../reports/card-schema.ts";
import { cardReport } from "../reports/cards.ts";
import type { CardStyle } from "../reports/cards-css.ts";
import { cardsHtml } from "../reports/cards-html.ts";
import { printPdf } from "./browser-pdf.ts";
import { openDrinks } from "./drinks-asked.ts";
import { exitCodes } from "./exit-codes.ts";
import type { Terminal } from "./terminal.ts";
import { UsageError } from "./usage-error.ts";
import { writeText } from "./write-text.ts";

export const cardFormats = ["html", "pdf", "json"] as const;
type CardFormat = (typeof cardFormats)[number];
export const paperNames = Object.keys(papers) as PaperName[];

export interface CardOptions {
  readonly format?: CardFormat;
  readonly ink: CardStyle;
  readonly page?: PaperName;
  /** A file. */
  readonly out?: string;
}

/** Prints the cards or writes them to a file; answers the exit code. */
export async function cardCommand(asked: readonly string[], options: CardOptions, terminal: Terminal): Promise<number> {
  const { ink, page, out } = options;
  const format = formatOf(options);
  const session = openDrinks(asked, terminal);
  const report = cardReport(session.house, session.entries, session.pathOf);
  if (report.unknown.length > 0) {
    terminal.complain(`On the menu, but no drink of that name is known, so there is no card: ${report.unknown.join("; ")}.\n`);
  }
  const html = () => cardsHtml(report, { ink, paper: page ?? paperOf(report) });
  const made = {
    html,
    json: () => `${JSON.stringify(report, null, 2)}\n`,
    pdf: () => printPdf(html(), "write the page with `--out` and a name that ends in .html"),
  };
  const complete = session.finish();
  const text = await made[format]();
  if (out !== undefined) writeText(terminal.files, resolve(terminal.currentFolder, out), out, text);
  else if (typeof text === "string") terminal.print(text);
  return complete ? exitCodes.clean : exitCodes.failed;
}

/** By the file's ending, where nothing else is said. */
function formatOf({ format, out }: CardOptions): CardFormat {
  const ending = cardFormats.find((one) => out?.toLowerCase().endsWith(`.${one}`));
  if (format && ending && format !== ending) {
    throw new UsageError(`“${out}” ends in .${ending}, and \`--format ${format}\` was asked for.`, "Leave one of them out.");
  }
  const meant = format ?? ending ?? "html";
  if (meant === "pdf" && out === undefined) {
    throw new UsageError("A PDF is nothing that a terminal could show.", "Say where it goes: `--out cards.pdf`.");
  }
  return meant;
}

/** Letter is the paper of these two countries alone among those with a row of their own: practice, no source. */
function paperOf({ country }: CardReport): PaperName {
  return country === "US" || country === "CA" ? "letter" : "a4";
}
