/** What a bar can measure: the steps of its jigger, its spoons and its scale. */
import type { Quantity } from "../../grammar/tree.ts";
import type { Unit } from "../../grammar/units.ts";
import type { Settings } from "./settings.ts";
import { ounceFraction } from "./show.ts";

/** A jigger's step where it is marked in the other system: common practice, no source. */
const usualMl = 2.5;
const usualOunces = 1 / 8;

/** The step in which amounts of a unit are measured, in that unit; absent for what is not measured. */
export function stepOf(unit: Unit, settings: Settings): number | undefined {
  if (isPoured(unit)) {
    if (unit.id === "oz") return ounceStep(settings);
    return (settings.jiggerUnit === "ml" ? settings.jiggerMl : usualMl) / unit.ml!;
  }
  if (unit.bar) return 1;
  if (unit.dimension === "part") return 1 / 4;
  if (unit.id === "g") return 1 / 2;
  return unit.id === "tsp" || unit.id === "tbsp" ? 1 / 2 : undefined;
}

/** Whether amounts of the unit are measured with a jigger. */
export function isPoured(unit: Unit): boolean {
  return unit.id === "ml" || unit.id === "cl" || unit.id === "oz";
}

/** Whether the amount is a whole number of steps. */
export function isMeasurable(amount: number, step: number): boolean {
  return Math.abs(amount / step - Math.round(amount / step)) < 1e-6 * Math.max(1, amount / step);
}

/** The whole number of steps nearest to an amount, at least one. */
export function nearestMeasurable(amount: number, step: number): number {
  return Math.max(1, Math.round(amount / step)) * step;
}

/** A number of a unit as a spec writes it: ounces in eighths and thirds where they come out, unless decimals stood there before. */
export function writtenNumber(value: number, unit: Unit, before?: Quantity): string {
  const fraction = unit.id === "oz" && !before?.numeral.text.includes(".") ? ounceFraction(value) : undefined;
  return fraction ?? String(Number(value.toPrecision(6)));
}

/** An ounce jigger's own step; a pouring ounce is so many ml, and is measured in steps of them. */
function ounceStep(settings: Settings): number {
  if (settings.jiggerUnit === "oz" || settings.pouringOunce) return settings.jiggerMl / settings.ounceMl;
  return usualOunces;
}
