/** What keeps a book from being printed, each with its place in the author's text. */
import type { Entry } from "../../../grammar/tree.ts";
import type { SpecDocument } from "../document.ts";
import type { House } from "../house.ts";
import { faultsIn, leadingNowhere } from "./faults.ts";

export interface BookProblem {
  /** The file, from the book's folder. */
  readonly file: string;
  /** Counted from 1. */
  readonly line: number;
  /** UTF-16 units, counted from 1. */
  readonly column: number;
  readonly what: string;
  readonly todo: string;
}

/** All that is wrong with the directives and the specs of a chapter. `isPrinted` tells which recipes the book holds. */
export function problemsIn(house: House, document: SpecDocument, file: string, isPrinted: (recipe: Entry) => boolean): BookProblem[] {
  const { entries, starts } = document.tree;
  return entries.flatMap((entry, index) => {
    const first = starts[index]! + 1;
    const faults = [...faultsIn(house, entry), ...leadingNowhere(house, entry, isPrinted)];
    const said = faults.map(({ place, what, todo }) => ({ file, line: first + place.line, column: place.start + 1, what, todo }));
    return [...said, ...unreadIn(document, entry, first, file)];
  });
}

function unreadIn({ margins }: SpecDocument, { lines }: Entry, first: number, file: string): BookProblem[] {
  return lines.flatMap(({ content, text }, within) => {
    if (content.kind !== "unread") return [];
    const line = first + within;
    const column = text.length - text.trimStart().length + (margins?.[line - 1]?.length ?? 0) + 1;
    const todo = "Put it right, or start it with # to keep it as a remark; `mutchkin check` says more.";
    return [{ file, line, column, what: "This line of the spec does not read, so the recipe would print without it.", todo }];
  });
}
