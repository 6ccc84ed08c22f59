/** An amount times a factor, as it is written: the numeral, and the words that want another number then. */
import type { Entry, Quantity, Span } from "../../../grammar/tree.ts";
import type { Unit } from "../../../grammar/units.ts";
import type { Edit } from "../../house/finding.ts";
import type { House } from "../../house/house.ts";
import { unitText } from "../../house/measurable.ts";
import { fold } from "../../house/names.ts";
import type { Scope } from "../../house/scope.ts";
import { writtenExactly } from "../conversions/units.ts";

export interface Times {
  readonly factor: number;
  /** So many digits where the factor is no number that anybody chose; absent: as many as tell the amount. */
  readonly digits?: number;
}

/** Absent where the numeral can be read in two ways. */
export function timesAmount(entry: Entry, line: number, quantity: Quantity, times: Times): Edit | undefined {
  const { value, upTo, numeral, unit } = quantity;
  if (value === undefined) return undefined;
  const ends = upTo === undefined ? [value] : [value, upTo];
  const numbers = ends.map((end) => rounded(end * times.factor, times));
  const text = numbers.map((number) => numberText(number, quantity)).join(" to ");
  const word = unit && wordOf(unit.unit, unit.text, numbers.at(-1)!);
  if (!unit || word === unit.text) return { entry, line, start: numeral.start, end: numeral.end, text };
  const between = entry.lines[line]!.text.slice(numeral.end, unit.start);
  return { entry, line, start: numeral.start, end: unit.end, text: `${text}${between}${word}` };
}

export function rounded(value: number, { digits }: Times): number {
  return digits ? Number(value.toPrecision(digits)) : value;
}

/** Ounces, parts and pieces in fractions where they come out, unless decimals stood there before. */
function numberText(number: number, { numeral, unit }: Quantity): string {
  const broken = !unit || unit.unit.id === "oz" || unit.unit.dimension === "part" || unit.unit.dimension === "piece" || unit.unit.bar;
  return writtenExactly(number, broken && !numeral.text.includes(".") ? "part" : "ml");
}

function wordOf(unit: Unit, spelled: string, amount: number): string {
  const [plural] = unit.also;
  if (unit.dimension !== "piece" || !plural) return unitText(unit, spelled, amount);
  return [unit.id, plural].includes(spelled.toLowerCase()) ? (amount <= 1 ? unit.id : plural) : spelled;
}

/**
 * The last word of a counted name in its new number: `1 egg white`, `8 egg whites`. Absent where it stays,
 * and where the other word would mean anything else.
 */
export function timesNoun(
  house: House,
  scope: Scope,
  at: { readonly entry: Entry; readonly line: number; readonly name: Span },
  quantity: Quantity,
  times: Times,
): Edit | undefined {
  const before = quantity.upTo ?? quantity.value ?? 0;
  const after = rounded(before * times.factor, times);
  const name = at.entry.lines[at.line]!.text.slice(at.name.start, at.name.end);
  const [word = ""] = /\p{L}+$/u.exec(name) ?? [];
  if (quantity.unit || !word || before <= 1 === after <= 1) return undefined;
  const changed = after > 1 ? pluralOf(word) : singularOf(word);
  const start = at.name.end - word.length;
  const whole = name.slice(0, -word.length) + changed;
  const meant = (text: string) =>
    (["ingredient", "drink"] as const).map((nameClass) => house.find(scope, nameClass, text)?.entry).find(Boolean);
  if (changed === word || fold(whole) !== fold(name) || meant(whole) !== meant(name)) return undefined;
  return { entry: at.entry, line: at.line, start, end: at.name.end, text: changed };
}

function pluralOf(word: string): string {
  return singularOf(word) === word ? regularPlural(word) : word;
}

/** The word itself where it is no plural. */
function singularOf(word: string): string {
  const candidates = [word.replace(/ves$/, "f"), word.replace(/ies$/, "y"), word.replace(/es$/, ""), word.replace(/s$/, "")];
  return candidates.find((one) => one !== word && regularPlural(one) === word) ?? word;
}

function regularPlural(word: string): string {
  if (word.endsWith("leaf")) return word.replace(/f$/, "ves");
  if (/[^aeiou]y$/.test(word)) return word.replace(/y$/, "ies");
  return `${word}${/(?:ch|sh|x|z|ss|o)$/.test(word) ? "es" : "s"}`;
}
