/** What a bar can measure: the steps of its jigger, its spoons, its jugs and its scale. */
import type { Quantity } from "../../grammar/tree.ts";
import type { Unit } from "../../grammar/units.ts";
import type { Settings } from "./settings.ts";
import { ounceFraction } from "./show.ts";

/** A jigger's step where it is marked in the other system: common practice, no source. */
const usualMl = 2.5;
const usualOunces = 1 / 8;
/** Halves and quarters by eye, tens of ml on a jug, tenths on an ounce scale: common practice, no source. */
const usualSteps: Readonly<Record<string, number>> = {
  tsp: 1 / 2,
  tbsp: 1 / 2,
  cup: 1 / 4,
  dl: 1 / 10,
  l: 1 / 100,
  "oz wt": 1 / 10,
  part: 1 / 4,
};

/** The step in which amounts of a unit are measured, in that unit; absent for what is not measured. */
export function stepOf(unit: Unit, settings: Settings): number | undefined {
  if (isPoured(unit)) {
    if (unit.id === "oz") return ounceStep(settings);
    return (settings.jiggerUnit === "ml" ? settings.jiggerMl : usualMl) / unit.ml!;
  }
  if (unit.bar) return 1;
  if (unit.id === "kg") return Math.max(1, settings.scaleG) / 1000; // What weighs kilograms shows whole grams.
  return unit.id === "g" || unit.id === "mg" ? settings.scaleG / unit.g! : usualSteps[unit.id];
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

/** A number of a unit as a spec writes it: ounces and parts in eighths and thirds where they come out, unless decimals stood there before. */
export function writtenNumber(value: number, unit: Unit, before?: Quantity): string {
  const broken = unit.id === "oz" || unit.dimension === "part";
  const fraction = broken && !before?.numeral.text.includes(".") ? ounceFraction(value) : undefined;
  return fraction ?? String(Number(value.toPrecision(6)));
}

/** The unit as it was spelled, in the number that the amount wants: `1 dash`, `2 dashes`. */
export function unitText(unit: Unit, spelled: string, amount: number): string {
  const [plural] = unit.also;
  if (!plural || !(unit.bar || unit.dimension === "part")) return spelled;
  const isWord = [unit.id, plural].includes(spelled.toLowerCase());
  return isWord ? (amount <= 1 ? unit.id : plural) : spelled;
}

/** An ounce jigger's own step; a pouring ounce is so many ml, and is measured in steps of them. */
function ounceStep(settings: Settings): number {
  if (settings.jiggerUnit === "oz" || settings.pouringOunce) return settings.jiggerMl / settings.ounceMl;
  return usualOunces;
}
