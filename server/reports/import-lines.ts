/**
 * Lines of a spec made of the texts of a table. A line counts only if it reads as it was meant: the
 * same amount, the same name, the same value, and nothing found fault with.
 */
import type { EntryKind, Field } from "../../grammar/fields.ts";
import { readLine } from "../../grammar/line.ts";
import { read } from "../../grammar/read.ts";
import type { Pour, Reading } from "../../grammar/tree.ts";
import { writtenName } from "../house/write.ts";
import { findWrong } from "../rules/field-values.ts";
import { linesIn } from "./imported.ts";

/** A line without its indentation, or why there is none. */
export type Made = { readonly line: string; readonly commas: number; readonly remark?: string } | { readonly why: string };

/** What a row of the table of specs says of one pour. */
export interface PourTexts {
  readonly how: string;
  readonly amount: string;
  readonly unit: string;
  readonly ingredient: string;
  readonly modifiers: string;
}

/** The line that opens an entry, with its name in quotation marks where it needs them. */
export function headLine(kind: EntryKind, name: string, remark: string): Made {
  const wanted = squeezed(name);
  for (const written of [writtenName(wanted), `"${wanted}"`]) {
    const line = `${kind} ${written}`;
    const { entries } = read(withRemark(line, remark));
    const [entry] = entries;
    if (entries.length !== 1 || entry!.lines.length !== 1 || entry!.kind !== kind || entry!.lines[0]!.problem) continue;
    if (squeezed(entry!.name?.text ?? "") === wanted && hasRemark(entry!.lines[0]!, remark)) return made(withRemark(line, remark));
  }
  return { why: "This does not read as a name." };
}

/** The lines of a field. Only prose has more than one; elsewhere line breaks become blanks. */
export function fieldLines(
  field: Field,
  kind: EntryKind,
  cell: string,
): { readonly lines: readonly string[]; readonly commas: number } | { readonly why: string } {
  if (field.shape === "prose") return { lines: proseLines(field.name, cell), commas: 0 };
  const value = linesIn(cell)
    .map((line) => line.trim())
    .join(" ");
  const one = withoutCommas(`${field.name}: ${value}`);
  const { content, problem } = readIndented(one.line);
  if (problem) return { why: `${problem.what} ${problem.todo}` };
  if (content.kind !== "field" || content.name.text !== field.name || !content.value) return { why: "This does not read as a value." };
  const wrong = findWrong(field, content, kind);
  return wrong ? { why: `${wrong.wrong} ${wrong.todo}` } : { lines: [one.line], commas: one.commas };
}

/** On the field's line where it is one line, below it otherwise. */
function proseLines(name: string, cell: string): string[] {
  const lines = cell
    .replace(/^(?:[^\S\r\n]*[\r\n])+/, "")
    .trimEnd()
    .split(/\r\n|[\r\n]/);
  if (lines.length === 1) return [`${name}: ${lines[0]!.trim()}`];
  return [`${name}:`, ...lines.map((line) => (line.trim() === "" ? "" : `  ${line.trimEnd()}`))];
}

/** A pour with what goes before it (`or `, `without `, `swap aged rum for `). */
export function pourLine(before: string, texts: PourTexts, remark: string): Made {
  const amount = squeezed(`${texts.how} ${texts.amount} ${texts.unit}`);
  const behind = texts.modifiers ? `, ${texts.modifiers}` : "";
  const isQuoted = /^["“”]/.test(texts.ingredient);
  let why = "This does not read as a pour.";
  for (const name of isQuoted ? [texts.ingredient] : [writtenName(texts.ingredient), `"${texts.ingredient}"`]) {
    const bare = `${before}${amount} ${name}${behind}`.replace(/ +/g, " ").trim();
    const { line, commas } = withoutCommas(withRemark(bare, remark));
    const reading = readIndented(line);
    const { problem } = reading;
    const unmeasured = problem?.code === "missing-amount";
    if (problem && !unmeasured) {
      why = `${problem.what} ${problem.todo}`;
      continue;
    }
    const pour = pourOf(reading, before);
    if (!pour || !hasRemark(reading, remark) || !says(pour, line, amount)) continue;
    if (!isQuoted && squeezed(pour.name?.text ?? "") !== squeezed(`${texts.ingredient}${behind}`)) continue;
    return { line, commas, ...(unmeasured && { remark: problem.what }) };
  }
  return { why };
}

/** A comment, or any other line that is taken over as it stands. */
export function commentLine(remark: string): string[] {
  return linesIn(remark).map((line) => `# ${line.trim()}`);
}

/** Blanks folded. */
export function squeezed(text: string): string {
  return text.replace(/\s+/g, " ").trim();
}

function made(line: string): Made {
  return { line, commas: 0 };
}

function withRemark(line: string, remark: string): string {
  return remark ? `${line} # ${remark}` : line;
}

function hasRemark({ comment }: Pick<Reading, "comment">, remark: string): boolean {
  return squeezed(comment?.text.slice(1) ?? "") === squeezed(remark);
}

/** In the body of an entry. */
function readIndented(line: string): Reading {
  return readLine(`  ${line}`);
}

/** Decimal commas as points, as the grammar reads them. */
function withoutCommas(line: string): { line: string; commas: number } {
  let commas = 0;
  for (; commas < 50; commas++) {
    const { problem } = readIndented(line);
    if (problem?.code !== "decimal-comma" || problem.instead === undefined) break;
    line = line.slice(0, problem.start - 2) + problem.instead + line.slice(problem.end - 2);
  }
  return { line, commas };
}

function pourOf({ content }: Reading, before: string): Pour | undefined {
  const word = before.split(" ")[0] || "pour";
  if (content.kind !== word) return undefined;
  if (content.kind === "pour" || content.kind === "or") return content.pour;
  if (content.kind === "without") return Boolean(content.all) === before.startsWith("without all") ? content.pour : undefined;
  return content.kind === "swap" && content.readings.length === 1 ? content.readings[0]!.in : undefined;
}

/** What stands before the name is what was meant to; a decimal comma has become a point. */
function says({ start, name, turned }: Pour, line: string, wanted: string): boolean {
  if (turned || !name) return false;
  const plain = (text: string) => text.replace(/\s+/g, "").toLowerCase();
  return plain(line.slice(start - 2, name.start - 2)) === plain(wanted.replace(/(\d),(?=\d)/g, "$1."));
}
