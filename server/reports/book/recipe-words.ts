/** What every printer says of a recipe in the same words. */
import type { PrintedRecipe } from "../../house/book/book.ts";
import type { Labelled, Recipe, RecipeLine } from "../../house/book/recipe.ts";
import type { BookStyle } from "../../house/book/style.ts";
import { capital } from "../../house/show.ts";

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

/** What stands below the method: figures, allergens, cautions, whose it is. */
export function asides({ figures, allergens, cautions, credit }: Recipe): readonly Labelled[] {
  const known = figures.map(({ label, text }) => `${label} ${text}`).join(" · ");
  return [
    ...(known ? [{ label: "", text: known }] : []),
    { label: "Allergens", text: allergens },
    ...cautions.map((text) => ({ label: "Caution", text })),
    ...(credit ? [{ label: "Credit", text: credit }] : []),
  ];
}
