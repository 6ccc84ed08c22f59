/** The nearest measurable amount that puts a drink right. */

import { assess } from "./assess.ts";
import type { Outcome, PourPlan, ServePlan } from "./plan.ts";
import { isKnown } from "./uncertainty.ts";

/**
 * The multiple of `stepMl`, nearest to the present amount of one pour, for which `inside` holds, in ml.
 *
 * Looks from the present amount outwards, up to `furthest` times it (4 if nothing is said) and down to one
 * step, never to nothing. Undefined where none holds, where the pour is not measured in ml, is unknown, or
 * tops up. The present amount itself is not an answer. At most 800 amounts are tried.
 */
export function nearestAmount(
  plan: ServePlan,
  pourIndex: number,
  stepMl: number,
  inside: (outcome: Outcome) => boolean,
  furthest = 4,
): number | undefined {
  const pour = plan.pours[pourIndex];
  if (!pour || !("ml" in pour.amount) || !isKnown(pour.amount.ml) || !(stepMl > 0)) return undefined;
  const { ml } = pour.amount;
  const last = Math.min(Math.floor((furthest * ml.value) / stepMl), mostSteps);
  const holds = (steps: number): boolean => inside(assess(withAmount(plan, pourIndex, pour, { ...ml, value: steps * stepMl })));

  let above = Math.floor(ml.value / stepMl + 1e-9) + 1;
  let below = Math.ceil(ml.value / stepMl - 1e-9) - 1;
  while (above <= last || below >= 1) {
    const upFirst = below < 1 || (above <= last && above * stepMl - ml.value <= ml.value - below * stepMl);
    const steps = upFirst ? above++ : below--;
    if (holds(steps)) return round(steps * stepMl);
  }
  return undefined;
}
const mostSteps = 800;

function withAmount(plan: ServePlan, index: number, pour: PourPlan, ml: { value: number; u: number; why: string }): ServePlan {
  return { ...plan, pours: plan.pours.with(index, { ...pour, amount: { ml } }) };
}

/** Takes off the dust of binary fractions: 0.1 × 3 is 0.3. */
const round = (ml: number): number => Number(ml.toPrecision(12));
