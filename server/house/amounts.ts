/** From a written quantity to millilitres or grams, with the spread of how it is measured. */
import type { Quantity } from "../../grammar/tree.ts";
import type { Unit } from "../../grammar/units.ts";
import type { Amount, Known, Uncertain, Unknown } from "../engine/plan.ts";
import type { Ingredient } from "./ingredient.ts";
import { has } from "./modifiers.ts";
import { pieceOf } from "./piece.ts";
import type { Settings } from "./settings.ts";
import { ownBarMeasure, type StockFacts } from "./stock.ts";
import { counted, spreadOf } from "./values.ts";

/** How large one part is, in a drink with `total:` or `part:`, or in a prep. */
export type PartSize = { readonly ml: Known } | { readonly g: Known } | Unknown;

export interface Measuring {
  readonly settings: Settings;
  /** Poured with a jigger, as at the bar; otherwise weighed or measured in a jug, as for a prep. */
  readonly jigger: boolean;
  readonly part: PartSize;
}

/** The amount of an ingredient; unknown where the text, the unit or the stock does not tell. */
export function amountOf(quantity: Quantity, of: Ingredient, measuring: Measuring): Amount {
  if (quantity.value === undefined) return { ml: { because: `“${quantity.numeral.text}” can be read in two ways` } };
  const unit = quantity.unit?.unit;
  if (!unit || unit.dimension === "piece") return pieces(quantity, unit, of);
  if (unit.dimension === "part") return parts(quantity, measuring.part);
  if (unit.dimension !== "volume" && unit.dimension !== "mass") return { ml: { because: `“${unit.id}” is no measure of a pour` } };
  const size = sizeOf(unit, of.facts, measuring.settings);
  const read = spreadOf(quantity, (value) => handSpread(value * size.value, unit, measuring), wayOf(unit, measuring))!;
  const stated = quantity.upTo === undefined && !quantity.about;
  // A range's spread is in its unit; a stated amount's is in ml or g already.
  const u = Math.hypot(stated ? read.u : read.u * size.value, read.value * size.u);
  const amount = { value: read.value * size.value, u, why: read.why };
  return unit.dimension === "volume" ? { ml: amount } : { g: amount };
}

/** One of a unit in ml or g; a bar measure is the stock's own, else the house's. */
export function sizeOf(unit: Unit, facts: StockFacts | undefined, settings: Settings): Uncertain {
  const own = facts && unit.bar ? ownBarMeasure(facts, unit.id, settings.ounceMl) : undefined;
  if (own) return own;
  const bar = settings.bar[unit.id];
  if (bar) return bar;
  // Spoons, cups and pints follow the US ounce whatever the house pours: NIST Handbook 44.
  const value = unit.id === "oz" ? settings.ounceMl : (unit.ml ?? unit.g ?? 0);
  return { value, u: value * unit.spread, why: unit.doc };
}

function handSpread(amount: number, unit: Unit, { settings, jigger }: Measuring): number {
  if (unit.bar) return 0;
  // A kitchen scale: practice, no source. A coarser one is right to half its step, taken as a rectangle.
  if (unit.dimension === "mass") return Math.max(0.05, settings.scaleG / 2 / Math.sqrt(3), 0.005 * amount);
  // A jigger is right to half its step, taken as a rectangle; a measuring jug to 1 %: practice, no source.
  if (!jigger) return 0.01 * amount;
  const between = settings.jiggerMl / 2 / Math.sqrt(3);
  return isOnMark(amount / settings.jiggerMl) ? Math.min(between, onMarkMl) : between;
}

/** However far apart its marks are, what is filled to one of them is right to this, ml: practice, no source. */
const onMarkMl = 1;

function isOnMark(steps: number): boolean {
  return Math.abs(steps - Math.round(steps)) < 0.02;
}

function wayOf(unit: Unit, { jigger }: Measuring): string {
  if (unit.bar) return `a ${unit.id} by hand`;
  if (unit.dimension === "mass") return "as weighed";
  return jigger ? "as measured with the jigger" : "as measured in a jug";
}

function parts(quantity: Quantity, part: PartSize): Amount {
  if ("because" in part) return { ml: part };
  const scale = (known: Known): Known => ("because" in known ? known : counted(quantity, known)!);
  return "g" in part ? { g: scale(part.g) } : { ml: scale(part.ml) };
}

/** A count weighs what the stock's `each:` says, by form; `juiced` gives its `yield:`. */
function pieces(quantity: Quantity, unit: Unit | undefined, of: Ingredient): Amount {
  const juiced = has(of.resolution.modifiers, "juiced");
  const form = unit?.id;
  const name = of.resolution.text;
  const piece = of.facts && pieceOf(of.facts, juiced ? "juiced" : form, juiced ? "yield" : "each");
  if (!piece) {
    const what = juiced ? `how much juice one ${name} gives` : `what one ${form ? `${form} of ` : ""}${name} weighs or holds`;
    return { g: { because: `${what} is not given` } };
  }
  const amount = counted(quantity, piece.one)!;
  return piece.volume ? { ml: amount } : { g: amount };
}
