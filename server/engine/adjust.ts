/**
 * The amount of one thing at which figures are as wanted. Figures are smooth in one amount and nearly
 * always go one way, so they are bracketed and not tried one by one; where they turn, they are.
 */

import { assess } from "./assess.ts";
import type { FigureName, Outcome, PourPlan, ServePlan, Uncertain } from "./plan.ts";
import { leastAcid } from "./serve.ts";

export interface FigureWindow {
  readonly figure: FigureName;
  readonly low: number;
  readonly high: number;
}

/**
 * The multiple of `step`, nearest to the present amount of one pour, at which the drink stands inside all
 * of the windows; in the pour's own measure, ml or g.
 *
 * Between one step and `furthest` times the present amount; the present amount itself is not an answer.
 * Undefined where none fits, where a figure is unknown, and where the pour's amount is unknown or fills up.
 */
export function nearestAmount(
  plan: ServePlan,
  pourIndex: number,
  step: number,
  windows: readonly FigureWindow[],
  furthest = 4,
): number | undefined {
  const present = plannedAmount(plan, pourIndex);
  if (!present || !(step > 0)) return undefined;
  const all = windows.some(({ figure }) => figure === "ratio") ? [...windows, enoughAcid] : windows;
  const figuresAt = (amount: number) => {
    const outcome = assess(withAmount(plan, pourIndex, amount));
    return all.map(({ figure }) => plainFigure(outcome, figure));
  };
  return nearestInside(figuresAt, all, { present, step, most: furthest * present });
}

/** With less acid than this no ratio is told, but the sugar and the acid themselves go on evenly. */
const enoughAcid: FigureWindow = { figure: "acidGPer100Ml", low: leastAcid, high: Number.POSITIVE_INFINITY };

function plainFigure(outcome: Outcome, figure: FigureName): number {
  if (figure !== "ratio") return outcome.value(figure) ?? Number.NaN;
  return (outcome.value("sweetnessGPer100Ml") ?? Number.NaN) / (outcome.value("acidGPer100Ml") ?? Number.NaN);
}

/** The plan with another amount of one pour, measured as that pour is. The amount must be known. */
export function withAmount(plan: ServePlan, index: number, value: number): ServePlan {
  const pour = plan.pours[index]!;
  const [measure] = Object.keys(pour.amount);
  const amount = { [measure!]: { ...knownAmount(pour), value } } as typeof pour.amount;
  return { ...plan, pours: plan.pours.with(index, { ...pour, amount }) };
}

/** The amount of a pour, as it is measured; undefined where it is unknown, fills up, or is nothing. */
export function plannedAmount(plan: ServePlan, index: number): number | undefined {
  return knownAmount(plan.pours[index])?.value || undefined;
}

function knownAmount(pour: PourPlan | undefined): Uncertain | undefined {
  const [known] = Object.values(pour?.amount ?? {});
  return typeof known === "object" && "value" in known ? known : undefined;
}

export interface Search {
  readonly present: number;
  readonly step: number;
  readonly most: number;
}

/**
 * The multiple of the step nearest to the present amount, and not that itself, at which every figure stands
 * inside its window. `figuresAt`: the figures in the order of the windows, NaN where one is unknown.
 *
 * Where every figure goes one way, what fits all windows lies together, and is found by halving. Where
 * one is seen to turn, amounts are tried from the present one outwards, at most 800 of them.
 */
export function nearestInside(
  figuresAt: (amount: number) => readonly number[],
  windows: readonly { readonly low: number; readonly high: number }[],
  { present, step, most }: Search,
): number | undefined {
  const last = Math.floor(most / step + 1e-9);
  const seen = new Map<number, readonly number[]>();
  const at = (steps: number) => {
    const known = seen.get(steps) ?? figuresAt(steps * step);
    seen.set(steps, known);
    return known;
  };
  const here = present / step;
  if (last < 1 || at(here).some(Number.isNaN)) return undefined;
  for (const probe of [1, Math.ceil((here + last) / 2), last]) at(probe);
  const rising = directionsOf(seen);
  const found = rising && halve((steps) => pull(at(steps), windows, rising), here, last);
  const turns = !rising || !directionsOf(seen);
  const steps = turns ? outwards((tried) => isInside(at(tried), windows), here, Math.min(last, mostTried)) : found;
  return steps && withoutDust(steps * step);
}
const mostTried = 800;

/** The nearest whole number of steps at which nothing pulls, where what pulls up stands below what pulls down. */
function halve(pullAt: (steps: number) => number, here: number, last: number): number | undefined {
  const wish = pullAt(here);
  const below = Math.ceil(here - 1e-9) - 1;
  const above = Math.floor(here + 1e-9) + 1;
  if (wish === 0) {
    const [first, second] = above - here <= here - below ? [above, below] : [below, above];
    return [first, second].find((steps) => steps >= 1 && steps <= last && pullAt(steps) === 0);
  }
  let [pulled, end] = wish > 0 ? [above - 1, last] : [below + 1, 1];
  if (Number.isNaN(wish) || pullAt(end) === wish || (end - pulled) * wish <= 0) return undefined;
  while (Math.abs(end - pulled) > 1) {
    const middle = Math.floor((pulled + end) / 2);
    if (pullAt(middle) === wish) pulled = middle;
    else end = middle;
  }
  return pullAt(end) === 0 ? end : undefined;
}

/** 1: more of it is wanted, −1: less, 0: all is well, NaN: both at once, or something is unknown. */
function pull(figures: readonly number[], windows: readonly { low: number; high: number }[], rising: readonly boolean[]): number {
  let wish = 0;
  for (const [index, { low, high }] of windows.entries()) {
    const figure = figures[index]!;
    if (Number.isNaN(figure)) return Number.NaN;
    const outside = figure < low ? 1 : figure > high ? -1 : 0;
    const wanted = rising[index] ? outside : -outside;
    if (wanted * wish < 0) return Number.NaN;
    wish ||= wanted;
  }
  return wish;
}

function isInside(figures: readonly number[], windows: readonly { low: number; high: number }[]): boolean {
  return windows.every(({ low, high }, index) => figures[index]! >= low && figures[index]! <= high);
}

/** For each figure whether it rises with the amount; undefined where one turns or is unknown. */
function directionsOf(seen: ReadonlyMap<number, readonly number[]>): boolean[] | undefined {
  const rows = [...seen].sort(([one], [other]) => one - other).map(([, figures]) => figures);
  const rising: boolean[] = [];
  for (const [index, first] of rows[0]!.entries()) {
    const span = rows[rows.length - 1]![index]! - first;
    for (let row = 1; row < rows.length; row++) {
      const [before, after] = [rows[row - 1]![index]!, rows[row]![index]!];
      // Equal ends count as one way; rounding is no turn.
      if (before !== after && !((after - before) * Math.sign(span) >= -1e-9 * Math.abs(before))) return undefined;
    }
    rising.push(span >= 0);
  }
  return rising;
}

function outwards(fits: (steps: number) => boolean, here: number, last: number): number | undefined {
  let above = Math.floor(here + 1e-9) + 1;
  let below = Math.ceil(here - 1e-9) - 1;
  while (above <= last || below >= 1) {
    const upFirst = below < 1 || (above <= last && above - here <= here - below);
    const steps = upFirst ? above++ : below--;
    if (fits(steps)) return steps;
  }
  return undefined;
}

/** Takes off the dust of binary fractions: 0.1 × 3 is 0.3. */
export const withoutDust = (amount: number): number => Number(amount.toPrecision(12));
