/** What a book adds to its author's text, as data: every printer knows how to set these few things. */
import type { PrintedRecipe } from "../../house/book/book.ts";

/** Words, or words that lead to a place of the book by its id. */
export type Span = string | { readonly text: string; readonly to: string };
export type Words = readonly Span[];

export interface Item {
  readonly words: Words;
  readonly items?: readonly Item[];
}

export type Block =
  | { readonly kind: "heading"; readonly text: string; readonly id?: string }
  | { readonly kind: "paragraph"; readonly words: Words }
  | { readonly kind: "contents"; readonly items: readonly Item[] }
  /** A term with what it leads to. */
  | { readonly kind: "index"; readonly entries: readonly { readonly term: string; readonly words: readonly Words[] }[] }
  | { readonly kind: "list"; readonly items: readonly Item[] }
  | {
      readonly kind: "table";
      readonly caption: string;
      readonly columns: readonly Column[];
      /** Its first cell is the row's head. */
      readonly rows: readonly (readonly Words[])[];
    }
  | { readonly kind: "recipe"; readonly printed: PrintedRecipe };

export interface Column {
  readonly head: string;
  readonly isFigure?: boolean;
}

/** A part of the book that starts on a page of its own. */
export interface Section {
  readonly id: string;
  readonly title: string;
  readonly blocks: readonly Block[];
}
