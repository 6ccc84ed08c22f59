/**
 * Field values as numbers. Each reader answers a value, or what is wrong with the text; a rule shows
 * the problem, the engine's side takes the value. Percent, ranges and estimates are read here and
 * nowhere else.
 */

import type { FieldLine, Part, Quantity, Span } from "../../grammar/tree.ts";
import { findUnit } from "../../grammar/units.ts";
import { type AcidKind, acidKinds, type SugarName, sugarNames, type Uncertain } from "../engine/plan.ts";
import { anhydrousShare } from "../engine/substances.ts";

export interface Wrong extends Span {
  readonly wrong: string;
  readonly todo: string;
  /** Texts that would read, for fixes, the likeliest first. */
  readonly instead?: readonly string[];
  /** A sentence on what it counts as all the same. */
  readonly counts?: string;
}

export type Read<T> = { readonly value: T } | Wrong;

export function isWrong<T>(read: Read<T>): read is Wrong {
  return "wrong" in read;
}

/** `none` clears a field. */
export function isNone(line: FieldLine): boolean {
  return line.value?.text.toLowerCase() === "none";
}

/**
 * A quantity's number with its spread, in its own unit. A range stands for its middle, and its half
 * width for two standard uncertainties; `about` widens by 10 %; otherwise `stated` is the spread.
 */
export function spreadOf(quantity: Quantity, stated: (value: number) => number, why: string): Uncertain | undefined {
  const { value, upTo, about } = quantity;
  if (value === undefined) return undefined;
  const middle = upTo === undefined ? value : (value + upTo) / 2;
  const range = upTo === undefined ? 0 : Math.abs(upTo - value) / 4;
  const estimate = about ? 0.1 * Math.abs(middle) : 0;
  const u = upTo === undefined && !about ? stated(middle) : Math.hypot(range, estimate);
  return { value: middle, u, why };
}

/** So many of it. */
export function times(of: Uncertain, by: number): Uncertain {
  return { ...of, value: of.value * by, u: of.u * by };
}

/** As many of one thing as a quantity counts, each as uncertain as it is; absent where the count does not read. */
export function counted(quantity: Quantity, one: Uncertain): Uncertain | undefined {
  const count = spreadOf(quantity, () => 0, one.why);
  return count && { value: count.value * one.value, u: Math.hypot(count.u * one.value, count.value * one.u), why: one.why };
}

/** The field's only quantity; anything else is wrong. */
export function readQuantity(line: FieldLine, example: string): Read<Quantity> {
  const part = onlyPart(line);
  const quantity = part?.quantity;
  if (!part || !quantity || quantity.value === undefined) {
    return wrongValue(line, `This needs an amount, such as \`${example}\`.`, `Write one amount with its unit.`);
  }
  if (part.end > quantity.end) {
    const extra = part.text.slice(quantity.end - part.start).trim();
    return { start: quantity.end, end: part.end, wrong: `“${extra}” is not part of an amount.`, todo: `Write it as \`${example}\`.` };
  }
  return { value: quantity };
}

/** A share as a number of per cent: `20 %`, `20`. */
export function readPercent(line: FieldLine, example: string, why: string): Read<Uncertain> {
  const read = readQuantity(line, example);
  if (isWrong(read)) return read;
  const { unit } = read.value;
  if (unit && unit.unit.id !== "%") {
    return {
      start: unit.start,
      end: unit.end,
      wrong: `This is a share, and “${unit.text}” is not per cent.`,
      todo: `Write it as \`${example}\`.`,
    };
  }
  return { value: spreadOf(read.value, labelStrengthSpread, why)! };
}

/** Degrees Celsius, from °C or °F. */
export function readTemperature(line: FieldLine, example: string, why: string): Read<Uncertain> {
  const read = readQuantity(line, example);
  if (isWrong(read)) return read;
  const celsius = celsiusOf(read.value, why);
  return celsius
    ? { value: celsius }
    : wrongValue(line, "This is not a temperature.", `Write degrees with C or F, such as \`${example}\`.`);
}

