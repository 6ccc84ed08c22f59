/** Where things stand in the file: the only place that turns entries and lines into line numbers. */
import type { Entry, Line, Tree } from "./tree.ts";

/** The index of the entry that holds this line of the file; the last one for a line past the end. */
export function entryIndexAt(tree: Tree, line: number): number {
  let low = 0;
  let high = tree.starts.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (tree.starts[middle]! <= line) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** The entry that holds this line of the file, and the line's number in it. */
export function entryAt(tree: Tree, line: number): { entry: Entry; line: number } {
  const index = entryIndexAt(tree, line);
  return { entry: tree.entries[index]!, line: line - tree.starts[index]! };
}

/** This line of the file. */
export function lineAt(tree: Tree, line: number): Line | undefined {
  const at = entryAt(tree, line);
  return at.entry.lines[at.line];
}

/** The text of an entry, line breaks included. */
export function textOf(entry: Entry): string {
  const parts: string[] = [];
  for (const line of entry.lines) parts.push(line.text, line.eol);
  return parts.join("");
}
