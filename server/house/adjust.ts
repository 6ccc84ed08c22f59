/** The nearest measurable amount of one pour at which a drink is as wanted. */
import type { Pour, Quantity } from "../../grammar/tree.ts";
import { nearestAmount } from "../engine/adjust.ts";
import { assess } from "../engine/assess.ts";
import { liquidOf } from "../engine/composition.ts";
import { at, sugarOf } from "../engine/liquid.ts";
import type { Outcome, PourPlan, ServePlan } from "../engine/plan.ts";
import { isKnown } from "../engine/uncertainty.ts";
import type { Assessment } from "./drink.ts";
import { type FamilyWindow, isInside } from "./family.ts";
import type { Edit } from "./finding.ts";
import type { House } from "./house.ts";
import { stepOf, writtenNumber } from "./measurable.ts";
import type { FlatPour } from "./riff.ts";
import { settingsOf } from "./settings.ts";
import { writtenName } from "./write.ts";

export interface Adjustment {
  readonly pour: FlatPour;
  readonly quantity: Quantity;
  /** The new amount as it is written, in the pour's own unit. */
  readonly text: string;
  readonly outcome: Outcome;
  /** How far the amount moves: the logarithm of new ÷ old, without its sign. */
  readonly change: number;
}

/** Amounts are tried up to so many times the present one, and down to one step. */
const furthest = 4;

/**
 * For each pour that brings sugar or acid the nearest amount at which the drink stands inside all of
 * the windows, as far as there is one; the smallest change first. Only one pour is changed at a time.
 */
export function nearestAdjustments(house: House, { flat, plan, pours }: Assessment, windows: readonly FamilyWindow[]): Adjustment[] {
  const settings = settingsOf(house, house.scopeOf(flat.entry));
  const found: Adjustment[] = [];
  for (const [index, pour] of pours.entries()) {
    const { quantity } = pour;
    const planned = plan.pours[index]!;
    const unit = quantity?.unit?.unit;
    const step = unit && stepOf(unit, settings);
    const oneMl = quantity && mlOfOne(quantity, planned);
    if (!quantity || !step || !oneMl || !isTasted(planned)) continue;
    // What is poured for several serves moves by a step for each of them.
    const stepMl = step * oneMl * Math.max(1, plan.serves);
    const ends = [stepMl, furthest * quantity.value! * oneMl].map((ml) => assess(withAmount(plan, index, ml)));
    if (!windows.every((window) => isReached(window, ends))) continue;
    const ml = nearestAmount(plan, index, stepMl, (outcome) => windows.every((window) => isInside(outcome, window)), furthest);
    if (ml === undefined) continue;
    const amount = ml / oneMl;
    found.push({
      pour,
      quantity,
      text: writtenNumber(amount, unit, quantity),
      outcome: assess(withAmount(plan, index, ml)),
      change: Math.abs(Math.log(amount / quantity.value!)),
    });
  }
  return found.sort((one, other) => one.change - other.change);
}

/** The edit that gives a pour of this drink another amount; a riff writes its own line for a pour that it inherits. */
export function editOf(assessment: Assessment, { pour, quantity, text }: Adjustment): Edit {
  const { entry } = assessment.flat;
  const own = pour.entry === entry ? writtenIn(pour) : undefined;
  if (own?.quantity === quantity) return { entry, line: pour.line, start: quantity.numeral.start, end: quantity.numeral.end, text };
  const amount = `${text} ${quantity.unit!.text}`;
  // A swap that keeps the amount of what it replaces: the new amount goes before its name.
  if (own?.name) return { entry, line: pour.line, start: own.name.start, end: own.name.start, text: `${amount} ` };
  const line = entry.lines.findLastIndex(({ content }) => content.kind !== "blank" && content.kind !== "comment");
  const end = entry.lines[line]!.text.length;
  return { entry, line, start: end, end, text: `\n  ${amount} ${writtenName(pour.ingredient.resolution.text)}` };
}

function writtenIn(pour: FlatPour): Pour | undefined {
  const content = pour.entry.lines[pour.line]?.content;
  if (content?.kind === "swap") return content.readings.find((reading) => reading.in.name === pour.name)?.in;
  return content?.kind === "pour" ? content.pour : undefined;
}

/**
 * Whether a window can be reached between two ends. What one pour does to a figure goes one way, so
 * where both ends are out on the same side, everything between them is.
 */
function isReached({ figure, low, high }: FamilyWindow, ends: readonly Outcome[]): boolean {
  const values = ends.map((outcome) => outcome.value(figure));
  return !values.every((value) => value !== null && value < low) && !values.every((value) => value !== null && value > high);
}

/** Millilitres of one of the pour's unit; absent for what is weighed, ranges, and amounts nobody knows. */
function mlOfOne({ value, upTo }: Quantity, { amount }: PourPlan): number | undefined {
  if (!value || upTo !== undefined || !("ml" in amount) || !isKnown(amount.ml)) return undefined;
  return amount.ml.value / value;
}

function withAmount(plan: ServePlan, index: number, value: number): ServePlan {
  const pour = plan.pours[index]!;
  return { ...plan, pours: plan.pours.with(index, { ...pour, amount: { ml: { value, u: 0, why: "as adjusted" } } }) };
}

/** Whether there is sugar or acid in it. */
function isTasted({ of }: PourPlan): boolean {
  const { perGram } = liquidOf(of);
  return sugarOf(perGram) + perGram[at.titratable]! > leastTaste;
}

/** Grams of sugar and acid in a gram, below which a pour is no way to make a drink sweeter or sourer: half of a dry wine's. */
const leastTaste = 0.005;