/** A quantity in C or F as °C; absent where it has another unit. A stated temperature is good to 1 K. */
export function celsiusOf(quantity: Quantity, why: string): Uncertain | undefined {
  const read = spreadOf(quantity, () => 1, why);
  const unit = quantity.unit?.unit.id;
  if (!read) return undefined;
  if (unit === "F") return { value: ((read.value - 32) * 5) / 9, u: (read.u * 5) / 9, why };
  return unit === "C" || unit === undefined ? read : undefined;
}

export interface ContentValue {
  /** Grams, in what `per` says. */
  readonly amount: Uncertain;
  readonly per: "100 ml" | "100 g";
  readonly sugar?: SugarName;
  readonly acid?: AcidKind;
  /** `as citric`: titratable acidity expressed as that acid. */
  readonly titrated: boolean;
}

const contentUnits: Record<string, { per: "100 ml" | "100 g"; grams: number }> = {
  "g/100 ml": { per: "100 ml", grams: 1 },
  "g/100 g": { per: "100 g", grams: 1 },
  "g/l": { per: "100 ml", grams: 0.1 },
  "mg/100 g": { per: "100 g", grams: 0.001 },
  "mg/100 ml": { per: "100 ml", grams: 0.001 },
};

/** `2.5 g/100 ml`, `6 g/100 ml as citric`, `3 g/100 g fructose; 1 g/100 g glucose`, `100 g/100 g citric monohydrate`. */
export function readContent(line: FieldLine, example: string, why: string): Read<ContentValue[]> {
  const values: ContentValue[] = [];
  for (const item of line.items) {
    for (const part of item.parts) {
      const { quantity } = part;
      const amount = quantity && spreadOf(quantity, statedContentSpread, why);
      if (!quantity || !amount) return wrongPart(part, `This needs an amount in 100 ml or in 100 g.`, `Write it as \`${example}\`.`);
      const unit = quantity.unit && contentUnits[quantity.unit.unit.id];
      if (!unit && amount.value !== 0) return contentUnitProblem(quantity, example);
      const after = part.text
        .slice(quantity.end - part.start)
        .trim()
        .toLowerCase();
      const titrated = after.startsWith("as ");
      const [, substance = "", hydrate] = /^(.*?)(?: acid)?(?: (monohydrate|anhydrous))?$/.exec(after.replace(/^as\s+/, "")) ?? [];
      const sugar = sugarNames.find((kind) => kind === substance);
      const acid = acidKinds.find((kind) => kind === substance);
      const share = hydrate === "monohydrate" ? anhydrousShare(sugar ?? acid) : 1;
      if ((substance && !sugar && !acid) || share === undefined) {
        return wrongPart(
          part,
          `“${after.replace(/^as\s+/, "")}” is no sugar and no acid that is known here.`,
          `Known: ${[...sugarNames, ...acidKinds].join(", ")}.`,
        );
      }
      const grams = (unit?.grams ?? 1) * share;
      values.push({
        amount: times({ ...amount, why }, grams),
        per: unit?.per ?? "100 ml",
        titrated,
        ...(sugar && { sugar }),
        ...(acid && { acid }),
      });
    }
  }
  if (values.length === 0) return wrongValue(line, "This needs an amount in 100 ml or in 100 g.", `Write it as \`${example}\`.`);
  return { value: values };
}

export interface Window {
  readonly low: number;
  readonly high: number;
}

/** `4 to 13`, with or without a unit; null for `none`. */
export function readWindow(line: FieldLine, example: string): Read<Window | null> {
  if (isNone(line)) return { value: null };
  const quantity = onlyPart(line)?.quantity;
  if (quantity?.value === undefined || quantity.upTo === undefined) {
    return wrongValue(line, "A window needs a lower and an upper end.", `Write it as \`${example}\`, or \`none\`.`);
  }
  return { value: { low: Math.min(quantity.value, quantity.upTo), high: Math.max(quantity.value, quantity.upTo) } };
}

