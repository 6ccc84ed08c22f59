/** What an ingredient is made of: from its label, or from the parts that it was made of. */

import { ethanolDensity } from "./ethanol-water.ts";
import {
  addMasses,
  at,
  freezingPoint,
  type Masses,
  massOf,
  noMasses,
  noNegativeWater,
  sugarOf,
  volumeMl,
  type Warmth,
  warmthIn,
} from "./liquid.ts";
import { type Making, make, type Solid } from "./making.ts";
import type { Amount, Content, Known, Model, PrepModel, PrepPart, Price, SolidSort, StockModel, Uncertain } from "./plan.ts";
import { costOf, priceChange } from "./price.ts";
import { addReason, mergeReasons, mergeTexts, noReasons, type Reasons, type Topic, topics } from "./reasons.ts";
import { acids, citricPerGram, kindsOf } from "./substances.ts";
import { isKnown, read, type Shift, shiftsOf, sourcesOf } from "./uncertainty.ts";

/** One gram of an ingredient. */
export interface Liquid {
  readonly perGram: Masses;
  /** What it fills once it is in a drink, at 20 °C. */
  readonly mlPerGram: number;
  /** What a measure of it weighs: for a solid with a stated density that of the heap, not of the dissolved. */
  readonly gPerMl: number;
  /** °C at which it starts to freeze. */
  readonly freezingC: number;
  readonly warmth: Warmth;
  readonly reasons: Reasons;
  /** Where it is weighed instead of measured: see `reasons.ts`. */
  readonly reasonsWeighed: Reasons;
}

const liquids = new WeakMap<Model, Liquid>();

/**
 * The ingredient per gram. Kept for each model object, and for each of its sources moved. A prep that holds
 * itself must not be passed.
 */
export function liquidOf(model: Model, shift?: Shift): Liquid {
  if (shift !== undefined)
    for (const moved of movedLiquids(model)) if (moved.source === shift.source) return shift.by > 0 ? moved.up : moved.down;
  let liquid = liquids.get(model);
  if (liquid === undefined) {
    liquid = makeLiquid(model);
    liquids.set(model, liquid);
  }
  return liquid;
}

/** An ingredient with one of its sources moved up and down. */
export interface MovedLiquid {
  readonly source: Uncertain;
  readonly up: Liquid;
  readonly down: Liquid;
}

const moved = new WeakMap<Model, readonly MovedLiquid[]>();

/** With each source moved on which the ingredient itself depends; how sweet its sugars are is not among them. */
export function movedLiquids(model: Model): readonly MovedLiquid[] {
  let all = moved.get(model);
  if (all === undefined) {
    const { perGram, gPerMl } = liquidOf(model);
    all = shiftsOf(sourcesOf(model))
      .map(({ source, up, down }) => ({ source, up: makeLiquid(model, up), down: makeLiquid(model, down) }))
      .filter(({ up, down }) => [up, down].some((liquid) => liquid.gPerMl !== gPerMl || perGram.some((g, i) => g !== liquid.perGram[i])));
    moved.set(model, all);
  }
  return all;
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
  for (const content of stock.sugars) {
    const grams = take(content.amount, "sugar");
    for (const sugar of kindsOf(content.sugar)) put(at[sugar], content, grams / kindsOf(content.sugar).length);
  }
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
  const liquid = perGramOf(masses ?? onlyWater(), reasons, reasonsWeighed, stock.solid ? density : undefined);
  if (stock.price) liquid.perGram[at.cost] = costOf(1, liquid, stock.price, shift);
  return liquid;
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
    warmth: warmthIn(perGram),
    reasons,
    reasonsWeighed,
  };
}

// From parts

/** All of a prep as its parts and its steps make it, measured values put in. */
interface Batch extends Readonly<Making> {
  readonly volumeMl: number;
}

function prepLiquid(prep: PrepModel, shift: Shift | undefined): Liquid {
  const batch = batchOf(prep, shift);
  const { masses } = batch;
  // How much ice it melts, and so all that is counted in a volume, hangs on its strength.
  const reasons = batch.reasons.ethanol.reduce((all, because) => addReason(all, because, "volume"), batch.reasons);
  if (massOf(masses) > 0) return perGramOf(masses, reasons, reasons);
  const nothing = addReason(reasons, `${prep.name} has nothing in it`, ...topics);
  return perGramOf(onlyWater(), nothing, nothing);
}

/**
 * Mixes a prep's parts by mass. `upTo…` parts come last, whatever their place: as much as brings the
 * whole to that mass, or to that volume at 20 °C; none where it is larger already. Discarded parts bring
 * their cost, and else nothing but what `infuse` says. Then come the steps (`making.ts`).
 */
