/** A recipe in plain Markdown, and the few things that every part of a Markdown book is made of. */
import type { Book, PrintedRecipe } from "../../house/book/book.ts";
import type { RecipeLine } from "../../house/book/recipe.ts";
import type { Column, Words } from "./blocks.ts";
import { amountCells, asides, kindOf, titleOf, unitHeads } from "./recipe-words.ts";

/** A book, and where a place of it is as a link says it. */
export interface Linking {
  readonly book: Book;
  to(id: string): string;
}

/** A text is no markup: what Markdown or HTML would read in it is written so that it stands as it is. */
export function plain(text: string): string {
  return text.replace(/[\r\n]+/g, " ").replace(/[\\`*_[\]<>|]|^(?:[#+-]|\d+[.)])(?=\s)|&(?=#?\w+;)/g, "\\$&");
}

export function wordsIn(words: Words, link: Linking): string {
  return words.map((one) => (typeof one === "string" ? plain(one) : `[${plain(one.text)}](${link.to(one.to)})`)).join("");
}

/** A recipe as blocks of Markdown. */
export function recipeLines(printed: PrintedRecipe, link: Linking): string[] {
  const { recipe, level, isNamed } = printed;
  const { headnote, facts, ingredients, method } = recipe;
  const heads = unitHeads(link.book.style, ingredients);
  const columns = [...heads.map((head) => ({ head, isFigure: true })), { head: "Ingredient" }];
  const rows = ingredients.flatMap((line) =>
    [line, ...line.alternatives].map((one, index) => ingredientRow(one, index > 0, heads.length, link)),
  );
  const steps = method.texts.map((text, index) => (method.form === "steps" ? `${index + 1}. ${plain(text)}` : plain(text)));
  return [
    ...(isNamed ? [] : [`${"#".repeat(level)} ${plain(titleOf(printed))}`]),
    `*${plain(kindOf(printed))}*`,
    ...headnote.map(plain),
    ...(facts.length > 0 ? [facts.map(({ label, text }) => `- **${plain(label)}:** ${plain(text)}`).join("\n")] : []),
    ...(rows.length > 0 ? [tableLines(columns, rows)] : []),
    ...(method.form === "steps" && steps.length > 0 ? [steps.join("\n")] : steps),
    ...asides(link.book, recipe).map(({ label, text }) => `${label ? `**${plain(label)}:** ` : ""}${plain(text)}`),
  ];
}

function ingredientRow(line: Omit<RecipeLine, "alternatives">, isOther: boolean, amounts: number, link: Linking): string[] {
  const printed = line.recipe && link.book.printed(line.recipe);
  const words: Words = [isOther ? "or " : "", printed ? { text: line.name, to: printed.id } : line.name, line.note ? `, ${line.note}` : ""];
  return [...amountCells(line.amounts, amounts).map(plain), wordsIn(words, link)];
}

/** The cells are Markdown already. */
export function tableLines(columns: readonly Column[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]) => `| ${cells.join(" | ")} |`;
  return [
    line(columns.map(({ head }) => plain(head))),
    line(columns.map(({ isFigure }) => (isFigure ? "---:" : "---"))),
    ...rows.map(line),
  ].join("\n");
}
