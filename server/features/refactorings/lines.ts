/** Changes of whole lines of an entry: the least that says it, with the entry's own indent. */
import type { Entry, Line } from "../../../grammar/tree.ts";
import type { Edit } from "../../house/finding.ts";
import { lastLineOf } from "../place.ts";

/** The indent of the entry's first line below its head. */
export function indentOf(entry: Entry): string {
  const body = entry.lines.slice(1).find(({ text }) => /^\s+\S/.test(text));
  return body ? /^\s+/.exec(body.text)![0] : "  ";
}

export function replaceLine(entry: Entry, line: number, text: string): Edit {
  return { entry, line, start: 0, end: entry.lines[line]!.text.length, text };
}

/** One past the end of the text is the line break: the whole line goes. */
export function removeLine(entry: Entry, line: number): Edit {
  return { entry, line, start: 0, end: entry.lines[line]!.text.length + 1, text: "" };
}

export function addBelow(entry: Entry, line: number, lines: readonly string[]): Edit {
  const end = entry.lines[line]!.text.length;
  return { entry, line, start: end, end, text: lines.map((text) => `\n${text}`).join("") };
}

/** A new entry below this one, a blank line between. */
export function addEntryBelow(entry: Entry, lines: readonly string[]): Edit {
  return addBelow(entry, ownEnd(entry), ["", ...lines]);
}

/** Its last line that says anything, with the comments right below that are still indented: the rest leads over to the next entry. */
export function ownEnd(entry: Entry): number {
  let line = lastLineOf(entry);
  while (isComment(entry.lines[line + 1]) && /^\s/.test(entry.lines[line + 1]!.text)) line++;
  return line;
}

/** The first of the comment lines right above a line; the line itself where there are none. */
export function withComments(entry: Entry, line: number): number {
  let first = line;
  while (first > 1 && isComment(entry.lines[first - 1])) first--;
  return first;
}

export function isComment(line: Line | undefined): boolean {
  return line?.content.kind === "comment";
}

/** What stands behind a line's own words: its comment, with the blanks before it. */
export function commentBehind({ text, comment }: Line): string {
  return comment ? `  ${text.slice(comment.start)}` : "";
}

/** Whether an `or` binds to the pour on a line: across comments and blank lines. */
export function hasAlternative(entry: Entry, line: number): boolean {
  const below = entry.lines.slice(line + 1).find(({ content }) => content.kind !== "comment" && content.kind !== "blank");
  return below?.content.kind === "or";
}
