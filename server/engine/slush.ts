/** Liquids that may be partly ice: what a frozen juice brings, and how warm a drink with ice in it is. */

import { iceContent } from "./heat.ts";
import { at, freezingPoint, heatAt, heatIn, type Masses, warmthIn } from "./liquid.ts";
import { zeroOf } from "./roots.ts";

/** What is in a vessel. */
export interface Mixture {
  readonly masses: Masses;
  /** J, counted as `heatIn` counts it; less where part of it is frozen. */
  heatJ: number;
  /** K by which it is taken to freeze higher than computed: 0, except while the model's doubt about that is being moved. */
  freezingOffC: number;
}

/** J in a liquid at this temperature with so much of its water frozen as freezes there. */
export function heatWithIce(masses: Masses, tC: number, freezingOffC = 0): number {
  const ice = iceWithin(masses, tC - freezingOffC);
  if (ice === 0) return heatIn(masses, tC);
  const rest = masses.slice();
  rest[at.water]! -= ice;
  return heatIn(rest, tC) + ice * iceContent(tC);
}

/**
 * °C of a mixture with its heat in it: the liquid's own temperature, or, where that would lie below its
 * freezing point, that of the liquid with some of its water frozen. 0 for nothing. `given` is what
 * something beside it gives up, in J, on its way to t: it comes to the same temperature.
 */
export function temperatureOf(mixture: Mixture, given: (tC: number) => number = noHeat): number {
  const { masses, heatJ, freezingOffC } = mixture;
  const warmth = warmthIn(masses);
  if (warmth.jPerK[0] === 0) return 0;
  const liquid = zeroOf((t) => heatJ + given(t) - heatAt(warmth, t), 0);
  const start = freezingPoint(masses) + freezingOffC;
  if (!(liquid < start - equal)) return liquid;
  let low = liquid;
  let high = start;
  while (high - low > 1e-12) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) break;
    if (heatWithIce(masses, middle, freezingOffC) > heatJ + given(middle)) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}
const noHeat = (): number => 0;

/** At equilibrium with its ice a liquid stands just at its freezing point: so near, °C, nothing of it is frozen. */
export const equal = 1e-6;

/**
 * Grams of the water in a liquid that are ice at this temperature, °C: as much as leaves a liquid that
 * freezes just there. 0 where the liquid does not freeze yet.
 */
export function iceWithin(masses: Masses, tC: number): number {
  if (tC >= freezingPoint(masses) - equal) return 0;
  const rest = masses.slice();
  const water = masses[at.water]!;
  let low = 0;
  let high = water;
  while (high - low > 1e-12 * water) {
    const middle = (low + high) / 2;
    rest[at.water] = water - middle;
    if (freezingPoint(rest) > tC) low = middle;
    else high = middle;
  }
  return low;
}
