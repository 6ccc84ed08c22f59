/**
 * Sucrose in water: density, °Brix, solubility.
 *
 * Source: the ICUMSA polynomial as given by Bubnik, Kadlec, Urban and Bruhns, Sugar Technologists
 * Manual (1995) p. 164; solubility by Bubnik and Kadlec in Mathlouthi and Reiser, Sucrose (1995).
 */

import { polynomial } from "./polynomial.ts";

/**
 * Density in kg/m³ of a sucrose solution of this °Brix (grams of sucrose in 100 g) at this temperature.
 *
 * Valid for 0…100 °C and 0…85 °Bx; within 0.1 % of the handbook tables there. A °Brix outside 0…100 is
 * taken as the nearer end.
 */
export function sucroseDensity(brix: number, tC = 20): number {
  const w = Math.min(Math.max(brix, 0), 100) / 100;
  const u = (tC - 20) / 100;
  let result = waterDensityAt(tC);
  let power = 1;
  for (const row of rows) {
    result += power * w * polynomial(row, w);
    power *= u;
  }
  return result;
}

/**
 * °Brix of a sucrose solution of this density in kg/m³ at this temperature: the inverse of
 * `sucroseDensity`, by Newton's method to 1e-10. Lighter than water answers 0, heavier than pure
 * sugar's extrapolation answers 100.
 */
export function brixOf(densityKgPerM3: number, tC = 20): number {
  if (densityKgPerM3 <= sucroseDensity(0, tC)) return 0;
  if (densityKgPerM3 >= sucroseDensity(100, tC)) return 100;
  let brix = 50;
  for (let round = 0; round < 50; round++) {
    const slope = (sucroseDensity(brix + 0.005, tC) - sucroseDensity(brix - 0.005, tC)) / 0.01;
    const step = (sucroseDensity(brix, tC) - densityKgPerM3) / slope;
    brix = Math.min(Math.max(brix - step, 0.005), 99.995);
    if (Math.abs(step) < 1e-11) break;
  }
  return brix;
}

/**
 * The most sucrose that water holds at this temperature, g in 100 g of solution; 0…100 °C.
 * Within 0.5 g of the saturation table printed by Mohos, Confectionery and Chocolate Engineering.
 */
export function sucroseSolubility(tC: number): number {
  return polynomial(solubility, tC);
}

/**
 * Millilitres that a gram of dissolved sucrose adds at 20 °C to a solution with this mass fraction of
 * it: what is left of the solution's volume when the water's own is taken away. 0.62 to 0.63.
 */
export function sucroseVolumePerGram(massFraction: number): number {
  const w = Math.min(Math.max(massFraction, 0), 1);
  // (1/ρ − (1 − w)/ρw) / w, arranged so that it stays exact as w goes to 0.
  const excess = polynomial(rows[0]!, w);
  return (1000 * (waterAt20 + w * excess - excess)) / (waterAt20 * (waterAt20 + w * excess));
}

/** Density of water in kg/m³, 0…100 °C (Kell's form). */
function waterDensityAt(tC: number): number {
  return polynomial(waterNumerator, tC) / (1 + waterDenominator * tC);
}

/** Row i: power i of (t − 20 °C)/100; within it, powers 1… of the mass fraction, kg/m³. */
const rows: readonly (readonly number[])[] = [
  [385.1761, 135.3705, 40.9299, -3.9643, 13.4853, -17.289],
  [-46.272, -7.172, 1.1597, 5.1126, 17.5254],
  [59.7712, 7.2491, 12.363, -35.4791],
  [-47.2207, -21.6977, 27.6301],
  [18.3184, 12.3081],
];
const waterNumerator: readonly number[] = [999.83952, 16.952577, -0.0079905127, -4.6241757e-5, 1.0584601e-7, -2.8103006e-10];
const waterDenominator = 0.016887236;
/** Powers 0… of °C, g in 100 g. */
const solubility: readonly number[] = [64.447, 0.08222, 0.0016169, -1.558e-6, -4.63e-8];
const waterAt20 = waterDensityAt(20);
