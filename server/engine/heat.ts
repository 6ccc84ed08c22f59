/**
 * Heat: what is in a liquid, what it takes to warm it or ice, and to melt ice. J, g, °C; counted from
 * water and ethanol apart at 0 °C.
 */

import { type Cubic, cubic } from "./polynomial.ts";

/** J/(g K) of ice at 0 °C, and what it loses for each K below: 1.96 at −20 °C, 1.82 at −40 °C (ice tables). */
const iceHeat = 2.1;
const iceHeatSlope = 0.007;

/** J/g to melt ice at 0 °C: 333.55 (CRC Handbook, from memory), 334 in tables that were read. */
export const fusionHeat = 333.6;

/** J to warm a gram of ice from one temperature to another, °C; negative when it cools. Valid −40…0. */
export function iceWarming(fromC: number, toC: number): number {
  return (toC - fromC) * (iceHeat + (iceHeatSlope * (toC + fromC)) / 2);
}

/** J in a gram of ice, counted from water at 0 °C. */
export function iceContent(tC: number): number {
  return iceWarming(0, tC) - fusionHeat;
}

/** Heat capacity as a cubic of the temperature, J/(g K): c0 + c1 t + c2 t². */
export type HeatCapacity = readonly [number, number, number];

/** J in a gram of a liquid at this temperature, counted from 0 °C. */
export function heatContent(c: HeatCapacity, tC: number): number {
  return tC * (c[0] + tC * (c[1] / 2 + (tC * c[2]) / 3));
}

/** Water: within 0.2 % of the CRC Handbook's values from −10 to 90 °C. */
export const waterHeat: HeatCapacity = [4.21743, -0.00187576, 1.992195e-5];

/**
 * J in a gram of ethanol and water mixed, by mass fraction of ethanol 0…1, counted from both apart at 0 °C.
 *
 * Its heat capacity is an own fit to Melinder, Properties of Secondary Working Fluids (IIR 2010; 11…60 %
 * mass, −5…20 °C), Perry's Chemical Engineers' Handbook p. 2-184 (10…80 % mass, 3…41 °C) and pure ethanol
 * (CRC, Perry): within 0.05 J/(g K) of them up to 50 % mass, 0.11 above. It lies above water's own from 1
 * to 27 % mass, where a straight line between water and ethanol would be a tenth too low. Carried on
 * outside −5…41 °C.
 */
export function ethanolWaterContent(massFraction: number, tC: number): number {
  return heatContent(ethanolWaterHeat(massFraction), tC) + mixingHeat(massFraction);
}

/** Its heat capacity. */
export function ethanolWaterHeat(massFraction: number): HeatCapacity {
  const w = massFraction;
  return [waterHeat[0] + w * cubic(ethanolBase, w), waterHeat[1] + w * cubic(ethanolSlope, w), waterHeat[2]];
}
const ethanolBase: Cubic = [3.418875, -17.308941, 20.323858, -8.424408];
const ethanolSlope: Cubic = [-0.06310232, 0.43502724, -0.69643425, 0.33451135];

/**
 * Heat of mixing at 0 °C, J per gram of the mixture (negative: it is given off), by mass fraction of
 * ethanol 0…1: −49 at its deepest. It is why rum and juice warm each other by two or three degrees, and
 * melts an eighth more ice under a spirit of 40 % vol, a sixth more in a sour of it, a fiftieth in wine.
 *
 * From the excess enthalpies at 25 °C (about −0.78 kJ/mol at its deepest; from memory, after Larkin,
 * J. Chem. Thermodyn. 1975;7:137) and the heat capacities above, brought to 0 °C; own fit within 0.5 J/g.
 * The figures are from memory: take 10 % of it as its error, which is 1 to 2 % of a drink's melt. Heats of
 * solution of sugar, acid and salt are neglected: a drink's sugar comes dissolved, and 5 g that do not would
 * spare a quarter of a gram of ice (16 J/g for sucrose, from memory).
 */
export function mixingHeat(massFraction: number): number {
  return massFraction * (1 - massFraction) * cubic(mixing, massFraction);
}
const mixing: Cubic = [-353.8587, 355.2417, 303.6414, -412.9119];

/**
 * What a gram of dissolved sugar adds to the heat capacity: within 0.05 J/(g K) of the solutions of
 * 10…65 °Bx at 0 and 20 °C by the formula of the sugar trade (Bubnik 1995; Llano 2005). Taken for every
 * sugar, and in alcohol too.
 */
export const sugarHeat: HeatCapacity = [1.65, 0.009, 0];
/**
 * Acids as sugars; other solids (fat, protein, pectin) about 1.9; dissolved salt adds nothing. Practice, no
 * source: each moves a drink's heat capacity by under 1 %.
 */
export const acidHeat: HeatCapacity = [1.65, 0.009, 0];
export const solidsHeat: HeatCapacity = [1.9, 0, 0];
