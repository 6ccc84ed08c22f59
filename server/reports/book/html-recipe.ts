/** A recipe on a page, and the parts that a book puts together, as HTML. */
import type { Book, PrintedRecipe } from "../../house/book/book.ts";
import { bound } from "../../house/book/printed-units.ts";
import type { RecipeLine } from "../../house/book/recipe.ts";
import { escapeHtml } from "../html.ts";
import type { Block, Item, Words } from "./blocks.ts";
import { asides, kindOf, titleOf, unitHeads } from "./recipe-words.ts";

/** A text as it is set, in a line that breaks where a reader would pause. */
export function setHtml(text: string): string {
  return escapeHtml(bound(text));
}

/** `level` is that of the heading around. */
export function blocksHtml(book: Book, blocks: readonly Block[], level: number): string {
  return blocks.map((block) => blockHtml(book, block, level)).join("\n");
}

function blockHtml(book: Book, block: Block, level: number): string {
  switch (block.kind) {
    case "heading":
      return heading(level + 1, block.text);
    case "paragraph":
      return `<p>${wordsHtml(block.words)}</p>`;
    case "contents":
      return `<nav class="contents" aria-label="Contents">\n${listHtml(block.items, "ol")}</nav>`;
    case "list":
      return `<div class="list">\n${listHtml(block.items, "ul")}</div>`;
    case "index":
      return `<dl class="index">\n${block.entries
        .map(({ term, words }) => `<div><dt>${setHtml(term)}</dt>${words.map((one) => `<dd>${wordsHtml(one)}</dd>`).join("")}</div>`)
        .join("\n")}\n</dl>`;
    case "table":
      return tableHtml(block);
    case "recipe":
      return recipeHtml(book, block.printed);
  }
}

export function heading(level: number, text: string, id?: string): string {
  const tag = `h${Math.min(6, level)}`;
  return `<${tag}${id ? ` id="${escapeHtml(id)}"` : ""}>${setHtml(text)}</${tag}>`;
}

/** A chapter's heading is a level below the book's title. */
export function recipeHtml(book: Book, printed: PrintedRecipe): string {
  const { recipe, id, level, isNamed } = printed;
  const { headnote, facts, ingredients, method } = recipe;
  const kind = `<p class="kind">${setHtml(kindOf(printed))}</p>`;
  const steps = method.texts.map((text) => (method.form === "steps" ? `<li>${setHtml(text)}</li>` : `<p>${setHtml(text)}</p>`));
  const parts = [
    `<div class="head">`,
    isNamed ? "" : heading(level + 1, titleOf(printed), id),
    kind,
    ...headnote.map((text) => `<p class="headnote">${setHtml(text)}</p>`),
    "</div>",
    ingredients.length > 0 ? ingredientsHtml(book, printed) : "",
    steps.length > 0 ? `<div class="method">${method.form === "steps" ? `<ol>${steps.join("")}</ol>` : steps.join("\n")}</div>` : "",
    labelled("facts", facts),
    ...asides(book, recipe).map(({ label, text }) =>
      label
        ? `<p class="aside"><span class="label">${setHtml(label)}</span> ${setHtml(text)}</p>`
        : `<p class="figures">${setHtml(text)}</p>`,
    ),
  ];
  const name = escapeHtml(id);
  return `<section class="recipe" aria-labelledby="${name}">\n${parts.filter(Boolean).join("\n")}\n</section>`;
}

function labelled(name: string, all: PrintedRecipe["recipe"]["facts"]): string {
  if (all.length === 0) return "";
  const rows = all.map(({ label, text }) => `<div><dt>${setHtml(label)}</dt> <dd>${setHtml(text)}</dd></div>`);
  return `<dl class="${name}">\n${rows.join("\n")}\n</dl>`;
}

function ingredientsHtml(book: Book, { recipe }: PrintedRecipe): string {
  const heads = unitHeads(book.style, recipe.ingredients);
  const rows = recipe.ingredients.flatMap((line) => [
    ingredientHtml(book, line, heads.length, false),
    ...line.alternatives.map((other) => ingredientHtml(book, other, heads.length, true)),
  ]);
  const hidden = heads.length < 2 ? ` class="hidden"` : "";
  return `<table class="ingredients">
<caption class="hidden">Ingredients of ${setHtml(recipe.name)}</caption>
<thead${hidden}><tr>${heads.map((head) => `<th scope="col" class="figure">${setHtml(head)}</th>`).join("")}<th scope="col"><span class="hidden">Ingredient</span></th></tr></thead>
<tbody>
${rows.join("\n")}
</tbody>
</table>`;
}

function ingredientHtml(book: Book, line: Omit<RecipeLine, "alternatives">, columns: number, isOther: boolean): string {
  const printed = line.recipe && book.printed(line.recipe);
  const name = printed ? wordsHtml([{ text: line.name, to: printed.id }]) : setHtml(line.name);
  const note = line.note ? `, <span class="note">${setHtml(line.note)}</span>` : "";
  // One amount for two systems stands once, across both.
  const amounts =
    columns > 1 && line.amounts.length < columns
      ? [line.amounts[0] ?? ""]
      : Array.from({ length: columns }, (_, at) => line.amounts[at] ?? "");
  const cells = amounts.map((text) => `<td class="figure"${amounts.length < columns ? ` colspan="${columns}"` : ""}>${setHtml(text)}</td>`);
  return `<tr${isOther ? ` class="or"` : ""}>${cells.join("")}<th scope="row">${isOther ? "or " : ""}${name}${note}</th></tr>`;
}

function tableHtml({ caption, columns, rows }: Extract<Block, { kind: "table" }>): string {
  const figure = (index: number) => (columns[index]?.isFigure ? ` class="figure"` : "");
  const head = columns.map((column, index) => `<th scope="col"${figure(index)}>${setHtml(column.head)}</th>`).join("");
  const body = rows.map(
    (row) =>
      `<tr>${row.map((words, index) => (index === 0 ? `<th scope="row">${wordsHtml(words)}</th>` : `<td${figure(index)}>${wordsHtml(words)}</td>`)).join("")}</tr>`,
  );
  return `<section class="wide" aria-label="${setHtml(caption)}" tabindex="0">
<table>
<caption>${setHtml(caption)}</caption>
<thead><tr>${head}</tr></thead>
<tbody>
${body.join("\n")}
</tbody>
</table>
</section>`;
}

function listHtml(items: readonly Item[], tag: "ol" | "ul"): string {
  const all = items.map(
    ({ words, items: below }) => `<li>${wordsHtml(words)}${below && below.length > 0 ? `\n${listHtml(below, tag)}` : ""}</li>`,
  );
  return `<${tag}>\n${all.join("\n")}\n</${tag}>\n`;
}

function wordsHtml(words: Words): string {
  return words
    .map((one) => (typeof one === "string" ? setHtml(one) : `<a href="#${encodeURIComponent(one.to)}">${setHtml(one.text)}</a>`))
    .join("");
}
