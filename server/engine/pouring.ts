/** What is poured: the sum of what meets the ice and of what comes after it, and what tops up. */

import { costOfAmount, gramsOf, gramsToReach, type Liquid, liquidOf } from "./composition.ts";
import { addMasses, at, heatAt, noMasses } from "./liquid.ts";
import type { Beside, PourPlan, ServePlan, Unknown } from "./plan.ts";
import { priceChange } from "./price.ts";
import { addReason, mergeReasons, noReasons, type Reasons, topics } from "./reasons.ts";
import { heatWithIce, type Mixture } from "./slush.ts";
import { isKnown, read, type Shift } from "./uncertainty.ts";

export interface Poured {
  /** With the steps, and after them; the latter holds the cost of what is paid for beside. */
  readonly vessel: Mixture;
  readonly after: Mixture;
  /** Of each pour; 0 for what tops up. */
  readonly grams: number[];
  /** Why either is unknown. */
  readonly vesselReasons: Reasons;
  readonly afterReasons: Reasons;
}

/** Everything but what tops up, with one source moved if `shift` is given. Unknown amounts count as none. */
export function pourAll(plan: ServePlan, shift?: Shift): Poured {
  const vessel = emptyMixture();
  const after = emptyMixture();
  const grams = new Array<number>(plan.pours.length).fill(0);
  let vesselReasons = noReasons;
  let afterReasons = noReasons;
  for (let i = 0; i < plan.pours.length; i++) {
    const pour = plan.pours[i]!;
    if (isTop(pour)) continue;
    const liquid = liquidOf(pour.of, shift);
    if (pour.stage === "vessel") {
      grams[i] = pourOne(pour, liquid, vessel, 1, shift);
      vesselReasons = reasonsOf(pour, liquid, vesselReasons);
    } else {
      grams[i] = pourOne(pour, liquid, after, 1, shift);
      afterReasons = reasonsOf(pour, liquid, afterReasons);
    }
  }
  for (const beside of plan.beside ?? []) payFor(beside, liquidOf(beside.of, shift), after, 1, shift);
  return { vessel, after, grams, vesselReasons, afterReasons };
}

export function emptyMixture(): Mixture {
  return { masses: noMasses(), heatJ: 0, freezingOffC: 0 };
}

/** How much of it there is depends on what is there already. */
export function isTop({ amount }: PourPlan): boolean {
  return "top" in amount || "topToMl" in amount;
}

/** Adds a pour that tops nothing up, made of this liquid, so many times; answers the grams of one. */
export function pourOne({ amount, temperatureC, price }: PourPlan, liquid: Liquid, mixture: Mixture, times: number, shift?: Shift): number {
  if ("top" in amount || "topToMl" in amount) return 0;
  const quantity = "ml" in amount ? amount.ml : amount.g;
  const grams = isKnown(quantity) ? gramsOf(amount, read(quantity, shift), liquid) : 0;
  if (grams !== 0) pourIn(mixture, liquid, times * grams, read(temperatureC, shift));
  if (price) mixture.masses[at.cost]! += times * priceChange(grams, liquid, price, shift);
  return grams;
}

/** Adds what is paid for and not drunk, so many times. */
export function payFor({ amount, price }: Beside, liquid: Liquid, mixture: Mixture, times: number, shift?: Shift): void {
  mixture.masses[at.cost]! += times * costOfAmount(amount, liquid, price, shift);
}

function reasonsOf({ amount }: PourPlan, liquid: Liquid, start: Reasons): Reasons {
  const reasons = mergeReasons(start, "g" in amount ? liquid.reasonsWeighed : liquid.reasons);
  const quantity = "ml" in amount ? amount.ml : "g" in amount ? amount.g : undefined;
  return quantity && !isKnown(quantity) ? addReason(reasons, quantity.because, ...topics) : reasons;
}

/** A pour that is frozen brings less heat, for its ice has to thaw. */
function pourIn(mixture: Mixture, liquid: Liquid, grams: number, tC: number): void {
  addMasses(mixture.masses, liquid.perGram, grams);
  mixture.heatJ += grams * (tC < liquid.freezingC ? heatWithIce(liquid.perGram, tC) : heatAt(liquid.warmth, tC));
}

/** What tops up, in the order of the pours: up to a volume, or up to the washline less the ice. */
export function topUp(plan: ServePlan, mixture: Mixture, grams: number[], iceG: number, start: Reasons, shift?: Shift): Reasons {
  let reasons = start;
  for (let i = 0; i < plan.pours.length; i++) {
    const { amount, of, temperatureC, price } = plan.pours[i]!;
    if (!("top" in amount || "topToMl" in amount)) continue;
    const liquid = liquidOf(of, shift);
    reasons = mergeReasons(reasons, liquid.reasons);
    if ("topToMl" in amount && isKnown(amount.topToMl)) {
      grams[i] = gramsToReach(mixture.masses, liquid, read(amount.topToMl, shift));
    } else if ("top" in amount && plan.glass) {
      const levelMl = read(plan.glass.capacityMl, shift) * plan.glass.washline * plan.serves;
      grams[i] = gramsToReach(mixture.masses, liquid, levelMl, iceG);
    } else {
      const because =
        "topToMl" in amount ? (amount.topToMl as Unknown).because : `no glass is named, so how much ${of.name} tops it up is not known`;
      reasons = addReason(reasons, because, ...topics);
      continue;
    }
    pourIn(mixture, liquid, grams[i]!, read(temperatureC, shift));
    mixture.masses[at.cost]! += priceChange(grams[i]!, liquid, price, shift);
  }
  return reasons;
}
