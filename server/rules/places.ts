/** Where in an entry a finding stands. */
import type { Entry, Line, Span } from "../../grammar/tree.ts";
import { type Place, placeOfLine } from "../house/document.ts";
import type { FieldAt } from "../house/entry.ts";

/** The entry's name, or the word that opens it. */
export function headPlace(entry: Entry): Place {
  const head = entry.lines[0];
  const { content } = head ?? {};
  if (content?.kind === "entry") return placeOf(0, content.name?.quoted ?? content.name ?? content.word);
  return head ? placeOfLine(head, 0) : { line: 0, start: 0, end: 0 };
}

/** A field's value; its name where it has no value. */
export function valuePlace({ line, field }: FieldAt): Place {
  return placeOf(line, field.value ?? field.name);
}

export function placeOf(line: number, { start, end }: Span): Place {
  return { line, start, end };
}

/** Whether the line's text is found fault with by the parser, so that no rule should look at it more closely. */
export function isFaulty({ problem }: Line): boolean {
  return problem !== undefined && problem.code !== "allow-without-reason";
}
