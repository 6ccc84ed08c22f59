/** The nearest measurable amount of one pour at which a drink is as wanted. */
import type { Pour, Quantity } from "../../grammar/tree.ts";
import { assess } from "../engine/assess.ts";
import { liquidOf } from "../engine/composition.ts";
import { at, sugarOf } from "../engine/liquid.ts";
import type { Amount, Outcome, PourPlan, ServePlan } from "../engine/plan.ts";
import { isKnown } from "../engine/uncertainty.ts";
import type { Assessment } from "./drink.ts";
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
const farthest = 4;

/**
 * For each pour that brings sugar or acid the nearest amount at which the drink `fits`, as far as
 * there is one; the smallest change first. Only one pour is changed at a time.
 */
export function nearestAdjustments(house: House, assessment: Assessment, fits: (outcome: Outcome) => boolean): Adjustment[] {
  const settings = settingsOf(house, house.scopeOf(assessment.flat.entry));
  const found: Adjustment[] = [];
  for (const [index, pour] of assessment.pours.entries()) {
    const { quantity } = pour;
    const value = quantity?.value;
    const unit = quantity?.unit?.unit;
    if (!quantity || !unit || !value || quantity.upTo !== undefined || !isTasted(assessment.plan.pours[index]!)) continue;
    const step = stepOf(unit, settings);
    if (!step) continue;
    for (const amount of amountsAround(value, step)) {
      const outcome = assess(withAmount(assessment.plan, index, amount / value));
      if (!fits(outcome)) continue;
      found.push({ pour, quantity, text: writtenNumber(amount, unit, quantity), outcome, change: Math.abs(Math.log(amount / value)) });
      break;
    }
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

/** Whole numbers of steps on both sides of an amount, the nearest by ratio first. */
function amountsAround(value: number, step: number): number[] {
  const amounts: number[] = [];
  for (let count = 1; count * step <= farthest * value && count <= 200; count++) amounts.push(count * step);
  return amounts
    .filter((amount) => Math.abs(amount - value) > 1e-6 * value)
    .sort((one, other) => Math.abs(Math.log(one / value)) - Math.abs(Math.log(other / value)));
}

function withAmount(plan: ServePlan, index: number, factor: number): ServePlan {
  const pours = plan.pours.map((pour, at) => (at === index ? { ...pour, amount: scaled(pour.amount, factor) } : pour));
  return { ...plan, pours };
}

function scaled(amount: PourPlan["amount"], factor: number): PourPlan["amount"] {
  if ("ml" in amount && isKnown(amount.ml)) return { ml: { ...amount.ml, value: amount.ml.value * factor } } satisfies Amount;
  if ("g" in amount && isKnown(amount.g)) return { g: { ...amount.g, value: amount.g.value * factor } } satisfies Amount;
  return amount;
}

/** Whether there is sugar or acid in it. */
function isTasted({ of, amount }: PourPlan): boolean {
  if (!("ml" in amount || "g" in amount)) return false;
  const { perGram } = liquidOf(of);
  return sugarOf(perGram) + perGram[at.titratable]! > 0.005;
}
