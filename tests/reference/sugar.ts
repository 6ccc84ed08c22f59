/** Sugar in water. */

import { liquidOf } from "../../server/engine/composition.ts";
import { brixOf, sucroseDensity, sucroseSolubility } from "../../server/engine/sucrose.ts";
import { stock } from "../engine/plans.ts";
import { checks, type Table } from "./checks.ts";

/** Density in kg/m³ at 20 °C of a solution as the engine composes it. */
const composed = (sugarKind: "sucrose" | "glucose" | "fructose", mass: number) =>
  1000 / liquidOf(stock("solution", { sugar: mass, sugarKind, per: "100 g" })).mlPerGram;

const low = [
  [1, 1002.1],
  [5, 1017.8],
  [10, 1038.1],
  [15, 1059.2],
  [20, 1081],
  [24, 1099],
  [30, 1127],
  [36, 1156.2],
  [40, 1176.5],
  [44, 1197.2],
  [48, 1218.6],
] as const;
const high = [
  [50, 1229.5],
  [60, 1286.4],
  [70, 1347.2],
  [80, 1411.7],
  [84, 1438.3],
] as const;
const circular440 = [
  [0, 998.26],
  [1, 1002.09],
  [2, 1006.04],
  [3, 1009.88],
  [4, 1013.83],
  [5, 1017.91],
] as const;
const pinned = [
  [10, 0, 1040.98],
  [30, 0, 1132.43],
  [50, 0, 1237.54],
  [65, 0, 1326],
  [75, 0, 1389.53],
  [10, 10, 1040.15],
  [30, 10, 1130.17],
  [50, 10, 1233.88],
  [65, 10, 1321.46],
  [75, 10, 1384.58],
  [10, 20, 1038.12],
  [30, 20, 1127.03],
  [50, 20, 1229.65],
  [65, 20, 1316.56],
  [75, 20, 1379.37],
  [10, 40, 1031.39],
  [30, 40, 1118.79],
  [50, 40, 1219.93],
  [65, 40, 1305.92],
  [75, 40, 1368.34],
] as const;

export const sugarTables: readonly Table[] = [
  {
    title: "Density of sucrose solutions",
    source:
      "CRC Handbook of Chemistry and Physics, 102nd ed. (2021), 20 °C, within 0.5 (1.0 from 50 °Bx); NBS Circular C440 (1942), pounds per US gallon in air as printed, brought to density; the ICUMSA polynomial computed for this test from the published coefficients by another program, to pin them.",
    checks: [
      ...checks("kg/m³", 0.5, low, ([brix, printed]) => [`CRC: ${brix} °Bx`, printed, sucroseDensity(brix)]),
      ...checks("kg/m³", 1, high, ([brix, printed]) => [`CRC: ${brix} °Bx`, printed, sucroseDensity(brix)]),
      ...checks("kg/m³", 0.15, circular440, ([brix, printed]) => [`C440: ${brix} °Bx`, printed, sucroseDensity(brix)]),
      ...checks("kg/m³", 0.02, pinned, ([brix, tC, printed]) => [`ICUMSA: ${brix} °Bx, ${tC} °C`, printed, sucroseDensity(brix, tC)]),
    ],
  },
  {
    title: "°Brix from density",
    source: "The same ICUMSA figures read backwards, 20 °C.",
    checks: checks(
      "°Bx",
      0.02,
      pinned.filter(([, tC]) => tC === 20),
      ([brix, , printed]) => [`${printed} kg/m³`, brix, brixOf(printed)],
    ),
  },
  {
    title: "Solubility of sucrose",
    source: "Mohos, Confectionery and Chocolate Engineering (2010), mass % of the saturated solution.",
    checks: checks(
      "g/100 g",
      0.5,
      [
        [0, 64.18],
        [10, 65.58],
        [20, 67.09],
        [30, 68.7],
      ] as const,
      ([tC, printed]) => [`${tC} °C`, printed, sucroseSolubility(tC)],
    ),
  },
  {
    title: "Density of solutions as the engine composes them",
    source: "CRC Handbook, 102nd ed., 20 °C: water by difference, sugars by their apparent volumes.",
    checks: [
      ...checks("kg/m³", 0.5, low, ([mass, printed]) => [`sucrose ${mass} % mass`, printed, composed("sucrose", mass)]),
      ...checks(
        "kg/m³",
        1,
        [
          [5, 1017.5],
          [10, 1037.5],
          [20, 1079.7],
          [30, 1124.6],
          [40, 1172.4],
          [50, 1223.5],
          [60, 1279.3],
        ] as const,
        ([mass, printed]) => [`glucose ${mass} % mass`, printed, composed("glucose", mass)],
      ),
      ...checks(
        "kg/m³",
        1,
        [
          [5, 1018.1],
          [10, 1038.5],
          [20, 1081.6],
          [30, 1127.6],
          [40, 1176.9],
          [48, 1218.7],
        ] as const,
        ([mass, printed]) => [`fructose ${mass} % mass`, printed, composed("fructose", mass)],
      ),
    ],
  },
  {
    title: "What it would cost to take every sugar for sucrose",
    source:
      "CRC Handbook, 102nd ed., densities of glucose and fructose solutions at 20 °C, read as °Brix of sucrose: how far a hydrometer is off in them. Not how the engine does it.",
    checks: checks(
      "°Bx",
      1.4,
      [
        ["glucose", 20, 1079.7],
        ["glucose", 40, 1172.4],
        ["glucose", 60, 1279.3],
        ["fructose", 20, 1081.6],
        ["fructose", 40, 1176.9],
        ["fructose", 48, 1218.7],
      ] as const,
      ([sugar, mass, printed]) => [`${sugar} ${mass} % mass`, mass, brixOf(printed)],
    ),
  },
];
