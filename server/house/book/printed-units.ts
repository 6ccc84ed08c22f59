/** Units as a book prints them: short beside a figure, written out beside words. One row each where the language's own spelling will not do. */
import { units } from "../../../grammar/units.ts";
import type { Counted } from "./number-words.ts";

export interface PrintedUnit {
  readonly short: Counted;
  readonly long: Counted;
  /** Broken numbers of it stand as fractions: ½ oz, but 22.5 ml. */
  readonly inFractions: boolean;
  /** It counts pieces, spoons or shakes; what is measured stands in figures longer. */
  readonly counts: boolean;
}

const measured = (short: string, one: string, inFractions = false, many = `${one}s`): PrintedUnit => ({
  short: { one: short, many: short },
  long: { one, many },
  inFractions,
  counts: false,
});

const counted = (one: string, many: string): PrintedUnit => ({
  short: { one, many },
  long: { one, many },
  inFractions: true,
  counts: true,
});

const own: Readonly<Record<string, PrintedUnit>> = {
  ml: measured("ml", "millilitre"),
  l: { ...measured("", "litre"), short: { one: "litre", many: "litres" } },
  mg: measured("mg", "milligram"),
  g: measured("g", "gram"),
  kg: measured("kg", "kilogram"),
  oz: measured("oz", "ounce", true),
  "oz wt": measured("oz by weight", "ounce by weight", true, "ounces by weight"),
  lb: measured("lb", "pound", true),
  tsp: counted("teaspoon", "teaspoons"),
  tbsp: counted("tablespoon", "tablespoons"),
  barspoon: counted("bar spoon", "bar spoons"),
  s: counted("second", "seconds"),
  min: counted("minute", "minutes"),
  times: counted("time", "times"),
  vol: counted("volume", "volumes"),
  "%": measured("%", "per cent", false, "per cent"),
  C: measured("°C", "degree Celsius", false, "degrees Celsius"),
  F: measured("°F", "degree Fahrenheit", false, "degrees Fahrenheit"),
  "g/100 ml": measured("g/100 ml", "gram in 100 ml", false, "grams in 100 ml"),
  kcal: measured("kcal", "kilocalorie"),
};

/** `25 ml` as it is set on a page: no line ends between a number and the sign of its unit, and none starts with a dot that parts what is said. */
export function bound(text: string): string {
  return text
    .replace(beforeSign, "\u00a0")
    .replace(/(?<=\bU[KS]) (?=units?\b|standard\b)/g, "\u00a0")
    .replaceAll(" ·", "\u00a0·");
}

const signs = [...new Set(Object.values(own).flatMap(({ short, counts }) => (counts ? [] : [short.one, short.many])))];
const beforeSign = new RegExp(`(?<=[\\d¼½¾⅓⅔⅛⅜⅝⅞]) (?=(?:${signs.join("|")}|U[KS])(?![\\p{L}\\d]))`, "gu");

/** By the id that the language's table gives a unit, or what a figure is in. */
export function printedUnit(id: string): PrintedUnit {
  return own[id] ?? counted(id, units.find((unit) => unit.id === id)?.also[0] ?? id);
}
