/** Liquids that are partly ice: what a frozen juice brings, and how warm a drink with ice in it is. */

import { at, freezingPoint, heatIn, type Masses } from "./liquid.ts";
import { iceContent, type Mixture, zeroOf } from "./melt.ts";

/** J in a liquid at this temperature with so much of its water frozen as freezes there. */
export function heatWithIce(masses: Masses, tC: number): number {
  const ice = iceWithin(masses, tC);
  if (ice === 0) return heatIn(masses, tC);
  const rest = masses.slice();
  rest[at.water]! -= ice;
  return heatIn(rest, tC) + ice * iceContent(tC);
}

/**
 * °C of a mixture with its heat in it: the liquid's own temperature, or, where that would lie below its
 * freezing point, that of the liquid with some of its water frozen. 0 for nothing.
 */
export function temperatureOf({ masses, heatJ }: Mixture): number {
  if (!masses.some((amount) => amount !== 0)) return 0;
  const liquid = zeroOf((t) => heatJ - heatIn(masses, t), 0);
  const start = freezingPoint(masses);
  if (!(liquid < start - 1e-6)) return liquid; // at equilibrium with its ice it stands just there
  let low = liquid;
  let high = start;
  while (high - low > 1e-9) {
    const middle = (low + high) / 2;
    if (heatWithIce(masses, middle) > heatJ) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}

/**
 * Grams of the water in a liquid that are ice at this temperature, °C: as much as leaves a liquid that
 * freezes just there. 0 where the liquid does not freeze yet.
 */
function iceWithin(masses: Masses, tC: number): number {
  if (tC >= freezingPoint(masses)) return 0;
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
