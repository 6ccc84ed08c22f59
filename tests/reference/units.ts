/** The sizes of the language's units. */

import { findUnit, imperialOunceMl } from "../../grammar/units.ts";
import { checks, type Table } from "./checks.ts";

const ml = [
  ["fl oz", 29.5735295625],
  ["tsp", 4.92892159375],
  ["tbsp", 14.78676478125],
  ["cup", 236.5882365],
  ["pint", 473.176473],
  ["quart", 946.352946],
  ["gallon", 3785.411784],
  ["cl", 10],
  ["dl", 100],
  ["l", 1000],
] as const;
const g = [
  ["oz wt", 28.349523125],
  ["lb", 453.59237],
  ["kg", 1000],
  ["mg", 0.001],
] as const;

export const unitTables: readonly Table[] = [
  {
    title: "Units",
    source:
      "NIST Handbook 44, appendix C (US measures, exact); UK Weights and Measures Act 1985 (gallon of 4.54609 dm³). Equal to all digits.",
    checks: [
      ...checks("ml", 1e-9, ml, ([unit, exact]) => [unit, exact, findUnit(unit)!.ml!]),
      ...checks("g", 1e-9, g, ([unit, exact]) => [unit, exact, findUnit(unit)!.g!]),
      { what: "imperial fluid ounce", unit: "ml", reference: 28.4130625, ours: imperialOunceMl, within: 1e-9 },
    ],
  },
];
