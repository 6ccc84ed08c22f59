/** From a position in a file to the line of an entry, and back to LSP ranges. Out of range is clamped, never thrown. */
import type { Position, Range } from "vscode-languageserver-types";
import type { Content, Entry, Line, Span } from "../../grammar/tree.ts";
import { entryAt, type Place, type SpecDocument } from "../house/document.ts";
import type { House } from "../house/house.ts";

export interface Cursor {
  readonly entry: Entry;
  /** The line's number within the entry. */
  readonly line: number;
  /** UTF-16 units from the start of the line. */
  readonly column: number;
  readonly content: Content;
  readonly text: Line;
}

/** What a position is in; absent where the text has no line there. */
export function cursorAt(document: SpecDocument, position: Position): Cursor | undefined {
  const found = entryAt(document, position.line);
  const text = found?.entry.lines[found.line];
  if (!found || !text) return undefined;
  const column = Math.min(Math.max(0, position.character), text.text.length);
  return { entry: found.entry, line: found.line, column, content: text.content, text };
}

/** Whether a column lies in a span, its end included: a cursor behind the last letter still means the word. */
export function holds(span: Span | undefined, column: number): boolean {
  return span !== undefined && column >= span.start && column <= span.end;
}

/** The LSP range of a span on a line of the file. */
export function rangeOnLine(line: number, span: Span): Range {
  return { start: { line, character: span.start }, end: { line, character: span.end } };
}

/** The LSP range of a place in an entry, where the entry stands now. */
export function rangeOf(house: House, entry: Entry, place: Place): Range {
  return rangeOnLine(house.getLineOf(entry) + place.line, place);
}

/** The LSP range of all lines of an entry, without the blank and comment lines that trail it. */
export function rangeOfEntry(entry: Entry, firstLine: number): Range {
  const last = lastLineOf(entry);
  return { start: { line: firstLine, character: 0 }, end: { line: firstLine + last, character: entry.lines[last]?.text.length ?? 0 } };
}

/** The number within the entry of its last line that says anything; comments below it lead over to the next entry. */
export function lastLineOf(entry: Entry): number {
  const last = entry.lines.findLastIndex(({ content }) => content.kind !== "blank" && content.kind !== "comment");
  return Math.max(0, last);
}
