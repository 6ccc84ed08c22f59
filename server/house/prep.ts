/** A prep as the engine wants it: its pours by weight or volume, and what its steps make unknowable. */
import type { Entry, Pour } from "../../grammar/tree.ts";
import type { Model, PrepModel, PrepOutcome, PrepPart, Uncertain } from "../engine/plan.ts";
import { assessPrep } from "../engine/prep.ts";
import { amountOf, type Measuring, type PartSize } from "./amounts.ts";
import { isCyclic } from "./cycles.ts";
import { findFieldIn, linesOf } from "./entry.ts";
import type { House } from "./house.ts";
import { type Ingredient, ingredientOf, unknownModel } from "./ingredient.ts";
import { has } from "./modifiers.ts";
import { priceOfPour } from "./pour-price.ts";
import { leaving, makesIn, prepSteps } from "./prep-steps.ts";
import { measuredIn } from "./readings.ts";
import { madeFromItself, noAmount } from "./reasons.ts";
import { settingsOf } from "./settings.ts";
import { stockFacts } from "./stock.ts";

/** One part of a prep that states no size is taken as so many grams or millilitres; only shares matter then. */
const nominalPart = 100;

export function prepModel(house: House, entry: Entry): Model {
  return house.recall(entry, "model", () => {
    const name = entry.name?.text ?? "";
    if (isCyclic(house, entry)) return unknownModel(name, madeFromItself(name));
    return {
      type: "prep",
      name,
      parts: prepPours(house, entry).map(({ part }) => part),
      steps: prepSteps(house, entry),
      shares: isProportional(entry),
      ...measuredIn(entry),
      ...makesIn(house, entry),
    } satisfies PrepModel;
  });
}

export function assessPrepEntry(house: House, entry: Entry): PrepOutcome {
  return house.recall(entry, "outcome", () => assessPrep(asPrep(prepModel(house, entry))));
}

/** The same by its pours and its steps alone, whatever was measured. */
export function computedPrep(house: House, entry: Entry): PrepOutcome {
  return house.recall(entry, "computed", () => {
    const { measured, ...model } = asPrep(prepModel(house, entry));
    return measured ? assessPrep(model) : assessPrepEntry(house, entry);
  });
}

/** Whether nothing says how much there is of it: it is written in parts and has no yield. */
export function isSizeless(house: House, entry: Entry): boolean {
  const { shares, makes } = asPrep(prepModel(house, entry));
  return shares === true && !makes;
}

/** Whether a prep is given in parts, so that what each of them weighs is nowhere stated. */
export function isProportional(entry: Entry): boolean {
  return [...linesOf(entry, "pour")].some(({ content }) => content.pour.quantity?.unit?.unit.dimension === "part");
}

/** A pour of a prep and the part that it makes of it. */
export interface PrepPour {
  /** The line's number within the entry. */
  readonly line: number;
  readonly pour: Pour;
  readonly ingredient: Ingredient;
  readonly part: PrepPart;
}

/** The pours that a prep is made of, in the order of its parts; optional ones are none of it. */
export function prepPours(house: House, entry: Entry): PrepPour[] {
  return [...linesOf(entry, "pour")].flatMap(({ line, content }) => prepPour(house, entry, line, content.pour) ?? []);
}

/** A pour as a part of a prep, written so in it or not. */
export function prepPour(house: House, entry: Entry, line: number, pour: Pour): PrepPour | undefined {
  const { name, quantity, lead } = pour;
  if (!name) return undefined;
  const ingredient = ingredientOf(house, house.scopeOf(entry), name);
  if (has(ingredient.resolution.modifiers, "optional")) return undefined;
  const amount = quantity
    ? amountOf(quantity, ingredient, measuringOf(house, entry))
    : { g: { because: noAmount(ingredient.resolution.text) } };
  const upTo = lead?.lead === "to" ? ("g" in amount ? { upToG: amount.g } : { upToMl: amount.ml }) : undefined;
  const price = priceOfPour(house, house.scopeOf(entry), ingredient, quantity);
  const part = { of: ingredient.model, amount: upTo ?? amount, ...leaving(house, entry, ingredient), ...(price && { price }) };
  return { line, pour, ingredient, part };
}

function measuringOf(house: House, entry: Entry): Measuring {
  return house.recall(entry, "measuring", () => {
    return { settings: settingsOf(house, house.scopeOf(entry)), jigger: false, part: partSizeOf(house, entry) };
  });
}

/** Parts of a prep are weighed or measured as `parts by:` says; with a solid among them and nothing said they are unknown. */
function partSizeOf(house: House, entry: Entry): PartSize {
  const by = findFieldIn(entry, "parts by")?.field.value?.text.toLowerCase();
  const size: Uncertain = { value: nominalPart, u: 0, why: "one part" };
  if (by === "weight") return { g: size };
  if (by === "volume") return { ml: size };
  const scope = house.scopeOf(entry);
  for (const { content } of linesOf(entry, "pour")) {
    const found = content.pour.name && house.resolve(scope, ["ingredient", "drink"], content.pour.name).found?.entry;
    if (found?.kind === "stock" && stockFacts(house, found).model.solid) {
      return {
        because: `${entry.name?.text ?? "this prep"} has a solid among its parts and does not say \`parts by: weight\` or \`volume\``,
      };
    }
  }
  return { ml: size };
}

/** A prep that is made from itself has a model of nothing known; as a prep it is one part of that. */
function asPrep(model: Model): PrepModel {
  return model.type === "prep" ? model : { type: "prep", name: model.name, parts: [{ of: model, amount: { g: model.abvPct } }] };
}
