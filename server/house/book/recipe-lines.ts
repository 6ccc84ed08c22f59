/** The list of ingredients of a recipe: amounts in every system, the name, and what is to be said of it. */
import type { Entry } from "../../../grammar/tree.ts";
import type { House } from "../house.ts";
import type { Ingredient } from "../ingredient.ts";
import { temperatureIn } from "../modifiers.ts";
import type { Poured } from "./amount.ts";
import { spoken } from "./amount-text.ts";
import { besides, degrees } from "./phrases.ts";
import { inOrder } from "./pours.ts";
import type { BookStyle } from "./style.ts";

/** Something that is poured, or stands in its place. */
export interface Measured {
  /** One for each system of units, in the book's order; equal ones once. */
  readonly amounts: readonly string[];
  readonly name: string;
  readonly note?: string;
  /** Where it is made here and not bought. */
  readonly recipe?: Entry;
}

export interface RecipeLine extends Measured {
  readonly alternatives: readonly Measured[];
}

export function recipeLines(house: House, entry: Entry, style: BookStyle): readonly RecipeLine[] {
  return inOrder(house, entry, style.order).map((pour) => ({
    ...lineOf(pour, pour.ingredient, style),
    alternatives: pour.alternatives.map((one) => lineOf(one, one.ingredient, style)),
  }));
}

function lineOf(pour: Poured, { resolution }: Ingredient, style: BookStyle): Measured {
  const amounts = amountsOf(pour, style);
  const { found, modifiers } = resolution;
  const said = modifiers.filter(({ text }) => !ofTheBar.has(text.toLowerCase())).map((modifier) => noteOf(modifier, style));
  const { amounts: shown, note } = led(pour, amounts);
  const notes = [...(note ? [note] : []), ...said];
  return {
    amounts: shown,
    name: resolution.text,
    ...(notes.length > 0 && { note: notes.join(", ") }),
    ...(found && found.entry.kind !== "stock" && { recipe: found.entry }),
  };
}

/** The amounts of a pour in the book's systems; equal ones once, none where none is stated. */
function amountsOf(pour: Poured, style: BookStyle): readonly string[] {
  return [...new Set(style.systems.map((system) => spoken(pour, style, system)))].filter(Boolean);
}

/** Where it is poured matters to the bar's bottles or is told in the method. */
const ofTheBar: ReadonlySet<string> = new Set(["batched", "after"]);

/** What fills up, coats or is not measured says so behind its name. */
function led({ lead }: Poured, amounts: readonly string[]): { amounts: readonly string[]; note?: string } {
  const upTo = besides(amounts);
  switch (lead?.lead) {
    case "top":
      return { amounts: [], note: upTo ? `to top up to ${upTo}` : "to top" };
    case "to":
      return { amounts: [], note: `to make ${upTo} in all` };
    case "rinse":
      return { amounts, note: "to rinse the glass" };
    case "some":
      return { amounts: ["some"] };
    default:
      return { amounts };
  }
}

function noteOf(modifier: Ingredient["resolution"]["modifiers"][number], style: BookStyle): string {
  const at = temperatureIn([modifier]);
  if (at) return `at ${besides(style.systems.map((system) => degrees({ value: at.value }, system === "US" ? "F" : "C")))}`;
  return modifier.text.toLowerCase() === "discarded" ? "poured away" : modifier.text;
}
