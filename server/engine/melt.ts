/**
 * How much ice melts: the balance of heat between a mixture, its vessel and its ice, solved.
 *
 *   heat in the mixture + in the ice + given up by the vessel on its way to T
 *   = heat in the diluted mixture at T + in the ice that is left at T
 *
 * with T = α · freezing point of the mixture after dilution. α = 1 is equilibrium with the ice.
 * The more ice has melted, the higher that freezing point and the less heat is there for more, so there
 * is exactly one answer between no ice and all of it.
 */

import { freezingDepression } from "./freezing.ts";
import { iceContent } from "./heat.ts";
import { at, disaccharides, heatOf, molesOf, monosaccharides, otherHeat, saltMolarMass } from "./liquid.ts";
import { zeroOf } from "./roots.ts";
import { type Mixture, temperatureOf } from "./slush.ts";
import type { Chill } from "./technique.ts";

export interface IceInUse {
  readonly massG: number;
  readonly temperatureC: number;
  /** Water on its surface, at 0 °C. */
  readonly clingingG: number;
}

/** What a contact with ice did. */
export interface Melt {
  readonly meltG: number;
  readonly temperatureC: number;
  /** Of the ice and of the vessel, how much took part, 0…1. */
  readonly share: number;
  readonly alpha: number;
  /** J before and after: mixtureBefore + iceBefore + fromVessel = mixtureAfter + iceAfter. */
  readonly heat: {
    readonly mixtureBefore: number;
    readonly iceBefore: number;
    readonly fromVessel: number;
    readonly mixtureAfter: number;
    readonly iceAfter: number;
  };
}

/**
 * The melt of one contact.
 *
 * `vesselJPerK`: of all vessels together. A contact shorter than the technique takes to settle has had
 * less of the ice and of the vessel take part, (1 − e^(−t/τ)) ÷ (1 − e^(−settled/τ)) of each; in a longer
 * one α goes on towards 1 at the same pace.
 *
 * Always 0 ≤ melt ≤ ice; warmer in, never less melt. Where the mixture is so cold that nothing melts, or
 * all the ice melts, T is what the balance gives, some of the mixture frozen if it must be. The heats
 * agree to 1e-9 of what is moved.
 */
export function meltOf(mixture: Mixture, chill: Chill, ice: IceInUse, ambientC: number, seconds: number, vesselJPerK: number): Melt {
  const settledS = chill.settledS ?? chill.usualS;
  const share = Math.min(1, Math.expm1(-seconds / chill.timeConstantS) / Math.expm1(-settledS / chill.timeConstantS));
  const alpha = 1 - (1 - chill.alpha) * Math.exp(-Math.max(0, seconds - settledS) / chill.timeConstantS);

  const { masses, heatJ } = mixture;
  const ethanol = masses[at.ethanol]!;
  const water = masses[at.water]! + ice.clingingG;
  const others = otherHeat(masses);
  const mono = molesOf(masses, monosaccharides);
  const di = molesOf(masses, disaccharides);
  const acid = masses[at.acidMmol]!;
  const salt = (masses[at.salt]! * 1000) / saltMolarMass;

  const freezing = (meltG: number): number => {
    const w = water + meltG;
    return w > 0 ? -freezingDepression(ethanol / w, mono / w, di / w, acid / w, salt / w) : 0;
  };
  /** What ice and vessel give up when so much has melted, this much has taken part, and all has come to t. */
  const given = (meltG: number, part: number, t: number): number =>
    part * ice.massG * iceContent(ice.temperatureC) + part * vesselJPerK * (ambientC - t) - (part * ice.massG - meltG) * iceContent(t);
  const surplus = (meltG: number, part: number, t: number): number =>
    heatJ + given(meltG, part, t) - heatOf(water + meltG, ethanol, others, t);

  const meltG = share * fullMelt((melted) => surplus(melted, 1, alpha * freezing(melted)), ice.massG);
  const freezingC = freezing(meltG);
  let temperatureC = zeroOf((t) => surplus(meltG, share, t), alpha * freezingC);
  let mixtureAfter = heatOf(water + meltG, ethanol, others, temperatureC);
  if (temperatureC < freezingC - 1e-6) {
    const diluted = masses.slice();
    diluted[at.water] = water + meltG;
    temperatureC = temperatureOf({ masses: diluted, heatJ, freezingOffC: 0 }, (t) => given(meltG, share, t));
    mixtureAfter = heatJ + given(meltG, share, temperatureC); // how much of pure water is frozen at 0 °C only the heat tells
  }
  return {
    meltG,
    temperatureC,
    share,
    alpha,
    heat: {
      mixtureBefore: heatJ,
      iceBefore: share * ice.massG * iceContent(ice.temperatureC),
      fromVessel: share * vesselJPerK * (ambientC - temperatureC),
      mixtureAfter,
      iceAfter: (share * ice.massG - meltG) * iceContent(temperatureC),
    },
  };
}

/** Where a falling function of the melt crosses zero between nothing and all the ice: regula falsi after Illinois. */
function fullMelt(surplus: (meltG: number) => number, iceG: number): number {
  let low = 0;
  let high = iceG;
  let atLow = surplus(low);
  if (!(atLow > 0)) return 0;
  let atHigh = surplus(high);
  if (atHigh >= 0) return high;
  const close = 1e-11 * (atLow - atHigh);
  let side = 0;
  for (let round = 0; round < 100; round++) {
    const middle = (low * atHigh - high * atLow) / (atHigh - atLow);
    const there = surplus(middle);
    if (Math.abs(there) <= close) return middle;
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
