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
import { fusionHeat, iceContent } from "./heat.ts";
import { at, disaccharides, heatAt, molesOf, monosaccharides, otherHeat, saltMolarMass, warmthOf } from "./liquid.ts";
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
  const { timeConstantS } = chill;
  const share = seconds < settledS ? Math.expm1(-seconds / timeConstantS) / Math.expm1(-settledS / timeConstantS) : 1;
  const alpha = seconds > settledS ? 1 - (1 - chill.alpha) * Math.exp((settledS - seconds) / timeConstantS) : chill.alpha;

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
  const iceBefore = ice.massG * iceContent(ice.temperatureC);
  const given = (meltG: number, part: number, t: number): number =>
    part * (iceBefore + vesselJPerK * (ambientC - t)) - (part * ice.massG - meltG) * iceContent(t);
  const fullSurplus = (meltG: number): number => {
    const t = alpha * freezing(meltG);
    return heatJ + given(meltG, 1, t) - heatAt(warmthOf(water + meltG, ethanol, others), t);
  };

  const meltG = share * fullMelt(fullSurplus, ice.massG);
  const freezingC = freezing(meltG);
  const diluted = warmthOf(water + meltG, ethanol, others);
  let temperatureC = zeroOf((t) => heatJ + given(meltG, share, t) - heatAt(diluted, t), alpha * freezingC);
  let mixtureAfter = heatAt(diluted, temperatureC);
  if (temperatureC < freezingC - 1e-6) {
    const wetter = masses.with(at.water, water + meltG);
    temperatureC = temperatureOf({ masses: wetter, heatJ, freezingOffC: 0 }, (t) => given(meltG, share, t));
    mixtureAfter = heatJ + given(meltG, share, temperatureC); // how much of pure water is frozen at 0 °C only the heat tells
  }
  return {
    meltG,
    temperatureC,
    share,
    alpha,
    heat: {
      mixtureBefore: heatJ,
      iceBefore: share * iceBefore,
      fromVessel: share * vesselJPerK * (ambientC - temperatureC),
      mixtureAfter,
      iceAfter: (share * ice.massG - meltG) * iceContent(temperatureC),
    },
  };
}

/**
 * Where a falling, nearly straight function of the melt crosses zero between nothing and all the ice: secants,
 * from what the surplus would melt at 0 °C on, and halves where a secant leads out of what is still open.
 */
function fullMelt(surplus: (meltG: number) => number, iceG: number): number {
  let last = 0;
  let atLast = surplus(0);
  if (!(atLast > 0)) return 0;
  let low = 0;
  let high = iceG;
  let melt = Math.min(iceG, atLast / fusionHeat);
  for (let round = 0; round < 100; round++) {
    const there = surplus(melt);
    if (there === 0 || (there > 0 && melt === iceG)) return melt;
    if (there > 0) low = melt;
    else high = melt;
    let next = melt - (there * (melt - last)) / (there - atLast);
    if (next > iceG && high === iceG) next = iceG;
    else if (!(next > low && next < high)) next = (low + high) / 2;
    if (Math.abs(next - melt) < 1e-8 * iceG) return next; // the error is the product of the last two steps
    last = melt;
    atLast = there;
    melt = next;
  }
  return melt;
}
