/** Which recipes the chapters of a book print, asked from any entry of them. */
import type { Directive, Entry } from "../../../grammar/tree.ts";
import { namesOf } from "../declarations.ts";
import type { Place } from "../document.ts";
import type { House } from "../house.ts";
import type { Scope } from "../scope.ts";
import { isChapterUri } from "./chapter-files.ts";
import { meaningOf } from "./saying.ts";
import { bookIn } from "./style.ts";

/** The book that an entry's text is a chapter of; absent for a text that is in no book. */
export function bookOfChapter(house: House, entry: Entry): Entry | undefined {
  const document = house.findDocumentOf(entry);
  if (!document?.margins) return undefined;
  const book = bookIn(house, house.scopeOf(document));
  return book && isChapterUri(book, house.getDocumentOf(book).uri, document.uri) ? book : undefined;
}

/** A recipe as an entry of a chapter prints it. */
export interface Printed {
  readonly recipe: Entry;
  /** Where something of the recipe stands in the chapter: there for a recipe written in it, else on the name that calls for it. */
  place(within: Place): Place;
  /** Whether it is written in the chapter itself. */
  readonly here: boolean;
}

/** The recipes that an entry of a chapter prints: itself, or those that its text calls for by `::spec`. */
export function printedBy(house: House, entry: Entry): readonly Printed[] {
  if (entry.kind === "drink" || entry.kind === "prep") return entry.name ? [{ recipe: entry, here: true, place: (within) => within }] : [];
  const scope = house.scopeOf(entry);
  return entry.lines.flatMap(({ content }, line) =>
    content.kind === "text"
      ? content.directives.flatMap((directive): Printed[] => {
          const recipe = specOf(house, scope, directive);
          const { start, end } = directive.label ?? directive.name;
          return recipe ? [{ recipe, here: false, place: () => ({ line, start, end }) }] : [];
        })
      : [],
  );
}

/** The recipe that a directive prints; absent for one that prints none. */
export function specOf(house: House, scope: Scope, directive: Directive): Entry | undefined {
  if (!directive.block || directive.name.text !== "spec") return undefined;
  const meant = meaningOf(house, scope, directive);
  return "row" in meant ? meant.recipe : undefined;
}

/** Whether the book of a scope prints a recipe anywhere, in a block of a chapter or by `::spec`. */
export function isPrinted(house: House, scope: Scope, recipe: Entry): boolean {
  if (bookOfChapter(house, recipe)) return true;
  return namesOf(recipe).some((name) =>
    house.lookup(scope, "printed", name).some(({ entry }) => bookOfChapter(house, entry) !== undefined),
  );
}
