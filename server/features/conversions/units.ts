/** The units that amounts are converted to, and how a converted number is written. */
import type { Quantity } from "../../../grammar/tree.ts";
import { findUnit, imperialOunceMl, type Unit, usOunceMl } from "../../../grammar/units.ts";
import { liquidOf } from "../../engine/composition.ts";
import { sizeOf } from "../../house/amounts.ts";
import type { Ingredient } from "../../house/ingredient.ts";
import { isMeasurable, nearestMeasurable, stepOf } from "../../house/measurable.ts";
import type { Settings } from "../../house/settings.ts";
import { ounceFraction, showNumber } from "../../house/show.ts";

export const targetIds = ["ml", "cl", "oz", "g"] as const;
export type TargetId = (typeof targetIds)[number];

/** An amount in another unit, as it is written. */
export interface Converted {
  readonly text: string;
  /** Absent where the amount is the same to the last digit; else what it was before rounding, for a reader. */
  readonly roundedFrom?: string;
}

/** What a unit is called in a title: which ounce is meant must be said. */
export function titleOf(target: TargetId, { ounceMl }: Settings): string {
  if (target !== "oz") return target;
  if (ounceMl === usOunceMl) return "oz (US)";
  return ounceMl === imperialOunceMl ? "oz (imperial)" : `oz of ${showNumber(ounceMl)} ml`;
}

/** The step that amounts of a unit are rounded to, as a title says it. */
export function stepTitle(target: TargetId, settings: Settings): string {
  const step = stepOf(findUnit(target)!, settings)!;
  return `${(target === "oz" && ounceFraction(step)) || showNumber(step)} ${target}`;
}

/** Whether an amount of the unit is measured out; dashes, spoonfuls by hand, counts and parts are not. */
export function isMeasured(unit: Unit | undefined): unit is Unit {
  return unit !== undefined && !unit.bar && (unit.dimension === "volume" || unit.dimension === "mass");
}

/**
 * A measured amount in another unit: exactly, or rounded to what the house measures. Absent where it is
 * in that unit already, where the density that it needs is unknown, or where it would round to nothing.
 */
export function convert(
  quantity: Quantity,
  ingredient: Ingredient,
  target: TargetId,
  settings: Settings,
  round: boolean,
): Converted | undefined {
  const unit = quantity.unit?.unit;
  if (!isMeasured(unit) || quantity.value === undefined) return undefined;
  const factor = factorBetween(unit, findUnit(target)!, ingredient, settings);
  if (factor === undefined || (unit.id === target && !round)) return undefined;
  return write([quantity.value, quantity.upTo], factor, target, settings, round);
}

/** Numbers times a factor as an amount of the unit. */
export function write(
  [value, upTo]: readonly [number, number | undefined],
  factor: number,
  target: TargetId,
  settings: Settings,
  round: boolean,
): Converted | undefined {
  const step = stepOf(findUnit(target)!, settings)!;
  const ends = upTo === undefined ? [value] : [value, upTo];
  const exact = ends.map((end) => end * factor);
  if (exact.some((end) => !Number.isFinite(end) || (end !== 0 && (Math.abs(end) < leastWritten || Math.abs(end) > mostWritten))))
    return undefined;
  if (!round) return { text: `${exact.map((end) => writtenExactly(end, target)).join(" to ")} ${target}` };
  if (exact.every((end) => isMeasurable(end, step)) || exact.some((end) => end < step / 2)) return undefined;
  const rounded = exact.map((end) => nearestMeasurable(end, step));
  return {
    text: `${rounded.map((end) => writtenExactly(end, target)).join(" to ")} ${target}`,
    roundedFrom: `${exact.map((end) => showNumber(end)).join(" to ")} ${target}`,
  };
}

/** Beyond these a number is not written in plain digits. */
const leastWritten = 1e-6;
const mostWritten = 1e9;
/** How near a written number comes to what it stands for, as a share of it. */
const exactness = 5e-10;

/** The fewest digits that stand for the number: `3/4` and `1 1/2` for ounces, else decimals to a part in two thousand million. */
export function writtenExactly(value: number, target: TargetId | "part"): string {
  const fraction = target === "oz" || target === "part" ? ounceFraction(value) : undefined;
  if (fraction) return fraction;
  for (let digits = 1; digits <= 12; digits++) {
    const text = Number(value.toPrecision(digits));
    if (Math.abs(text - value) <= exactness * Math.abs(value)) return plainDigits(text);
  }
  return plainDigits(value);
}

function plainDigits(value: number): string {
  const text = String(value);
  return text.includes("e") ? value.toFixed(15).replace(/0+$/, "") : text;
}

/** How many of the target are in one of the unit; by the ingredient's density between volume and weight. */
function factorBetween(from: Unit, to: Unit, { model, facts }: Ingredient, settings: Settings): number | undefined {
  const [one, other] = [sizeOf(from, facts, settings).value, sizeOf(to, facts, settings).value];
  if (from.dimension === to.dimension) return one / other;
  const liquid = liquidOf(model);
  if (liquid.reasons.volume.length > 0 || liquid.reasonsWeighed.volume.length > 0) return undefined;
  return from.dimension === "volume" ? (one * liquid.gPerMl) / other : one / liquid.gPerMl / other;
}
