/** The running text of a chapter: what an author wrote as prose, without code, links' targets and directives. */
import type { Entry, Line } from "../../../grammar/tree.ts";

/** What is no prose, each as one match: code, the target of a link or a picture, an address, a tag. */
const elsewhere = /(`+)(?:(?!\1).){1,400}?\1|\]\([^)]{0,400}\)|<[^<>]*>|\bhttps?:\/\/\S+/g;

/** Stands for what is no prose, so that the words on both sides of it are no neighbours. */
const gap = "\u0001";

const known = new WeakMap<Line, string>();

/** The prose of a line, as long as the line: what is none reads as gaps, marks of emphasis as blanks. Empty for a line that is no text. */
export function proseOn(line: Line): string {
  if (line.content.kind !== "text") return "";
  let prose = known.get(line);
  if (prose === undefined) {
    prose = line.text.replace(elsewhere, (there) => gap.repeat(there.length));
    for (const { start, end } of line.content.directives) prose = prose.slice(0, start) + gap.repeat(end - start) + prose.slice(end);
    prose = prose.replace(/[*_]/g, " ");
    known.set(line, prose);
  }
  return prose;
}

/** The fields of a recipe that a book prints as running text. */
const printedFields: ReadonlySet<string> = new Set(["headnote", "steps"]);

/** The lines of an entry that a reader of the book reads as running text: prose in a chapter, a headnote and steps in a spec. */
export function* proseIn(entry: Entry): Generator<{ readonly line: number; readonly prose: string }> {
  let isPrinted = false;
  for (const [line, one] of entry.lines.entries()) {
    const { content } = one;
    if (content.kind === "text") yield { line, prose: proseOn(one) };
    else if (content.kind === "field") {
      isPrinted = printedFields.has(content.name.text.toLowerCase());
      if (isPrinted && content.value) yield { line, prose: content.value.text.padStart(content.value.end, gap) };
    } else if (content.kind === "prose" && isPrinted) yield { line, prose: content.text.padStart(content.end, gap) };
  }
}
