/** Heat capacities and heat of fusion. */

import { liquidOf } from "../../server/engine/composition.ts";
import { ethanolWaterContent, fusionHeat, heatContent, iceWarming, waterHeat } from "../../server/engine/heat.ts";
import { heatIn } from "../../server/engine/liquid.ts";
import { stock } from "../engine/plans.ts";
import { checks, type Table } from "./checks.ts";

/** Heat capacity from heat contents half a degree to either side. */
const slope = (content: (tC: number) => number, tC: number) => content(tC + 0.5) - content(tC - 0.5);
const ofMixture = (massPct: number, tC: number) => slope((t) => ethanolWaterContent(massPct / 100, t), tC);
const ofSyrup = (brix: number, tC: number) => slope((t) => heatIn(liquidOf(stock("syrup", { sugar: brix, per: "100 g" })).perGram, t), tC);

const melinder = [
  [11, -5, 4.431],
  [11, 10, 4.359],
  [11, 20, 4.312],
  [15, -5, 4.431],
  [15, 10, 4.372],
  [15, 20, 4.335],
  [20, -5, 4.377],
  [20, 10, 4.349],
  [20, 20, 4.329],
  [25, -5, 4.277],
  [25, 10, 4.285],
  [25, 20, 4.287],
  [30, -5, 4.145],
  [30, 10, 4.193],
  [30, 20, 4.216],
  [40, -5, 3.85],
  [40, 10, 3.967],
  [40, 20, 4.029],
  [50, -5, 3.575],
  [50, 10, 3.738],
  [50, 20, 3.824],
] as const;
const perry = [
  [9.99, 3, 4.393],
  [9.99, 23, 4.268],
  [24.94, 3, 4.268],
  [24.94, 23, 4.31],
  [60.03, 3, 3.368],
  [60.03, 23, 3.598],
  [80, 3, 2.803],
  [80, 23, 3.042],
] as const;

export const heatTables: readonly Table[] = [
  {
    title: "Heat capacity of ethanol and water",
    source:
      "Melinder, Properties of Secondary Working Fluids, IIR (2010), polynomial, within 0.05 as published; Perry's Chemical Engineers' Handbook p. 2-184, within 0.12. The engine's fit was made to these figures.",
    checks: [
      ...checks("J/(g K)", 0.05, melinder, ([mass, tC, printed]) => [`Melinder: ${mass} % mass, ${tC} °C`, printed, ofMixture(mass, tC)]),
      ...checks("J/(g K)", 0.12, perry, ([mass, tC, printed]) => [`Perry: ${mass} % mass, ${tC} °C`, printed, ofMixture(mass, tC)]),
      { what: "CRC (from memory): ethanol, 25 °C", unit: "J/(g K)", reference: 2.44, ours: ofMixture(100, 25), within: 0.03 },
    ],
  },
  {
    title: "Heat capacity of water, ice and syrup; heat of fusion",
    source:
      "Water: CRC values in public compilations. Ice: handbook tables at 0, −13, −20 and −40 °C. Syrup: the sugar trade's formula (Bubnik 1995; Llano 2005). Fusion: 333 to 334 in three tables, 333.55 CRC from memory.",
    checks: [
      ...checks(
        "J/(g K)",
        0.01,
        [
          [0, 4.218],
          [10, 4.1921],
          [20, 4.1818],
          [30, 4.1784],
        ] as const,
        ([tC, printed]) => [`water, ${tC} °C`, printed, slope((t) => heatContent(waterHeat, t), tC)],
      ),
      ...checks(
        "J/(g K)",
        0.02,
        [
          [0, 2.101],
          [-13, 2.01],
          [-20, 1.97],
          [-40, 1.8],
        ] as const,
        ([tC, printed]) => [`ice, ${tC} °C`, printed, slope((t) => iceWarming(0, t), tC)],
      ),
      ...checks(
        "J/(g K)",
        0.05,
        [
          [10, 0, 3.933],
          [10, 20, 3.948],
          [30, 0, 3.431],
          [30, 20, 3.476],
          [50, 0, 2.929],
          [50, 20, 3.003],
          [65, 0, 2.552],
          [65, 20, 2.649],
        ] as const,
        ([brix, tC, printed]) => [`syrup ${brix} °Bx, ${tC} °C`, printed, ofSyrup(brix, tC)],
      ),
      { what: "fusion of ice, 0 °C", unit: "J/g", reference: 333.55, ours: fusionHeat, within: 0.5 },
    ],
  },
];
