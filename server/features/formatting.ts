/** A text, some lines of it, or the line just typed, in canonical form: as few and as small edits as do it. */
import type { Position, Range, TextEdit } from "vscode-languageserver-types";
import { formatEntry } from "../../grammar/format.ts";
import type { SpecDocument } from "../house/document.ts";

/** Of the whole text, or of the lines that a range touches. The last line ends in a line break, and no blank lines trail. */
export function formatting({ tree, margins }: SpecDocument, range?: Range): TextEdit[] {
  const isPart = range !== undefined || margins !== undefined;
  const blank = isPart ? 0 : blankLinesAtEnd(tree);
  const first = range?.start.line ?? 0;
  const last = range ? range.end.line - (range.end.character === 0 && range.end.line > first ? 1 : 0) : tree.lineCount - 1 - blank;
  const edits: TextEdit[] = [];
  for (const [index, entry] of tree.entries.entries()) {
    const start = tree.starts[index]!;
    if (start > last || start + entry.lines.length <= first) continue;
    const lines = formatEntry(entry, (line) => start + line >= first && start + line <= last);
    for (const [line, { text }] of entry.lines.entries()) {
      const edit = changed(start + line, text, lines[line]!);
      if (edit) edits.push(edit);
    }
  }
  return isPart ? edits : [...edits, ...ending(tree, blank)];
}

/** After a line break: the line above it. */
export function formattingOnType(document: SpecDocument, { line }: Position): TextEdit[] {
  if (line === 0) return [];
  return formatting(document, { start: { line: line - 1, character: 0 }, end: { line, character: 0 } });
}

/** What differs between two readings of a line, and no more; absent where nothing does. */
function changed(line: number, before: string, after: string): TextEdit | undefined {
  if (before === after) return undefined;
  let start = 0;
  while (start < before.length && before[start] === after[start]) start++;
  let same = 0;
  while (same < Math.min(before.length, after.length) - start && before.at(-1 - same) === after.at(-1 - same)) same++;
  const range = { start: { line, character: start }, end: { line, character: before.length - same } };
  return { range, newText: after.slice(start, after.length - same) };
}

/** One line break at the end, and nothing below it. */
function ending({ entries, lineCount }: SpecDocument["tree"], blank: number): TextEdit[] {
  const last = entries.at(-1)?.lines.at(-1);
  if (!last || blank === 1 || blank === lineCount) return [];
  const end = { line: lineCount - 1, character: last.text.length };
  const eol = entries[0]!.lines[0]!.eol || "\n";
  return blank === 0
    ? [{ range: { start: end, end }, newText: eol }]
    : [{ range: { start: { line: lineCount - blank, character: 0 }, end }, newText: "" }];
}

/** How many blank lines a text ends in; the place behind its last line break is one. */
function blankLinesAtEnd({ entries }: SpecDocument["tree"]): number {
  let count = 0;
  for (let entry = entries.length - 1; entry >= 0; entry--) {
    const { lines } = entries[entry]!;
    for (let line = lines.length - 1; line >= 0; line--) {
      if (lines[line]!.text.trim() !== "") return count;
      count++;
    }
  }
  return count;
}
