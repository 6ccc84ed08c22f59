/**
 * What of a drink is not put into a bottle that is mixed ahead, and why. Egg and dairy spoil, juice turns, bubbles go,
 * leaves wilt: practice, no source. A prep whose house says how long it keeps is taken at its word.
 */
import type { StockKind } from "../../grammar/fields.ts";
import { isCyclic } from "./cycles.ts";
import type { House } from "./house.ts";
import type { Ingredient } from "./ingredient.ts";
import { shortestKeeping } from "./keeping.ts";
import { secondsIn } from "./method.ts";
import { has, temperatureIn } from "./modifiers.ts";
import { prepPours } from "./prep.ts";
import { type FlatPour, flatten } from "./riff.ts";

/** Absent for what stands in a bottle as it is. */
export function whyApart(house: House, pour: FlatPour): string | undefined {
  const { lead, modifiers, quantity, stage, ingredient, alternatives } = pour;
  if (lead?.lead === "top") return "poured last, to fill the glass";
  if (lead?.lead === "rinse") return "it rinses the glass";
  const [, said] = aside.find(([word]) => has(modifiers, word)) ?? [];
  if (said) return said;
  if ((temperatureIn(modifiers)?.value ?? 0) > hotC) return "poured hot";
  if (!quantity || quantity.value === undefined) return "nobody says how much of it";
  const [spoiling] = [ingredient, ...alternatives.map((one) => one.ingredient)].flatMap((one) => whySpoils(house, one) ?? []);
  return spoiling ?? (stage === "after" ? "poured after the ice" : undefined);
}

/** What is done with it at the bar, or left to the guest. */
const aside: readonly (readonly [word: string, why: string])[] = [
  ["to rim", "it is for the rim"],
  ["optional", "only where it is wanted"],
  ["floated", "floated on top, last"],
  ["muddled", "pressed fresh for each drink"],
  ["strained out", "it gives its taste and stays behind"],
  ["discarded", "it is poured away"],
  ["to taste", "nobody says how much of it"],
  ["hot", "poured hot"],
  ["juiced", "fresh juice turns"],
];

/** Hotter than anything stands in a room. */
const hotC = 45;

const spoils: Partial<Record<StockKind, string>> = {
  egg: "egg spoils, and foams only when it is fresh",
  dairy: "dairy spoils",
  "plant milk": "plant milk spoils",
  herb: "leaves wilt",
  fruit: "fruit goes in fresh",
  vegetable: "vegetables go in fresh",
  spice: "spice goes on drawing",
};
const pressed: ReadonlySet<StockKind> = new Set(["juice", "puree"]);

/** A bottle that is mixed is poured from for about a week: practice, no source. */
export const longEnough = 7 * secondsIn.day!;

function whySpoils(house: House, { resolution, facts }: Ingredient): string | undefined {
  const found = resolution.found?.entry;
  if (!found) return undefined;
  if (!facts) return whySpoilsInside(house, found, resolution.text);
  if (facts.fizz) return "its bubbles would go";
  const { kind } = facts;
  if (kind && pressed.has(kind)) {
    const keeping = shortestKeeping(house, found);
    if (keeping && keeping.seconds >= longEnough) return undefined;
    return keeping ? `fresh juice turns (${keeping.text})` : "juice turns, and nobody states that it keeps a week";
  }
  return kind && spoils[kind];
}

function whySpoilsInside(house: House, found: NonNullable<Ingredient["resolution"]["found"]>["entry"], name: string): string | undefined {
  if (isCyclic(house, found)) return undefined;
  if (found.kind === "prep" && shortestKeeping(house, found)) return undefined;
  const inside = found.kind === "drink" ? flatten(house, found).pours : prepPours(house, found);
  for (const { ingredient } of inside) {
    const { modifiers } = ingredient.resolution;
    if (has(modifiers, "strained out") || has(modifiers, "optional")) continue;
    const why = whySpoils(house, ingredient);
    if (why) return `${why} (${ingredient.resolution.text} in ${name}, which does not say how long it keeps)`;
  }
  return undefined;
}
