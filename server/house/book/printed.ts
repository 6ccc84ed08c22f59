/** Which recipes the chapters of a book print, asked from any entry of them. */
import type { Directive, Entry } from "../../../grammar/tree.ts";
import { namesOf } from "../declarations.ts";
import { folderOf, type Place, type SpecDocument } from "../document.ts";
import { findFieldIn } from "../entry.ts";
import type { House } from "../house.ts";
import type { Scope } from "../scope.ts";
import { meaningOf } from "./saying.ts";
import { bookIn } from "./style.ts";

/** The book that an entry's text is a chapter of; absent for a text that is in no book. */
export function bookOf(house: House, entry: Entry): Entry | undefined {
  const document = house.findDocumentOf(entry);
  if (!document?.margins) return undefined;
  const book = bookIn(house, house.scopeOf(document));
  return book && isChapter(house, document, book) ? book : undefined;
}

/** Whether a text is one of the book's `chapters:`, or lies beside the book where it does not list them. */
function isChapter(house: House, { uri }: SpecDocument, book: Entry): boolean {
  const folder = folderOf(house.getDocumentOf(book).uri);
  const listed = findFieldIn(book, "chapters")?.field.items ?? [];
  if (listed.length === 0) return folderOf(uri) === folder;
  return listed.some(({ text }) => pathOf(uri, folder) === text.replace(/^\.\//, ""));
}

function pathOf(uri: string, folder: string): string | undefined {
  if (!uri.startsWith(`${folder}/`)) return undefined;
  try {
    return decodeURIComponent(uri.slice(folder.length + 1));
  } catch {
    return undefined;
  }
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
  if (bookOf(house, recipe)) return true;
  return namesOf(recipe).some((name) => house.lookup(scope, "printed", name).some(({ entry }) => bookOf(house, entry) !== undefined));
}
