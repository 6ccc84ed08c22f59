/**
 * Whether a drink as printed is the same drink: in each system of units its ratio, strength, sugar and acid
 * by what is printed, held against its windows, or against its own figures where it has none. Where they
 * leave, the one pour to round the other way, or a finer step.
 */
import type { Entry, Quantity } from "../../../grammar/tree.ts";
import { findUnit } from "../../../grammar/units.ts";
import type { FigureName, Outcome } from "../../engine/plan.ts";
import { type Assessment, assessDrink, assessFlat } from "../drink.ts";
import { familyOf, type WindowField } from "../family.ts";
import type { House } from "../house.ts";
import { type FlatPour, flatten } from "../riff.ts";
import { capital, showList, showNumber, showWindow } from "../show.ts";
import { mlOf, mlOfPrinted, otherWay, type Poured, type Printed, printedAmount } from "./amount.ts";
import { amountText, fractionText } from "./amount-text.ts";
import { poursOf } from "./pours.ts";
import type { BookStyle, System } from "./style.ts";

export type Rounding = { readonly fine: true } | RoundedOff;

export interface RoundedOff {
  readonly system: System;
  /** Each figure that leaves, in words: `its ratio is 14.2, above 4 to 13`. */
  readonly off: readonly string[];
  /** The pour that brings it back, rounded the other way. */
  readonly flip?: { readonly pour: FlatPour; readonly from: string; readonly to: string; readonly ml: number };
  /** Where no single pour does: a step of ounces that does. */
  readonly step?: number;
  readonly message: string;
  readonly todo: string;
}

/** Of a drink; a prep is weighed as it is written. */
export function roundingOf(house: House, entry: Entry, style: BookStyle): Rounding {
  if (entry.kind !== "drink") return { fine: true };
  const key = `rounding ${style.systems} ${style.ounceStep} ${style.ounceMl} ${style.writtenOunceMl}`;
  return house.recall(entry, key, () => {
    for (const system of style.systems) {
      const found = roundingIn(house, entry, style, system);
      if (!("fine" in found)) return found;
    }
    return { fine: true };
  });
}

function roundingIn(house: House, entry: Entry, style: BookStyle, system: System): Rounding {
  const base = assessDrink(house, entry);
  const flat = flatten(house, entry);
  const measured = measuredPours(house, entry, style, system);
  if (measured.every(({ ml, exactMl }) => isSame(ml, exactMl))) return { fine: true };
  const allowed = allowedFor(house, base);
  const judge = (pours: readonly MeasuredPour[]) =>
    judged(assessFlat(house, { ...flat, pours: poured(flat.pours, pours) }).outcome, allowed);
  const printed = judge(measured);
  if (printed.off.length === 0) return { fine: true };
  const flip = bestFlip(measured, judge, style);
  const step = flip ? undefined : finerStep(style, (finer) => judge(measuredPours(house, entry, finer, system)).off.length === 0);
  return told(entry, system, printed.off, style, flip, step);
}

interface MeasuredPour {
  readonly pour: FlatPour;
  readonly exactMl: number;
  readonly printed: Printed;
  /** What is printed comes to. */
  readonly ml: number;
}

/** What is measured by volume; a dash is a dash in any system. */
function measuredPours(house: House, entry: Entry, style: BookStyle, system: System): MeasuredPour[] {
  const { pours } = flatten(house, entry);
  return poursOf(house, entry).flatMap((one, index) => {
    const exactMl = exactOf(one, style);
    const printed = exactMl === undefined ? undefined : printedAmount(one, style, system);
    const ml = printed && mlOfPrinted(printed, style);
    return exactMl === undefined || ml === undefined ? [] : [{ pour: pours[index]!, exactMl, printed: printed!, ml }];
  });
}

function exactOf({ quantity, part }: Poured, style: BookStyle): number | undefined {
  const unit = quantity?.unit?.unit;
  if (quantity?.value === undefined || !unit || unit.bar) return undefined;
  const value = (quantity.value + (quantity.upTo ?? quantity.value)) / 2;
  if (unit.dimension === "part") return part && "ml" in part ? value * part.ml : undefined;
  return unit.ml === undefined ? undefined : value * mlOf(unit, style);
}

function isSame(one: number, other: number): boolean {
  return Math.abs(one - other) < 1e-6 * Math.max(1, other);
}

/** The drink's pours with the amounts that are printed. */
function poured(pours: readonly FlatPour[], measured: readonly MeasuredPour[]): FlatPour[] {
  return pours.map((pour) => {
    const found = measured.find((one) => one.pour === pour);
    return found ? { ...pour, quantity: inMl(pour.quantity!, found.ml) } : pour;
  });
}

