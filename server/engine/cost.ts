/** Why the cost of a drink is unknown. Where nothing is, it is the sum of what its parts cost. */

import { batchOf, liquidOf } from "./composition.ts";
import type { Beside, Model, PourPlan, PrepModel, PrepPart, Price, ServePlan } from "./plan.ts";
import { mergeTexts } from "./reasons.ts";
import { isKnown } from "./uncertainty.ts";

const none: readonly string[] = [];

/** Each reason once, in the order of the pours. `toppedUp`: why it is not known how much tops the drink up. */
export function costReasons({ pours, beside = [] }: ServePlan, toppedUp: readonly string[]): readonly string[] {
  return [...pours, ...beside].reduce((reasons, part) => mergeTexts(reasons, reasonsOf(part, toppedUp)), none);
}

/** Whether it is known what so much of it costs. */
export function isPriced(part: Beside): boolean {
  return reasonsOf(part, none).length === 0;
}

type Part = Pick<PourPlan | PrepPart | Beside, "of" | "amount" | "price">;

function reasonsOf({ of, amount, price }: Part, toppedUp: readonly string[]): readonly string[] {
  if (price?.per === "all") return becauseOf(price);
  if ("top" in amount || "topToMl" in amount) return mergeTexts(reasonsOfPrice(of, price, "ml"), toppedUp);
  const [quantity] = Object.values(amount);
  if (quantity && !isKnown(quantity)) return [quantity.because];
  return reasonsOfPrice(of, price, "g" in amount || "upToG" in amount ? "g" : "ml");
}

/** Where it is poured by volume and its cost is by weight, or the other way round, its density has to be known as well. */
function reasonsOfPrice(of: Model, price: Price | undefined, poured: "g" | "ml"): readonly string[] {
  const own = price ?? (of.type === "stock" ? of.price : undefined);
  const reasons = price || of.type === "stock" ? becauseOf(own, of.name) : reasonsOfPrep(of);
  const shared = own?.per ?? (of.type === "prep" && of.makes ? ("g" in of.makes ? "g" : "ml") : undefined);
  if (shared === poured) return reasons;
  const liquid = liquidOf(of);
  return mergeTexts(reasons, poured === "g" ? liquid.reasonsWeighed.volume : liquid.reasons.volume);
}

function becauseOf(price: Price | undefined, name = ""): readonly string[] {
  if (!price) return [`the price of ${name} is not given`];
  return isKnown(price.amount) ? none : [price.amount.because];
}

const ofPreps = new WeakMap<PrepModel, readonly string[]>();

function reasonsOfPrep(prep: PrepModel): readonly string[] {
  let reasons = ofPreps.get(prep);
  if (!reasons) {
    reasons = prep.parts.reduce((found, part) => mergeTexts(found, reasonsOf(part, none)), batchOf(prep).unsized);
    ofPreps.set(prep, reasons);
  }
  return reasons;
}
