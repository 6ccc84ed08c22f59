/** Behind a field's number: the units that it may have. */
import type { Field } from "../../../grammar/fields.ts";
import { findUnit } from "../../../grammar/units.ts";
import { unitsOf } from "../../rules/field-values.ts";
import type { Asked, Group } from "./offer.ts";
import { unitGroup } from "./units.ts";
import { numberAt, type ValueAt } from "./values.ts";

const contents = ["g/100 ml", "g/100 g", "mg/100 g", "mg/100 ml", "g/l"];
const windowUnits: Readonly<Record<string, readonly string[]>> = { strength: ["%"], dilution: ["%"], ratio: [] };
const unitsByName: Readonly<Record<string, readonly string[]>> = {
  ...unitsOf,
  scale: ["g", "mg"],
  each: ["g", "ml"],
  yield: ["ml", "g", "l", "kg"],
  keeps: ["hour", "day", "week", "month"],
  caffeine: ["mg/100 g", "mg/100 ml"],
};

/** Absent where no number stands before the cursor, or what follows it is no unit. */
export function behindNumber(asked: Asked, field: Field, { start }: ValueAt): Group[] | undefined {
  const number = numberAt(asked.before, start);
  if (!number) return undefined;
  const units = unitsFor(field).filter((id) => findUnit(id));
  // What follows a count or a price is no unit.
  return units.length > 0 ? [unitGroup(asked, number.start, units)] : undefined;
}

function unitsFor({ name, shape }: Field): readonly string[] {
  if (shape === "percent") return ["%"];
  if (shape === "temperature") return ["C", "F"];
  if (shape === "window") return windowUnits[name] ?? ["g/100 ml"];
  return unitsByName[name] ?? (shape === "content" ? contents : []);
}
