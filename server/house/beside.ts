/** What a drink is paid for and does not hold: garnish and rim, leaves, what coats the glass and is poured away. */
import type { Quantity } from "../../grammar/tree.ts";
import { isPriced } from "../engine/cost.ts";
import type { Amount, Beside, Uncertain } from "../engine/plan.ts";
import { amountOf, type Measuring } from "./amounts.ts";
import { amountOfGarnish, garnishesOf } from "./garnish.ts";
import type { House } from "./house.ts";
import type { Ingredient } from "./ingredient.ts";
import { has } from "./modifiers.ts";
import { priceOfPour } from "./pour-price.ts";
import { noAmount } from "./reasons.ts";
import type { FlatDrink, FlatPour } from "./riff.ts";
import type { Scope } from "./scope.ts";
import { isInert } from "./stock.ts";
import { times } from "./values.ts";

export interface Besides {
  readonly beside: readonly Beside[];
  /** What of it has no price that is known: the cost is without it. */
  readonly unpriced: readonly string[];
}

export const rinseMl: Uncertain = { value: 3, u: 1, why: "a rinse, practice" };

/** Something that goes beside the drink, and how much of it for all serves. */
export interface Laid {
  readonly name: string;
  /** It counts whether anybody knows its price or not. */
  readonly kept: boolean;
  /** Absent where nothing of that name is declared. */
  readonly ingredient?: Ingredient;
  readonly quantity?: Quantity;
  /** Absent where nobody knows. */
  readonly amount?: Amount;
}

/** Of the pours: a leaf, a rim, what is strained out, what rinses the glass. A spirit that rinses is never left out. */
export function besidePours(house: House, scope: Scope, flat: FlatDrink, measuring: Measuring, serves: number): Besides {
  return sorted(house, scope, laidPours(flat, measuring, serves));
}

/** Of the fields `garnish` and `rim`. */
export function besideGarnish(house: House, scope: Scope, flat: FlatDrink, measuring: Measuring, serves: number): Besides {
  return sorted(house, scope, laidGarnish(house, scope, flat, measuring, serves));
}

export function laidPours({ pours }: FlatDrink, measuring: Measuring, serves: number): Laid[] {
  return pours.filter(isBeside).map((pour) => {
    const { ingredient, quantity } = pour;
    const amount = quantity ? amountOf(quantity, ingredient, measuring) : unstated(pour, serves);
    return { name: ingredient.resolution.text, kept: isRinse(pour), ingredient, amount, ...(quantity && { quantity }) };
  });
}

/** An item of no stated amount is one for each serve. */
export function laidGarnish(house: House, scope: Scope, flat: FlatDrink, measuring: Measuring, serves: number): Laid[] {
  return garnishesOf(house, scope, flat).map((garnish) => {
    const { name, ingredient, quantity } = garnish;
    const one = ingredient && amountOfGarnish(garnish, measuring);
    const amount = one && !quantity ? forServes(one, serves) : one;
    return { name, kept: false, ...(ingredient && { ingredient }), ...(quantity && { quantity }), ...(amount && { amount }) };
  });
}

function sorted(house: House, scope: Scope, laid: readonly Laid[]): Besides {
  const beside: Beside[] = [];
  const unpriced: string[] = [];
  for (const { name, kept, ingredient, quantity, amount } of laid) {
    const one = ingredient && amount && besideOf(house, scope, ingredient, amount, quantity);
    if (one && (kept || isPriced(one))) beside.push(one);
    else unpriced.push(name);
  }
  return { beside, unpriced };
}

/** Whether the pour brings nothing to the liquid, or is poured away again. */
function isBeside(pour: FlatPour): boolean {
  const { ingredient, modifiers } = pour;
  if (has(modifiers, "optional")) return false;
  const out = ["to rim", "strained out", "discarded"].some((word) => has(modifiers, word));
  return out || (ingredient.facts !== undefined && isInert(ingredient.facts));
}

function isRinse({ lead }: FlatPour): boolean {
  return lead?.lead === "rinse";
}

function unstated(pour: FlatPour, serves: number): Amount {
  return isRinse(pour) ? { ml: forAll(rinseMl, serves) } : { g: { because: noAmount(pour.ingredient.resolution.text) } };
}

function besideOf(house: House, scope: Scope, ingredient: Ingredient, amount: Amount, quantity: Quantity | undefined): Beside {
  const price = priceOfPour(house, scope, ingredient, quantity);
  return { of: ingredient.model, amount, ...(price && { price }) };
}

/** What each serve takes as what all of them take; of one it is the very same figure. */
export function forAll(each: Uncertain, serves: number): Uncertain {
  return serves === 1 ? each : times(each, serves);
}

function forServes(amount: Amount, serves: number): Amount {
  const [[unit, known] = ["g", undefined]] = Object.entries(amount);
  if (serves === 1 || !known || "because" in known) return amount;
  const all = forAll(known, serves);
  return unit === "ml" ? { ml: all } : { g: all };
}
