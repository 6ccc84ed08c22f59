/** What the steps of a prep do to its parts once they are together, and how much of it is left. */

import { ethanolDensity } from "./ethanol-water.ts";
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
  /** Of these it holds some, or may hold some. */
  readonly holds: readonly Topic[];
}

/**
 * Does the steps in their order; what no step strained out goes at the end, then what was measured is put
 * in, and last comes what it is said to make. Nothing is lost: what went in is there, or boiled off, or
 * left behind. What is held back by solids has the composition of the rest.
 */
export function make(making: Making, prep: PrepModel, shift: Shift | undefined): void {
  for (const step of prep.steps ?? []) {
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

// Boiling down

/**
 * Takes off water until what is left, once it is strained, has the stated size; without one, the size
 * that the prep is said to make. Sugars, acids, salt and solids stay; sugar that is boiled with acid turns
 * in part to glucose and fructose, which is not counted: turned altogether it weighs 5 % more and is 13 %
 * sweeter. Alcohol goes before the water does, acetic acid along with it, and how much of them nobody knows.
 */
function boil(making: Making, { to }: PrepStep, prep: PrepModel, shift: Shift | undefined): void {
  const { masses } = making;
  const cloud = (because: string, ...about: Topic[]) => {
    making.reasons = addReason(making.reasons, because, ...about);
  };
  if (masses[at.ethanol]! > alcohol * massOf(masses) || making.reasons.ethanol.length > 0)
    cloud(`alcohol boils off before water does: how much is left in ${prep.name} is not known until it is measured`, "ethanol", "volume");
  const sour = volatileIn(prep);
  if (sour) cloud(`${sour} boils off with the steam: how much acid is left in ${prep.name} is not known`, "acid");
  const heldG = to ? 0 : held(making, shift);
  const left = (offG: number, byVolume: boolean): number => {
    const after = masses.slice();
    after[at.water]! -= offG;
    return (byVolume ? volumeMl(after) : massOf(after)) * (1 - heldG / massOf(after));
  };
  const target = targetOf(making, to ?? prep.makes, prep.shares === true, shift);
  const byVolume = target?.unit === "ml";
  if (!target) cloud(`how much of ${prep.name} boils away is not stated`, ...topics);
  // A jug's or a scale's worth too little to boil down from is let pass.
  else if (left(0, byVolume) < 0.98 * target.size) cloud(`${prep.name} is to be boiled down to more than there is of it`, ...topics);
  else if (left(masses[at.water]!, byVolume) > target.size)
    cloud(`${prep.name} is to be boiled down to less than what is dissolved in it`, ...topics);
  if (!target) return;
  let offG = 0;
  for (let round = 0; round < 100; round++) {
    const step = left(offG, byVolume) - target.size;
    offG = Math.min(Math.max(0, offG + step), masses[at.water]!);
    if (Math.abs(step) < 1e-10 * target.size) break;
  }
  masses[at.water]! -= offG;
  making.boiledOffG += offG;
}

/** The share of alcohol by weight from which on it is alcohol that boils off. */
const alcohol = 0.001;

function targetOf(
  { masses }: Making,
  to: PrepStep["to"],
  shares: boolean,
  shift: Shift | undefined,
): { size: number; unit: "g" | "ml" } | undefined {
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
  for (const solid of solids) give(making, solid, prep.name);
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

/** What was strained out has left some of what it held, and nobody knows how much. */
function give(making: Making, { name, sort, grams, holds }: Solid, prep: string): void {
  const { gives, watery } = strained[sort];
  const about = holds.filter((topic) => topic === "salt" || gives.includes(topic));
  const strong = making.masses[at.ethanol]! > 0 || making.reasons.ethanol.length > 0;
  const all: readonly Topic[] = watery && strong ? [...about, "ethanol", "volume"] : about;
  if (all.length > 0)
    making.reasons = addReason(making.reasons, `what ${name} leaves in ${prep} is not known until it is measured`, ...all);
  if (!isKnown(grams)) making.unsized = mergeTexts(making.unsized, [grams.because]);
}

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
