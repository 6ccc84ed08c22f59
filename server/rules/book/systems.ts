/** Which system of units a unit is of. */
import type { Unit } from "../../../grammar/units.ts";
import type { System } from "../../house/book/style.ts";

const metric: ReadonlySet<string> = new Set(["ml", "cl", "dl", "l", "mg", "g", "kg"]);
const american: ReadonlySet<string> = new Set(["oz", "oz wt", "lb", "cup", "pint", "quart", "gallon"]);

/** Absent for spoons and what is shaken or dropped: they stand in every book. */
export function systemOf({ id }: Unit): System | undefined {
  return metric.has(id) ? "metric" : american.has(id) ? "US" : undefined;
}
