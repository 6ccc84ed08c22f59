/**
 * Ethanol and water: density, strength by volume, mass fraction, each from the others.
 *
 * Source: OIML R 22 (1975), general formula of the density of mixtures of ethanol and water, the same
 * as Council Directive 76/766/EEC. All 54 coefficients stand below.
 */

import { polynomial } from "./polynomial.ts";

/** kg/m³ of pure ethanol at 20 °C: the sum of the A coefficients. */
export const ethanolDensity = 789.23912;
/** kg/m³ of water at 20 °C: the first A coefficient. */
export const waterDensity = 998.20123;

/**
 * Density in kg/m³ of a mixture with this mass fraction of ethanol (0…1) at this temperature in °C.
 *
 * Valid from −20 to 40 °C and above the mixture's freezing point; agrees with the printed tables to
 * 0.01 kg/m³. Outside the temperature range the polynomial is simply carried on, with growing error;
 * a mass fraction outside 0…1 is taken as the nearer end.
 */
export function density(massFraction: number, tC: number): number {
  const p = clamp(massFraction);
  const d = tC - 20;
  let result = densityAt20(p);
  if (d === 0) return result;
  let power = 1;
  for (const b of B) {
    power *= d;
    result += b * power;
  }
  power = 1;
  for (const row of C) {
    power *= d;
    result += power * p * polynomial(row, p);
  }
  return result;
}

/** Density in kg/m³ at 20 °C of a mixture with this mass fraction of ethanol, 0…1. */
function densityAt20(massFraction: number): number {
  return polynomial(A, massFraction);
}

/**
 * Strength in % vol at 20 °C of a mixture with this mass fraction of ethanol, 0…1.
 * Strength is by definition the volume of the ethanol alone at 20 °C in a hundred volumes of the mixture.
 */
export function strengthOf(massFraction: number): number {
  return (100 * massFraction * densityAt20(massFraction)) / ethanolDensity;
}

/**
 * Mass fraction of ethanol (0…1) of a mixture of this strength in % vol at 20 °C.
 *
 * Newton's method to 1e-10; the inverse of `strengthOf`. Below 0 % vol answers 0, above 100 answers 1.
 */
export function massFractionOf(strengthPct: number): number {
  if (!(strengthPct > 0)) return 0;
  if (strengthPct >= 100) return 1;
  let p = strengthPct / (124 - 0.24 * strengthPct); // within 0.02 of the answer everywhere
  for (let round = 0; round < 20; round++) {
    const slope = (100 * (densityAt20(p) + p * slopeAt20(p))) / ethanolDensity;
    const step = (strengthOf(p) - strengthPct) / slope;
    p = clamp(p - step);
    if (Math.abs(step) < 1e-12) break;
  }
  return p;
}

/** Volume in ml at 20 °C of so many grams of water and of ethanol mixed; less than they fill apart. */
export function volumeOf(waterG: number, ethanolG: number): number {
  if (ethanolG <= 0) return (1000 * waterG) / waterDensity;
  const together = waterG + ethanolG;
  return (1000 * together) / densityAt20(ethanolG / together);
}

const clamp = (fraction: number): number => Math.min(Math.max(fraction, 0), 1);

function slopeAt20(p: number): number {
  let sum = 0;
  for (let k = A.length - 1; k >= 1; k--) sum = sum * p + k * A[k]!;
  return sum;
}

/** Powers 0…11 of the mass fraction, kg/m³. */
const A: readonly number[] = [
  998.20123, -192.9769495, 389.1238958, -1668.103923, 13522.15441, -88292.78388, 306287.4042, -613838.1234, 747017.2998, -547846.1354,
  223446.0334, -39032.85426,
];

/** Powers 1…6 of t − 20 °C, kg/m³. */
const B: readonly number[] = [-0.20618513, -0.0052682542, 3.6130013e-5, -3.8957702e-7, 7.169354e-9, -9.9739231e-11];

/** Row i: power i + 1 of t − 20 °C; within it, powers 1… of the mass fraction, kg/m³. */
const C: readonly (readonly number[])[] = [
  [
    0.1693443461530087, -10.46914743455169, 71.96353469546523, -704.7478054272792, 3924.090430035045, -12101.64659068747, 22486.46550400788,
    -26055.62982188164, 18523.73922069467, -7420.201433430137, 1285.617841998974,
  ],
  [
    -0.0119301300505701, 0.2517399633803461, -2.170575700536993, 13.53034988843029, -50.29988758547014, 109.635566657757,
    -142.2753946421155, 108.043594285623, -44.14153236817392, 7.442971530188783,
  ],
  [
    -0.0006802995733503803, 0.01876837790289664, -0.2002561813734156, 1.02299296671922, -2.895696483903638, 4.810060584300675,
    -4.672147440794683, 2.458043105903461, -0.5411227621436812,
  ],
  [4.075376675622027e-6, -8.76305857347111e-6, 6.515031360099368e-6, -1.51578483698721e-6],
  [-2.788074354782409e-8, 1.345612883493354e-8],
];
