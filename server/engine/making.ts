/** What the steps of a prep do to its parts once they are together, and how much of it is left. */

import { ethanolDensity, waterDensity } from "./ethanol-water.ts";
import { at, type Masses, massOf, noNegativeWater, scaleMasses, sugarOf, volumeMl } from "./liquid.ts";
import { type Known, type Model, type PrepModel, type PrepPart, type PrepStep, type SolidSort, sugarKinds } from "./plan.ts";
import { setting, strained } from "./processes.ts";
import { addReason, mergeTexts, type Reasons, type Topic, topics } from "./reasons.ts";
import { isKnown, read, type Shift } from "./uncertainty.ts";

/** A prep as it is while it is made; grams. */
export interface Making {
  readonly masses: Masses;
  reasons: Reasons;
  /** Why nobody knows how much of it there is, where what is in it may be known. */
  unsized: readonly string[];
  massInG: number;
  boiledOffG: number;
  leftBehindG: number;
  /** What is still in it and will be strained out. */
  solids: readonly Solid[];
  /** What of its parts will set and be strained out. */
  readonly sets: Record<NonNullable<PrepPart["sets"]>, { solidsG: number; fatG: number }>;
}

export interface Solid {
  readonly name: string;
  readonly sort: SolidSort;
  readonly grams: Known;
  /** Grams in a gram of it; null where nobody says. */
  readonly holds: Readonly<Record<"sugar" | "acid" | "salt", number | null>>;
}

/**
 * Does the steps in their order; what no step strained out goes at the end, then what was measured is put
 * in, and last comes what it is said to make. Nothing is lost: what went in is there, or boiled off, or
 * left behind. What is held back by solids has the composition of the rest.
 */
export function make(making: Making, prep: PrepModel, shift: Shift | undefined): void {
  for (const step of prep.steps ?? []) {
    if (step.waterShare) dilute(making, step.waterShare, shift);
    const { boils, strains, wastes, clouds } = step.does;
    if (boils) boil(making, step, prep, shift);
    if (strains) strain(making, prep, shift);
    if (wastes) making.unsized = mergeTexts(making.unsized, [`how much of ${prep.name} is left after clarifying is not stated`]);
    if (clouds) making.reasons = addReason(making.reasons, `${prep.name}: ${clouds.because}`, ...clouds.about);
  }
  strain(making, prep, shift);
  putMeasured(making, prep.measured, shift);
  fitTo(making, prep, shift);
}

function dilute(making: Making, share: Known, shift: Shift | undefined): void {
  if (!isKnown(share)) {
    making.reasons = addReason(making.reasons, share.because, ...topics);
    making.unsized = mergeTexts(making.unsized, [share.because]);
    return;
  }
  const grams = (read(share, shift) * volumeMl(making.masses) * waterDensity) / 1000;
  making.masses[at.water]! += grams;
  making.massInG += grams;
}

// Boiling down

/**
 * Takes off water until what is left, once it is strained, has the stated size; without one, the size
 * that the prep is said to make. Sugars, acids, salt and solids stay; sugar that is boiled with acid turns
 * in part to glucose and fructose, which is not counted: turned altogether it weighs 5 % more and is 13 %
 * sweeter. Alcohol goes before the water does, acetic acid along with it, and how much of them nobody
 * knows; where the strength is measured afterwards, the alcohol that is missing went off here.
 */
function boil(making: Making, { to }: PrepStep, prep: PrepModel, shift: Shift | undefined): void {
  const { masses } = making;
  const cloud = (because: string, ...about: readonly Topic[]) => {
    making.reasons = addReason(making.reasons, because, ...about);
  };
  const target = targetOf(making, to ?? prep.makes, prep.shares === true, shift);
  const strong = masses[at.ethanol]! > alcohol * massOf(masses) || making.reasons.ethanol.length > 0;
  const measured = prep.measured?.abvPct;
  if (strong && !measured)
    cloud(
      `alcohol boils off before water does: how much is left in ${prep.name} is not known until it is measured`,
      ...(target?.unit === "ml" ? (["ethanol", "volume"] as const) : (["ethanol"] as const)),
    );
  const sour = volatileIn(prep);
  if (sour) cloud(`${sour} boils off with the steam: how much acid is left in ${prep.name} is not known`, "acid");
  const kept = strong && measured ? ((read(measured, shift) / 100) * ethanolDensity) / 1000 : undefined;
  const left = target ? boiledDown(masses, target, to ? 0 : held(making, shift), kept) : "how much boils away is not stated";
  if (typeof left === "string") {
    cloud(`${prep.name}: ${left}`, ...topics);
    return;
  }
  making.boiledOffG += massOf(masses) - massOf(left);
  masses[at.water] = left[at.water]!;
  masses[at.ethanol] = left[at.ethanol]!;
}

