/**
 * The one canonical form of a spec: how far a line is indented, one blank where blanks part words, `; `
 * and `, ` between items, `: ` behind a field's name. Only blanks ever change, and the case of the words
 * that open a line; nothing is aligned across lines, so that a changed line changes no other.
 */
import { byteOrderMark, indentWidth } from "./characters.ts";
import { findField } from "./fields.ts";
import { read } from "./read.ts";
import { sense } from "./sense.ts";
import { type Content, type Entry, type FieldLine, isOwnKind, type Line, type Name, type Pour, type Span, type Words } from "./tree.ts";

/**
 * The lines of an entry in their canonical form, as many as there were; `wanted` picks the lines that may
 * change. A line that does not read is left exactly as it is. Where the new lines would read as anything
 * else than the old ones, all of them are left.
 */
export function formatEntry(entry: Entry, wanted: (line: number) => boolean = () => true): readonly string[] {
  const before = entry.lines.map(({ text }) => text);
  if (!isOwnKind(entry.kind)) return before;
  const prose = proseShifts(entry);
  const after = entry.lines.map((line, index) => (wanted(index) ? formatLine(entry, index, prose) : line.text));
  return saysTheSame(entry, after) ? after : before;
}

function formatLine(entry: Entry, index: number, prose: ReadonlyMap<number, number>): string {
  const { text, eol, content, comment, problem } = entry.lines[index]!;
  const own = text.trimEnd();
  if (problem || content.kind === "unread") return text;
  // What stands between a carriage return and a line feed keeps them two line breaks.
  if (content.kind === "blank") return entry.lines[index - 1]?.eol === "\r" && eol.startsWith("\n") ? text : "";
  if (content.kind === "prose") return " ".repeat(indentWidth(text) + prose.get(index)!) + content.text;
  const isHead = content.kind === "entry";
  if (content.kind === "comment") return " ".repeat(indentWidth(text) > 0 ? bodyIndent : 0) + own.trimStart();
  const mark = text.charCodeAt(0) === byteOrderMark ? text[0] : "";
  const indent = isHead ? 0 : isBelowPour(entry, index) ? bodyIndent * 2 : bodyIndent;
  const start = text.length - text.trimStart().length;
  const words = spaced(text, start, comment ? comment.start : own.length, separators(text, content));
  return mark + " ".repeat(indent) + words.trimEnd() + (comment ? ` ${text.slice(comment.start).trimEnd()}` : "");
}

const bodyIndent = 2;

/** An alternative is indented under its pour, whatever comments stand between them. */
function isBelowPour(entry: Entry, index: number): boolean {
  if (entry.lines[index]!.content.kind !== "or") return false;
  for (let above = index - 1; above > 0; above--) {
    const { kind } = entry.lines[above]!.content;
    if (kind === "pour" || kind === "or" || kind === "swap") return !entry.lines[above]!.problem;
    if (kind !== "comment" && kind !== "blank") return false;
  }
  return false;
}

/** By how much each line of prose moves, so that the least indented of its block stands two steps in. */
function proseShifts({ lines }: Entry): ReadonlyMap<number, number> {
  const shifts = new Map<number, number>();
  for (let start = 0; start < lines.length; start++) {
    if (!opensProse(lines[start]!)) continue;
    const block: number[] = [];
    for (let line = start + 1; line < lines.length && /^(?:prose|blank)$/.test(lines[line]!.content.kind); line++) {
      if (lines[line]!.content.kind === "prose") block.push(line);
    }
    const least = Math.min(...block.map((line) => indentWidth(lines[line]!.text)));
    for (const line of block) shifts.set(line, bodyIndent * 2 - least);
  }
  return shifts;
}

function opensProse({ content }: Line): boolean {
  return content.kind === "field" && findField(content.name.text)?.shape === "prose";
}

/** What parts the words of a line. */
interface Separators {
  /** Places of `;`, `,` and `:` that stand without a blank before and with one behind. */
  readonly marks: ReadonlySet<number>;
  /** Places that a blank goes before, where there is none. */
  readonly gaps: ReadonlySet<number>;
  /** Left as they are. */
  readonly kept: readonly Span[];
  /** Written in lower case. */
  readonly word?: Span;
}

function separators(text: string, content: Content): Separators {
  const marks = new Set<number>();
  const gaps = new Set<number>();
  const kept: Span[] = [];
  const name = (of: Name | undefined) => {
    if (of?.quoted) kept.push(of.quoted);
    for (const comma of of?.commas ?? []) marks.add(comma);
  };
  const pour = (of: Pour | undefined) => {
    const { quantity } = of ?? {};
    if (quantity?.unit) gaps.add(quantity.unit.start);
    name(of?.name);
  };
  switch (content.kind) {
    case "entry":
      name(content.name);
      return { marks, gaps, kept, word: content.word };
    case "pour":
    case "or":
    case "without":
      pour(content.pour);
      break;
    case "swap":
      if (content.readings.length === 1) for (const half of [content.readings[0]!.out, content.readings[0]!.in]) pour(half);
      break;
    case "menu":
      gaps.add(content.dash.end);
      name(content.whole);
      break;
    case "field":
      fieldSeparators(text, content, marks, gaps, kept);
      return { marks, gaps, kept, word: content.name };
    default:
  }
  return { marks, gaps, kept };
}

function fieldSeparators(text: string, { name, value, items }: FieldLine, marks: Set<number>, gaps: Set<number>, kept: Span[]): void {
  marks.add(text.indexOf(":", name.end));
  if (value && items.length === 0) kept.push(value);
  const between = (one: Words | undefined, other: Words, mark: string) => {
    const found = one && text.slice(one.end, other.start);
    if (found?.trim() === mark) marks.add(one!.end + found.indexOf(mark));
  };
  for (const [index, item] of items.entries()) {
    between(items[index - 1], item, ";");
    for (const [place, part] of item.parts.entries()) {
      between(item.parts[place - 1], part, ",");
      for (const { unit } of part.quantities) if (unit && unit.unit.id !== "%") gaps.add(unit.start);
    }
  }
}

/** The text with its blanks in order. */
function spaced(text: string, start: number, end: number, { marks, gaps, kept, word }: Separators): string {
  let made = "";
  for (let at = start; at < end; at++) {
    const verbatim = kept.find((span) => span.start === at);
    if (verbatim) {
      made += text.slice(at, verbatim.end);
      at = verbatim.end - 1;
      continue;
    }
    const character = text[at]!;
    if (marks.has(at)) made = `${made.trimEnd()}${character} `;
    else if (character === " " || character === "\t") made = made.endsWith(" ") ? made : `${made} `;
    else {
      if (gaps.has(at) && !made.endsWith(" ")) made += " ";
      made += word && at >= word.start && at < word.end ? character.toLowerCase() : character;
    }
  }
  return made;
}

/** Whether the lines read as before: in kind, in every word, in every number. */
function saysTheSame(entry: Entry, lines: readonly string[]): boolean {
  const { entries } = read(
    entry.lines.map(({ eol }, index) => lines[index] + (eol && index < entry.lines.length - 1 ? "\n" : "")).join(""),
  );
  return entries.length === 1 && entries[0]!.kind === entry.kind && sense(entries[0]!.lines) === sense(entry.lines);
}
