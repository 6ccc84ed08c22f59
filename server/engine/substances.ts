/** What the engine knows of each sugar and each acid: one row each. */

import type { AcidKind, SugarKind, Uncertain } from "./plan.ts";

export interface Sugar {
  /** g/mol, of the sugar without water of crystallisation. */
  readonly molarMass: number;
  /** Two rings in one molecule: it lowers the freezing point half as much per gram. */
  readonly disaccharide: boolean;
  /** Sweetness of a gram beside a gram of sucrose. */
  readonly sweetness: Uncertain;
  /** Millilitres that a dissolved gram fills beyond what sucrose fills. */
  readonly extraMlPerG: number;
}

export interface Acid {
  /** g/mol, without water of crystallisation. */
  readonly molarMass: number;
  /** Protons titrated to pH 8.2: the equivalent weight is the molar mass ÷ these. */
  readonly protons: number;
  /** How much a mole lowers the freezing point, beside a mole of citric acid. */
  readonly depression: number;
}

const sweetness = (value: number, u: number, sugar: string, range: string): Uncertain => ({
  value,
  u,
  why: `relative sweetness of ${sugar}: ${range} in published tables`,
});

/**
 * Sweetness: the middle of the published range as it applies to cold drinks, and half of its half-width
 * as the standard uncertainty. Ranges from Public Health Nutr. 2022;26:952 table 2; J. Food Sci.
 * Technol. 2011;51:611 table 2; Sweeteners: Nutritional Aspects, Applications and Production
 * Technology, table 2.1. Fructose falls with warming: 1.2 to 1.8 in solution.
 *
 * Volumes: differences to sucrose of the CRC Handbook's densities at 20 °C, 10 to 60 g/100 g.
 * Maltose and lactose are taken as sucrose (no figure at hand).
 */
export const sugars: Readonly<Record<SugarKind, Sugar>> = {
  sucrose: {
    molarMass: 342.297,
    disaccharide: true,
    sweetness: { value: 1, u: 0, why: "sucrose is the measure of sweetness" },
    extraMlPerG: 0,
  },
  glucose: { molarMass: 180.156, disaccharide: false, sweetness: sweetness(0.7, 0.08, "glucose", "0.5 to 0.8"), extraMlPerG: 0.0072 },
  fructose: { molarMass: 180.156, disaccharide: false, sweetness: sweetness(1.5, 0.15, "fructose", "1.2 to 1.8"), extraMlPerG: -0.0008 },
  lactose: { molarMass: 342.297, disaccharide: true, sweetness: sweetness(0.2, 0.06, "lactose", "0.15 to 0.4"), extraMlPerG: 0 },
  maltose: { molarMass: 342.297, disaccharide: true, sweetness: sweetness(0.4, 0.06, "maltose", "0.3 to 0.5"), extraMlPerG: 0 },
  invert: { molarMass: 180.156, disaccharide: false, sweetness: sweetness(1.1, 0.1, "invert sugar", "1.0 to 1.3"), extraMlPerG: 0.0032 },
};

/**
 * Molar masses from the IUPAC abridged atomic weights. Equivalent weights agree with the AOAC/OIV
 * factors to 0.00003 g/meq. Phosphoric acid counts its first two protons, ascorbic acid its first.
 * Depressions: means over 1…10 % mass of the CRC Handbook's; malic, tartaric and ascorbic acid are taken
 * as citric (no figure at hand).
 */
export const acids: Readonly<Record<AcidKind, Acid>> = {
  citric: { molarMass: 192.123, protons: 3, depression: 1 },
  malic: { molarMass: 134.087, protons: 2, depression: 1 },
  tartaric: { molarMass: 150.086, protons: 2, depression: 1 },
  lactic: { molarMass: 90.078, protons: 1, depression: 0.85 },
  acetic: { molarMass: 60.052, protons: 1, depression: 0.92 },
  phosphoric: { molarMass: 97.994, protons: 2, depression: 1.12 },
  ascorbic: { molarMass: 176.124, protons: 1, depression: 1 },
};

/** Grams of an acid that give or take one mole of protons on titration to pH 8.2. */
export function equivalentWeight(acid: AcidKind): number {
  return acids[acid].molarMass / acids[acid].protons;
}

/** Grams of citric acid (anhydrous) with the same titratable acidity as one gram of this acid. */
export function citricPerGram(acid: AcidKind): number {
  return equivalentWeight("citric") / equivalentWeight(acid);
}
