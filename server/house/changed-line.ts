/** One amount as it is written into a spec: in the line of its pour, or on a new one. */
import type { Entry, Line, Name, Pour } from "../../grammar/tree.ts";
import type { ChangedPour } from "./changeable.ts";
import type { Edit } from "./finding.ts";
import { unitText, writtenNumber } from "./measurable.ts";
import { sameIngredient } from "./riff.ts";
import { writtenName } from "./write.ts";

/** `27.5 ml`, `2 dashes`: so many of the pour's unit, spelled as it was. */
export function amountText({ quantity }: ChangedPour, amount: number): string {
  const { unit, text } = quantity!.unit!;
  return `${writtenNumber(amount, unit, quantity)} ${unitText(unit, text, amount)}`;
}

/**
 * The edit that gives a pour of an entry another amount. A riff writes a line of its own for a pour that it
 * inherits, and so does any entry for a new one. Absent for the second of two pours of the same thing that
 * a riff inherits: a line of the riff would mean the first.
 */
export function changedLine(entry: Entry, pours: readonly ChangedPour[], pour: ChangedPour, amount: number): Edit | undefined {
  const quantity = pour.quantity!;
  const written = amountText(pour, amount);
  const own = pour.entry === entry && pour.line > 0 ? writtenOn(pour) : undefined;
  if (own?.quantity && own.quantity.numeral === quantity.numeral) return inPlace(entry, pour, amount);
  const before = (start: number): Edit => ({ entry, line: pour.line, start, end: start, text: `${written} ` });
  // A swap that keeps the amount of what it replaces: the new amount goes before its name.
  if (own?.name) return before(own.name.start);
  const isInherited = pour.entry !== entry;
  const first = pours.find((one) => one.entry !== entry && sameIngredient(one, pour.ingredient));
  if (isInherited && first?.line !== pour.line) return undefined;
  const name = isInherited ? writtenName(pour.ingredient.resolution.text) : asTyped(pour.name);
  return newLine(entry, `${written} ${name}`);
}

/** The number alone where the unit's word stays as it is. */
function inPlace(entry: Entry, { line, quantity }: ChangedPour, amount: number): Edit {
  const { numeral, unit } = quantity!;
  const text = writtenNumber(amount, unit!.unit, quantity);
  const word = unitText(unit!.unit, unit!.text, amount);
  if (word === unit!.text) return { entry, line, start: numeral.start, end: numeral.end, text };
  const between = entry.lines[line]!.text.slice(numeral.end, unit!.start);
  return { entry, line, start: numeral.start, end: unit!.end, text: `${text}${between}${word}` };
}

function asTyped({ text, quoted }: Name): string {
  if (!quoted) return text;
  const inside = quoted.end - quoted.start - 2;
  return `"${text.slice(0, inside)}"${text.slice(inside)}`;
}

/** Below the last pour, but above what fills up; where nothing is poured yet, below the last line that says anything. */
function newLine(entry: Entry, text: string): Edit {
  const fills = ({ content }: Line) => content.kind === "pour" && (content.pour.lead?.lead === "top" || content.pour.lead?.lead === "to");
  const pours = entry.lines.findLastIndex((line) => poured.has(line.content.kind) && !fills(line));
  const said = entry.lines.findLastIndex((line) => line.content.kind !== "blank" && line.content.kind !== "comment" && !fills(line));
  const line = pours >= 0 ? pours : said;
  const before = entry.lines[line]!.text;
  const indent = pours >= 0 && entry.lines[pours]!.content.kind !== "or" ? /^\s*/.exec(before)![0] : "  ";
  return { entry, line, start: before.length, end: before.length, text: `\n${indent}${text}` };
}
const poured: ReadonlySet<string> = new Set(["pour", "or", "swap", "without"]);

function writtenOn({ entry, line, name }: ChangedPour): Pour | undefined {
  const content = entry.lines[line]?.content;
  if (content?.kind === "swap") return content.readings.find((reading) => reading.in.name === name)?.in;
  return content?.kind === "pour" ? content.pour : undefined;
}

/** The line of the entry that an edit changes or adds, and its text then. */
export function lineAfter({ entry, line, start, end, text }: Edit): { line: number; text: string } {
  const before = entry.lines[line]!.text;
  const added = text.startsWith("\n") ? text.slice(1) : undefined;
  return added === undefined ? { line, text: before.slice(0, start) + text + before.slice(end) } : { line: line + 1, text: added };
}
