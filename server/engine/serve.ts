/** One drink, computed: what goes in the vessel, what the ice does to it, what is poured after. */

import { type Chilled, chillAll } from "./chilling.ts";
import { displacedMl, infuse } from "./composition.ts";
import { energyOf } from "./energy.ts";
import { ethanolDensity } from "./ethanol-water.ts";
import { glassHeat, meetGlass } from "./glass.ts";
import { addMasses, at, freezingPoint, massOf, sugarOf, volumeMl } from "./liquid.ts";
import { type Contact, type FigureName, figureNames, type ServePlan, sugarKinds } from "./plan.ts";
import { pourAll, topUp } from "./pouring.ts";
import { mergeReasons, type Reasons } from "./reasons.ts";
import { type Mixture, temperatureOf } from "./slush.ts";
import { sugars } from "./substances.ts";
import { read, type Shift } from "./uncertainty.ts";

/** One run through a plan. Figures stand in the order of `figureNames`; what cannot be said is NaN. */
export interface Run {
  readonly values: number[];
  /** Why what is in the vessel is unknown, before its steps and after them, and why the whole drink is. */
  readonly vessel: Reasons;
  readonly steps: Reasons;
  readonly whole: Reasons;
  /** Grams of each pour. */
  readonly grams: number[];
  readonly contacts: readonly Contact[];
  /** The drink in its glass, all serves together, and the ice beside it. */
  readonly served: { readonly mixture: Mixture; readonly iceG: number; readonly iceKind: Chilled["iceKind"] };
}

/** Less acid than this, g/100 ml, is not weighed against the sugar. */
export const leastAcid = 0.15;

/**
 * Runs a plan, with one source moved if `shift` is given. Unknown amounts and contents count as none;
 * the reasons say which figures that makes meaningless (`reasons.ts`).
 *
 * In the vessel: every pour of that stage, then the steps in their order. Only what is in the vessel
 * with the ice is chilled and diluted. After: the other pours, as they come, and last those that top up.
 * The glass then warms or cools the drink, except where ice stands in it: the ice keeps the drink cold, and
 * what the glass melts of it belongs to the minutes of drinking (`standing.ts`).
 */
export function run(plan: ServePlan, shift?: Shift): Run {
  const { vessel: mixture, after, grams, vesselReasons, afterReasons } = pourAll(plan, shift);
  const values = noFigures();
  const contacts: Contact[] = [];
  const chilled = chillPoured(plan, mixture, vesselReasons, values, shift, contacts);
  addMasses(mixture.masses, after.masses, 1);
  mixture.heatJ += after.heatJ;
  const { iceG, reasons } = serve(plan, mixture, chilled.iceG, grams, mergeReasons(chilled.reasons, afterReasons), values, shift);
  const whole = (plan.infused ?? []).reduce((sum, model) => infuse(sum, model), reasons);
  const iceKind = plan.serveIceG ? (plan.serveIceKind ?? plan.ice.kind) : chilled.iceKind;
  return { values, vessel: vesselReasons, steps: chilled.reasons, whole, grams, contacts, served: { mixture, iceG, iceKind } };
}

/** The steps, done to what is in the vessel; writes the figures up to their end. */
export function chillPoured(
  plan: ServePlan,
  mixture: Mixture,
  reasons: Reasons,
  values: number[],
  shift?: Shift,
  contacts?: Contact[],
): Chilled {
  const { masses } = mixture;
  const beforeMl = volumeMl(masses);
  values[figureIndex.beforeVolumeMl] = beforeMl;
  values[figureIndex.beforeMassG] = massOf(masses);
  values[figureIndex.beforeStrengthPct] = strength(masses[at.ethanol]!, beforeMl);
  const chilled = chillAll(plan, mixture, reasons, shift, contacts);
  values[figureIndex.waterMl] = chilled.waterMl;
  values[figureIndex.dilutionShare] = beforeMl > 0 ? chilled.waterMl / beforeMl : 0;
  values[figureIndex.vesselTemperatureC] = chilled.temperatureC ?? temperatureOf(mixture);
  return chilled;
}

/** All that was poured, chilled, put in its glass and topped up; `leftG` is the ice that comes with it. Writes the other figures. */
export function serve(
  plan: ServePlan,
  mixture: Mixture,
  leftG: number,
  grams: number[],
  before: Reasons,
  values: number[],
  shift?: Shift,
): { readonly iceG: number; readonly reasons: Reasons } {
  const iceG = plan.serveIceG ? read(plan.serveIceG, shift) * plan.serves : leftG;
  const reasons = topUp(plan, mixture, grams, iceG, before, shift);
  const { masses } = mixture;
  const afterMl = volumeMl(masses);
  const afterG = massOf(masses);
  const temperatureC =
    plan.glassC && !(iceG > 0) ? meetGlass(mixture, read(glassHeat, shift) * afterMl, read(plan.glassC, shift)) : temperatureOf(mixture);
  const per100Ml = afterMl > 0 ? 100 / afterMl : 0;
  const acid = masses[at.titratable]! * per100Ml;
  const sweetness = sweetnessG(mixture, shift) * per100Ml;
  const capacityMl = plan.glass ? read(plan.glass.capacityMl, shift) * plan.serves : Number.NaN;
  const costPerServe = masses[at.cost]! / plan.serves;
  values[figureIndex.afterVolumeMl] = afterMl;
  values[figureIndex.strengthPct] = strength(masses[at.ethanol]!, afterMl);
  values[figureIndex.sugarGPer100Ml] = sugarOf(masses) * per100Ml;
  values[figureIndex.sweetnessGPer100Ml] = sweetness;
  values[figureIndex.acidGPer100Ml] = acid;
  values[figureIndex.ratio] = acid >= leastAcid ? sweetness / acid : Number.NaN;
  values[figureIndex.saltGPer100Ml] = masses[at.salt]! * per100Ml;
  values[figureIndex.temperatureC] = temperatureC;
  values[figureIndex.fillShare] = (afterMl + displacedMl(iceG, afterG, afterMl)) / capacityMl;
  values[figureIndex.ethanolG] = masses[at.ethanol]!;
  values[figureIndex.caffeineMg] = masses[at.caffeineMg]!;
  values[figureIndex.densityGPerMl] = afterMl > 0 ? afterG / afterMl : Number.NaN;
  values[figureIndex.freezingC] = freezingPoint(masses);
  values[figureIndex.costPerServe] = costPerServe;
  values[figureIndex.pricedPerServe] = costPerServe;
  values[figureIndex.energyKJ] = energyOf(masses, "kJ", shift);
  values[figureIndex.energyKcal] = energyOf(masses, "kcal", shift);
  return { iceG, reasons };
}

const zeros: readonly number[] = figureNames.map(() => 0.5).fill(0); // see `nothing` in `liquid.ts`

export function noFigures(): number[] {
  return zeros.slice();
}

/** Where each figure stands in `Run.values`. */
export const figureIndex = Object.fromEntries(figureNames.map((name, index) => [name, index])) as Readonly<Record<FigureName, number>>;

const strength = (ethanolG: number, volume: number): number => (volume > 0 ? (100 * ethanolG) / (ethanolDensity / 1000) / volume : 0);

/** Sugars as the weight of sucrose that is as sweet, g. */
function sweetnessG({ masses }: Mixture, shift: Shift | undefined): number {
  let sum = 0;
  for (const { index, sweetness } of sweetening) sum += masses[index]! * read(sweetness, shift);
  return sum;
}
const sweetening = sugarKinds.map((kind) => ({ index: at[kind], sweetness: sugars[kind].sweetness }));