function inMl(quantity: Quantity, value: number): Quantity {
  const { upTo: _, ...rest } = quantity;
  return { ...rest, value, unit: { ...quantity.unit!, unit: findUnit("ml")! } };
}

// What is allowed

interface Allowed {
  readonly figure: FigureName;
  readonly label: string;
  readonly own: number;
  readonly low: number;
  readonly high: number;
  readonly windowed: boolean;
}

/** Without a window: so far from the drink's own is not another drink. Practice, no source. */
const tolerances: readonly Tolerance[] = [
  { field: "ratio", figure: "ratio", label: "ratio", share: 0.15, least: 0 },
  { field: "strength", figure: "strengthPct", label: "strength", share: 0, least: 1.5 },
  { field: "sugar", figure: "sweetnessGPer100Ml", label: "sweetness", share: 0.15, least: 0.5 },
  { field: "acid", figure: "acidGPer100Ml", label: "acid", share: 0.15, least: 0.05 },
];

interface Tolerance {
  readonly field: WindowField;
  readonly figure: FigureName;
  readonly label: string;
  /** So much of the figure, and at least so much. */
  readonly share: number;
  readonly least: number;
}

/** A drink that stands outside its window already is not put there by rounding, and is held against itself. */
function allowedFor(house: House, { flat, outcome }: Assessment): Allowed[] {
  const { windows } = familyOf(house, flat);
  return tolerances.flatMap(({ field, figure, label, share, least }): Allowed[] => {
    const own = outcome.value(figure);
    if (own === null) return [];
    const window = windows.get(field);
    if (window && own >= window.low && own <= window.high) {
      return [{ figure, label, own, low: window.low, high: window.high, windowed: true }];
    }
    const spread = Math.max(share * own, least);
    return [{ figure, label, own, low: own - spread, high: own + spread, windowed: false }];
  });
}

interface Judged {
  readonly off: readonly string[];
  /** How far it is from the drink's own figures, all together. */
  readonly away: number;
}

function judged(outcome: Pick<Outcome, "value">, allowed: readonly Allowed[]): Judged {
  const off: string[] = [];
  let away = 0;
  for (const { figure, label, own, low, high, windowed } of allowed) {
    const value = outcome.value(figure);
    if (value === null) continue;
    away += Math.abs(value - own) / Math.max(Math.abs(own), 0.1);
    if (value >= low && value <= high) continue;
    const shown = showNumber(value, 2);
    off.push(
      windowed ? `its ${label} is ${shown}, ${showWindow(value, low, high)}` : `its ${label} is ${shown} in place of ${showNumber(own, 2)}`,
    );
  }
  return { off, away };
}

// What brings it back

interface Flip {
  readonly measured: MeasuredPour;
  readonly printed: Printed;
  readonly ml: number;
}

function bestFlip(
  measured: readonly MeasuredPour[],
  judge: (pours: readonly MeasuredPour[]) => Judged,
  style: BookStyle,
): Flip | undefined {
  const flips = measured.flatMap((one, index) => {
    const printed = isSame(one.ml, one.exactMl) ? undefined : otherWay(one.printed, one.exactMl, style);
    if (!printed) return [];
    const ml = mlOfPrinted(printed, style)!;
    const { off, away } = judge(measured.with(index, { ...one, printed, ml }));
    return off.length === 0 ? [{ measured: one, printed, ml, away }] : [];
  });
  return flips.sort((one, other) => one.away - other.away)[0];
}

function finerStep(style: BookStyle, isFine: (style: BookStyle) => boolean): number | undefined {
  return [1 / 4, 1 / 8, 1 / 16].filter((step) => step < style.ounceStep).find((ounceStep) => isFine({ ...style, ounceStep }));
}

function told(
  entry: Entry,
  system: System,
  off: readonly string[],
  style: BookStyle,
  flip: Flip | undefined,
  step: number | undefined,
): RoundedOff {
  const name = entry.name?.text || "this drink";
  const message = `Printed in ${system === "US" ? "ounces" : "millilitres"}, ${name} is another drink: ${showList(off)}.`;
  if (!flip) {
    const finer = step ? `Set a finer step in the book: \`ounce step: ${fractionText(step)} oz\`.` : "";
    const todo = finer || "No rounding keeps it: set a pouring ounce in the house, such as `ounce: 30 ml`, or pour amounts that come out.";
    return { system, off, message, todo, ...(step && { step }) };
  }
  const [from, to] = [amountText(flip.measured.printed, style), amountText(flip.printed, style)];
  const { pour } = flip.measured;
  const way = flip.ml > flip.measured.ml ? "up" : "down";
  const todo = `${capital(pour.ingredient.resolution.text)} is to be rounded ${way}, to ${to} in place of ${from}: pour an amount that comes out so.`;
  return { system, off, message, todo, flip: { pour, from, to, ml: flip.ml } };
}
