/** The nearest measurable amount of one pour at which a drink is as wanted. */
import { nearestAmount, plannedAmount, withoutDust } from "../engine/adjust.ts";
import { liquidOf } from "../engine/composition.ts";
import { at, type Masses, sugarOf } from "../engine/liquid.ts";
import type { Outcome } from "../engine/plan.ts";
import { changeableDrink, stepFor, whyFixed } from "./changeable.ts";
import { amountText, changedLine } from "./changed-line.ts";
import type { Assessment } from "./drink.ts";
import { type FamilyWindow, isInside } from "./family.ts";
import type { Edit } from "./finding.ts";
import type { House } from "./house.ts";
import type { FlatPour } from "./riff.ts";

export interface Adjustment {
  readonly pour: FlatPour;
  /** The new amount as it is written, in the pour's own unit: `27.5 ml`. */
  readonly text: string;
  readonly outcome: Pick<Outcome, "value">;
  readonly edit: Edit;
  /** How far the amount moves: the logarithm of new ÷ old, without its sign. */
  readonly change: number;
  /** What makes stronger is cut by so much that it is another drink: by more than a third (practice). */
  readonly weakens: boolean;
}

/**
 * For each pour that may be changed for this the nearest amount at which the drink stands inside all of the
 * windows, as far as there is one; the smallest change first. Only one pour is changed at a time, between
 * one step of its measure and four times what it is.
 */
export function nearestAdjustments(
  house: House,
  assessment: Assessment,
  windows: readonly FamilyWindow[],
  mayChange: (perGram: Masses) => boolean,
): Adjustment[] {
  const { plan, pours, flat } = assessment;
  const changeable = changeableDrink(house, assessment);
  const found: Adjustment[] = [];
  for (const [index, pour] of pours.entries()) {
    if (whyFixed(changeable, pour) !== undefined || !mayChange(liquidOf(plan.pours[index]!.of).perGram)) continue;
    const { value, unit } = pour.quantity!;
    const step = stepFor(unit!.unit, changeable.settings, plan.serves);
    const present = plannedAmount(plan, index);
    if (!step || !present) continue;
    const size = present / value!;
    const nearest = nearestAmount(plan, index, step * size, windows);
    if (nearest === undefined) continue;
    const amount = withoutDust(nearest / size);
    // Parts of a stated total share it out anew; the search left the others as they are.
    const outcome = changeable.by(pour)(amount);
    const edit = changedLine(flat.entry, pours, pour, amount);
    if (!edit || !windows.every((window) => isInside(outcome, window))) continue;
    const weakens = amount < (2 / 3) * value! && liquidOf(plan.pours[index]!.of).perGram[at.ethanol]! > strong;
    found.push({ pour, text: amountText(pour, amount), outcome, edit, change: Math.abs(Math.log(amount / value!)), weakens });
  }
  return found.sort((one, other) => one.change - other.change);
}

/** What sweetens or sours: half of a dry wine's sugar and acid is too little to do it with. */
export function isTasted(perGram: Masses): boolean {
  return sugarOf(perGram) + perGram[at.titratable]! > 0.005;
}

/** What makes stronger, and what only makes longer: nobody moves the sour of a drink for its strength. */
export function isStrongOrPlain(perGram: Masses): boolean {
  return perGram[at.ethanol]! > strong || !isTasted(perGram);
}
/** Grams of alcohol in a gram from which on a pour is there for its strength. */
const strong = 0.05;

export function isSalty(perGram: Masses): boolean {
  return perGram[at.salt]! > 0.002;
}
