/** One drink, computed: what goes in the vessel, what the ice does to it, what is poured after. */

import { type Chilled, chillAll } from "./chilling.ts";
import { costOfAmount, gramsOf, gramsToReach, infuse, type Liquid, liquidOf } from "./composition.ts";
import { energyOf } from "./energy.ts";
import { ethanolDensity } from "./ethanol-water.ts";
import { glassHeat, meetGlass } from "./glass.ts";
import { addMasses, at, freezingPoint, heatIn, type Masses, massOf, noMasses, sugarOf, volumeMl } from "./liquid.ts";
import { type FigureName, figureNames, type PourPlan, type ServePlan, sugarKinds, type Unknown } from "./plan.ts";
import { priceChange } from "./price.ts";
import { addReason, mergeReasons, noReasons, type Reasons, topics } from "./reasons.ts";
import { heatWithIce, type Mixture, temperatureOf } from "./slush.ts";
import { sugars } from "./substances.ts";
import { isKnown, read, type Shift } from "./uncertainty.ts";

/** One run through a plan. Figures stand in the order of `figureNames`; what cannot be said is NaN. */
export interface Run {
  readonly values: number[];
  /** Why what is in the vessel is unknown, before its steps and after them, and why the whole drink is. */
  readonly vessel: Reasons;
  readonly steps: Reasons;
  readonly whole: Reasons;
  /** Grams of each pour. */
  readonly grams: number[];
  readonly contacts: Chilled["contacts"];
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
  const mixture: Mixture = { masses: noMasses(), heatJ: 0, freezingOffC: 0 };
  const grams = new Array<number>(plan.pours.length).fill(0);
  const vessel = pourAll(plan, "vessel", mixture, grams, noReasons, shift);

  const beforeMl = volumeMl(mixture.masses);
  const beforeG = massOf(mixture.masses);
  const beforeEthanolG = mixture.masses[at.ethanol]!;

  const chilled = chillAll(plan, mixture, vessel, shift);
  const vesselC = temperatureOf(mixture);
  const poured = pourAll(plan, "after", mixture, grams, chilled.reasons, shift);
  const iceG = plan.serveIceG ? read(plan.serveIceG, shift) * plan.serves : chilled.iceG;
  let whole = topUp(plan, mixture, grams, iceG, poured, shift);
  for (const model of plan.infused ?? []) whole = infuse(whole, model, shift);
  for (const { of, amount, price } of plan.beside ?? []) mixture.masses[at.cost]! += costOfAmount(amount, of, price, shift);

  const { masses } = mixture;
  const afterMl = volumeMl(masses);
  if (plan.glassC && !(iceG > 0)) meetGlass(mixture, read(glassHeat, shift) * afterMl, read(plan.glassC, shift));
  const values = new Array<number>(figureNames.length).fill(0);
  const set = (name: FigureName, value: number) => {
    values[figureIndex[name]] = value;
  };
  set("beforeVolumeMl", beforeMl);
  set("beforeMassG", beforeG);
  set("beforeStrengthPct", strength(beforeEthanolG, beforeMl));
  set("waterMl", chilled.waterMl);
  set("dilutionShare", beforeMl > 0 ? chilled.waterMl / beforeMl : 0);
  set("vesselTemperatureC", vesselC);
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
  set("densityGPerMl", afterMl > 0 ? massOf(masses) / afterMl : Number.NaN);
  set("freezingC", freezingPoint(masses));
  const costPerServe = masses[at.cost]! / plan.serves;
  set("costPerServe", costPerServe);
  set("pricedPerServe", costPerServe);
  set("energyKJ", energyOf(masses, "kJ", shift));
  set("energyKcal", energyOf(masses, "kcal", shift));
  const iceKind = plan.serveIceG ? (plan.serveIceKind ?? plan.ice.kind) : chilled.iceKind;
  return { values, vessel, steps: chilled.reasons, whole, grams, contacts: chilled.contacts, served: { mixture, iceG, iceKind } };
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
    mixture.masses[at.cost]! += priceChange(grams[i]!, liquid, pour.price, shift);
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
    const { amount, of, temperatureC, price } = plan.pours[i]!;
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
    mixture.masses[at.cost]! += priceChange(grams[i]!, liquid, price, shift);
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
