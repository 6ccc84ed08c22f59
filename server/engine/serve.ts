/** One drink, computed: what goes in the vessel, what the ice does to it, what is poured after. */

import { gramsOf, gramsToReach, infuse, type Liquid, liquidOf } from "./composition.ts";
import { energyOf } from "./energy.ts";
import { ethanolDensity, waterDensity } from "./ethanol-water.ts";
import { heatContent, waterHeat } from "./heat.ts";
import { addMasses, at, freezingPoint, heatIn, type Masses, massOf, noMasses, sugarOf, volumeMl } from "./liquid.ts";
import { type IceInUse, iceContent, type Mixture, meltOf } from "./melt.ts";
import {
  type FigureName,
  figureNames,
  type IcePlan,
  type PourPlan,
  type ServePlan,
  type StepPlan,
  sugarKinds,
  type Unknown,
} from "./plan.ts";
import { addReason, mergeReasons, noReasons, type Reasons, topics } from "./reasons.ts";
import { heatWithIce, temperatureOf } from "./slush.ts";
import { sugars } from "./substances.ts";
import { clingingByKind, dryIceBelowC, modelDoubt } from "./techniques.ts";
import { isKnown, read, type Shift } from "./uncertainty.ts";

/** One run through a plan. Figures stand in the order of `figureNames`; what cannot be said is NaN. */
export interface Run {
  readonly values: number[];
  /** Why what is in the vessel, and why the whole drink, is unknown. */
  readonly vessel: Reasons;
  readonly whole: Reasons;
  /** Grams of each pour. */
  readonly grams: number[];
  readonly melt: { iceG: number; meltG: number; clingingG: number } | null;
}

/** Less acid than this, g/100 ml, is not weighed against the sugar. */
export const leastAcid = 0.15;

/**
 * Runs a plan, with one source moved if `shift` is given. Unknown amounts and contents count as none;
 * the reasons say which figures that makes meaningless (`reasons.ts`).
 *
 * In the vessel: every pour of that stage, then the steps in their order. Only what is in the vessel
 * with the ice is chilled and diluted. After: the other pours, as they come, and last those that top up.
 */
export function run(plan: ServePlan, shift?: Shift): Run {
  const mixture: Mixture = { masses: noMasses(), heatJ: 0 };
  const grams = new Array<number>(plan.pours.length).fill(0);
  const vessel = pourAll(plan, "vessel", mixture, grams, noReasons, shift);

  const beforeMl = volumeMl(mixture.masses);
  const beforeG = massOf(mixture.masses);
  const beforeEthanolG = mixture.masses[at.ethanol]!;

  const iced = chillAll(plan, mixture, shift);
  const poured = pourAll(plan, "after", mixture, grams, vessel, shift);
  const iceG = plan.serveIceG ? read(plan.serveIceG, shift) * plan.serves : iced.inGlassG;
  let whole = topUp(plan, mixture, grams, iceG, poured, shift);
  for (const model of plan.infused ?? []) whole = infuse(whole, model, shift);

  const { masses } = mixture;
  const afterMl = volumeMl(masses);
  const values = new Array<number>(figureNames.length).fill(0);
  const set = (name: FigureName, value: number) => {
    values[figureIndex[name]] = value;
  };
  set("beforeVolumeMl", beforeMl);
  set("beforeMassG", beforeG);
  set("beforeStrengthPct", strength(beforeEthanolG, beforeMl));
  set("waterMl", iced.waterMl);
  set("dilutionShare", beforeMl > 0 ? iced.waterMl / beforeMl : 0);
  set("afterVolumeMl", afterMl);
  set("strengthPct", strength(masses[at.ethanol]!, afterMl));
  const per100Ml = afterMl > 0 ? 100 / afterMl : 0;
  const acid = masses[at.titratable]! * per100Ml;
  const sweetness = sweetnessG(mixture, shift) * per100Ml;
  set("sugarGPer100Ml", sugarOf(masses) * per100Ml);
  set("sweetnessGPer100Ml", sweetness);
  set("acidGPer100Ml", acid);
  set("ratio", acid >= leastAcid ? sweetness / acid : Number.NaN);
  set("saltGPer100Ml", masses[at.salt]! * per100Ml);
  set("temperatureC", temperatureOf(mixture));
  const capacityMl = plan.glass ? read(plan.glass.capacityMl, shift) * plan.serves : Number.NaN;
  set("fillShare", (afterMl + displacedMl(iceG, masses)) / capacityMl);
  set("ethanolG", masses[at.ethanol]!);
  set("caffeineMg", masses[at.caffeineMg]!);
  set("energyKJ", energyOf(masses, "kJ", shift));
  set("energyKcal", energyOf(masses, "kcal", shift));
  return { values, vessel, whole, grams, melt: iced.melt };
}

