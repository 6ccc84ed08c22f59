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

/** The head and, below it, the unit. */
export type Column = readonly [head: string, unit?: string];

/** A name, what stands below it, and numbers; or a text over the row's whole width: a note on the row above, a heading of those below. */
export type Row =
  | { readonly name: string; readonly under?: string; readonly numbers: readonly string[] }
  | { readonly note: string }
  | { readonly heading: string };

const gap = 2;
const leastName = 16;
export const noteIndent = "  ";
/** As a terminal is told of it: escape, bracket, number, m. */
const emphasis = new RegExp(`${String.fromCharCode(27)}\\[\\d+m`, "g");
const trailingBlanks = new RegExp(` +((?:${emphasis.source})*)$`, "gm");

/** Rows in columns without borders, one rule under the head. Nothing is cut off, and no line ends in blanks. */
export function table(names: Column, columns: readonly Column[], rows: readonly Row[], look: Look): string {
  const named = rows.filter((row) => "name" in row);
  const widths = columns.map((column, index) => widestOf([...column, ...named.map(({ numbers }) => numbers[index]!)]));
  const beside = widths.reduce((sum, width) => sum + gap + width, 0);
  const longest = widestOf([...names, ...named.flatMap(({ name, under }) => [name, under])]);
  const nameWidth = Math.max(leastName, Math.min(longest, look.width - beside));
  const heads = [names, ...columns];
  const inUnits = heads.some(([, unit]) => unit !== undefined);
  const drawn = new Table({
    head: heads.map(([head, unit]) => look.strong(head) + (inUnits ? `\n${unit ? look.faint(unit) : ""}` : "")),
    // Numbers stand to the right, so the gap is on their left. The names' column is as wide as its lines.
    colWidths: [null, ...widths.map((width) => gap + width)],
    colAligns: ["left", ...columns.map(() => "right" as const)],
    chars: { ...noBorders, mid: "─" },
    style: { "padding-left": 0, "padding-right": 0, head: [], border: [], compact: true },
  });
  for (const [index, row] of rows.entries()) {
    if ("name" in row) drawn.push([nameCell(row, nameWidth, look), ...row.numbers]);
    else drawn.push([{ content: across(row, index, nameWidth + beside, look), colSpan: columns.length + 1 }]);
  }
  return withoutTrailingBlanks(drawn.toString());
}

/** Set line by line after breaking, since emphasis takes no room. */
function nameCell({ name, under }: { name: string; under?: string }, width: number, look: Look): string {
  const lines = narrowed(name, width).map(look.strong);
  return [...lines, ...(under ? narrowed(under, width).map(look.faint) : [])].join("\n");
}

function across(row: { note: string } | { heading: string }, index: number, width: number, look: Look): string {
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
  // A value and its uncertainty stay on one line.
  for (const glued of readable(text)
    .trim()
    .replaceAll(" ± ", "\u00a0±\u00a0")
    .split(/[^\S\u00a0]+/)) {
    const word = glued.replaceAll("\u00a0", " ");
    const start = lines.length > 0 ? indent : lead;
    if (line && columnsOf(`${start}${line} ${word}`) > width) {
      lines.push(start + line);
      line = word;
    } else line = line ? `${line} ${word}` : word;
  }
  return [...lines, (lines.length > 0 ? indent : lead) + line].join("\n");
}

const labelWidth = 16;

/** A label and its text beside it. The label is set after wrapping, since emphasis takes no room. */
export function labelled(label: string, text: string, look: Look): string {
  const lead = `${label} `.padEnd(labelWidth);
  return look.faint(lead) + wrap(text, look.width, " ".repeat(labelWidth), lead).slice(lead.length);
}

/** Without control characters: a terminal would obey what a file says. */
export function readable(text: string): string {
  return text.replace(/\p{Cc}/gu, " ");
}

function widestOf(texts: readonly (string | undefined)[]): number {
  return Math.max(0, ...texts.flatMap((text = "") => text.split("\n").map(columnsOf)));
}

/** Lines broken at blanks, and inside a word only where it must be. */
function narrowed(text: string, width: number): string[] {
  return wrap(
    text.replace(/\S+/g, (word) => brokenWord(word, width)),
    width,
  ).split("\n");
}

function brokenWord(word: string, width: number): string {
  if (columnsOf(word) <= width) return word;
  let line = "";
  let broken = "";
  for (const letter of lettersOf(word)) {
    if (line && columnsOf(line + letter) > width) {
      broken += `${line} `;
      line = "";
    }
    line += letter;
  }
  return broken + line;
}

const segmenter = new Intl.Segmenter();
/** Latin letters, signs and dashes: a column each. Nearly every line is of nothing else, and a segmenter is slow. */
const plain = /^[ -~\u00a0-\u00ac\u00ae-\u02ff\u2010-\u2027−]*$/;
const wide = /\p{Script=Han}|\p{Script=Hiragana}|\p{Script=Katakana}|\p{Script=Hangul}|\p{Emoji_Presentation}/u;

/** How many columns of a terminal a line takes: letters with their marks one, wide ones two, emphasis none. */
function columnsOf(line: string): number {
  const bare = line.replace(emphasis, "");
  if (plain.test(bare)) return bare.length;
  return lettersOf(bare).reduce((sum, letter) => sum + (wide.test(letter) ? 2 : 1), 0);
}

function lettersOf(text: string): string[] {
  return [...segmenter.segment(text)].map(({ segment }) => segment);
}

/** Blanks at a line's end, also where emphasis ends behind them. */
function withoutTrailingBlanks(text: string): string {
  return text.replace(trailingBlanks, "$1");
}

function asItIs(text: string): string {
  return text;
}
