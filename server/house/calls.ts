/** What a drink or a prep calls for, as it is written: of which stock, prep, drink or ice, and how much. */
import type { Entry, Quantity } from "../../grammar/tree.ts";
import { batchOf, gramsToReach, liquidOf } from "../engine/composition.ts";
import { addMasses, massOf, noMasses } from "../engine/liquid.ts";
import type { Known, Model, PrepPart } from "../engine/plan.ts";
import { isKnown } from "../engine/uncertainty.ts";
import { type Laid, laidGarnish, laidPours } from "./beside.ts";
import { assessDrink, measuringOf } from "./drink.ts";
import type { House } from "./house.ts";
import { iceCosts } from "./ice-cost.ts";
import type { Ingredient } from "./ingredient.ts";
import { has } from "./modifiers.ts";
import { prepModel, prepPours } from "./prep.ts";
import { noAmount, notDeclared } from "./reasons.ts";
import { settingsOf } from "./settings.ts";
import { spreadOf } from "./values.ts";

/** So much of something; `pieces` are whole ones, as they are bought. */
export type Size = { readonly ml: number } | { readonly g: number } | { readonly pieces: number } | { readonly because: string };

export interface Call {
  /** Absent where nothing of that name is declared. */
  readonly entry: Entry | undefined;
  /** As it is called where it is called for. */
  readonly name: string;
  readonly size: Size;
  /** The juice of it is meant, and the size is that of the juice unless it is in pieces. */
  readonly juiced: boolean;
  readonly model: Model;
}

/** Of a drink, all its serves, garnish and paid ice with them; options are not counted. */
export function callsOfDrink(house: House, drink: Entry): readonly Call[] {
  return house.recall(drink, "calls", () => {
    const { flat, plan, steps } = assessDrink(house, drink);
    const scope = house.scopeOf(drink);
    const settings = settingsOf(house, scope);
    const garnish = laidGarnish(house, scope, flat, measuringOf(flat, settings).measuring, plan.serves);
    const iceName = flat.field("ice")?.field.value?.text ?? settings.ice;
    const ice = iceCosts(house, scope, steps, plan, iceName, settings).map(({ of, amount }): Call => {
      const entry = house.lookup(scope, "ice", of.name)[0]?.entry;
      return { entry, name: of.name, size: sizeIn(amount), juiced: false, model: of };
    });
    return [...pouredBy(house, drink, "whole"), ...garnish.map(callOfLaid), ...ice];
  });
}

/** Of a batch of a prep, or of a drink that is poured in a drink, and how large that batch is. */
export interface Batch {
  readonly calls: readonly Call[];
  readonly size: { readonly ml: number | null; readonly g: number | null };
  /** Written in parts: a batch may be of any size. */
  readonly anySize: boolean;
  /** Why its size is not known. */
  readonly because: readonly string[];
}

export function batchFor(house: House, entry: Entry): Batch {
  return house.recall(entry, "batch", () => {
    const model = house.modelOf(entry);
    if (model.type !== "prep") return { calls: [], size: { ml: null, g: null }, anySize: false, because: liquidOf(model).reasons.volume };
    const calls = entry.kind === "drink" ? pouredBy(house, entry, "before ice") : pouredInto(house, entry);
    const { masses, volumeMl, unsized, reasons } = batchOf(model);
    const g = massOf(masses);
    const known = unsized.length === 0 && g > 0;
    return {
      calls,
      size: { g: known ? g : null, ml: known && reasons.volume.length === 0 ? volumeMl : null },
      anySize: model.shares === true && !model.makes,
      because: unsized,
    };
  });
}

function pouredBy(house: House, drink: Entry, upTo: "whole" | "before ice"): Call[] {
  const { flat, plan, pours, outcome, proportional } = assessDrink(house, drink);
  const settings = settingsOf(house, house.scopeOf(drink));
  const poured = plan.pours.flatMap(({ amount }, index): Call[] => {
    const { ingredient, quantity, lead, modifiers } = pours[index]!;
    // It coats the glass and is poured away: all of it stands beside the drink.
    if (lead?.lead === "rinse" && has(modifiers, "discarded")) return [];
    if (!("top" in amount || "topToMl" in amount)) return [callFor(ingredient, sizeIn(amount), quantity)];
    if (upTo === "before ice") return [];
    const filled = outcome.poured(index);
    return [
      callFor(ingredient, filled ? { ml: filled.ml } : { because: `how much ${ingredient.resolution.text} fills it up is not known` }),
    ];
  });
  const calls = [...poured, ...laidPours(flat, measuringOf(flat, settings).measuring, plan.serves).map(callOfLaid)];
  return proportional ? calls.map((call) => ({ ...call, size: { because: `the parts of ${drink.name?.text} have no size` } })) : calls;
}

function callOfLaid({ name, ingredient, quantity, amount }: Laid): Call {
  if (ingredient) return callFor(ingredient, amount ? sizeIn(amount) : { because: noAmount(name) }, quantity);
  const model: Model = { type: "prep", name, parts: [] };
  return { entry: undefined, name, size: { because: notDeclared(name) }, juiced: false, model };
}

/** What fills up to a size is worked out from what stands before it, as the engine does. */
function pouredInto(house: House, prep: Entry): Call[] {
  const model = prepModel(house, prep);
  const pours = prepPours(house, prep);
  if (model.type !== "prep") return [];
  const masses = noMasses();
  for (const { part } of pours) {
    const { amount } = part;
    if (!part.discarded && ("g" in amount || "ml" in amount)) addMasses(masses, liquidOf(part.of).perGram, gramsIn(part));
  }
  return pours.map(({ ingredient, pour, part: { of, amount } }) => {
    if ("g" in amount || "ml" in amount) return callFor(ingredient, sizeIn(amount), pour.quantity);
    const [target] = Object.values(amount) as [Known];
    if (!isKnown(target)) return callFor(ingredient, { because: target.because });
    const liquid = liquidOf(of);
    const g = "upToG" in amount ? Math.max(0, target.value - massOf(masses)) : gramsToReach(masses, liquid, target.value);
    addMasses(masses, liquid.perGram, g);
    return callFor(ingredient, { g });
  });
}

function gramsIn({ of, amount }: Pick<PrepPart, "of" | "amount">): number {
  const [known] = Object.values(amount) as [Known];
  if (!isKnown(known)) return 0;
  return "ml" in amount ? known.value * liquidOf(of).gPerMl : known.value;
}

function callFor({ resolution, facts, model }: Ingredient, size: Size, quantity?: Quantity): Call {
  const juiced = has(resolution.modifiers, "juiced");
  const count = quantity && !quantity.unit && facts ? spreadOf(quantity, () => 0, "") : undefined;
  return { entry: resolution.found?.entry, name: resolution.text, size: count ? { pieces: count.value } : size, juiced, model };
}

function sizeIn(amount: { readonly ml: Known } | { readonly g: Known }): Size {
  const [known] = Object.values(amount) as [Known];
  if (!isKnown(known)) return { because: known.because };
  return "ml" in amount ? { ml: known.value } : { g: known.value };
}
