/** A printed amount as text: in figures, or in words. */
import { ounceFraction } from "../show.ts";
import { showPourAmount } from "../show-pour.ts";
import { type Poured, type Printed, printedAmount } from "./amount.ts";
import { amountInWords, type Counted, numberInWords } from "./number-words.ts";
import { printedUnit } from "./printed-units.ts";
import { spelled } from "./spelling.ts";
import type { BookStyle, Numbers, System } from "./style.ts";

/** The amount of a pour in a system of units; empty where none is stated. */
export function spoken(pour: Poured, style: BookStyle, system: System, numbers: Numbers = "figures"): string {
  const { quantity } = pour;
  if (!quantity) return "";
  const printed = printedAmount(pour, style, system);
  // What can be read in two ways stands as it is written.
  return printed ? amountText(printed, style, numbers) : showPourAmount({ quantity });
}

/** `25 ml`, `about 3 g`, `10–15 ml`, `1½ oz`, `6`; in words `twenty-five millilitres`, `about three grams`, `ten to fifteen millilitres`. */
export function amountText(printed: Printed, style: BookStyle, numbers: Numbers = "figures"): string {
  const { low, high, unit, about, grams } = printed;
  const row = unit === undefined ? undefined : printedUnit(unit);
  const asWords = numbers === "words" || (numbers === "words to ten" && (row?.counts ?? true) && isSmall(high ?? low));
  const text = asWords
    ? inWords(printed, row?.long ?? nothing, style)
    : inFigures(printed, row?.short ?? nothing, row?.inFractions ?? true);
  const beside = grams === undefined ? "" : ` (${inFigures({ low: grams }, printedUnit("g").short, false)})`;
  return spelled(`${about ? "about " : ""}${text}`, style.spelling) + beside;
}

/** Whole and not above ten: what `words to ten` writes out. */
export function isSmall(value: number): boolean {
  return Number.isInteger(value) && value >= 0 && value <= 10;
}

const nothing: Counted = { one: "", many: "" };

function inWords({ low, high }: Pick<Printed, "low" | "high">, long: Counted, { spelling }: BookStyle): string {
  if (high === undefined) return long.one ? amountInWords(low, long, spelling) : numberInWords(low, spelling);
  return `${numberInWords(low, spelling)} to ${numberInWords(high, spelling)} ${long.many}`.trimEnd();
}

function inFigures({ low, high }: Pick<Printed, "low" | "high">, { one, many }: Counted, inFractions: boolean): string {
  const number = (value: number) => (inFractions ? fractionText(value) : decimalText(value));
  const numbers = high === undefined ? number(low) : `${number(low)}–${number(high)}`;
  return `${numbers} ${(high ?? low) <= 1 ? one : many}`.trimEnd();
}

/** As it is written, but for a third that nobody measures to the last digit. */
function decimalText(value: number): string {
  return Number(value >= 1 ? value.toFixed(3) : value.toPrecision(3))
    .toFixed(6)
    .replace(/\.?0+$/, "");
}

const glyphs: Readonly<Record<string, string>> = {
  "1/8": "⅛",
  "1/4": "¼",
  "1/3": "⅓",
  "3/8": "⅜",
  "1/2": "½",
  "5/8": "⅝",
  "2/3": "⅔",
  "3/4": "¾",
  "7/8": "⅞",
};

/** `1½`, `⅔`, `2 1⁄16`; what is no fraction that anybody measures stands as a decimal. */
export function fractionText(value: number): string {
  const simple = ounceFraction(value);
  if (simple) return simple.replace(/^(?:(\d+) )?(\d+\/\d+)$/, (_, whole = "", broken) => whole + glyphs[broken]);
  const sixteenths = value * 16;
  if (!(value > 0) || Math.abs(sixteenths - Math.round(sixteenths)) > 1e-9 * sixteenths) return decimalText(value);
  const whole = Math.floor(value);
  return `${whole > 0 ? `${whole} ` : ""}${Math.round(sixteenths) - 16 * whole}⁄16`;
}