export function batchOf(prep: PrepModel, shift?: Shift): Batch {
  const masses = noMasses();
  let reasons = noReasons;
  let unsized: readonly string[] = [];
  const solids: Solid[] = [];
  const sets: Making["sets"] = { curd: { solidsG: 0, fatG: 0 }, fat: { solidsG: 0, fatG: 0 } };
  for (const upTo of [false, true]) {
    for (const { of, amount, discarded, strained, sets: setsAs, price } of prep.parts) {
      if (discarded && !upTo) {
        if (strained) solids.push(solidOf(of, amount, strained, shift));
        reasons = infuse(reasons, of, shift);
        masses[at.cost]! += costOfAmount(amount, liquidOf(of, shift), price, shift);
      }
      if (discarded || upTo !== ("upToG" in amount || "upToMl" in amount)) continue;
      const liquid = liquidOf(of, shift);
      const weighed = "g" in amount || "upToG" in amount;
      reasons = mergeReasons(reasons, weighed ? liquid.reasonsWeighed : liquid.reasons);
      const [quantity] = Object.values(amount) as [Known];
      if (!isKnown(quantity)) {
        reasons = addReason(reasons, quantity.because, ...topics);
        unsized = mergeTexts(unsized, [quantity.because]);
        continue;
      }
      const target = read(quantity, shift);
      if ("upToG" in amount) addMasses(masses, liquid.perGram, Math.max(0, target - massOf(masses)));
      else if ("upToMl" in amount) addMasses(masses, liquid.perGram, gramsToReach(masses, liquid, target));
      else {
        const grams = gramsOf(amount, target, liquid);
        addMasses(masses, liquid.perGram, grams);
        if (setsAs) {
          sets[setsAs].solidsG += grams * liquid.perGram[at.solids]!;
          sets[setsAs].fatG += grams * liquid.perGram[at.fat]!;
        }
        masses[at.cost]! += priceChange(grams, liquid, price, shift);
      }
    }
  }
  const making: Making = { masses, reasons, unsized, massInG: massOf(masses), boiledOffG: 0, leftBehindG: 0, solids, sets };
  make(making, prep, shift);
  return { ...making, volumeMl: volumeMl(masses) };
}

function solidOf(of: Model, amount: PrepPart["amount"], sort: SolidSort, shift: Shift | undefined): Solid {
  const { perGram, reasons, gPerMl } = liquidOf(of, shift);
  const [quantity] = Object.values(amount) as [Known];
  const weighed = "g" in amount || "upToG" in amount;
  const holds = (topic: Topic, perGram: number) => (reasons[topic].length > 0 ? null : perGram);
  return {
    name: of.name,
    sort,
    grams: isKnown(quantity) ? { value: read(quantity, shift) * (weighed ? 1 : gPerMl), u: 0, why: quantity.why } : quantity,
    holds: {
      sugar: holds("sugar", sugarOf(perGram)),
      acid: holds("acid", perGram[at.titratable]!),
      salt: holds("salt", perGram[at.salt]!),
    },
  };
}

/** What an amount that brings no mass costs; nothing where the amount is not known. */
export function costOfAmount(amount: PrepPart["amount"], liquid: Liquid, price: Price | undefined, shift?: Shift): number {
  const [quantity] = Object.values(amount) as [Known];
  const value = isKnown(quantity) ? read(quantity, shift) : 0;
  return costOf("ml" in amount || "upToMl" in amount ? value * liquid.gPerMl : value, liquid, price, shift);
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

/**
 * Grams of a liquid that bring what is there to this level in ml at 20 °C, with so much ice floating in it; 0
 * where it is fuller already.
 */
export function gramsToReach(masses: Masses, liquid: Liquid, targetMl: number, iceG = 0): number {
  let grams = 0;
  const sum = masses.slice();
  for (let round = 0; round < 30; round++) {
    const sumMl = volumeMl(sum);
    const missing = targetMl - sumMl - displacedMl(iceG, massOf(sum), sumMl);
    const step = Math.max(missing / liquid.mlPerGram, -grams);
    grams += step;
    addMasses(sum, liquid.perGram, step);
    if (Math.abs(step) <= 1e-14 * targetMl) break;
  }
  return grams;
}

/** What floating ice displaces: its own weight of the drink. */
export function displacedMl(iceG: number, drinkG: number, drinkMl: number): number {
  return drinkG > 0 ? (iceG * drinkMl) / drinkG : iceG;
}
