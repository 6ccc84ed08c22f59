/**
 * Changes to a text, carried over to its tree. Lines that were not touched are not read again, and
 * entries that no change reaches stay the same objects, so whatever was computed for them still holds.
 */
import { entryIndexAt, lineAt } from "./positions.ts";
import { Assembler, makeTree, splitLines } from "./read.ts";
import type { Entry, Line, Tree } from "./tree.ts";

/** Line from 0, character in UTF-16 units; out of range is taken as the nearest place in range. */
export interface Place {
  readonly line: number;
  readonly character: number;
}

/** As the Language Server Protocol sends it: without a range, the whole text is replaced. */
export interface TextChange {
  readonly range?: { readonly start: Place; readonly end: Place };
  readonly text: string;
}

/** The tree after the changes, each made to the text that the one before it left. */
export function edit(tree: Tree, changes: readonly TextChange[]): Tree {
  return changes.reduce(change, tree);
}

interface RawLine {
  readonly text: string;
  readonly eol: string;
}

function change(tree: Tree, { range, text }: TextChange): Tree {
  if (!range) return replaceLines(tree, 0, tree.lineCount, split(text));
  const [start, end] = inOrder(clamp(tree, range.start), clamp(tree, range.end));
  const last = lineAt(tree, end.line)!;
  let from = start.line;
  let written = lineAt(tree, from)!.text.slice(0, start.character) + text + last.text.slice(end.character) + last.eol;
  const above = from > 0 ? lineAt(tree, from - 1)! : undefined;
  if (above?.eol === "\r" && written.startsWith("\n")) {
    // The line feed joins the carriage return above it: the two are one line break now.
    from--;
    written = above.text + above.eol + written;
  }
  const lines = split(written);
  if (last.eol !== "") lines.pop();
  return replaceLines(tree, from, end.line + 1, lines);
}

function clamp(tree: Tree, place: Place): Place {
  const line = Math.min(Math.max(place.line, 0), tree.lineCount - 1);
  const { length } = lineAt(tree, line)!.text;
  if (place.line > line) return { line, character: length };
  return { line, character: place.line < 0 ? 0 : Math.min(Math.max(place.character, 0), length) };
}

function inOrder(first: Place, second: Place): [Place, Place] {
  const swapped = first.line > second.line || (first.line === second.line && first.character > second.character);
  return swapped ? [second, first] : [first, second];
}

function split(text: string): RawLine[] {
  const lines: RawLine[] = [];
  splitLines(text, (line, eol) => lines.push({ text: line, eol }));
  return lines;
}

/** Puts `lines` in the place of the file's lines from `from` up to `to`. */
function replaceLines(tree: Tree, from: number, to: number, lines: readonly RawLine[]): Tree {
  let kept = 0;
  while (kept < lines.length && from < to && isSame(lineAt(tree, from)!, lines[kept]!)) {
    from++;
    kept++;
  }
  let end = lines.length;
  while (end > kept && from < to && isSame(lineAt(tree, to - 1)!, lines[end - 1]!)) {
    to--;
    end--;
  }
  return from === to && kept === end ? tree : splice(tree, from, to, lines.slice(kept, end));
}

function isSame(line: Line, raw: RawLine): boolean {
  return line.text === raw.text && line.eol === raw.eol;
}

function splice(tree: Tree, from: number, to: number, lines: readonly RawLine[]): Tree {
  const { entries, starts } = tree;
  const first = findFirstTouched(tree, from, lines[0] ?? lineAt(tree, to));
  const assembler = new Assembler(entries[first - 1]?.kind);
  for (let line = starts[first]!, index = first; line < from; index++) {
    const { length } = entries[index]!.lines;
    for (let at = 0; at < length && line < from; at++, line++) assembler.keep(entries[index]!.lines[at]!);
  }
  for (const { text, eol } of lines) assembler.add(text, eol);
  let next = to >= tree.lineCount ? entries.length : entryIndexAt(tree, to);
  let at = next < entries.length ? to - starts[next]! : 0;
  // What follows is as it was from the next line on that opens an entry, as it did before.
  for (; next < entries.length; next++, at = 0) {
    const known = entries[next]!.lines;
    if (at === 0 && assembler.opens(known[0]!)) break;
    for (; at < known.length; at++) assembler.add(known[at]!.text, known[at]!.eol, known[at]);
  }
  const touched: Entry[] = assembler.finish();
  return makeTree([...entries.slice(0, first), ...touched, ...entries.slice(next)]);
}

/** The entry that the changed lines belong to, or the one above it where they no longer open their own. */
function findFirstTouched(tree: Tree, from: number, next: RawLine | undefined): number {
  const index = from >= tree.lineCount ? tree.entries.length - 1 : entryIndexAt(tree, from);
  if (from > tree.starts[index]! || index === 0) return index;
  return next && new Assembler(tree.entries[index - 1]!.kind).opens(next) ? index : index - 1;
}
