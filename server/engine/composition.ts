/** What an ingredient is made of: from its label, or from the parts that it was made of. */

import { ethanolDensity } from "./ethanol-water.ts";
import { addMasses, at, freezingPoint, type Masses, massOf, noMasses, sugarOf, volumeMl } from "./liquid.ts";
import { type Amount, type Content, type Known, type Model, type PrepModel, type StockModel, sugarKinds } from "./plan.ts";
import { addReason, mergeReasons, noReasons, type Reasons, topics } from "./reasons.ts";
import { acids, citricPerGram } from "./substances.ts";
import { isKnown, read, type Shift, sourcesOf } from "./uncertainty.ts";

/** One gram of an ingredient. */
export interface Liquid {
  readonly perGram: Masses;
  /** What it fills once it is in a drink, at 20 °C. */
  readonly mlPerGram: number;
  /** What a measure of it weighs: for a solid with a stated density that of the heap, not of the dissolved. */
  readonly gPerMl: number;
  /** °C at which it starts to freeze. */
  readonly freezingC: number;
  readonly reasons: Reasons;
  /** Where it is weighed instead of measured: see `reasons.ts`. */
  readonly reasonsWeighed: Reasons;
}

const liquids = new WeakMap<Model, Liquid>();

/**
 * The ingredient per gram. Kept for each model object; with a source moved, computed anew if the
 * ingredient depends on it. A prep that holds itself must not be passed.
 */
export function liquidOf(model: Model, shift?: Shift): Liquid {
  if (shift !== undefined && sourcesOf(model).has(shift.source)) return makeLiquid(model, shift);
  let liquid = liquids.get(model);
  if (liquid === undefined) {
    liquid = makeLiquid(model);
    liquids.set(model, liquid);
  }
  return liquid;
}

function makeLiquid(model: Model, shift?: Shift): Liquid {
  return model.type === "stock" ? stockLiquid(model, shift) : prepLiquid(model, shift);
}

// From a label

/**
 * A stock's label to a liquid. What is given per 100 ml is taken as grams in 100 ml, what is given per
 * 100 g as a share of the mass; the rest is water, as much as fills the 100 ml (or, with a stated
 * density, as much as weighs it).
 */
function stockLiquid(stock: StockModel, shift: Shift | undefined): Liquid {
  const per100Ml = noMasses();
  const per100G = noMasses();
  let reasons = noReasons;
  const put = (index: number, content: Content, amount: number) => {
    (content.per === "100 ml" ? per100Ml : per100G)[index]! += amount;
  };
  const take = (quantity: Known, ...about: (typeof topics)[number][]): number => {
    if (isKnown(quantity)) return Math.max(0, read(quantity, shift));
    if (about.length > 0) reasons = addReason(reasons, quantity.because, ...about);
    return 0;
  };
  per100Ml[at.ethanol] = (take(stock.abvPct, "ethanol", "volume") / 100) * (ethanolDensity / 10);
  for (const sugar of stock.sugars) put(at[sugar.sugar], sugar, take(sugar.amount, "sugar"));
  for (const acid of stock.acids) {
    // Titrated acid is taken to be the acid it is expressed as: only its mass and its moles depend on that.
    const grams = take(acid.amount, "acid");
    put(at.acid, acid, grams);
    put(at.titratable, acid, grams * citricPerGram(acid.acid));
    put(at.acidMmol, acid, (1000 * grams * acids[acid.acid].depression) / acids[acid.acid].molarMass);
  }
  put(at.salt, stock.salt, take(stock.salt.amount, "salt"));
  put(at.solids, stock.solids, take(stock.solids.amount, "solids"));
  if (stock.fat) put(at.fat, stock.fat, take(stock.fat.amount, "solids"));
  put(at.caffeineMg, stock.caffeineMg, take(stock.caffeineMg.amount, "caffeine"));

  const density = stock.densityGPerMl && read(stock.densityGPerMl, shift);
  const masses = fillWithWater(per100Ml, per100G, stock.solid ? undefined : density);
  if (!masses) reasons = addReason(reasons, `what ${stock.name} is said to hold is more than there is room for`, ...topics);
  const sugarReason = reasons.sugar[0];
  const reasonsWeighed = sugarReason !== undefined && density === undefined ? addReason(reasons, sugarReason, "volume") : reasons;
  return perGramOf(masses ?? onlyWater(), reasons, reasonsWeighed, stock.solid ? density : undefined);
}

/**
 * The whole of 100 ml, or of any amount where everything is given by weight. Undefined where what is
 * given does not fit; a rounding's worth too much (1 g in 100) is let pass.
 */
function fillWithWater(per100Ml: Masses, per100G: Masses, density: number | undefined): Masses | undefined {
  const fixed = massOf(per100Ml);
  const share = massOf(per100G) / 100;
  if (share > 1.01) return undefined;
  const masses = noMasses();
  let grams = density === undefined ? 100 : 100 * density;
  for (let round = 0; round < 60; round++) {
    for (let i = 0; i < masses.length; i++) masses[i] = per100Ml[i]! + (per100G[i]! * grams) / 100;
    masses[at.water] = grams - fixed - share * grams;
    if (density !== undefined || fixed === 0) break;
    const step = 100 - volumeMl(masses);
    if (Math.abs(step) < 1e-10) break;
    grams += step;
  }
  if (masses[at.water]! < -0.01 * grams) return undefined;
  noNegativeWater(masses);
  if (density !== undefined) masses[at.extraMl] = 100 - volumeMl(masses);
  return masses;
}

function noNegativeWater(masses: Masses): Masses {
  if (masses[at.water]! < 0) masses[at.water] = 0;
  return masses;
}

