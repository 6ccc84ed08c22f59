/** An amount as the other system has it: what is written metric in ounces, and the other way round. */
import type { Quantity } from "../../grammar/tree.ts";
import type { Settings } from "./settings.ts";
import { showVolume } from "./show.ts";

/** Words that stand for a metric volume; all others of the language are counted in ounces where they come from. */
const metric: ReadonlySet<string> = new Set(["ml", "cl", "dl", "l"]);

/** `1 2/3 oz` for `50 ml`, by the house's ounce; absent for what is no measured volume. */
export function showInOtherUnits({ value, upTo, unit: word }: Quantity, settings: Settings): string | undefined {
  const unit = word?.unit;
  if (value === undefined || !unit?.ml || unit.bar || unit.spread > 0) return undefined;
  const size = unit.id === "oz" ? settings.ounceMl : unit.ml;
  return [value, upTo].flatMap((one) => (one === undefined ? [] : showInOther(one * size, metric.has(unit.id), settings))).join(" to ");
}

/** So many ml in ounces where they are told as metric, else in what the house writes metric amounts in. */
export function showInOther(ml: number, isMetric: boolean, { ounceMl, units }: Settings): string {
  return showVolume(ml, { units: isMetric ? "oz" : units === "cl" ? "cl" : "ml", ounceMl });
}
