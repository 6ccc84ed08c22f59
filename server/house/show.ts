/**
 * Figures and amounts as people read them: the one place where a number becomes text. Amounts stand in
 * the house's unit, figures carry as many digits as their uncertainty leaves true, unknown says so.
 */
import { show } from "../engine/figure.ts";
import type { Figure } from "../engine/plan.ts";
import { moneyFormat } from "./currency.ts";
import type { Serve } from "./serve.ts";

/** The unit that amounts are read in, and how large its ounce is. A house's settings are one. */
export interface Measure {
  readonly units: "ml" | "cl" | "oz";
  readonly ounceMl: number;
}

/** Millilitres in one of the unit. */
export function mlIn({ units, ounceMl }: Measure): number {
  return units === "oz" ? ounceMl : units === "cl" ? 10 : 1;
}

/** A number, or one with its standard uncertainty. */
type Shown = number | { readonly value: number | null; readonly u?: number; readonly plusMinus?: number | null };

/** Below this share of the value an uncertainty changes nothing that anybody does, and is left out. */
const telling = 0.01;
/** Where no uncertainty is known, as many digits as a careful measurement has. */
const usualDigits = 3;

/**
 * `17.1 ± 0.5 % vol`; `unknown` where the value is. The unit may be empty; `finest` is the most decimals
 * that anybody reads of such a figure.
 */
export function showFigure(shown: Shown, unit = "", finest = 6): string {
  const { value, u } = partsOf(shown);
  return value === null ? "unknown" : withUnit(withSpread(value, u, u >= telling * Math.abs(value), finest), unit);
}

/** The value alone, with the digits that its uncertainty leaves true: `25`. */
export function showValue(shown: Shown, finest = 6): string {
  const { value, u } = partsOf(shown);
  return value === null ? "unknown" : withSpread(value, u, false, finest);
}

/** A share of 1 as per cent, whole ones: `52 ± 6 %`. */
export function showShare(shown: Shown): string {
  return showFigure(scaled(shown, 100), "%", 0);
}

/** Degrees Celsius: `−5.2 ± 0.6 °C`. A tenth of a degree is as fine as it is ever read. */
export function showTemperature(shown: Shown): string {
  const { value, u } = partsOf(shown);
  if (value === null) return "unknown";
  return withUnit(u >= 0.5 ? withSpread(value, u, true, 1) : tidy(fixed(value, 1)), "°C");
}

/** Millilitres in the house's unit: `52.5 ml`, `5.25 cl`, `1 3/4 oz`. */
export function showVolume(shown: Shown, measure: Measure): string {
  const { value, u } = partsOf(shown);
  if (value === null) return "unknown";
  if (measure.units === "oz") {
    const written = u >= telling * Math.abs(value) ? undefined : ounceFraction(value / measure.ounceMl);
    return written ? `${written} oz` : showFigure(scaled({ value, u }, 1 / measure.ounceMl), "oz");
  }
  return showFigure(scaled({ value, u }, measure.units === "cl" ? 0.1 : 1), measure.units);
}

/** A band of volumes, its ends rounded outwards to what anybody would measure: `8 to 17 ml`. */
export function showBand(lowMl: number, highMl: number, { units, ounceMl }: Measure): string {
  const [size, step] = units === "oz" ? [ounceMl, 0.1] : units === "cl" ? [10, 0.1] : [1, 1];
  const [low, high] = [Math.floor(lowMl / size / step) * step, Math.ceil(highMl / size / step) * step];
  return `${showNumber(low, 1)} to ${showNumber(high, 1)} ${units}`;
}

/** Grams: `47.4 g`, `1.2 kg`, `340 mg`. */
export function showWeight(shown: Shown): string {
  const { value } = partsOf(shown);
  const size = Math.abs(value ?? 0);
  if (size >= 1000) return showFigure(scaled(shown, 0.001), "kg");
  if (size > 0 && size < 0.1) return showFigure(scaled(shown, 1000), "mg");
  return showFigure(shown, "g");
}

/** What a syrup is called by, from the sugar to one of water by weight: `2 : 1`, `1.83 ± 0.05 : 1`, `1 : 2`. */
export function showSugarToWater({ value, plusMinus }: Figure): string {
  if (value === null) return "unknown";
  const u = plusMinus ?? 0;
  return value >= 1
    ? `${showFigure({ value, plusMinus: u }, "", 2)} : 1`
    : `1 : ${showFigure({ value: 1 / value, plusMinus: u / value ** 2 }, "", 2)}`;
}

/** Money in the digits of its currency: `£2.95 ± 0.04`, the spread where it is telling and no smaller than the smallest coin. */
export function showMoney(shown: Shown, currency: string | undefined): string {
  const { value, u } = partsOf(shown);
  if (value === null) return "unknown";
  const format = moneyFormat(currency);
  const digits = format.resolvedOptions().maximumFractionDigits ?? 2;
  const spread = u >= telling * Math.abs(value) && u >= 10 ** -digits / 2;
  return spread ? `${format.format(value)} ± ${u.toFixed(digits)}` : format.format(value);
}

