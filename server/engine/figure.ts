/** Numbers as a person reads them: no digit that the uncertainty denies. */

import type { Figure } from "./plan.ts";

/** What a figure is counted in, and how it is printed. */
export type ShownUnit = "ml" | "cl" | "oz" | "g" | "mg" | "% vol" | "%" | "C" | "g/100 ml" | "g/100 g" | "g/ml" | "brix" | "";

/**
 * `17.1 ± 0.5 % vol`, `52 ± 6 ml`, or `unknown`.
 *
 * The figure must be in its own unit already (`inUnit` converts), except that a share is printed in `%`.
 * Both numbers are printed to the digit that holds the uncertainty's leading figure (its first two where
 * it starts with a 1). An uncertainty too small to change what a person does, under 1 in 2000 of the
 * value, is left out, and the value printed to four significant digits.
 */
export function show(figure: Figure, unit: ShownUnit): string {
  if (figure.value === null) return "unknown";
  const scale = unit === "%" ? 100 : 1;
  const value = figure.value * scale;
  const u = (figure.plusMinus ?? 0) * scale;
  const ending = unit === "" ? "" : ` ${spelling[unit] ?? unit}`;
  if (!(u > Math.abs(value) / 2000)) return `${fixed(value, decimalsOf(value, 4))}${ending}`;
  const decimals = decimalsFor(u);
  return `${fixed(value, decimals)} ± ${fixed(u, decimals)}${ending}`;
}

/** The value alone, with the same digits and without the uncertainty: `17.1 % vol`. */
export function showValue(figure: Figure, unit: ShownUnit): string {
  const shown = show(figure, unit);
  return shown.replace(/ ± [\d.]+/, "");
}

/**
 * A volume in ml as a figure in another unit of volume; `ounceMl` is how large an ounce is here
 * (29.5735 US, 28.4131 imperial, or the house's own).
 */
export function inUnit(figureMl: Figure, unit: "ml" | "cl" | "oz", ounceMl: number): Figure {
  const size = unit === "ml" ? 1 : unit === "cl" ? 10 : ounceMl;
  if (figureMl.value === null || size === 1) return figureMl;
  return { ...figureMl, value: figureMl.value / size, plusMinus: figureMl.plusMinus === null ? null : figureMl.plusMinus / size };
}

const spelling: Partial<Record<ShownUnit, string>> = { C: "°C", brix: "°Bx" };

/** Decimals that show the leading digit of an uncertainty, or its two leading ones if it rounds to 10…19. */
function decimalsFor(u: number): number {
  const magnitude = Math.floor(Math.log10(u));
  const leading = u / 10 ** magnitude;
  return (leading < 1.95 || leading >= 9.95 ? 1 : 0) - magnitude - (leading >= 9.5 ? 1 : 0);
}

/** Decimals that show so many significant digits. */
function decimalsOf(value: number, digits: number): number {
  if (value === 0) return 0;
  return Math.min(6, Math.max(0, digits - 1 - Math.floor(Math.log10(Math.abs(value)))));
}

/** Fixed decimals (fewer than none: whole tens, hundreds …), a true minus, no negative zero. */
function fixed(value: number, decimals: number): string {
  const size = Math.abs(value);
  const tens = 10 ** -decimals;
  const text = decimals < 0 ? (Math.round(size / tens) * tens).toFixed(0) : size.toFixed(decimals);
  return value < 0 && Number(text) !== 0 ? `−${text}` : text;
}
