/**
 * An amount as a book prints it: in its systems of units, rounded to what is poured there. What a spec
 * writes in a system stands in it as it is written; everything else is the nearest that a bar measures.
 */
import type { Pour, Quantity } from "../../../grammar/tree.ts";
import { findUnit, type Unit } from "../../../grammar/units.ts";
import { ounceFraction } from "../show.ts";
import type { BookStyle, System } from "./style.ts";

/** A pour as it is measured. */
export type Poured = Pick<Pour, "lead" | "quantity"> & {
  /** One part of it, where the drink says how large that is. */
  readonly part?: { readonly ml: number } | { readonly g: number };
};

/** So much of a unit; without one it is a count. */
export interface Printed {
  readonly about: boolean;
  readonly low: number;
  /** The other end of a range. */
  readonly high?: number;
  readonly unit?: string;
  /** The exact weight, where it has to stay beside an ounce. */
  readonly grams?: number;
}

/** Absent where no amount is stated, or none that can be computed. */
export function printedAmount({ quantity, part }: Poured, style: BookStyle, system: System): Printed | undefined {
  if (!quantity || quantity.value === undefined) return undefined;
  const about = quantity.about !== undefined;
  const ends = [...new Set([quantity.value, quantity.upTo ?? quantity.value])].sort((one, other) => one - other);
  const [low, high] = ends.map((value) => measured(value, quantity, part, style, system));
  const grams = low!.grams !== undefined && high === undefined ? { grams: low!.grams } : {};
  const unit = low!.unit !== undefined ? { unit: low!.unit } : {};
  if (!high || (high.unit === low!.unit && high.value === low!.value)) return { about, low: low!.value, ...unit, ...grams };
  // A range in two units would be read as two amounts.
  if (high.unit !== low!.unit) return { about, ...inUnit(low!, high, style) };
  return { about, low: low!.value, high: high.value, ...unit };
}

/** So much of a unit as it is measured; a count has none. */
interface Measured {
  readonly value: number;
  readonly unit?: string;
  readonly grams?: number;
}

function measured(value: number, { unit: word }: Quantity, part: Poured["part"], style: BookStyle, system: System): Measured {
  const unit = word?.unit;
  if (!unit) return { value };
  if (unit.dimension === "part" && part) {
    return "ml" in part ? pouredVolume(value * part.ml, style, system) : weighed(value * part.g, style, system);
  }
  if (unit.bar || (unit.dimension !== "volume" && unit.dimension !== "mass")) return { value, unit: unit.id };
  if (systemOf(unit) === system && !(unit.id === "oz" && style.writtenOunceMl !== style.ounceMl)) return asWritten(value, unit);
  if (unit.g) return weighed(value * unit.g, style, system);
  return pouredVolume(value * mlOf(unit, style), style, system);
}

/** A volume that is not written in a system, as it is poured there. */
export function pouredVolume(ml: number, rounding: Rounding, system: System): Measured {
  return system === "metric" ? metricMl(ml) : poured(ml, rounding);
}

/** How ounces are rounded. */
type Rounding = Pick<BookStyle, "ounceMl" | "ounceStep">;

/** Millilitres in one of a unit as a spec means it. */
export function mlOf(unit: Unit, { writtenOunceMl }: Pick<BookStyle, "writtenOunceMl">): number {
  return unit.id === "oz" ? writtenOunceMl : unit.ml!;
}

function systemOf({ id }: Unit): System {
  return metricIds.has(id) ? "metric" : "US";
}
const metricIds = new Set(["ml", "cl", "dl", "l", "mg", "g", "kg"]);

function asWritten(value: number, unit: Unit): Measured {
  if (!metricIds.has(unit.id)) return { value, unit: unit.id };
  return unit.g ? inGrams(value * unit.g) : inMl(value * unit.ml!);
}

/** Float noise of a factor is no digit that anybody wrote. */
function clean(value: number): number {
  return Number(value.toPrecision(10));
}

function inMl(ml: number): Measured {
  return ml >= 1000 ? { value: clean(ml / 1000), unit: "l" } : { value: clean(ml), unit: "ml" };
}

function inGrams(grams: number): Measured {
  if (grams >= 1000) return { value: clean(grams / 1000), unit: "kg" };
  return grams < 0.1 && grams > 0 ? { value: clean(grams * 1000), unit: "mg" } : { value: clean(grams), unit: "g" };
}

/** Millilitres that another unit comes to, on the marks of jiggers and jugs: practice, no source. */
function metricMl(ml: number): Measured {
  if (!(ml > 0)) return { value: 0, unit: "ml" };
  const step = metricStepAt(ml);
  return inMl(Math.max(1, Math.round(ml / step)) * step);
}