function onlyWater(): Masses {
  const masses = noMasses();
  masses[at.water] = 1;
  return masses;
}

function perGramOf(masses: Masses, reasons: Reasons, reasonsWeighed: Reasons, heapDensity?: number): Liquid {
  const grams = massOf(masses);
  const perGram = noMasses();
  addMasses(perGram, masses, 1 / grams);
  const mlPerGram = volumeMl(perGram);
  return {
    perGram,
    mlPerGram,
    gPerMl: heapDensity ?? 1 / mlPerGram,
    freezingC: freezingPoint(perGram),
    reasons,
    reasonsWeighed,
  };
}

// From parts

/** All of a prep as its parts make it, measured values put in. */
interface Batch {
  readonly masses: Masses;
  readonly volumeMl: number;
  readonly reasons: Reasons;
}

function prepLiquid(prep: PrepModel, shift: Shift | undefined): Liquid {
  const { masses, reasons } = batchOf(prep, shift);
  if (massOf(masses) > 0) return perGramOf(masses, reasons, reasons);
  const nothing = addReason(reasons, `${prep.name} has nothing in it`, ...topics);
  return perGramOf(onlyWater(), nothing, nothing);
}

/**
 * Mixes a prep's parts by mass. `upTo…` parts come last, whatever their place: as much as brings the
 * whole to that mass, or to that volume at 20 °C; none where it is larger already. Discarded parts bring
 * nothing but what `infuse` says.
 */
export function batchOf(prep: PrepModel, shift?: Shift): Batch {
  const masses = noMasses();
  let reasons = noReasons;
  for (const upTo of [false, true]) {
    for (const { of, amount, discarded } of prep.parts) {
      if (discarded && !upTo) reasons = infuse(reasons, of, shift);
      if (discarded || upTo !== ("upToG" in amount || "upToMl" in amount)) continue;
      const liquid = liquidOf(of, shift);
      const weighed = "g" in amount || "upToG" in amount;
      reasons = mergeReasons(reasons, weighed ? liquid.reasonsWeighed : liquid.reasons);
      const [quantity] = Object.values(amount) as [Known];
      if (!isKnown(quantity)) {
        reasons = addReason(reasons, quantity.because, ...topics);
        continue;
      }
      const target = read(quantity, shift);
      if ("upToG" in amount) addMasses(masses, liquid.perGram, Math.max(0, target - massOf(masses)));
      else if ("upToMl" in amount) addMasses(masses, liquid.perGram, gramsToReach(masses, liquid, target));
      else addMasses(masses, liquid.perGram, gramsOf(amount, target, liquid));
    }
  }
  if (prep.unknown) reasons = addReason(reasons, prep.unknown.because, ...topics);
  return putMeasured(masses, reasons, prep.measured, shift);
}

/** What is taken out again has left some of its caffeine, if it holds any, and nobody knows how much. */
export function infuse(reasons: Reasons, model: Model, shift?: Shift): Reasons {
  const { perGram, reasons: own } = liquidOf(model, shift);
  if (own.caffeine.length === 0 && !(perGram[at.caffeineMg]! > 0)) return reasons;
  return addReason(reasons, own.caffeine[0] ?? `how much of the caffeine of ${model.name} went over is not known`, "caffeine");
}

/** Grams that an amount of a liquid weighs. */
export function gramsOf(amount: Amount, value: number, liquid: Liquid): number {
  return "ml" in amount ? value * liquid.gPerMl : value;
}

/** Grams of a liquid that bring what is there to this volume in ml at 20 °C; 0 where it is fuller already. */
export function gramsToReach(masses: Masses, liquid: Liquid, targetMl: number): number {
  let grams = 0;
  const sum = masses.slice();
  for (let round = 0; round < 20; round++) {
    const missing = targetMl - volumeMl(sum);
    const step = Math.max(missing / liquid.mlPerGram, -grams);
    grams += step;
    addMasses(sum, liquid.perGram, step);
    if (Math.abs(step) < 1e-9) break;
  }
  return grams;
}

/**
 * Measured values override: sugar by °Brix (kinds in their computed proportion, sucrose where there was
 * none), ethanol by strength, the volume by density, each against water, the mass kept. What is measured
 * is known, even where the composition is not.
 */
function putMeasured(masses: Masses, before: Reasons, measured: PrepModel["measured"], shift: Shift | undefined): Batch {
  let reasons = before;
  const grams = massOf(masses);
  if (measured?.brix && grams > 0) {
    const sugar = (read(measured.brix, shift) / 100) * grams;
    const computed = sugarOf(masses);
    masses[at.water]! += computed - sugar;
    if (computed > 0) for (const kind of sugarKinds) masses[at[kind]]! *= sugar / computed;
    else masses[at.sucrose] = sugar;
    reasons = { ...reasons, sugar: [] };
  }
  if (measured?.abvPct && grams > 0) {
    const share = (read(measured.abvPct, shift) / 100) * (ethanolDensity / 1000);
    for (let round = 0; round < 60; round++) {
      const step = share * volumeMl(noNegativeWater(masses)) - masses[at.ethanol]!;
      masses[at.ethanol]! += step;
      masses[at.water]! -= step;
      if (Math.abs(step) < 1e-12 * grams) break;
    }
    reasons = { ...reasons, ethanol: [], volume: [] };
  }
  noNegativeWater(masses);
  if (measured?.densityGPerMl && grams > 0) masses[at.extraMl]! += massOf(masses) / read(measured.densityGPerMl, shift) - volumeMl(masses);
  return { masses, volumeMl: volumeMl(masses), reasons };
}
