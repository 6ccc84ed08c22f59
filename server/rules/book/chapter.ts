/** What the rules on manuscripts look at: what is wrong with a chapter's directives, and a chapter for their examples. */
import type { Entry } from "../../../grammar/tree.ts";
import { type Fault, faultsIn } from "../../house/book/faults.ts";
import { bookOfChapter } from "../../house/book/printed.ts";
import type { House } from "../../house/house.ts";

/** What is wrong with the directives of a book's text. Of a text in no book nothing: another tool may mean something else by them. */
export function chapterFaults(house: House, entry: Entry, code: Fault["code"]): readonly Fault[] {
  if (!entry.lines.some(({ content, text }) => content.kind === "text" && text.includes(":"))) return [];
  return bookOfChapter(house, entry) ? faultsIn(house, entry).filter((fault) => fault.code === code) : [];
}

/** A chapter that declares its book, for a rule's examples: a line of `===` says which file it is. */
export function chapter(text: string, fields: readonly string[] = []): string {
  return `=== first-bell.md\n${fenced(["book Slack Water", ...fields.map((field) => `  ${field}`)].join("\n"))}\n# First Bell\n\n${text.trimEnd()}\n`;
}

/** A spec as it stands in a chapter. */
export function fenced(spec: string): string {
  return `\`\`\`drink\n${spec.trimEnd()}\n\`\`\`\n`;
}
