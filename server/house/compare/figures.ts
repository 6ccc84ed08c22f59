/** What a drink comes to in one house and in the other: figures, allergens, diets, cost, windows. */
import type { Entry } from "../../../grammar/tree.ts";
import { type Figure, type FigureName, figures } from "../../engine/plan.ts";
import { type Assessment, assessDrink } from "../drink.ts";
import { familyOf, isInside, windowFields } from "../family.ts";
import type { House } from "../house.ts";
import { isOff, missingIn, showMissing } from "../out.ts";
import { costOfDrink } from "../sales.ts";
import { perServe } from "../serve.ts";
import { showShare, showValue } from "../show.ts";
import { suitabilityOf } from "../suitability.ts";
import type { Houses } from "./pair.ts";

/** The figures that are compared, in the order of their telling. One row each; `least` is the smallest difference that anybody acts on: practice, no source. */
export const compared = [
  { figure: "strengthPct", label: "strength", unit: "% vol", least: 0.05 },
  { figure: "dilutionShare", label: "dilution", unit: "%", least: 0.005 },
  { figure: "afterVolumeMl", label: "volume", unit: "ml", least: 0.5 },
  { figure: "sweetnessGPer100Ml", label: "sugar", unit: "g/100 ml", least: 0.05 },
  { figure: "acidGPer100Ml", label: "acid", unit: "g/100 ml", least: 0.005 },
  { figure: "ratio", label: "ratio", unit: "", least: 0.05 },
  { figure: "saltGPer100Ml", label: "salt", unit: "g/100 ml", least: 0.005 },
  { figure: "energyKcal", label: "energy", unit: "kcal", least: 1 },
  { figure: "ethanolG", label: "alcohol", unit: "g", least: 0.05 },
  { figure: "caffeineMg", label: "caffeine", unit: "mg", least: 1 },
] as const satisfies readonly { figure: FigureName; label: string; unit: string; least: number }[];

export interface FigureCompared {
  readonly figure: (typeof compared)[number]["figure"];
  readonly before: Figure;
  readonly after: Figure;
  /** Where it stood inside the drink's window before and stands outside now, or the other way round. */
  readonly window?: { readonly low: number; readonly high: number; readonly crossed: "left" | "entered" };
}

export interface Gained<T> {
  readonly gained: readonly T[];
  readonly lost: readonly T[];
}

export interface CostCompared {
  readonly currency: string | undefined;
  readonly before: Figure;
  readonly after: Figure;
  /** Of the price without tax, on the first menu or by the drink's own price; null where it is not known. */
  readonly shareBefore: number | null;
  readonly shareAfter: number | null;
}

export interface Effects {
  readonly allergens: Gained<string>;
  /** Of what nobody states the allergens. */
  readonly notStated: Gained<string>;
  readonly diets: Gained<string>;
  readonly cost?: CostCompared;
  readonly figures: readonly FigureCompared[];
  /** Why it cannot be poured now, and could not before: `dry gin is out`. */
  readonly out: Gained<string>;
}

/** Computes what is compared of a drink and remembered with the names that it hangs on: all but its sales. */
export function prepareToCompare(house: House, entry: Entry): void {
  house.recall(entry, "comparable", () => {
    familyOf(house, assessDrink(house, entry).flat);
    suitabilityOf(house, entry);
    missingIn(house, entry);
  });
}

export function effectsOf(houses: Houses, before: Entry, after: Entry): Effects {
  const [guest, later] = [suitabilityOf(houses.before, before), suitabilityOf(houses.after, after)];
  const suited = (of: typeof guest) => of.diets.filter(({ suits }) => suits).map(({ diet }) => diet);
  const contained = (of: typeof guest) => of.contains.map(({ allergen }) => allergen);
  const cost = compareCost(houses, before, after);
  return {
    allergens: gained(contained(guest), contained(later)),
    notStated: gained(guest.notStated, later.notStated),
    diets: gained(suited(guest), suited(later)),
    ...(cost && { cost }),
    figures: compareFigures(houses, before, after),
    out: gained(outOf(houses.before, before), outOf(houses.after, after)),
  };
}

function outOf(house: House, drink: Entry): string[] {
  const missing = missingIn(house, drink);
  if (!isOff(missing)) return [];
  const names = missing.filter(({ instead }) => !instead).map(({ out, through }) => showMissing({ out: out.name?.text ?? "", through }));
  return [...new Set(names)];
}

/** Whether anything is another than before. */
export function hasEffect({ allergens, notStated, diets, cost, figures, out }: Effects): boolean {
  const differs = [allergens, notStated, diets, out].some((one) => one.gained.length + one.lost.length > 0);
  return differs || cost !== undefined || figures.length > 0;
}

function gained<T>(before: readonly T[], after: readonly T[]): Gained<T> {
  return { gained: after.filter((one) => !before.includes(one)), lost: before.filter((one) => !after.includes(one)) };
}

function compareFigures(houses: Houses, before: Entry, after: Entry): FigureCompared[] {
  const [one, other] = [assessDrink(houses.before, before), assessDrink(houses.after, after)];
  const [windows, later] = [familyOf(houses.before, one.flat).windows, familyOf(houses.after, other.flat).windows];
  return compared.flatMap(({ figure, least }): FigureCompared[] => {
    const [was, is] = [figureOf(one, figure), figureOf(other, figure)];
    if (!differ(was, is, least)) return [];
    const field = windowFields.find((row) => row.figure === figure)?.field;
    const window = field && later.get(field);
    const old = field && windows.get(field);
    const inside = [old && isInside(one.outcome, old), window && isInside(other.outcome, window)];
    const crossed = inside[0] === true && inside[1] === false ? "left" : inside[0] === false && inside[1] === true ? "entered" : undefined;
    return [{ figure, before: was, after: is, ...(window && crossed && { window: { low: window.low, high: window.high, crossed } }) }];
  });
}

/** What grows with the drink is of one serve. */
function figureOf({ outcome, plan, proportional }: Assessment, name: FigureName): Figure {
  const figure = outcome.figure(name);
  if (!figures[name].grows) return figure;
  return proportional ? { value: null, plusMinus: null, because: ["parts without a size"] } : perServe(figure, plan.serves);
}

/** By enough to matter, and to be seen in the digits that either's uncertainty leaves true. */
function differ(one: Figure, other: Figure, least: number): boolean {
  if (one.value === null || other.value === null) return one.value !== other.value;
  return Math.abs(one.value - other.value) >= least && Number(showValue(one)) !== Number(showValue(other));
}

function compareCost(houses: Houses, before: Entry, after: Entry): CostCompared | undefined {
  const [one, other] = [costOfDrink(houses.before, before), costOfDrink(houses.after, after)];
  const unknown: Figure = { value: null, plusMinus: null };
  const share = (cost: typeof one) => cost?.sales[0]?.share.value ?? null;
  const compared = {
    currency: (other ?? one)?.currency,
    before: one?.perServe ?? unknown,
    after: other?.perServe ?? unknown,
    shareBefore: share(one),
    shareAfter: share(other),
  };
  const shares = [compared.shareBefore, compared.shareAfter];
  const isOtherShare = shares.every((one) => one !== null) && new Set(shares.map((one) => showShare(one!))).size > 1;
  return differ(compared.before, compared.after, 0.005) || isOtherShare ? compared : undefined;
}
