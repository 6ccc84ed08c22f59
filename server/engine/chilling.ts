/** What the steps of a method do to what is in the vessel: water added, ice melted, a temperature kept. */

import { waterDensity } from "./ethanol-water.ts";
import { heatContent, iceContent, waterHeat } from "./heat.ts";
import { at, freezingPoint, type Masses, massOf, volumeMl } from "./liquid.ts";
import { type IceInUse, meltOf } from "./melt.ts";
import type { Contact, IcePlan, ServePlan, StepPlan } from "./plan.ts";
import { addReason, type Reasons } from "./reasons.ts";
import { heatWithIce, type Mixture, temperatureOf } from "./slush.ts";
import { clingingByKind, dryIceBelowC, modelDoubt } from "./techniques.ts";
import { isKnown, read, type Shift } from "./uncertainty.ts";

export interface Chilled {
  /** All water that the steps added, ml. */
  readonly waterMl: number;
  /** Ice that the method leaves with the drink, g. */
  readonly iceG: number;
  readonly iceKind: IcePlan["kind"];
  /** Of the mixture, as ice left it, °C; undefined where something was done to it since, or no ice. */
  readonly temperatureC: number | undefined;
  readonly reasons: Reasons;
}

/**
 * Does the steps in their order to the mixture, with one source moved if `shift` is given. `reasons` is
 * why the mixture is unknown before. A share of water that nobody stated makes the volume unknown; a
 * temperature that nobody stated the temperature, and the volume too where ice melts in it after that.
 */
export function chillAll(plan: ServePlan, mixture: Mixture, reasons: Reasons, shift?: Shift, contacts?: Contact[]): Chilled {
  const chilled = { waterMl: 0, iceG: 0, iceKind: plan.ice.kind, temperatureC: undefined as number | undefined, reasons };
  let left = { iceG: 0, iceKind: plan.ice.kind };
  for (const step of plan.steps) {
    const { technique, waterShare, toC } = step;
    if (waterShare || toC) chilled.temperatureC = undefined;
    if (waterShare && isKnown(waterShare)) {
      chilled.waterMl += addWater(mixture, read(waterShare, shift) * volumeMl(mixture.masses), read(plan.ambientC, shift));
    } else if (waterShare) chilled.reasons = addReason(chilled.reasons, waterShare.because, "volume");
    if (toC && isKnown(toC)) mixture.heatJ = heatWithIce(mixture.masses, read(toC, shift));
    else if (toC) chilled.reasons = addReason(chilled.reasons, toC.because, "heat");
    if (technique.chill && massOf(mixture.masses) > 0) {
      const [heatUnknown] = chilled.reasons.heat;
      if (heatUnknown !== undefined) chilled.reasons = addReason(chilled.reasons, heatUnknown, "volume");
      const { waterMl, leftG, temperatureC } = chillOnce(plan, step, mixture, shift, contacts);
      chilled.waterMl += waterMl;
      chilled.temperatureC = temperatureC;
      left = { iceG: leftG, iceKind: (step.ice ?? plan.ice).kind };
    }
    if (technique.iceInGlass) Object.assign(chilled, left);
  }
  return chilled;
}

/** Water of a temperature, °C, poured in; answers its ml. */
function addWater(mixture: Mixture, ml: number, tC: number): number {
  const grams = (ml * waterDensity) / 1000;
  mixture.masses[at.water]! += grams;
  mixture.heatJ += grams * heatContent(waterHeat, tC);
  return ml;
}

/** One contact with ice; answers the water that it brought and the ice left over. */
function chillOnce(plan: ServePlan, step: StepPlan, mixture: Mixture, shift: Shift | undefined, contacts: Contact[] | undefined) {
  const chill = step.technique.chill!;
  const icePlan = step.ice ?? plan.ice;
  const doubt = modelDoubt(step.technique);
  const ice = iceInUse(icePlan, read(doubt.iceG, shift) * plan.serves, chill.clingingMl, shift);
  const vesselJPerK = chill.vesselJPerK * plan.serves;
  const beforeC = contacts && temperatureOf(mixture);
  const seconds = step.seconds ? Math.max(0, read(step.seconds, shift)) : chill.usualS;
  const melt = meltOf(mixture, chill, ice, read(plan.ambientC, shift), seconds, vesselJPerK);

  // The model's own doubts are a factor of 1 and an offset of 0, except where they are being moved.
  const factor = read(icePlan.kind === "crushed" ? doubt.waterCrushed : doubt.water, shift);
  const meltG = Math.min(ice.massG, factor * melt.meltG);
  const clingingG = factor * ice.clingingG;
  let waterG = meltG + clingingG;
  let leftG = ice.massG - meltG;
  mixture.masses[at.water]! += waterG;
  mixture.freezingOffC = ice.massG > 0 ? read(doubt.temperature, shift) : 0;
  let afterC = melt.temperatureC + mixture.freezingOffC;
  if (factor !== 1) afterC += melt.alpha * shiftOfFreezing(mixture.masses, waterG - waterG / factor);
  const moved = factor !== 1 || mixture.freezingOffC !== 0;
  mixture.heatJ = moved ? heatWithIce(mixture.masses, afterC, mixture.freezingOffC) : melt.heat.mixtureAfter;
  const freezingC = contacts && freezingPoint(mixture.masses);
  if (chill.drunk) {
    const cooledG = Math.max(0, melt.share * ice.massG - meltG);
    mixture.masses[at.water]! += leftG;
    mixture.heatJ += cooledG * iceContent(afterC) + (leftG - cooledG) * iceContent(ice.temperatureC);
    waterG += leftG;
    leftG = 0;
  }
  if (contacts) {
    const { share, alpha, heat } = melt;
    const meltingJ = -melt.meltG * iceContent(ice.temperatureC);
    contacts.push({
      step,
      iceG: ice.massG,
      meltG,
      clingingG,
      share,
      alpha,
      beforeC: beforeC!,
      freezingC: freezingC!,
      afterC,
      fromDrinkJ: heat.mixtureBefore - heat.mixtureAfter,
      fromVesselJ: heat.fromVessel,
      meltingJ,
      restOfIceJ: heat.iceAfter - heat.iceBefore - meltingJ,
    });
  }
  return { waterMl: (1000 * waterG) / waterDensity, leftG, temperatureC: chill.drunk ? undefined : afterC };
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
