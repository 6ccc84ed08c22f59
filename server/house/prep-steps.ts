/** What the steps of a prep do, and how much it comes to. */
import type { StockKind } from "../../grammar/fields.ts";
import type { Entry, Item, Quantity } from "../../grammar/tree.ts";
import type { Amount, PrepPart, PrepStep, SolidSort, Uncertain } from "../engine/plan.ts";
import { sizeOf } from "./amounts.ts";
import { findFieldIn } from "./entry.ts";
import type { House } from "./house.ts";
import type { Ingredient } from "./ingredient.ts";
import { type Step, stepsOf } from "./method.ts";
import { has } from "./modifiers.ts";
import { noWater } from "./reasons.ts";
import { type Settings, settingsOf } from "./settings.ts";
import { isInert } from "./stock.ts";
import { spreadOf, times } from "./values.ts";

/** The steps that the table of processes knows, in their order. */
export function prepSteps(house: House, entry: Entry): readonly PrepStep[] {
  const settings = settingsOf(house, house.scopeOf(entry));
  return stepsIn(house, entry).flatMap(({ technique, item, share }): PrepStep[] => {
    if (technique?.dilutes) return [{ does: {}, waterShare: share ?? { because: noWater(technique.words[0]!) } }];
    if (!technique?.process) return [];
    const to = technique.process.boils ? targetIn(item, settings) : undefined;
    return [{ does: technique.process, ...(to && { to }) }];
  });
}

function stepsIn(house: House, entry: Entry): readonly Step[] {
  const method = findFieldIn(entry, "method");
  return method ? stepsOf(house, method) : [];
}

/** `to 300 ml`, `to 300 g`, `by half`, `by 50 %`, `to a third`. */
function targetIn({ text, parts }: Item, settings: Settings): PrepStep["to"] | undefined {
  const goal = /\b(to|by)\s+(?:about\s+)?(?:an?\s+)?(\S+(?:\s+\S+)?)/i.exec(text);
  if (!goal) return undefined;
  const off = goal[1]!.toLowerCase() === "by";
  const quantities = parts.flatMap((part) => part.quantities);
  const size = quantities.find(({ unit }) => unit?.unit.dimension === "volume" || unit?.unit.dimension === "mass");
  if (size && !off) return amountIn(size, settings);
  const percent = quantities.find(({ unit }) => unit?.unit.id === "%")?.value;
  const share = percent !== undefined ? percent / 100 : shareIn(goal[2]!.toLowerCase());
  if (share === undefined || !(share > 0 && share < 1)) return undefined;
  const left = off ? 1 - share : share;
  return { share: { value: left, u: 0.1 * left, why: "how far it is boiled down, by eye, practice" } };
}

const shares: Readonly<Record<string, number>> = {
  half: 1 / 2,
  third: 1 / 3,
  quarter: 1 / 4,
  "two thirds": 2 / 3,
  "three quarters": 3 / 4,
};

function shareIn(words: string): number | undefined {
  return shares[words] ?? shares[words.split(" ")[0]!];
}

/** What a batch makes, as its `yield:` says. */
export function makesIn(house: House, entry: Entry): { makes: Amount } | undefined {
  const quantity = findFieldIn(entry, "yield")?.field.items[0]?.parts[0]?.quantities[0];
  const makes = quantity && amountIn(quantity, settingsOf(house, house.scopeOf(entry)));
  return makes && { makes };
}

function amountIn(quantity: Quantity, settings: Settings): Amount | undefined {
  const unit = quantity.unit?.unit;
  if (!unit || (unit.dimension !== "volume" && unit.dimension !== "mass")) return undefined;
  const weighed = unit.dimension === "mass";
  // A jug is right to 1 %, a kitchen scale to half of that: practice, no source.
  const read = spreadOf(quantity, (value) => (weighed ? 0.005 : 0.01) * value, weighed ? "as weighed" : "as measured in a jug");
  const size = sizeOf(unit, undefined, settings).value;
  if (!read || !(size > 0)) return undefined;
  const amount: Uncertain = times(read, size);
  return weighed ? { g: amount } : { ml: amount };
}

/** How a pour leaves the prep again: marked so, or a plant or a fat that a step strains out. */
export function leaving(
  house: House,
  entry: Entry,
  { facts, model, resolution }: Ingredient,
): Pick<PrepPart, "discarded" | "strained" | "sets"> {
  const techniques = stepsIn(house, entry).flatMap(({ technique }) => technique ?? []);
  const does = (id: string) => techniques.some((technique) => technique.id === id);
  const { modifiers } = resolution;
  const marked = has(modifiers, "strained out");
  if (facts?.kind === "dairy" && does("milk-clarify")) return { sets: "curd" };
  const solid = facts && solidSorts[facts.kind ?? "other"];
  if (does("fat-wash") && !(solid && plants.has(solid))) {
    if (marked) return { discarded: true, strained: "fat" };
    return isFat(model) ? { sets: "fat" } : {};
  }
  const kept = has(modifiers, "muddled") || has(modifiers, "juiced");
  if (marked || (solid && plants.has(solid) && !kept && techniques.some((technique) => technique.process?.strains)))
    return { discarded: true, strained: solid ?? "other" };
  return has(modifiers, "discarded") || (facts && isInert(facts)) ? { discarded: true } : {};
}

/** What of a kind is strained out: leaves of tea and grounds of coffee, where the rest of the language means the brew. */
const solidSorts: Partial<Record<StockKind, SolidSort>> = {
  fruit: "fruit",
  vegetable: "vegetable",
  herb: "herb",
  spice: "spice",
  tea: "tea",
  coffee: "coffee",
  other: "other",
};
/** Whoever strains strains these out, marked or not. */
const plants: ReadonlySet<SolidSort> = new Set(["fruit", "vegetable", "herb", "spice"]);

/** Half of it or more is fat, or what a label counts with fat. */
function isFat(model: Ingredient["model"]): boolean {
  if (model.type !== "stock") return false;
  const share = [model.solids, model.fat].reduce((sum, content) => {
    const grams = content && !("because" in content.amount) ? content.amount.value : 0;
    return sum + grams;
  }, 0);
  return !model.solid && share >= 50;
}
