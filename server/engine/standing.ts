/**
 * A drink that stands on its ice while it is drunk: a band of water, never one number.
 *
 * The drink and its glass, at first as warm as they come to be together, lose heat to the ice at its
 * surface and take it from the room's air:
 *
 *   C dT/dt = G (room − T) − K (T − freezing point),   melt = ∫ K (T − freezing point) dt ÷ heat of fusion
 *
 * which has a closed solution. The two ends of the band are the ends of what G and K may be. Both are
 * practice, no source: the coefficients lie inside what textbooks of heat transfer give for free convection
 * in gases and liquids (2…25 and 50…1000 W/(m² K); Incropera, from memory), the areas are guesses from the
 * volume and the ice. A hand round the glass, a straw and a thirsty guest are not in it.
 */

import { glassHeat } from "./glass.ts";
import { fusionHeat } from "./heat.ts";
import { freezingPoint, heatIn, volumeMl } from "./liquid.ts";
import type { IcePlan, ServePlan } from "./plan.ts";
import { type Mixture, temperatureOf } from "./slush.ts";
import { clingingByKind } from "./techniques.ts";

interface Served {
  /** All serves together, as is the ice. */
  readonly mixture: Mixture;
  readonly iceG: number;
  readonly iceKind: IcePlan["kind"];
}

/** W/(m² K): from a still room's air (and the dew that it leaves) to the glass, from a drink at rest to its ice. */
const air = { low: 7, high: 15 };
const ice = { low: 100, high: 500 };
/** m² of surface on a gram of cubes: 54 cm² on one of 3 cm and 25 g. Other kinds in the proportion of the water that clings to them. */
const surfaceOfCubes = 54e-4 / 25;

/**
 * Water in ml that one serve takes up in so many minutes (≥ 0) on the ice in its glass, least and most;
 * null where there is none. Never less after a longer time, never more than the ice.
 */
export function standingWater(
  { mixture, iceG, iceKind }: Served,
  plan: ServePlan,
  minutes: number,
): { lowMl: number; highMl: number } | null {
  const liquidMl = volumeMl(mixture.masses) / plan.serves;
  if (!(iceG > 0) || !(liquidMl > 0)) return null;
  const iceEachG = iceG / plan.serves;
  const freezingC = freezingPoint(mixture.masses);
  const servedC = temperatureOf(mixture);
  const drinkJPerK = (heatIn(mixture.masses, servedC + 0.5) - heatIn(mixture.masses, servedC - 0.5)) / plan.serves;
  const glassJPerK = plan.glassC ? glassHeat.value * liquidMl : 0;
  const jPerK = drinkJPerK + glassJPerK;
  const startC = (drinkJPerK * servedC + glassJPerK * (plan.glassC?.value ?? 0)) / jPerK;
  const airM2 = surfaceOf(liquidMl + iceEachG);
  const iceM2 = iceEachG * surfaceOfCubes * clingingByKind[iceKind];
  const waterMl = (end: "low" | "high"): number => {
    const toIce = ice[end] * iceM2;
    const fromAir = air[end] * airM2;
    const rate = (toIce + fromAir) / jPerK;
    const lastC = (toIce * freezingC + fromAir * plan.ambientC.value) / (toIce + fromAir);
    const seconds = 60 * minutes;
    const kelvinSeconds = (lastC - freezingC) * seconds + ((startC - lastC) * -Math.expm1(-rate * seconds)) / rate;
    return Math.min(iceEachG, Math.max(0, (toIce * kelvinSeconds) / fusionHeat));
  };
  return { lowMl: waterMl("low"), highMl: waterMl("high") };
}

/** m² of a cylinder as high as it is wide, by its ml. */
function surfaceOf(ml: number): number {
  return 1.5 * Math.PI * ((4 * ml * 1e-6) / Math.PI) ** (2 / 3);
}