/** Where each figure stands in `Run.values`. */
export const figureIndex = Object.fromEntries(figureNames.map((name, index) => [name, index])) as Readonly<Record<FigureName, number>>;

const strength = (ethanolG: number, volume: number): number => (volume > 0 ? (100 * ethanolG) / (ethanolDensity / 1000) / volume : 0);

/** Sugars as the weight of sucrose that is as sweet, g. */
function sweetnessG({ masses }: Mixture, shift: Shift | undefined): number {
  let sum = 0;
  for (const kind of sugarKinds) sum += masses[at[kind]]! * read(sugars[kind].sweetness, shift);
  return sum;
}

// Pouring

function pourAll(plan: ServePlan, stage: PourPlan["stage"], mixture: Mixture, grams: number[], start: Reasons, shift?: Shift): Reasons {
  let reasons = start;
  for (let i = 0; i < plan.pours.length; i++) {
    const pour = plan.pours[i]!;
    const { amount } = pour;
    if (pour.stage !== stage || "top" in amount || "topToMl" in amount) continue;
    const liquid = liquidOf(pour.of, shift);
    reasons = mergeReasons(reasons, "g" in amount ? liquid.reasonsWeighed : liquid.reasons);
    const quantity = "ml" in amount ? amount.ml : amount.g;
    if (isKnown(quantity)) {
      grams[i] = gramsOf(amount, read(quantity, shift), liquid);
      pourIn(mixture, liquid, grams[i]!, read(pour.temperatureC, shift));
    } else reasons = addReason(reasons, quantity.because, ...topics);
  }
  return reasons;
}

/** A pour that is frozen brings less heat, for its ice has to thaw. */
function pourIn(mixture: Mixture, liquid: Liquid, grams: number, tC: number): void {
  addMasses(mixture.masses, liquid.perGram, grams);
  mixture.heatJ += grams * (tC < liquid.freezingC ? heatWithIce(liquid.perGram, tC) : heatIn(liquid.perGram, tC));
}

/** What tops up, in the order of the pours: up to a volume, or up to the washline less the ice. */
function topUp(plan: ServePlan, mixture: Mixture, grams: number[], iceG: number, start: Reasons, shift?: Shift): Reasons {
  let reasons = start;
  for (let i = 0; i < plan.pours.length; i++) {
    const { amount, of, temperatureC } = plan.pours[i]!;
    if (!("top" in amount || "topToMl" in amount)) continue;
    const liquid = liquidOf(of, shift);
    reasons = mergeReasons(reasons, liquid.reasons);
    if ("topToMl" in amount && isKnown(amount.topToMl)) {
      grams[i] = gramsToReach(mixture.masses, liquid, read(amount.topToMl, shift));
    } else if ("top" in amount && plan.glass) {
      const levelMl = read(plan.glass.capacityMl, shift) * plan.glass.washline * plan.serves;
      grams[i] = gramsToLevel(mixture.masses, liquid, levelMl, iceG);
    } else {
      const because =
        "topToMl" in amount ? (amount.topToMl as Unknown).because : `no glass is named, so how much ${of.name} tops it up is not known`;
      reasons = addReason(reasons, because, ...topics);
      continue;
    }
    pourIn(mixture, liquid, grams[i]!, read(temperatureC, shift));
  }
  return reasons;
}

/** Grams that bring the drink to this level with its ice floating in it. */
function gramsToLevel(masses: Masses, liquid: Liquid, levelMl: number, iceG: number): number {
  let grams = 0;
  const full = masses.slice();
  for (let round = 0; round < 5; round++) {
    const next = gramsToReach(masses, liquid, levelMl - displacedMl(iceG, full));
    addMasses(full, liquid.perGram, next - grams);
    grams = next;
  }
  return grams;
}