function metricStepAt(ml: number): number {
  return ml < 2.5 ? 0.5 : ml < 100 ? 2.5 : ml < 1000 ? 5 : 10;
}

/** A volume in ounces, or in spoons where ounces are too coarse. */
function poured(ml: number, style: Rounding): Measured {
  if (!(ml > 0)) return { value: 0, unit: "oz" };
  const ounces = ml / style.ounceMl;
  const nearest = nearestOunces(ounces, style.ounceStep);
  const spoons = spoonsOf(ounces, ml);
  const off = (found: number) => Math.abs(found - ounces);
  const coarse = off(nearest) > 0.05 * ounces && ounces < 0.5;
  return coarse && off(spoons.ounces) < off(nearest) ? { value: spoons.value, unit: spoons.unit } : { value: nearest, unit: "oz" };
}

/** Ounces as they are printed: the nearest step. What a jigger pours in eighths or thirds without a rest stays as it is. */
export function nearestOunces(ounces: number, ounceStep: number): number {
  if (ounces < jugOunces && ounceFraction(ounces)) return clean(ounces);
  return clean(Math.max(1, Math.round(ounces / ounceStep)) * ounceStep);
}

/** From here on it is poured by the jug, which has no eighths and no thirds: practice, no source. */
export const jugOunces = 8;

/** A teaspoon is a sixth of the ounce that is poured beside it: NIST Handbook 44. Less than half a one is shaken or dropped. */
function spoonsOf(ounces: number, ml: number): { value: number; unit: string; ounces: number } {
  const few = (id: "dash" | "drop") => {
    const size = findUnit(id)!.ml!;
    const value = Math.max(1, Math.round(ml / size));
    return { value, unit: id, ounces: (value * size * ounces) / ml };
  };
  const teaspoons = ounces * 6;
  if (ml < 0.5) return few("drop");
  if (ml < 1) return few("dash");
  const step = spoonStepAt(teaspoons);
  const value = Math.max(1, Math.round(teaspoons / step)) * step;
  return { value, unit: "tsp", ounces: value / 6 };
}

function spoonStepAt(teaspoons: number): number {
  return teaspoons < 0.9 ? 1 / 4 : 1 / 2;
}

/** The printed amount on the other side of the exact one; absent where there is none, and for what is not rounded by steps. */
export function otherWay(printed: Printed, exactMl: number, style: BookStyle): Printed | undefined {
  const { low, high, unit } = printed;
  const ml = mlOfPrinted(printed, style);
  if (ml === undefined || high !== undefined) return undefined;
  const steps: Readonly<Record<string, number>> = {
    oz: style.ounceStep,
    tsp: spoonStepAt((exactMl / style.ounceMl) * 6),
    ml: metricStepAt(exactMl),
  };
  const step = steps[unit ?? ""];
  const value = step && clean(low + (ml > exactMl ? -step : step));
  return value && value > 0 ? { ...printed, low: value } : undefined;
}

/** Grams, and for a kitchen with an ounce scale ounces of weight where these say it well enough: to one part in forty, practice. */
function weighed(grams: number, style: BookStyle, system: System): Measured {
  if (system === "metric") return inGrams(grams < 10 ? clean(Math.round(grams * 10) / 10) : Math.round(grams));
  const exact = grams / findUnit("oz wt")!.g!;
  const step = exact < 16 ? 1 / 4 : 1 / 2;
  const ounces = Math.round(exact / step) * step;
  if (exact < 1 || Math.abs(ounces - exact) > exact / 40) return inGrams(grams);
  return { value: ounces, unit: "oz wt", ...(style.systems.length === 1 && { grams: clean(grams) }) };
}

/** Both ends in ounces, or both as they are. */
function inUnit(low: Measured, high: Measured, { ounceMl }: BookStyle): Omit<Printed, "about"> {
  const size = (unit: string | undefined) => (unit === "oz" ? ounceMl : unit === "tsp" ? ounceMl / 6 : (findUnit(unit ?? "")?.ml ?? 1));
  const smaller = size(low.unit) <= size(high.unit) ? low.unit : high.unit;
  const scaled = ({ value, unit }: Measured) => clean(Math.round(((value * size(unit)) / size(smaller)) * 4) / 4);
  return { low: scaled(low), high: scaled(high), ...(smaller && { unit: smaller }) };
}

/** What a printed amount of a system comes to in the book's own ounce, ml; absent for what is no volume. */
export function mlOfPrinted({ low, high, unit }: Printed, { ounceMl }: Pick<BookStyle, "ounceMl">): number | undefined {
  const size = unit === "oz" ? ounceMl : unit === "tsp" ? ounceMl / 6 : findUnit(unit ?? "")?.ml;
  return size === undefined ? undefined : ((low + (high ?? low)) / 2) * size;
}
