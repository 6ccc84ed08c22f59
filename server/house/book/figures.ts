/** Computed figures in a book's words: with no digit that their uncertainty denies, in figures or in words. */
import type { Figure } from "../../engine/plan.ts";
import { showValue } from "../show.ts";
import { amountText, isSmall } from "./amount-text.ts";
import { amountInWords, type Counted, numberInWords } from "./number-words.ts";
import { besides } from "./phrases.ts";
import { type PrintedUnit, printedUnit } from "./printed-units.ts";
import { spelled } from "./spelling.ts";
import type { Saying } from "./values.ts";

type Way = Pick<Saying, "style" | "systems" | "numbers">;

/** `17.3 %`, `seventeen point three per cent`, `2.4 UK units`. */
export function sayWith(figure: Figure, of: string | Counted, way: Way, finest?: number): string {
  const row: PrintedUnit = typeof of === "string" ? printedUnit(of) : { short: of, long: of, inFractions: false, counts: true };
  const text = showValue(figure, finest);
  const value = numberOf(text);
  const one = value === 1;
  if (inWords(value, row.counts, way)) return spelled(amountInWords(value, row.long, way.style.spelling), way.style.spelling);
  return `${text} ${one ? row.short.one : row.short.many}`;
}

/** A number alone. */
export function sayNumber(figure: Figure, way: Way, finest?: number): string {
  const text = showValue(figure, finest);
  const value = numberOf(text);
  return inWords(value, true, way) ? numberInWords(value, way.style.spelling) : text;
}

/** `105 ml (3½ oz)`; from a litre on in litres. */
export function saySize(figure: Figure, way: Way): string {
  const { style, systems, numbers } = way;
  const rounded = numberOf(showValue(figure, 0));
  const texts = systems.map((system) => {
    if (system === "metric") {
      const printed = rounded >= 1000 ? { low: Number((rounded / 1000).toPrecision(3)), unit: "l" } : { low: rounded, unit: "ml" };
      return amountText({ about: false, ...printed }, style, numbers);
    }
    const ounces = (figure.value ?? 0) / style.ounceMl;
    const spread = (figure.plusMinus ?? 0) / style.ounceMl;
    const step = Math.max(style.ounceStep, spread > 0.5 ? 1 : spread > 0.25 ? 0.5 : 0);
    return amountText({ about: false, low: Math.max(1, Math.round(ounces / step)) * step, unit: "oz" }, style, numbers);
  });
  return besides(texts);
}

/** `−5.2 °C (22.6 °F)`. */
export function sayDegrees(figure: Figure, way: Way): string {
  return besides(
    way.systems.map((system) => (system === "US" ? sayWith(inFahrenheit(figure), "F", way, 1) : sayWith(figure, "C", way, 1))),
  );
}

function inFahrenheit({ value, plusMinus, ...rest }: Figure): Figure {
  return { ...rest, value: value === null ? null : value * 1.8 + 32, plusMinus: plusMinus === null ? null : plusMinus * 1.8 };
}

function numberOf(text: string): number {
  return Number.parseFloat(text.replace("−", "-"));
}

function inWords(value: number, counts: boolean, { numbers }: Way): boolean {
  return numbers === "words" || (numbers === "words to ten" && counts && isSmall(value));
}
