/** What the engine knows of each sugar and each acid: one row each. */

import type { AcidKind, SugarKind, SugarName, Uncertain } from "./plan.ts";

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

/**
 * Sweetness as a range of published figures: its middle, and half of its half-width as the standard
 * uncertainty, as with every range here and in the larder. The range is that of Public Health Nutr.
 * 2022;26:952 table 2; J. Food Sci. Technol. 2011;51:611 table 2; Sweeteners: Nutritional Aspects,
 * Applications and Production Technology, table 2.1; A Dictionary of Food and Nutrition. Fructose is
 * sweeter the colder it is: 1.2 to 1.8 in solution.
 */
const sweetness = (sugar: SugarKind, low: number, high: number): Uncertain => ({
  value: (low + high) / 2,
  u: (high - low) / 4,
  why: `relative sweetness of ${sugar}: ${low} to ${high} in published tables`,
});

/**
 * Volumes: differences to sucrose of the CRC Handbook's densities at 20 °C, 10 to 60 g/100 g. Taken as
 * sucrose, a glucose solution of 60 g/100 g would be 0.6 % too heavy, and its density read as 58.8 °Bx;
 * one of 40 g/100 g 0.35 %. Fructose differs by less than 0.04 % up to 48 g/100 g, and invert sugar,
 * which is half of each, by half of what glucose does. Maltose and lactose are taken as sucrose (no
 * figure at hand).
 */
export const sugars: Readonly<Record<SugarKind, Sugar>> = {
  sucrose: {
    molarMass: 342.297,
    disaccharide: true,
    sweetness: { value: 1, u: 0, why: "sucrose is the measure of sweetness" },
    extraMlPerG: 0,
  },
  glucose: { molarMass: 180.156, disaccharide: false, sweetness: sweetness("glucose", 0.5, 0.8), extraMlPerG: 0.0072 },
  fructose: { molarMass: 180.156, disaccharide: false, sweetness: sweetness("fructose", 1.2, 1.8), extraMlPerG: -0.0008 },
  lactose: { molarMass: 342.297, disaccharide: true, sweetness: sweetness("lactose", 0.15, 0.4), extraMlPerG: 0 },
  maltose: { molarMass: 342.297, disaccharide: true, sweetness: sweetness("maltose", 0.3, 0.5), extraMlPerG: 0 },
};

/**
 * The sugars that a label's word stands for, in equal parts. Invert sugar has no sweetness of its own: it
 * is as sweet as its two halves, 1.08, where the published tables say 1.0 and 1.3.
 */
export function kindsOf(name: SugarName): readonly SugarKind[] {
  return namedKinds[name];
}
const namedKinds: Readonly<Record<SugarName, readonly SugarKind[]>> = {
  sucrose: ["sucrose"],
  glucose: ["glucose"],
  fructose: ["fructose"],
  lactose: ["lactose"],
  maltose: ["maltose"],
  invert: ["glucose", "fructose"],
};

/** Grams of the substance in a gram of it with one water of crystallisation; undefined where none is sold so. */
export function anhydrousShare(kind: SugarName | AcidKind | undefined): number | undefined {
  if (kind !== "citric" && kind !== "glucose" && kind !== "lactose" && kind !== "maltose") return undefined;
  const { molarMass } = kind === "citric" ? acids.citric : sugars[kind];
  return molarMass / (molarMass + waterMolarMass);
}
const waterMolarMass = 18.015;

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
