/** Where a figure meets a target as one amount goes from nothing to much, and how near a measure comes to it. */

import { withoutDust } from "./adjust.ts";

export interface Meeting {
  /** The amount; for a target that is never met, where the figure comes nearest to it. */
  readonly amount: number;
  readonly meets: boolean;
}

/**
 * The amount between 0 and `most` at which the figure is the target, the one nearest to `present` where
 * there are several. `figureAt` answers NaN where the figure is unknown or says nothing. Undefined where it
 * does so for every amount that is tried.
 *
 * The range is laid out in decades and around the present amount. A figure that turns back between two of
 * those is met if the turn is next to the one that comes nearest.
 */
export function meet(figureAt: (amount: number) => number, target: number, present: number, most: number): Meeting | undefined {
  const offAt = (amount: number) => figureAt(amount) - target;
  const amounts = [0, ...decades.map((share) => share * most), present / 4, present / 2, present, 2 * present];
  const points = [...new Set(amounts)]
    .filter((amount) => amount <= most)
    .sort((one, other) => one - other)
    .map((amount): Point => ({ amount, off: offAt(amount) }));
  const known = points.filter(({ off }) => !Number.isNaN(off));
  if (known.length === 0) return undefined;
  const crossings = known
    .slice(1)
    .flatMap((point, index) => (point.off * known[index]!.off <= 0 ? (crossing(offAt, known[index]!, point) ?? []) : []));
  if (crossings.length > 0) return { amount: nearestTo(present, crossings), meets: true };
  const start = known.reduce((best, point) => (Math.abs(point.off) < Math.abs(best.off) ? point : best));
  const best = closest(offAt, points, start);
  const crossed = best.off * start.off <= 0 ? crossing(offAt, start, best) : undefined;
  return crossed === undefined ? { amount: best.amount, meets: false } : { amount: crossed, meets: true };
}

const decades = [1e-3, 1e-2, 1e-1, 1];

interface Point {
  readonly amount: number;
  readonly off: number;
}

/** The whole number of steps, at least one, next to the amount, at which the figure is nearer to the target. */
export function nearestMeasure(figureAt: (amount: number) => number, target: number, amount: number, step: number): number {
  const steps = Math.max(1, Math.floor(amount / step + 1e-9));
  const off = (count: number) => Math.abs(figureAt(count * step) - target);
  const [lower, upper] = [off(steps), off(steps + 1)];
  return withoutDust((upper < lower || Number.isNaN(lower) ? steps + 1 : steps) * step);
}

/** Regula falsi after Illinois, between two points on either side: to 1e-10 of what lies between them. Absent where it leaps across. */
function crossing(offAt: (amount: number) => number, one: Point, other: Point): number | undefined {
  let [low, high] = one.off < other.off ? [one, other] : [other, one];
  const close = 1e-10 * (high.off - low.off);
  let side = 0;
  for (let round = 0; round < 60; round++) {
    const amount = high.off === low.off ? low.amount : (low.amount * high.off - high.amount * low.off) / (high.off - low.off);
    const off = offAt(amount);
    if (Math.abs(off) <= close) return amount;
    if (off > 0) {
      high = { amount, off };
      if (side === 1) low = { ...low, off: low.off / 2 };
      side = 1;
    } else {
      low = { amount, off };
      if (side === -1) high = { ...high, off: high.off / 2 };
      side = -1;
    }
  }
  return undefined;
}

/** How near the figure comes between the neighbours of the nearest point: outer thirds are cut off, and with them what is unknown. */
function closest(offAt: (amount: number) => number, points: readonly Point[], start: Point): Point {
  const index = points.indexOf(start);
  let best = start;
  let low = points[Math.max(0, index - 1)]!.amount;
  let high = points[Math.min(points.length - 1, index + 1)]!.amount;
  for (let round = 0; round < 30 && best.off * start.off > 0; round++) {
    const [left, right] = [(2 * low + high) / 3, (low + 2 * high) / 3];
    for (const amount of [left, right]) {
      const off = offAt(amount);
      if (Math.abs(off) < Math.abs(best.off)) best = { amount, off };
    }
    if (round > 7 && best === start) return start;
    if (best.amount < right) high = right;
    if (best.amount > left) low = left;
  }
  return best;
}

function nearestTo(present: number, amounts: readonly number[]): number {
  return amounts.reduce((best, amount) => (Math.abs(amount - present) < Math.abs(best - present) ? amount : best));
}
