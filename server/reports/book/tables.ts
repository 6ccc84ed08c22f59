/** The tables over the whole book: every recipe with its figures, and what is in each that somebody may not have. */
import type { Book, PrintedRecipe } from "../../house/book/book.ts";
import { prepsTitle } from "../../house/book/parts.ts";
import { spelled } from "../../house/book/spelling.ts";
import { capital } from "../../house/show.ts";
import type { Block, Words } from "./blocks.ts";
import { titleOf } from "./recipe-words.ts";

/** A recipe says nothing of the alcohol that it has none of; what is not known says so. */
function absent({ hasNoAlcohol }: PrintedRecipe["recipe"], label: string): string {
  return hasNoAlcohol && label !== "Energy" ? "none" : "not known";
}

export function recipeTable({ recipes, style }: Book): readonly Block[] {
  const drinks = recipes.filter(({ recipe }) => recipe.kind === "drink");
  const preps = recipes.filter(({ recipe }) => recipe.kind === "prep");
  const tables = [
    ["Drinks", drinks],
    [prepsTitle, preps],
  ] as const;
  return tables.flatMap(([caption, rows]): Block[] => (rows.length > 0 ? [tableOf(spelled(caption, style.spelling), rows)] : []));
}

function tableOf(caption: string, recipes: readonly PrintedRecipe[]): Block {
  const hasFamily = recipes.some(({ recipe }) => recipe.family);
  const labels = [...new Set(recipes.flatMap(({ recipe }) => recipe.figures.map(({ label }) => label)))];
  const figures = labels.map((label) => ({ label, unit: unitOf(label, recipes) }));
  return {
    kind: "table",
    caption,
    columns: [
      { head: "Recipe" },
      { head: "No.", isFigure: true },
      ...(hasFamily ? [{ head: "Family" }] : []),
      ...figures.map(({ label, unit }) => ({ head: unit ? `${label}, ${unit}` : label, isFigure: true })),
    ],
    rows: recipes.map((printed): readonly Words[] => {
      const { recipe, id, number } = printed;
      return [
        [{ text: titleOf(printed), to: id }],
        [String(number)],
        ...(hasFamily ? [[capital(recipe.family ?? "")]] : []),
        ...figures.map(({ label, unit }) => {
          const said = recipe.figures.find((one) => one.label === label)?.text;
          return [said === undefined ? absent(recipe, label) : unit ? partsOf(said).number : said];
        }),
      ];
    }),
  };
}

/** The unit of a whole column, which stands in its head alone; empty where its figures are in several. */
function unitOf(label: string, recipes: readonly PrintedRecipe[]): string {
  const texts = recipes.flatMap(({ recipe }) => recipe.figures.flatMap((one) => (one.label === label ? [one.text] : [])));
  const units = new Set(texts.map((text) => partsOf(text).unit));
  // One of them is a UK unit, more are UK units.
  const [longest = ""] = [...units].sort((one, other) => other.length - one.length);
  return [...units].every((unit) => unit === longest || `${unit}s` === longest) ? longest : "";
}

/** `2.4 UK units` */
function partsOf(text: string): { readonly number: string; readonly unit: string } {
  const blank = text.indexOf(" ");
  return blank < 0 ? { number: text, unit: "" } : { number: text.slice(0, blank), unit: text.slice(blank + 1) };
}

export function allergens({ recipes, style }: Book): readonly Block[] {
  if (recipes.length === 0) return [];
  const said =
    "Taken from what the recipes are made of, garnishes and alternatives included. That an allergen is not named here does not mean that a drink is free from it: brands differ and bars share their tools. Read the labels, and when a guest asks, say what you know and what you do not. Where the law has rules on this, they go first.";
  return [
    { kind: "paragraph", words: [spelled(said, style.spelling)] },
    {
      kind: "table",
      caption: "Allergens by recipe",
      columns: [{ head: "Recipe" }, { head: "No.", isFigure: true }, { head: "Allergens" }],
      rows: recipes.map((printed) => [[{ text: titleOf(printed), to: printed.id }], [String(printed.number)], [printed.recipe.allergens]]),
    },
  ];
}
