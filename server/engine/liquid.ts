/**
 * A liquid is the masses of what is in it. They are conserved when liquids are mixed; volume, freezing
 * point and heat capacity follow from them.
 */

import { volumeOf } from "./ethanol-water.ts";
import { freezingDepression } from "./freezing.ts";
import { acidHeat, ethanolWaterHeat, type HeatCapacity, heatContent, mixingHeat, solidsHeat, sugarHeat } from "./heat.ts";
import { type SugarKind, sugarKinds } from "./plan.ts";
import { sugars } from "./substances.ts";
import { sucroseVolumePerGram } from "./sucrose.ts";

/**
 * Grams of each component, in the order of `componentNames`; four rows are not grams: `acidMmol`,
 * `caffeineMg`, `extraMl`, by which a measured density differs from the computed one, and `cost`.
 */
export type Masses = number[];

const componentNames = [
  "water",
  "ethanol",
  ...sugarKinds,
  "acid",
  /** Titratable acidity expressed as citric acid: counted beside `acid`, not in the mass. */
  "titratable",
  /** Millimoles of citric acid that would lower the freezing point as much. */
  "acidMmol",
  "salt",
  "solids",
  "fat",
  "caffeineMg",
  "extraMl",
  /** What it cost, in the house's currency; what nobody gave a price for counts as nothing. */
  "cost",
] as const;
type ComponentName = (typeof componentNames)[number];

/** Where each component stands in `Masses`. */
export const at = Object.fromEntries(componentNames.map((name, index) => [name, index])) as Readonly<Record<ComponentName, number>>;

const { water, ethanol, acid, acidMmol, salt, solids, fat, extraMl } = at;
const firstSugar = at[sugarKinds[0]];
const afterSugars = firstSugar + sugarKinds.length;

/**
 * A plain array is made several times faster than a typed one, and a drink makes dozens. One that held fractions
 * before keeps room for them, and so do its copies.
 */
const nothing: Masses = componentNames.map(() => 0.5).fill(0);

export function noMasses(): Masses {
  return nothing.slice();
}

/** Adds `grams` of a liquid, whose masses are per gram, to a sum. */
export function addMasses(sum: Masses, perGram: Masses, grams: number): void {
  for (let i = 0; i < sum.length; i++) sum[i]! += perGram[i]! * grams;
}

/** Makes it so many times as much; what it cost stays, for it was paid. */
export function scaleMasses(m: Masses, factor: number): void {
  for (let i = 0; i < m.length; i++) if (i !== at.cost) m[i]! *= factor;
}

/** A rounding's worth of water too little is none. */
export function noNegativeWater(m: Masses): Masses {
  if (m[water]! < 0) m[water] = 0;
  return m;
}

/** Grams in all. */
export function massOf(m: Masses): number {
  return m[water]! + m[ethanol]! + sugarOf(m) + m[acid]! + m[salt]! + m[solids]! + m[fat]!;
}

/** Grams of all sugars, whatever their sweetness. */
export function sugarOf(m: Masses): number {
  let sum = 0;
  for (let i = firstSugar; i < afterSugars; i++) sum += m[i]!;
  return sum;
}

/**
 * Volume in ml at 20 °C: ethanol and water by OIML R 22, and over it what each other component adds.
 *
 * Exact (to the published formulas) for ethanol and water alone and for sucrose and water alone. With
 * both, the sugar is taken to add what it adds in water at the same mass fraction; no published
 * three-part table was at hand to test it. A shift of 0.01 ml/g in what the sugar adds, as much as lies
 * between 0 and 40 °Bx in water, would move a liqueur of 30 g/100 ml by 0.3 % of its volume: take that
 * as the error. Acids, salt, fat and solids add a constant: what citric acid adds at 10…30 % mass (CRC
 * Handbook), what sodium chloride does at 10…20 % (from memory), what an oil of 0.92 g/ml fills, and for
 * solids, in which fat may be hidden, a middle of fat and protein (0.73); stocks with much of them should
 * state a density.
 */
