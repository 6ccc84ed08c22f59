/** What every printer says of a recipe in the same words. */
import type { Entry } from "../../../grammar/tree.ts";
import type { Book, PrintedRecipe } from "../../house/book/book.ts";
import type { Labelled, Recipe, RecipeLine } from "../../house/book/recipe.ts";
import type { BookStyle } from "../../house/book/style.ts";
import type { House } from "../../house/house.ts";
import { capital } from "../../house/show.ts";
import { cautionsHolding } from "../../rules/cautions/all.ts";

/** The heads of the columns of amounts: one a system of units where they differ anywhere, else one. */
export function unitHeads({ systems }: BookStyle, lines: readonly RecipeLine[]): readonly string[] {
  const areBoth = lines.flatMap((line) => [line, ...line.alternatives]).some(({ amounts }) => amounts.length > 1);
  return areBoth ? systems.map((system) => (system === "US" ? "US" : "Metric")) : ["Amount"];
}

/** An amount for each column; one that is the same in all stands in each. */
export function amountCells(amounts: readonly string[], count: number): readonly string[] {
  return Array.from({ length: count }, (_, index) => amounts[index] ?? amounts[0] ?? "");
}

/** A name as a heading and a list have it; a sentence has it as it is written. */
export function titleOf({ recipe }: PrintedRecipe): string {
  return capital(recipe.name);
}

/** `No. 12 · Egg sour` */
export function kindOf({ number, recipe }: PrintedRecipe): string {
  return [`No. ${number}`, ...(recipe.family ? [capital(recipe.family)] : [])].join(" · ");
}

/** `Raw egg, open flame. Local codes decide.` The gravest first; empty where there is none. */
export function cautionText(house: House, entry: Entry): string {
  const [first, ...others] = cautionsHolding(house, entry).map(({ docs }) => docs.title);
  if (!first) return "";
  const titles = [first, ...others.map((title) => title.slice(0, 1).toLowerCase() + title.slice(1))];
  return `${titles.join("; ")}. Local codes decide.`;
}

/** What stands below the method: allergens, cautions, figures, whose it is. */
export function asides({ house }: Book, recipe: Recipe): readonly Labelled[] {
  const { kind, entry, figures, allergens, hasNoAlcohol, credit } = recipe;
  const cautions = cautionText(house, entry);
  const known = [...(kind === "drink" && hasNoAlcohol ? ["No alcohol"] : []), ...figures.map(({ label, text }) => `${label} ${text}`)];
  return [
    { label: "Allergens", text: allergens },
    ...(cautions ? [{ label: "Caution", text: cautions }] : []),
    ...(known.length > 0 ? [{ label: "", text: known.join(" · ") }] : []),
    ...(credit ? [{ label: "Credit", text: credit }] : []),
  ];
}
