/** Freezing points of single solutes in water. */

import { liquidOf } from "../../server/engine/composition.ts";
import { massFractionOf } from "../../server/engine/ethanol-water.ts";
import { at, freezingPoint, noMasses } from "../../server/engine/liquid.ts";
import type { SugarKind } from "../../server/engine/plan.ts";
import { stock } from "../engine/plans.ts";
import { checks, type Table } from "./checks.ts";

const ofEthanol = (massPct: number) => {
  const masses = noMasses();
  masses[at.ethanol] = massPct;
  masses[at.water] = 100 - massPct;
  return -freezingPoint(masses);
};
const ofSugar = (sugarKind: SugarKind, mass: number) => -liquidOf(stock("solution", { sugar: mass, sugarKind, per: "100 g" })).freezingC;
const ofAcid = (acidKind: "citric" | "lactic" | "acetic" | "phosphoric", mass: number) =>
  -liquidOf(stock("solution", { acid: mass, acidKind, titrated: false, per: "100 g" })).freezingC;
const ofSalt = (mass: number) => -liquidOf(stock("brine", { salt: mass, per: "100 g" })).freezingC;

const ethanol = [
  [1, 0.4],
  [2, 0.81],
  [5, 2.09],
  [8, 3.47],
  [10, 4.47],
  [12, 5.56],
  [15, 7.36],
  [18, 9.4],
  [20, 10.92],
  [22, 12.6],
  [24, 14.47],
  [26, 16.41],
  [28, 18.43],
  [30, 20.47],
] as const;
const byVolume = [
  [10, 3.48],
  [20, 8.16],
  [30, 15.06],
  [40, 23.63],
] as const;

export const freezingTables: readonly Table[] = [
  {
    title: "Freezing-point depression of single solutes",
    source:
      "CRC Handbook of Chemistry and Physics, 102nd ed. (2021), concentrative properties of aqueous solutions: positive K below 0 °C, by mass % of solute. The engine's fits were made to these figures, so this shows how well they fit.",
    checks: [
      ...checks("K", 0.2, ethanol, ([mass, printed]) => [`ethanol ${mass} % mass`, printed, ofEthanol(mass)]),
      ...checks(
        "K",
        0.4,
        [
          [34, 24.27],
          [40, 29.26],
          [50, 37.67],
          [60, 44.93],
          [68, 49.52],
        ] as const,
        ([mass, printed]) => [`ethanol ${mass} % mass`, printed, ofEthanol(mass)],
      ),
      ...checks("K", 0.2, byVolume, ([strength, printed]) => [
        `ethanol ${strength} % vol (table interpolated)`,
        printed,
        ofEthanol(100 * massFractionOf(strength)),
      ]),
      ...checks(
        "K",
        0.2,
        [
          [2, 0.11],
          [5, 0.29],
          [10, 0.63],
          [15, 1.01],
          [20, 1.47],
          [24, 1.89],
          [30, 2.64],
          [36, 3.63],
          [42, 4.93],
        ] as const,
        ([mass, printed]) => [`sucrose ${mass} % mass`, printed, ofSugar("sucrose", mass)],
      ),
      ...checks(
        "K",
        0.2,
        [
          [5, 0.55],
          [10, 1.17],
          [15, 1.88],
          [20, 2.7],
          [24, 3.48],
          [30, 4.79],
        ] as const,
        ([mass, printed]) => [`glucose ${mass} % mass`, printed, ofSugar("glucose", mass)],
      ),
      ...checks(
        "K",
        0.2,
        [
          [5, 0.54],
          [10, 1.16],
          [15, 1.86],
          [20, 2.64],
          [28, 4.2],
        ] as const,
        ([mass, printed]) => [`fructose ${mass} % mass`, printed, ofSugar("fructose", mass)],
      ),
      ...checks(
        "K",
        0.2,
        [
          [10, 0.62],
          [20, 1.43],
          [30, 2.62],
        ] as const,
        ([mass, printed]) => [`maltose ${mass} % mass`, printed, ofSugar("maltose", mass)],
      ),
      ...checks(
        "K",
        0.2,
        [
          [5, 0.29],
          [8, 0.5],
        ] as const,
        ([mass, printed]) => [`lactose ${mass} % mass`, printed, ofSugar("lactose", mass)],
      ),
      ...checks(
        "K",
        0.2,
        [
          [1, 0.11],
          [5, 0.54],
          [10, 1.12],
          [14, 1.66],
          [20, 2.57],
          [30, 4.25],
        ] as const,
        ([mass, printed]) => [`citric acid ${mass} % mass`, printed, ofAcid("citric", mass)],
      ),
      ...checks(
        "K",
        0.2,
        [
          [1, 0.19],
          [5, 0.95],
          [10, 2.02],
          [20, 4.44],
        ] as const,
        ([mass, printed]) => [`lactic acid ${mass} % mass`, printed, ofAcid("lactic", mass)],
      ),
      ...checks(
        "K",
        0.2,
        [
          [1, 0.32],
          [5, 1.58],
          [10, 3.23],
        ] as const,
        ([mass, printed]) => [`acetic acid ${mass} % mass`, printed, ofAcid("acetic", mass)],
      ),
      ...checks(
        "K",
        0.2,
        [
          [1, 0.24],
          [5, 1.16],
          [10, 2.45],
        ] as const,
        ([mass, printed]) => [`phosphoric acid ${mass} % mass`, printed, ofAcid("phosphoric", mass)],
      ),
      ...checks(
        "K",
        0.2,
        [
          [1, 0.59],
          [2, 1.19],
          [5, 3.05],
          [10, 6.56],
          [15, 10.89],
          [20, 16.46],
          [23, 20.67],
        ] as const,
        ([mass, printed]) => [`salt ${mass} % mass`, printed, ofSalt(mass)],
      ),
    ],
  },
  {
    title: "Freezing-point depression of ethanol, another source",
    source: "Melinder, Properties of Secondary Working Fluids, IIR (2010), published polynomial: independent of the fit.",
    checks: checks(
      "K",
      0.5,
      [
        [15, 7.39],
        [20, 11.12],
        [25, 15.45],
        [30, 20.14],
        [40, 29.53],
        [50, 37.61],
        [60, 44.91],
      ] as const,
      ([mass, printed]) => [`ethanol ${mass} % mass`, printed, ofEthanol(mass)],
    ),
  },
  {
    title: "Freezing-point depression, a textbook exercise",
    source: "25.0 g of glucose in 250.0 g of water, Kf 1.86 K kg/mol, ideal: 1.03 K; the handbook interpolated: 1.05 K.",
    checks: [{ what: "9.09 % mass glucose", unit: "K", reference: 1.05, ours: ofSugar("glucose", 100 / 11), within: 0.03 }],
  },
];