interface Target {
  readonly size: number;
  readonly unit: "g" | "ml";
}

/**
 * What is left at the stated size, of which so many grams will be held back; `keptGPerMl` is the alcohol
 * in it, where that is known. A text where it cannot be.
 */
function boiledDown(masses: Masses, { size, unit }: Target, heldG: number, keptGPerMl: number | undefined): Masses | string {
  const sizeOf = (m: Masses): number => (unit === "ml" ? volumeMl(m) : massOf(m)) * (1 - heldG / massOf(m));
  const left = masses.slice();
  // A jug's or a scale's worth too little to boil down from is let pass.
  if (sizeOf(left) < 0.98 * size) return "there is less of it to begin with than it is boiled down to";
  for (let round = 0; round < 100; round++) {
    if (keptGPerMl !== undefined) left[at.ethanol] = Math.min(masses[at.ethanol]!, keptGPerMl * volumeMl(left));
    const step = sizeOf(left) - size;
    left[at.water] = Math.min(masses[at.water]!, Math.max(0, left[at.water]! - step));
    if (Math.abs(step) < 1e-10 * size) break;
  }
  return sizeOf(left) > 1.001 * size ? "more is dissolved in it than it is boiled down to" : left;
}

/** The share of alcohol by weight from which on it is alcohol that boils off. */
const alcohol = 0.001;

function targetOf({ masses }: Making, to: PrepStep["to"], shares: boolean, shift: Shift | undefined): Target | undefined {
  if (!to) return undefined;
  if ("share" in to) return { size: read(to.share, shift) * volumeMl(masses), unit: "ml" };
  const size = "g" in to ? to.g : to.ml;
  return isKnown(size) && !shares ? { size: read(size, shift), unit: "g" in to ? "g" : "ml" } : undefined;
}

/** The name of a stock whose acid is acetic; absent where there is none. */
function volatileIn(model: Model): string | undefined {
  if (model.type === "stock") {
    const sour = model.acids.some(({ acid, amount }) => acid === "acetic" && !(isKnown(amount) && amount.value === 0));
    return sour ? model.name : undefined;
  }
  for (const { of, discarded } of model.parts) {
    const found = discarded ? undefined : volatileIn(of);
    if (found) return found;
  }
  return undefined;
}

// Straining

/** What is marked to be strained out goes, with what has set, and the liquid that both hold. */
function strain(making: Making, prep: PrepModel, shift: Shift | undefined): void {
  const { masses, solids, sets } = making;
  const heldG = held(making, shift);
  for (const solid of solids) give(making, solid, prep.name, shift);
  for (const [how, set] of Object.entries(sets) as [keyof Making["sets"], Making["sets"]["curd"]][]) {
    const solidsG = Math.min(masses[at.solids]!, read(setting[how].solids, shift) * set.solidsG);
    const fatG = Math.min(masses[at.fat]!, set.fatG);
    masses[at.solids]! -= solidsG;
    masses[at.fat]! -= fatG;
    making.leftBehindG += solidsG + fatG;
    sets[how] = { solidsG: 0, fatG: 0 };
  }
  making.solids = [];
  if (heldG === 0) return;
  const grams = massOf(masses);
  if (heldG > mostHeld * grams) {
    making.unsized = mergeTexts(making.unsized, [`what is strained out of ${prep.name} may hold nearly all of it back`]);
    return;
  }
  scaleMasses(masses, 1 - heldG / grams);
  making.leftBehindG += heldG;
}

/** Solids that would hold back more than this share leave a guess and no figure. */
const mostHeld = 0.8;

/** Grams of liquid that what is still to be strained out will hold back. */
function held({ solids, sets }: Making, shift: Shift | undefined): number {
  let grams = 0;
  for (const solid of solids) if (isKnown(solid.grams)) grams += read(solid.grams, shift) * read(strained[solid.sort].holdsG, shift);
  for (const [how, { solidsG, fatG }] of Object.entries(sets) as [keyof Making["sets"], Making["sets"]["curd"]][]) {
    const { solids: share, holdsG } = setting[how];
    grams += (read(share, shift) * solidsG + fatG) * read(holdsG, shift);
  }
  return grams;
}

