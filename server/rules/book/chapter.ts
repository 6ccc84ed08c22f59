/** What the rules on manuscripts look at: the directives of a chapter, and a chapter for their examples. */
import type { Directive, Entry } from "../../../grammar/tree.ts";
import { bookOf } from "../../house/book/printed.ts";
import type { Place } from "../../house/document.ts";
import { linesOf } from "../../house/entry.ts";
import type { House } from "../../house/house.ts";

/** The directives of a book's text with their lines. Of a text in no book none: another tool may mean something else by them. */
export function* directivesIn(house: House, entry: Entry): Generator<{ readonly line: number; readonly directive: Directive }> {
  for (const { line, content } of linesOf(entry, "text")) {
    if (content.directives.length === 0) continue;
    if (!bookOf(house, entry)) return;
    for (const directive of content.directives) yield { line, directive };
  }
}

/** What stands between the brackets, without the blanks around it; the directive's name where nothing does. */
export function labelPlace(line: number, { label, name }: Directive): Place {
  if (!label?.text.trim()) return { line, start: name.start, end: name.end };
  const start = label.start + label.text.length - label.text.trimStart().length;
  return { line, start, end: start + label.text.trim().length };
}

/** A chapter that declares its book, for a rule's examples: a line of `===` says which file it is. */
export function chapter(text: string, fields: readonly string[] = []): string {
  return `=== first-bell.md\n${fenced(["book Slack Water", ...fields.map((field) => `  ${field}`)].join("\n"))}\n# First Bell\n\n${text.trimEnd()}\n`;
}

/** A spec as it stands in a chapter. */
export function fenced(spec: string): string {
  return `\`\`\`drink\n${spec.trimEnd()}\n\`\`\`\n`;
}