/** What one serve brings, word for word: `18.9 g alcohol`, `2.4 UK units`, `548 kJ / 132 kcal`, and caffeine where there is some. */
export function showServe({ ethanolG, standardDrinks, counted, energyKJ, energyKcal, caffeineMg }: Serve): string[] {
  const alcohol = [`${showWeight(ethanolG)} alcohol`, showStandardDrinks({ standardDrinks, counted })];
  return [
    ...(ethanolG.value === null ? ["alcohol unknown"] : hasNoAlcohol({ ethanolG }) ? ["no alcohol"] : alcohol),
    energyKJ.value === null ? "energy unknown" : `${showFigure(energyKJ, "kJ", 0)} / ${showFigure(energyKcal, "kcal", 0)}`,
    ...(caffeineMg.value === null || caffeineMg.value >= leastCaffeineMg ? [showCaffeine(caffeineMg)] : []),
  ];
}

/** `2.4 UK units`. */
export function showStandardDrinks({ standardDrinks, counted }: Pick<Serve, "standardDrinks" | "counted">): string {
  const drinks = showFigure(standardDrinks, "", 1);
  return `${drinks} ${counted.word}${drinks === "1" ? "" : "s"}`;
}

/** Whether what alcohol there is in a serve is not worth a word. Unknown is not none. */
export function hasNoAlcohol({ ethanolG }: Pick<Serve, "ethanolG">): boolean {
  return ethanolG.value !== null && ethanolG.value < leastAlcoholG;
}

/** Less than this in a serve is not worth a word. */
const leastAlcoholG = 0.1;
const leastCaffeineMg = 1;
/** EFSA Journal 2015;13(5):4102: up to so much at once raises no concern for adults. */
const singleDoseMg = 200;

/** `63 ± 12 mg caffeine`, from half of the yardstick on with the yardstick. */
function showCaffeine({ value, plusMinus }: Figure): string {
  if (value === null) return "caffeine unknown";
  const yardstick = value >= singleDoseMg / 2 ? ` (${singleDoseMg} mg at once is the yardstick for adults, EFSA 2015)` : "";
  return `${showFigure({ value, plusMinus }, "mg", 0)} caffeine${yardstick}`;
}

/** A plain number without an uncertainty: three digits, no trailing zeros. */
export function showNumber(value: number, finest = 6): string {
  return tidy(fixed(value, Math.min(finest, decimalsFor(value))));
}

/** What is inside a window, below or above it, in words: `inside 4 to 13`. */
export function showWindow(value: number, low: number, high: number): string {
  const where = value < low ? "below" : value > high ? "above" : "inside";
  return `${where} ${showNumber(low)} to ${showNumber(high)}`;
}

const fractions = [
  [1 / 8, "1/8"],
  [1 / 4, "1/4"],
  [1 / 3, "1/3"],
  [3 / 8, "3/8"],
  [1 / 2, "1/2"],
  [5 / 8, "5/8"],
  [2 / 3, "2/3"],
  [3 / 4, "3/4"],
  [7 / 8, "7/8"],
] as const;

/** Ounces as the trade writes them, where they are whole, eighths or thirds: `2`, `3/4`, `1 1/2`; else absent. */
export function ounceFraction(ounces: number): string | undefined {
  const near = (one: number, other: number) => Math.abs(one - other) <= 1e-9 * Math.max(1, Math.abs(ounces));
  if (!(ounces > 0) || ounces >= 1e6) return undefined;
  if (near(ounces, Math.round(ounces))) return String(Math.round(ounces));
  const whole = Math.floor(ounces);
  const fraction = fractions.find(([share]) => near(ounces - whole, share))?.[1];
  return fraction && (whole > 0 ? `${whole} ${fraction}` : fraction);
}

/** As it starts a sentence. */
export function capital(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}

/** `1 drink`, `7 drinks`. */
export function showCount(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

/** `lemon juice, honey and 2 more`. */
export function showList(texts: readonly string[], most = 4): string {
  const shown = texts.length > most ? [...texts.slice(0, most - 1), `${texts.length - most + 1} more`] : [...texts];
  const last = shown.pop() ?? "";
  return shown.length > 0 ? `${shown.join(", ")} and ${last}` : last;
}

function partsOf(shown: Shown): { value: number | null; u: number } {
  if (typeof shown === "number") return { value: shown, u: 0 };
  return { value: shown.value, u: shown.u ?? shown.plusMinus ?? 0 };
}

function scaled(shown: Shown, by: number): Figure {
  const { value, u } = partsOf(shown);
  return { value: value === null ? null : value * by, plusMinus: u * by };
}

/** With its uncertainty where that is telling and not finer than anybody reads; else the digits that it leaves true. */
function withSpread(value: number, u: number, spreadToo: boolean, finest: number): string {
  if (spreadToo && u >= 10 ** -finest) return show({ value, plusMinus: u }, "");
  const place = u > 0 ? -Math.floor(Math.log10(u)) : finest;
  if (place >= 0) return showNumber(value, Math.min(place, finest));
  return fixed(Math.round(value * 10 ** place) / 10 ** place, 0);
}

function decimalsFor(value: number): number {
  const size = Math.abs(value);
  return size === 0 ? 0 : Math.min(6, Math.max(0, usualDigits - 1 - Math.floor(Math.log10(size))));
}

function fixed(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  return (Number(text) === 0 ? text.replace("-", "") : text).replace("-", "−");
}

function tidy(text: string): string {
  return text.includes(".") ? text.replace(/\.?0+$/, "") : text;
}

function withUnit(number: string, unit: string): string {
  return unit ? `${number} ${unit}` : number;
}
