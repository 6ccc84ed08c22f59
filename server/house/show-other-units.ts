/**
 * An amount as the other system has it: what is written metric in ounces, and the other way round. Exactly, for whoever
 * writes the spec, and as it is poured, for whoever makes the drink.
 */
import type { Quantity } from "../../grammar/tree.ts";
import { findUnit } from "../../grammar/units.ts";
import { mlOfPrinted, pouredVolume } from "./book/amount.ts";
import { stepOf, unitText } from "./measurable.ts";
import type { Settings } from "./settings.ts";
import { ounceFraction, showNumber, showVolume } from "./show.ts";

/** Words that stand for a metric volume; all others of the language are counted in ounces where they come from. */
const metric: ReadonlySet<string> = new Set(["ml", "cl", "dl", "l"]);

/** `1 2/3 oz` for `50 ml`, by the house's ounce; absent for what is no measured volume. */
export function showInOtherUnits(quantity: Quantity, settings: Settings): string | undefined {
  const { ounceMl, units } = settings;
  const measure = { units: isMetric(quantity) ? "oz" : units === "cl" ? "cl" : "ml", ounceMl } as const;
  const ends = endsMl(quantity, settings);
  return ends.length > 0 ? ends.map((ml) => showVolume(ml, measure)).join(" to ") : undefined;
}

/** `≈ 7/8 oz` for `25 ml`: what is measured in the other system, and marked where that is rounded. Absent for what is no measured volume. */
export function showPouredInOther(quantity: Quantity, settings: Settings): string | undefined {
  const ends = endsMl(quantity, settings);
  return ends.length > 0 ? pouredText(ends, isMetric(quantity), quantity.about !== undefined, settings) : undefined;
}

/** The same of a volume that is told as metric, or else in ounces. */
export function showPouredMl(ml: number, isMetric: boolean, settings: Settings): string {
  return pouredText([ml], isMetric, false, settings);
}

function isMetric({ unit }: Quantity): boolean {
  return metric.has(unit?.unit.id ?? "");
}

/** One, or both of a range; none for what is no measured volume. */
function endsMl({ value, upTo, unit: word }: Quantity, { ounceMl }: Settings): number[] {
  const unit = word?.unit;
  if (value === undefined || !unit?.ml || unit.bar || unit.spread > 0) return [];
  const size = unit.id === "oz" ? ounceMl : unit.ml;
  return [value, upTo].flatMap((one) => (one === undefined ? [] : one * size));
}

function pouredText(ends: readonly number[], isMetric: boolean, about: boolean, settings: Settings): string {
  const rounding = { ounceMl: settings.ounceMl, ounceStep: ounceStep(settings) };
  const poured = ends.map((ml) => pouredVolume(ml, rounding, isMetric ? "US" : "metric"));
  const isRounded = poured.some(({ value, unit }, index) => {
    const ml = mlOfPrinted({ about, low: value, unit: unit! }, rounding)!;
    return Math.abs(ml - ends[index]!) > 1e-6 * ends[index]!;
  });
  return `${about || isRounded ? "≈ " : ""}${[...new Set(poured.map((one) => textOf(one, settings)))].join(" to ")}`;
}

function textOf({ value, unit: id }: ReturnType<typeof pouredVolume>, { units }: Settings): string {
  const unit = findUnit(id === "ml" && units === "cl" ? "cl" : id!)!;
  const number = unit.id === id ? value : value / 10;
  const fraction = metric.has(unit.id) ? undefined : ounceFraction(number);
  return `${fraction ?? showNumber(number)} ${unitText(unit, unit.id, number)}`;
}

/** A bar whose jigger is marked in ml has one for ounces beside it, with the usual marks. */
function ounceStep(settings: Settings): number {
  return stepOf(findUnit("oz")!, { ...settings, pouringOunce: false })!;
}
