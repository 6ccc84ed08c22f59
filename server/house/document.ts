/** One text of the house, open or closed: a `.drink` file, or the specs inside a Markdown file. */
import type { Margins } from "../../grammar/markdown.ts";
import { entryIndexAt } from "../../grammar/positions.ts";
import type { Entry, Line, Tree } from "../../grammar/tree.ts";

export interface SpecDocument {
  readonly uri: string;
  /** The editor's version; null for a file that is not open. */
  readonly version: number | null;
  readonly tree: Tree;
  /** Of a Markdown file: its tree's lines are the file's, each without its margin. */
  readonly margins?: Margins;
}

/** A place in an entry: the line's number within the entry and UTF-16 units in that line. */
export interface Place {
  readonly line: number;
  readonly start: number;
  readonly end: number;
}

/** The folder of a URI, without a closing slash. */
export function folderOf(uri: string): string {
  return uri.slice(0, Math.max(0, uri.lastIndexOf("/")));
}

/** A file's name as people read it, without its folders. */
export function fileNameOf(uri: string): string {
  return decodeURIComponent(uri.slice(uri.lastIndexOf("/") + 1));
}

/** The entry that holds a line of the file, and the line's number within it. */
export function entryAt(document: SpecDocument, line: number): { entry: Entry; line: number; index: number } | undefined {
  const index = entryIndexAt(document.tree, line);
  const entry = document.tree.entries[index];
  const within = line - (document.tree.starts[index] ?? 0);
  return entry && within >= 0 && within < entry.lines.length ? { entry, line: within, index } : undefined;
}

/** The place of a whole line's text, without its indent. */
export function placeOfLine(line: Line, number: number): Place {
  const start = line.text.length - line.text.trimStart().length;
  return { line: number, start, end: Math.max(start, line.text.trimEnd().length) };
}
