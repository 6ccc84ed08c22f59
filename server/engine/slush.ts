/** Liquids that are partly ice: what a frozen juice brings, and how warm a drink with ice in it is. */

import { fusionHeatAt } from "./heat.ts";
import { at, freezingPoint, type Masses } from "./liquid.ts";
import { capacityAt, contentAt, type Mixture } from "./melt.ts";

/**
 * Grams of the water in a liquid that are ice at this temperature, °C: as much as leaves a liquid that
 * freezes just there. 0 where the liquid does not freeze yet.
 */
export function iceWithin(masses: Masses, tC: number): number {
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

/**
 * °C of a mixture with this heat in it, counted from all of it liquid at 0 °C: the liquid's own
 * temperature, or, where that would lie below its freezing point, that of the liquid with some of its
 * water frozen.
 */
export function temperatureOf(mixture: Mixture): number {
  const liquid = liquidTemperature(mixture);
  const start = freezingPoint(mixture.masses);
  if (!(liquid < start - 1e-6)) return liquid; // at equilibrium with its ice it stands just there
  let low = liquid;
  let high = start;
  while (high - low > 1e-9) {
    const middle = (low + high) / 2;
    const heat = contentAt(mixture, middle) - iceWithin(mixture.masses, middle) * fusionHeatAt(middle);
    if (heat > mixture.heatJ) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}

function liquidTemperature(mixture: Mixture): number {
  if (!(mixture.c0 > 0)) return 0;
  let t = mixture.heatJ / mixture.c0;
  for (let round = 0; round < 50; round++) {
    const step = (mixture.heatJ - contentAt(mixture, t)) / capacityAt(mixture, t);
    t += step;
    if (Math.abs(step) < 1e-12) break;
  }
  return t;
}