/** What floating ice displaces: its own weight of the drink. */
function displacedMl(iceG: number, masses: Masses): number {
  const drinkG = massOf(masses);
  return drinkG > 0 ? (iceG * volumeMl(masses)) / drinkG : iceG;
}

// Chilling

interface Iced {
  /** All water that the steps added, ml. */
  waterMl: number;
  /** Ice that stays with the drink. */
  inGlassG: number;
  melt: Run["melt"];
}

function chillAll(plan: ServePlan, mixture: Mixture, shift: Shift | undefined): Iced {
  const iced: Iced = { waterMl: 0, inGlassG: 0, melt: null };
  let leftG = 0;
  for (const step of plan.steps) {
    if (step.waterShare) {
      const waterMl = step.waterShare * volumeMl(mixture.masses);
      const waterG = (waterMl * waterDensity) / 1000;
      mixture.masses[at.water]! += waterG;
      mixture.heatJ += waterG * heatContent(waterHeat, read(plan.ambientC, shift));
      iced.waterMl += waterMl;
    }
    if (step.technique.chill && massOf(mixture.masses) > 0) leftG = chillOnce(plan, step, mixture, iced, shift);
    if (step.technique.iceInGlass) iced.inGlassG = leftG;
  }
  return iced;
}

/** One contact with ice; answers the ice left over, g. */
function chillOnce(plan: ServePlan, step: StepPlan, mixture: Mixture, iced: Iced, shift: Shift | undefined): number {
  const chill = step.technique.chill!;
  const icePlan = step.ice ?? plan.ice;
  const ice = iceInUse(icePlan, chill.iceG * plan.serves, chill.clingingMl, shift);
  const vesselJPerK = chill.vesselJPerK * plan.serves;
  const result = meltOf(mixture, chill, ice, read(plan.ambientC, shift), step.seconds ?? chill.usualS, vesselJPerK);

  // The model's own doubts are a factor of 1 and an offset of 0, except where they are being moved.
  const doubt = modelDoubt(step.technique);
  const factor = read(icePlan.kind === "crushed" ? doubt.waterCrushed : doubt.water, shift);
  const meltG = Math.min(ice.massG, factor * result.meltG);
  const clingingG = factor * ice.clingingG;
  let waterG = meltG + clingingG;
  let leftG = ice.massG - meltG;
  mixture.masses[at.water]! += waterG;
  let temperatureC = result.temperatureC + read(doubt.temperature, shift);
  if (factor !== 1) temperatureC += chill.alpha * shiftOfFreezing(mixture.masses, waterG - waterG / factor);
  mixture.heatJ = heatIn(mixture.masses, temperatureC);
  if (chill.drunk) {
    mixture.masses[at.water]! += leftG;
    mixture.heatJ += leftG * iceContent(temperatureC);
    waterG += leftG;
    leftG = 0;
  }
  iced.waterMl += (1000 * waterG) / waterDensity;
  iced.melt ??= { iceG: 0, meltG: 0, clingingG: 0 };
  iced.melt.iceG += ice.massG;
  iced.melt.meltG += meltG;
  iced.melt.clingingG += clingingG;
  return leftG;
}

/** By how much the freezing point rose with the last grams of water. */
function shiftOfFreezing(masses: Masses, addedG: number): number {
  const after = freezingPoint(masses);
  masses[at.water]! -= addedG;
  const before = freezingPoint(masses);
  masses[at.water]! += addedG;
  return after - before;
}

function iceInUse(plan: IcePlan, usualG: number, clingingMlPer150G: number, shift: Shift | undefined): IceInUse {
  const massG = plan.massG ? read(plan.massG, shift) : usualG;
  const temperatureC = Math.min(0, read(plan.temperatureC, shift));
  const wet = Math.max(0, 1 - temperatureC / dryIceBelowC);
  return { massG, temperatureC, clingingG: (massG / 150) * clingingMlPer150G * clingingByKind[plan.kind] * wet };
}
