/** What every printed report shares: its width, its emphasis, its tables and its wrapping. */
import Table from "cli-table3";
import type { FindingReport } from "./check-schema.ts";

/** How a text may be set. Nothing is ever told by emphasis alone, so that it may be left out. */
export interface Look {
  /** Columns that a line may fill. */
  readonly width: number;
  strong(text: string): string;
  faint(text: string): string;
  severity(severity: FindingReport["severity"], text: string): string;
}

/** For a file or a pipe. */
export const plainLook: Look = { width: 100, strong: asItIs, faint: asItIs, severity: (_, text) => text };

/** The head and, below it, the unit. The first column holds names and may wrap, the others numbers. */
export type Column = readonly [head: string, unit?: string];

/** Cells, or a text over the row's whole width: a note on the row above, or a heading of those below. */
export type Row = readonly string[] | { readonly note: string } | { readonly heading: string };

const gap = 2;
const leastName = 16;
const noteIndent = "  ";
/** As a terminal is told of it: escape, bracket, number, m. */
const emphasis = new RegExp(`${String.fromCharCode(27)}\\[\\d+m`, "g");
const trailingBlanks = new RegExp(` +((?:${emphasis.source})*)$`, "gm");

/** Rows in columns without borders, one rule under the head. No line ends in blanks. */
export function table(columns: readonly Column[], rows: readonly Row[], look: Look): string {
  const widths = columns.map((column, index) =>
    Math.max(...column.map((line = "") => line.length), ...rows.map((row) => ("length" in row ? longestLine(row[index]!) : 0))),
  );
  const numbers = widths.slice(1).reduce((sum, width) => sum + gap + width, 0);
  widths[0] = Math.max(leastName, Math.min(widths[0]!, look.width - numbers));
  const drawn = new Table({
    head: columns.map(([head, unit]) => `${look.strong(head)}${unit === undefined ? "\n" : `\n${look.faint(unit)}`}`),
    // Numbers stand to the right, so the gap is on their left.
    colWidths: widths.map((width, index) => (index === 0 ? width : gap + width)),
    colAligns: columns.map((_, index) => (index === 0 ? "left" : "right")),
    wordWrap: true,
    chars: { ...noBorders, mid: "─" },
    style: { "padding-left": 0, "padding-right": 0, head: [], border: [], compact: true },
  });
  const whole = widths[0] + numbers;
  for (const [index, row] of rows.entries()) {
    if ("length" in row) drawn.push([...row]);
    else drawn.push([{ content: across(row, index, whole, look), colSpan: columns.length, wordWrap: false }]);
  }
  return withoutTrailingBlanks(drawn.toString());
}

function across(row: Exclude<Row, readonly string[]>, index: number, width: number, look: Look): string {
  if ("note" in row) return wrap(row.note, width, noteIndent);
  return `${index > 0 ? "\n" : ""}${look.faint(wrap(row.heading, width))}`;
}

const noBorders = Object.fromEntries(
  "top top-mid top-left top-right bottom bottom-mid bottom-left bottom-right left left-mid mid-mid right right-mid middle"
    .split(" ")
    .map((name) => [name, ""]),
);

/** A text in lines of at most so many columns, broken at blanks and indented, the first after `lead`; a longer word stays whole. */
export function wrap(text: string, width: number, indent = "", lead = indent): string {
  const lines: string[] = [];
  let line = "";
  for (const word of text.trim().split(/\s+/)) {
    const start = lines.length > 0 ? indent : lead;
    if (line && start.length + line.length + 1 + word.length > width) {
      lines.push(start + line);
      line = word;
    } else line = line ? `${line} ${word}` : word;
  }
  return [...lines, (lines.length > 0 ? indent : lead) + line].join("\n");
}

/** `1 drink`, `16 drinks`. */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

function longestLine(cell: string): number {
  return Math.max(...cell.split("\n").map((line) => line.replace(emphasis, "").length));
}

/** Blanks at a line's end, also where emphasis ends behind them. */
function withoutTrailingBlanks(text: string): string {
  return text.replace(trailingBlanks, "$1");
}

function asItIs(text: string): string {
  return text;
}
