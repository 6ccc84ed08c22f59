/** A prep as the engine wants it: its pours by weight or volume, and what its steps make unknowable. */
import type { Entry, Pour } from "../../grammar/tree.ts";
import type { Model, PrepModel, PrepOutcome, PrepPart, Uncertain } from "../engine/plan.ts";
import { assessPrep } from "../engine/prep.ts";
import { amountOf, type Measuring, type PartSize } from "./amounts.ts";
import { isCyclic } from "./cycles.ts";
import { findFieldIn, linesOf } from "./entry.ts";
import type { House } from "./house.ts";
import { type Ingredient, ingredientOf, unknownModel } from "./ingredient.ts";
import { readMethod } from "./method.ts";
import { has } from "./modifiers.ts";
import { madeFromItself, noAmount } from "./reasons.ts";
import { settingsOf } from "./settings.ts";
import { isInert, stockFacts } from "./stock.ts";
import { isWrong, readPercent, readQuantity, spreadOf } from "./values.ts";

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
      ...measuredIn(entry),
      ...cloudsOf(house, entry),
    } satisfies PrepModel;
  });
}

export function assessPrepEntry(house: House, entry: Entry): PrepOutcome {
  return house.recall(entry, "outcome", () => assessPrep(asPrep(prepModel(house, entry))));
}

/** Whether a prep is given in parts only, so that its whole amount is nowhere stated. */
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
  const { modifiers } = ingredient.resolution;
  if (has(modifiers, "optional")) return undefined;
  const discarded =
    has(modifiers, "strained out") || has(modifiers, "discarded") || (ingredient.facts !== undefined && isInert(ingredient.facts));
  const amount = quantity
    ? amountOf(quantity, ingredient, measuringOf(house, entry))
    : { g: { because: noAmount(ingredient.resolution.text) } };
  const upTo = lead?.lead === "to" ? ("g" in amount ? { upToG: amount.g } : { upToMl: amount.ml }) : undefined;
  return { line, pour, ingredient, part: { of: ingredient.model, amount: upTo ?? amount, ...(discarded && { discarded }) } };
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

function measuredIn(entry: Entry): Pick<PrepModel, "measured"> {
  const brix = findFieldIn(entry, "brix");
  const density = findFieldIn(entry, "density");
  const abv = findFieldIn(entry, "abv");
  const measured: { brix?: Uncertain; densityGPerMl?: Uncertain; abvPct?: Uncertain } = {};
  const brixRead = brix && readQuantity(brix.field, "66");
  if (brixRead && !isWrong(brixRead)) measured.brix = spreadOf(brixRead.value, () => 0.5, "as measured")!;
  const densityRead = density && readQuantity(density.field, "1.04 g/ml");
  if (densityRead && !isWrong(densityRead)) measured.densityGPerMl = spreadOf(densityRead.value, (value) => 0.005 * value, "as measured")!;
  const abvRead = abv && readPercent(abv.field, "20 %", "as measured");
  if (abvRead && !isWrong(abvRead)) measured.abvPct = abvRead.value;
  return Object.keys(measured).length > 0 ? { measured } : {};
}

function cloudsOf(house: House, entry: Entry): Pick<PrepModel, "unknown"> {
  const method = findFieldIn(entry, "method");
  const clouding = method && readMethod(house, house.scopeOf(entry), method.field).find((step) => step.technique?.clouds);
  return clouding?.technique?.clouds ? { unknown: { because: `${entry.name?.text ?? "this prep"}: ${clouding.technique.clouds}` } } : {};
}

/** A prep that is made from itself has a model of nothing known; as a prep it is one part of that. */
function asPrep(model: Model): PrepModel {
  return model.type === "prep" ? model : { type: "prep", name: model.name, parts: [{ of: model, amount: { g: model.abvPct } }] };
}
