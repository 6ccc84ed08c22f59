/** What the print of a chapter follows from, as one text: where it is the same as before, so is the print. */
import type { Token } from "markdown-it";
import type { Entry } from "../../../grammar/tree.ts";
import type { Book, Chapter } from "../../house/book/book.ts";
import { meaningOfToken } from "../../house/book/meaning.ts";
import { partBlocks } from "./parts.ts";
import { cautionText } from "./recipe-words.ts";

export function whatPrints(book: Book, chapter: Chapter): string {
  const { text, id, title, isTitled, tokens } = chapter;
  const meanings = meaningsIn(tokens);
  const parts = meanings.flatMap(({ part }) => (part ? partBlocks(book, part) : []));
  const pictures = meanings.flatMap(({ file }) => (file === undefined ? [] : [...(book.pictures.get(file) ?? [])]));
  const cautions = chapter.recipes.map(({ recipe }) => cautionText(book.house, recipe.entry));
  return JSON.stringify([book.style, text, id, title, isTitled, meanings, parts, pictures, cautions], (key, value: unknown) =>
    (key === "entry" || key === "recipe") && isEntry(value) ? (book.printed(value)?.id ?? "") : value,
  );
}

function meaningsIn(tokens: readonly Token[]): ReturnType<typeof meaningOfToken>[] {
  return tokens.flatMap((token) => [meaningOfToken(token), ...meaningsIn(token.children ?? [])]);
}

/** A recipe has lines of its own kind, an entry those of the tree. */
function isEntry(value: unknown): value is Entry {
  return typeof value === "object" && value !== null && "lines" in value;
}
