/** What the tokens of a chapter stand for in the book: set by whoever reads it, read by whoever prints it. */
import type { Token } from "markdown-it";
import type { PrintedRecipe } from "./book.ts";
import type { Part } from "./parts.ts";

/** What a token of a chapter stands for in the book, in its `meta`. */
export interface Meaning {
  /** Of a directive in a sentence. */
  readonly text?: string;
  /** The id that a reference, a link or a heading goes by. */
  readonly id?: string;
  /** Of a fence or `::spec`. */
  readonly recipes?: readonly PrintedRecipe[];
  readonly part?: Part;
  /** Of a picture. */
  readonly file?: string;
}

/** What a token stands for. */
export function meaningOfToken(token: Token): Meaning {
  return (token.meta ?? {}) as Meaning;
}

/** The words of a heading or a picture, without their markup. */
export function wordsOf(inline: Pick<Token, "children"> | undefined): string {
  return (inline?.children ?? [])
    .map((token) => {
      if (token.type === "directive") return meaningOfToken(token).text ?? "";
      if (token.type === "softbreak" || token.type === "hardbreak") return " ";
      return token.type === "image" ? wordsOf(token) : token.type.startsWith("html") ? "" : token.content;
    })
    .join("");
}
