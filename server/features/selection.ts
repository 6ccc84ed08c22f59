/** What grows around a cursor: the word, the part, the item, the line, the entry, the text. */
import type { Position, Range, SelectionRange } from "vscode-languageserver-types";
import type { Content, Span } from "../../grammar/tree.ts";
import type { SpecDocument } from "../house/document.ts";
import { cursorAt, holds, lastLineOf, rangeOfEntry, rangeOnLine } from "./place.ts";

export function selectionRanges(document: SpecDocument, positions: readonly Position[]): SelectionRange[] {
  return positions.map((position) => selectionAt(document, position));
}

function selectionAt(document: SpecDocument, position: Position): SelectionRange {
  const { tree } = document;
  const last = tree.entries.at(-1)?.lines.at(-1)?.text.length ?? 0;
  const whole: Range = { start: { line: 0, character: 0 }, end: { line: tree.lineCount - 1, character: last } };
  const cursor = cursorAt(document, position);
  if (!cursor) return { range: whole };
  const { text } = cursor.text;
  const line = { start: text.length - text.trimStart().length, end: text.trimEnd().length };
  const onLine = [line, ...spansIn(cursor.content), ...wordsIn(text)]
    .filter((span) => holds(span, cursor.column))
    .map((span) => rangeOnLine(position.line, span));
  // Blank lines below an entry lead over to the next.
  const isIn = cursor.line <= lastLineOf(cursor.entry) && holds({ start: 0, end: text.length }, position.character);
  return nested([whole, ...(isIn ? [rangeOfEntry(cursor.entry, position.line - cursor.line)] : []), ...onLine]);
}

/** From the widest to the narrowest; what does not lie within the one before is left out. */
function nested(ranges: readonly Range[]): SelectionRange {
  return ranges
    .slice(1)
    .reduce<SelectionRange>((parent, range) => (isWithin(range, parent.range) ? { range, parent } : parent), { range: ranges[0]! });
}

/** Inside it, and not the very same. */
function isWithin({ start, end }: Range, outer: Range): boolean {
  const atOrBefore = (one: Position, other: Position) =>
    one.line < other.line || (one.line === other.line && one.character <= other.character);
  const same = atOrBefore(start, outer.start) && atOrBefore(outer.end, end);
  return atOrBefore(outer.start, start) && atOrBefore(end, outer.end) && !same;
}

function spansIn(content: Content): Span[] {
  switch (content.kind) {
    case "field":
      return [...(content.value ? [content.value] : []), ...content.items.flatMap((item) => [item, ...item.parts])];
    case "pour":
    case "or":
    case "without":
      return content.pour ? [content.pour, ...[content.pour.quantity, content.pour.name].filter((span) => span !== undefined)] : [];
    case "swap":
      return content.readings.slice(0, 1).flatMap((reading) => [reading.out, reading.in]);
    case "menu":
      return content.whole ? [content.whole, ...(content.priced ? [content.priced.name] : [])] : [];
    default:
      return [];
  }
}

function wordsIn(text: string): Span[] {
  return [...text.matchAll(/[\p{L}\p{N}\p{M}'’.½¼¾⅓⅔]+/gu)].map(({ 0: word, index }) => ({ start: index, end: index + word.length }));
}
