/** What a drink feeds: its energy by the factors of food law. */

import { at, type Masses, sugarOf } from "./liquid.ts";
import type { Uncertain } from "./plan.ts";
import { read, type Shift } from "./uncertainty.ts";

/**
 * Energy of a gram: Regulation (EU) 1169/2011, Annex XIV. Each column is added by itself, as the regulation
 * does it: neither is converted from the other, so their quotient is not 4.184.
 *
 * The United States' tables take 6.93 kcal for a gram of ethanol, and for carbohydrate, protein and fat a
 * factor of each food's own (USDA Agriculture Handbook 74): 1 to 10 % from these, most for lemon and lime.
 * The Regulation is followed everywhere; a difference of that size is below what a label has to keep.
 */
export const energyFactors = {
  ethanol: { kJ: 29, kcal: 7 },
  fat: { kJ: 37, kcal: 9 },
  carbohydrate: { kJ: 17, kcal: 4 },
  protein: { kJ: 17, kcal: 4 },
  organicAcid: { kJ: 13, kcal: 3 },
  fibre: { kJ: 8, kcal: 2 },
} as const;

/**
 * What is dissolved besides sugar, acid, salt and fat is counted between fibre (8 kJ, 2 kcal) and protein
 * or starch (17 kJ, 4 kcal): 0 is all fibre, 1 all protein. Half, with a spread that reaches from minerals,
 * which feed nobody, to all of it protein at about one and a quarter standard uncertainties. Practice.
 */
export const proteinShare: Uncertain = { value: 0.5, u: 0.4, why: "whether the other solids are rather fibre or rather protein" };

/**
 * kJ or kcal in a liquid. Every sugar counts as carbohydrate by its own weight. Every acid counts as an
 * organic one; phosphoric acid is none and feeds nobody, which in 100 ml of cola is 0.7 kJ too much.
 */
export function energyOf(m: Masses, unit: "kJ" | "kcal", shift?: Shift): number {
  const { ethanol, fat, carbohydrate, protein, organicAcid, fibre } = factorsIn[unit];
  const solids = fibre + read(proteinShare, shift) * (protein - fibre);
  return m[at.ethanol]! * ethanol + m[at.fat]! * fat + sugarOf(m) * carbohydrate + m[at.acid]! * organicAcid + m[at.solids]! * solids;
}

const factorsIn = { kJ: factors("kJ"), kcal: factors("kcal") };

function factors(unit: "kJ" | "kcal"): Record<keyof typeof energyFactors, number> {
  const { ethanol, fat, carbohydrate, protein, organicAcid, fibre } = energyFactors;
  return {
    ethanol: ethanol[unit],
    fat: fat[unit],
    carbohydrate: carbohydrate[unit],
    protein: protein[unit],
    organicAcid: organicAcid[unit],
    fibre: fibre[unit],
  };
}