/** What was strained out has left some of what it held, and nobody knows how much; too little to be read counts as none. */
function give(making: Making, { name, sort, grams, holds }: Solid, prep: string, shift: Shift | undefined): void {
  const { gives, watery } = strained[sort];
  const weight = isKnown(grams) ? read(grams, shift) : Number.POSITIVE_INFINITY;
  const tells = (perGram: number, least: number) => perGram > 0 && 100 * weight * perGram > least * massOf(making.masses);
  const about: Topic[] = givable.filter(
    (topic) => (topic === "salt" || gives.includes(topic)) && (holds[topic] === null || tells(holds[topic], leastGiven[topic])),
  );
  const strong = making.masses[at.ethanol]! > 0 || making.reasons.ethanol.length > 0;
  if (watery && strong && tells(1, leastGiven.water)) about.push("ethanol");
  // Sugar draws its water out of a peel or a leaf: all that is liquid came from there.
  if (moist.has(sort) && isDry(making.masses)) about.push("volume", "sugar");
  if (about.length > 0)
    making.reasons = addReason(making.reasons, `what ${name} gives to ${prep} is not known until it is measured`, ...about);
  if (!isKnown(grams)) making.unsized = mergeTexts(making.unsized, [grams.because]);
}

const moist: ReadonlySet<Solid["sort"]> = new Set(["fruit", "vegetable", "herb"]);

/** Less liquid than the tables of sugar reach down to (85 °Bx): the sugar is not dissolved. */
function isDry(masses: Masses): boolean {
  return masses[at.water]! + masses[at.ethanol]! < 0.15 * massOf(masses);
}

const givable = ["sugar", "acid", "salt"] as const;
/** Grams in 100 g of the prep that nobody reads or tastes: half a degree Brix; a fruit that moves a strength by less than a label may be wrong. */
const leastGiven = { sugar: 0.5, acid: 0.05, salt: 0.05, water: 0.75 };

// What was measured

/**
 * Measured values override: sugar by °Brix (kinds in their computed proportion, sucrose where there was
 * none), ethanol by strength, the volume by density, each against water, the mass kept. What is measured
 * is known, even where the composition is not.
 */
function putMeasured(making: Making, measured: PrepModel["measured"], shift: Shift | undefined): void {
  const { masses } = making;
  const grams = massOf(masses);
  if (!measured || !(grams > 0)) return;
  if (measured.brix) {
    const sugar = (read(measured.brix, shift) / 100) * grams;
    const computed = sugarOf(masses);
    masses[at.water]! += computed - sugar;
    if (computed > 0) for (const kind of sugarKinds) masses[at[kind]]! *= sugar / computed;
    else masses[at.sucrose] = sugar;
    making.reasons = { ...making.reasons, sugar: [] };
  }
  if (measured.abvPct) {
    const share = (read(measured.abvPct, shift) / 100) * (ethanolDensity / 1000);
    for (let round = 0; round < 60; round++) {
      const step = share * volumeMl(noNegativeWater(masses)) - masses[at.ethanol]!;
      masses[at.ethanol]! += step;
      masses[at.water]! -= step;
      if (Math.abs(step) < 1e-12 * grams) break;
    }
    making.reasons = { ...making.reasons, ethanol: [], volume: [] };
  }
  noNegativeWater(masses);
  if (measured.densityGPerMl) masses[at.extraMl]! += massOf(masses) / read(measured.densityGPerMl, shift) - volumeMl(masses);
}

// How much it makes

/** What a prep is said to make is what there is of it, and the rest was left behind. More than went in is not believed. */
function fitTo(making: Making, { name, makes, shares }: PrepModel, shift: Shift | undefined): void {
  const { masses } = making;
  const size = makes && ("g" in makes ? makes.g : makes.ml);
  const grams = massOf(masses);
  if (!makes || !size || !isKnown(size) || !(grams > 0)) return;
  const factor = read(size, shift) / ("g" in makes ? grams : volumeMl(masses));
  if (shares) {
    scaleMasses(masses, factor);
    masses[at.cost]! *= factor;
    making.massInG *= factor;
    making.leftBehindG *= factor;
    making.boiledOffG *= factor;
    making.unsized = [];
    return;
  }
  if (factor > mostGained) {
    making.unsized = mergeTexts(making.unsized, [`${name} is said to make more than goes in`]);
    return;
  }
  scaleMasses(masses, factor);
  making.leftBehindG += (1 - factor) * grams;
  making.unsized = [];
}

/** Two jugs differ by so much. */
const mostGained = 1.03;