export function volumeMl(m: Masses): number {
  const base = m[water]! + m[ethanol]!;
  let volume = base > 0 ? volumeOf(m[water]!, m[ethanol]!) : 0;
  const sugar = sugarOf(m);
  if (sugar > 0) {
    volume += sugar * sucroseVolumePerGram(sugar / (sugar + base));
    for (let i = firstSugar; i < afterSugars; i++) volume += m[i]! * sugarExtraMl[i - firstSugar]!;
  }
  return volume + m[acid]! * acidMlPerG + m[salt]! * saltMlPerG + m[solids]! * solidsMlPerG + m[fat]! * fatMlPerG + m[extraMl]!;
}
const acidMlPerG = 0.598;
const saltMlPerG = 0.33;
const solidsMlPerG = 0.9;
const fatMlPerG = 1.09;
const sugarExtraMl = sugarKinds.map((kind) => sugars[kind].extraMlPerG);

/** °C at which the liquid starts to freeze; −90 where there is no water to freeze. */
export function freezingPoint(m: Masses): number {
  const waterG = m[water]!;
  if (!(waterG > 1e-6 * m[ethanol]!)) return -90;
  return -freezingDepression(
    m[ethanol]! / waterG,
    molesOf(m, monosaccharides) / waterG,
    molesOf(m, disaccharides) / waterG,
    m[acidMmol]! / waterG,
    (m[salt]! / saltMolarMass / waterG) * 1000,
  );
}
export const saltMolarMass = 58.44;

/** Millimoles of the sugars of one sort. */
export function molesOf(m: Masses, sort: readonly SugarMoles[]): number {
  let sum = 0;
  for (const sugar of sort) sum += m[sugar.index]! * sugar.mmolPerG;
  return sum;
}
interface SugarMoles {
  readonly index: number;
  readonly mmolPerG: number;
}
const sugarMoles = (kind: SugarKind): SugarMoles => ({ index: at[kind], mmolPerG: 1000 / sugars[kind].molarMass });
export const monosaccharides = sugarKinds.filter((kind) => !sugars[kind].disaccharide).map(sugarMoles);
export const disaccharides = sugarKinds.filter((kind) => sugars[kind].disaccharide).map(sugarMoles);

/**
 * J in the liquid at this temperature, counted from its water and ethanol apart at 0 °C: its parts added,
 * ethanol and water as the mixture they are.
 */
export function heatIn(m: Masses, tC: number): number {
  return heatAt(warmthIn(m), tC);
}

/** The heat in a liquid as it goes with its temperature: J at 0 °C, and its heat capacity in J/K. */
export interface Warmth {
  readonly at0: number;
  readonly jPerK: HeatCapacity;
}

export function warmthIn(m: Masses): Warmth {
  return warmthOf(m[water]!, m[ethanol]!, otherHeat(m));
}

export function heatAt({ at0, jPerK }: Warmth, tC: number): number {
  return at0 + heatContent(jPerK, tC);
}

/** From its numbers, for a loop that only changes the water or the temperature. */
export function warmthOf(waterG: number, ethanolG: number, others: HeatCapacity): Warmth {
  const base = waterG + ethanolG;
  if (!(base > 0)) return { at0: 0, jPerK: others };
  const c = ethanolWaterHeat(ethanolG / base);
  return { at0: base * mixingHeat(ethanolG / base), jPerK: [base * c[0] + others[0], base * c[1] + others[1], base * c[2] + others[2]] };
}

/** Heat capacity of what is not water or ethanol, J/K. */
export function otherHeat(m: Masses): HeatCapacity {
  const sugar = sugarOf(m);
  const part = (k: 0 | 1 | 2): number => sugar * sugarHeat[k] + m[acid]! * acidHeat[k] + (m[solids]! + m[fat]!) * solidsHeat[k];
  return [part(0), part(1), part(2)];
}