export interface Price {
  readonly amount: number;
  /** What the amount buys; absent on a drink's own price. */
  readonly per?: { readonly ml?: number; readonly g?: number; readonly count?: number };
  /** As written, a sign or a code; absent where it stands in the house's own. */
  readonly currency?: string;
}

/** `26.50 per 700 ml`, `18 / 70 cl`, `30 per kg`, `9 per 6 x 200 ml`, `4 per 1`, `12.50`. */
export function readPrice(line: FieldLine, example: string): Read<Price> {
  const text = line.value?.text ?? "";
  const match =
    /^([A-Z]{3}|\p{Sc})?\s?(\d+(?:\.\d+)?)\s?([A-Z]{3}|\p{Sc})?(?:\s?(?:\/|per )\s?(?:(\d+)\s?x\s?)?(\d+(?:\.\d+)?)?\s?([a-z ]*))?$/u.exec(
      text,
    );
  if (!match) return wrongValue(line, "This does not read as a price.", `Write it as \`${example}\`.`);
  const [, before, number, behind, packs, size, unitText] = match;
  const currency = before ?? behind;
  const stated = { amount: Number(number), ...(currency && { currency }) };
  if (size === undefined && !unitText) return { value: stated };
  const unit = unitText ? findUnit(unitText.trim()) : undefined;
  if (unitText?.trim() && !unit)
    return wrongValue(line, `“${unitText.trim()}” is no unit that is known here.`, `Write it as \`${example}\`.`);
  const count = Number(packs ?? 1) * Number(size ?? 1);
  if (unit?.ml) return { value: { ...stated, per: { ml: count * unit.ml } } };
  if (unit?.g) return { value: { ...stated, per: { g: count * unit.g } } };
  return { value: { ...stated, per: { count } } };
}

/** An ISO date that exists. */
export function readDate(line: FieldLine): Read<string> {
  const text = line.value?.text ?? "";
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  const days = match ? [31, Number(match[1]) % 4 === 0 ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][Number(match[2]) - 1] : undefined;
  if (match && days && Number(match[3]) >= 1 && Number(match[3]) <= days) return { value: text };
  return wrongValue(line, "This is not a date.", "Write year, month and day, such as `2026-11-25`.");
}

/** The field's value where it is a single part of a single item. */
export function onlyPart(line: FieldLine): Part | undefined {
  return line.items.length === 1 && line.items[0]!.parts.length === 1 ? line.items[0]!.parts[0] : undefined;
}

export function wrongValue(line: FieldLine, wrong: string, todo: string, instead?: readonly string[]): Wrong {
  const at = line.value ?? line.name;
  return { start: at.start, end: at.end, wrong, todo, ...(instead && { instead }) };
}

function wrongPart(part: Part, wrong: string, todo: string): Wrong {
  return { start: part.start, end: part.end, wrong, todo };
}

/** A bare per cent of sugar or acid says neither by weight nor by volume. */
function contentUnitProblem(quantity: Quantity, example: string): Wrong {
  const number = quantity.numeral.text;
  if (quantity.unit?.unit.id === "%") {
    return {
      start: quantity.start,
      end: quantity.end,
      wrong: "Per cent of sugar, acid or salt may mean by weight or by volume, and the two differ.",
      todo: `Write \`${number} g/100 g\` for by weight, or \`${number} g/100 ml\` for by volume.`,
      instead: [`${number} g/100 g`, `${number} g/100 ml`],
    };
  }
  return {
    start: quantity.start,
    end: quantity.end,
    wrong: "This needs grams in 100 ml or in 100 g.",
    todo: `Write it as \`${example}\`.`,
  };
}

/** Regulation (EU) 1169/2011 Annex XII: a label's strength is right to ±0.3 % vol; taken as a rectangle. None stated as 0 % is none. */
function labelStrengthSpread(value: number): number {
  return value === 0 ? 0 : 0.3 / Math.sqrt(3);
}

/** A content stated without a range is taken to be good to 3 %: practice, no source. */
function statedContentSpread(value: number): number {
  return 0.03 * Math.abs(value);
}
