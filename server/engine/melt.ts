/**
 * How much ice melts: the balance of heat between a mixture, its vessel and its ice, solved.
 *
 * heat given up by the mixture on its way to T
 *   + by the vessel on its way from the room's temperature to T
 *   + by the water that clings to the ice
 *   = heat taken up by all the ice on its way to T + by the part of it that melts there
 *
 * with T = α · freezing point of the mixture after dilution. α = 1 is equilibrium with the ice.
 * The more ice has melted, the higher that freezing point and the less heat is there for more, so there
 * is exactly one answer between no ice and all of it.
 */

import { freezingDepression } from "./freezing.ts";
import { fusionHeatAt, heatContent, iceWarming, waterHeat } from "./heat.ts";
import { at, disaccharides, type Masses, molesOf, monosaccharides } from "./liquid.ts";
import type { Chill } from "./plan.ts";

/** What is in the vessel. Mutable sums, so that mixing is adding. */
export interface Mixture {
  readonly masses: Masses;
  /** Heat capacity c0 + c1 t + c2 t², J/K. */
  c0: number;
  c1: number;
  c2: number;
  /** J, counted from all of it liquid at 0 °C. */
  heatJ: number;
}

export interface IceInUse {
  readonly massG: number;
  readonly temperatureC: number;
  /** Water on its surface. */
  readonly clingingG: number;
}

/** What a contact with ice did. The heats are in J; those given up, less those taken up, are zero. */
export interface Melt {
  readonly meltG: number;
  readonly clingingG: number;
  readonly iceG: number;
  readonly temperatureC: number;
  readonly heat: {
    readonly fromMixture: number;
    readonly fromVessel: number;
    readonly fromClinging: number;
    readonly intoIce: number;
    readonly intoMelting: number;
  };
}

/**
 * The melt of one contact.
 *
 * `vessels`: how many vessels the mixture is shared between; each has its own heat. A contact shorter
 * than the technique's usual one has had less of the ice and of the vessel take part,
 * (1 − e^(−t/τ)) ÷ (1 − e^(−usual/τ)) of each; in a longer one α goes on towards 1 at the same pace.
 *
 * Always 0 ≤ melt ≤ ice; warmer in, never less melt. Where the mixture is so cold that nothing melts, or
 * all the ice melts, T is what the balance gives. The heats agree to 1e-9 of what is moved.
 */
export function meltOf(mixture: Mixture, chill: Chill, ice: IceInUse, ambientC: number, seconds: number, vessels: number): Melt {
  const short = Math.min(1, -Math.expm1(-seconds / chill.timeConstantS) / -Math.expm1(-chill.usualS / chill.timeConstantS));
  const alpha = 1 - (1 - chill.alpha) * Math.exp(-Math.max(0, seconds - chill.usualS) / chill.timeConstantS);
  const vesselJPerK = chill.vesselJPerK * vessels;
  const full = fullMelt(mixture, alpha, ice, ambientC, vesselJPerK);
  const meltG = short * full;
  const iceG = short * ice.massG;
  const vessel = short * vesselJPerK;
  const temperatureC = settle(mixture, meltG, iceG, ice, ambientC, vessel);
  return {
    meltG,
    clingingG: ice.clingingG,
    iceG: ice.massG,
    temperatureC,
    heat: {
      fromMixture: mixture.heatJ - contentAt(mixture, temperatureC),
      fromVessel: vessel * (ambientC - temperatureC),
      fromClinging: -ice.clingingG * heatContent(waterHeat, temperatureC),
      intoIce: iceG * iceWarming(ice.temperatureC, temperatureC),
      intoMelting: meltG * fusionHeatAt(temperatureC),
    },
  };
}

/** Grams melted when the mixture has come to α times its freezing point; regula falsi after Illinois. */
function fullMelt(mixture: Mixture, alpha: number, ice: IceInUse, ambientC: number, vesselJPerK: number): number {
  const { masses } = mixture;
  const ethanol = masses[at.ethanol]!;
  const mono = molesOf(masses, monosaccharides);
  const di = molesOf(masses, disaccharides);
  const acid = masses[at.acidMmol]!;
  const salt = (masses[at.salt]! * 1000) / 58.44;
  const water = masses[at.water]! + ice.clingingG;

  /** Heat left over when so much has melted; falls as the melt rises. */
  const surplus = (meltG: number): number => {
    const w = water + meltG;
    const t = w > 0 ? -alpha * freezingDepression(ethanol / w, mono / w, di / w, acid / w, salt / w) : 0;
    return surplusAt(mixture, meltG, ice.massG, ice, ambientC, vesselJPerK, t);
  };

  let low = 0;
  let high = ice.massG;
  let atLow = surplus(low);
  if (!(atLow > 0)) return 0;
  let atHigh = surplus(high);
  if (atHigh >= 0) return high;
  const close = 1e-13 * (atLow - atHigh);
  let side = 0;
  for (let round = 0; round < 100; round++) {
    const middle = (low * atHigh - high * atLow) / (atHigh - atLow);
    const there = surplus(middle);
    if (Math.abs(there) <= close || high - low < 1e-13 * high) return middle;
    if (there > 0) {
      low = middle;
      atLow = there;
      if (side === 1) atHigh /= 2;
      side = 1;
    } else {
      high = middle;
      atHigh = there;
      if (side === -1) atLow /= 2;
      side = -1;
    }
  }
  return (low + high) / 2;
}

/** The temperature at which the balance closes for a given melt: Newton, a few rounds. */
function settle(mixture: Mixture, meltG: number, iceG: number, ice: IceInUse, ambientC: number, vesselJPerK: number): number {
  let t = 0;
  for (let round = 0; round < 50; round++) {
    const slope = capacityAt(mixture, t) + vesselJPerK + ice.clingingG * waterHeat[0] + 2.1 * (iceG - meltG) + waterHeat[0] * meltG;
    if (!(slope > 0)) return t;
    const step = surplusAt(mixture, meltG, iceG, ice, ambientC, vesselJPerK, t) / slope;
    t += step;
    if (Math.abs(step) < 1e-13) break;
  }
  return t;
}

/** Heat given up less heat taken up, J, when all has come to `t`. */
function surplusAt(m: Mixture, meltG: number, iceG: number, ice: IceInUse, ambientC: number, vesselJPerK: number, t: number): number {
  return (
    m.heatJ -
    contentAt(m, t) +
    vesselJPerK * (ambientC - t) -
    ice.clingingG * heatContent(waterHeat, t) -
    iceG * iceWarming(ice.temperatureC, t) -
    meltG * fusionHeatAt(t)
  );
}

/** J in the mixture at `t`, counted from 0 °C. */
export function contentAt(m: Mixture, t: number): number {
  return t * (m.c0 + t * (m.c1 / 2 + (t * m.c2) / 3));
}

export function capacityAt(m: Mixture, t: number): number {
  return m.c0 + t * (m.c1 + t * m.c2);
}
