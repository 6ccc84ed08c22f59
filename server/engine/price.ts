/**
 * What so much of something costs. Money is carried along like a mass: so it is shared out, mixed and
 * doubted as one. An amount or a price that nobody gave counts as nothing here; `cost.ts` says why then.
 */

import { at, type Masses } from "./liquid.ts";
import type { Price } from "./plan.ts";
import { isKnown, read, type Shift } from "./uncertainty.ts";

/** What is needed of an ingredient to price so much of it. */
interface Priced {
  readonly perGram: Masses;
  readonly gPerMl: number;
}

/**
 * Currency for so many grams: at this price, else at the ingredient's own.
 *
 * Waste is the share of what is bought that is lost on the way, so what arrives costs 1 ÷ (1 − waste) as
 * much: a bottle of 20.00 that is emptied to 96 % has cost 20.00 for 96 % of itself.
 */
export function costOf(grams: number, of: Priced, price: Price | undefined, shift: Shift | undefined): number {
  if (!price) return grams * of.perGram[at.cost]!;
  const { amount, per, waste } = price;
  if (!isKnown(amount)) return 0;
  const size = per === "all" ? 1 : per === "g" ? grams : grams / of.gPerMl;
  return (read(amount, shift) * size) / (1 - (waste ? read(waste, shift) : 0));
}

/** By how much a price instead of the ingredient's own changes what so many grams cost. */
export function priceChange(grams: number, of: Priced, price: Price | undefined, shift: Shift | undefined): number {
  return price ? costOf(grams, of, price, shift) - costOf(grams, of, undefined, shift) : 0;
}
