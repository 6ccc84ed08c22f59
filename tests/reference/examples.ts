/** Printed worked examples of mixing. */

import { batchOf } from "../../server/engine/composition.ts";
import { density, massFractionOf, strengthOf, volumeOf } from "../../server/engine/ethanol-water.ts";
import { at, massOf } from "../../server/engine/liquid.ts";
import type { Amount } from "../../server/engine/plan.ts";
import { assessPrep } from "../../server/engine/prep.ts";
import { g, ml, prep, stock, sugar, water } from "../engine/plans.ts";
import { checks, type Table } from "./checks.ts";

const strong = (abv: number) => stock(`${abv} % vol`, { abv });
const sweet = (brix: number) => stock(`${brix} °Bx`, { sugar: brix, per: "100 g" });
const mixed = (a: Parameters<typeof stock>[1], aMl: number, b: Parameters<typeof stock>[1], bMl: number) =>
  assessPrep(
    prep("mix", [
      [stock("a", a), ml(aMl)],
      [stock("b", b), ml(bMl)],
    ]),
  );

const syrup = (sugarG: number, waterG: number) =>
  assessPrep(
    prep("syrup", [
      [sugar, g(sugarG)],
      [water, g(waterG)],
    ]),
  );
const sweetened = (...parts: readonly (readonly [brix: number, amount: Amount])[]) =>
  assessPrep(
    prep(
      "mix",
      parts.map(([brix, amount]) => [sweet(brix), amount] as const),
    ),
  );
const expanded = (abv: number, tC: number) => (100 * density(massFractionOf(abv), tC)) / density(massFractionOf(abv), 20);

export const exampleTables: readonly Table[] = [
  {
    title: "Mixes of spirits, 20 °C",
    source: "Mass balance through the OIML formula, computed for this test by another program. First row: pharmacy class, printed.",
    checks: [
      {
        what: "50 ml of 95 % + 50 ml water, printed",
        unit: "ml",
        reference: 97,
        ours: mixed({ abv: 95 }, 50, {}, 50).value("volumeMl")!,
        within: 0.5,
      },
      ...checks(
        "ml",
        0.01,
        [
          [40, 60, 0, 30, 89.87],
          [40, 50, 20, 50, 99.859],
          [57, 45, 17, 15, 59.712],
          [95, 50, 0, 50, 97.059],
        ] as const,
        ([a, aMl, b, bMl, volume]) => [
          `${aMl} ml of ${a} % + ${bMl} ml of ${b} %`,
          volume,
          mixed({ abv: a }, aMl, { abv: b }, bMl).value("volumeMl")!,
        ],
      ),
      ...checks(
        "% vol",
        0.02,
        [
          [40, 60, 0, 30, 26.705],
          [40, 50, 20, 50, 30.042],
          [57, 45, 17, 15, 47.227],
          [95, 50, 0, 50, 48.939],
        ] as const,
        ([a, aMl, b, bMl, strength]) => [
          `${aMl} ml of ${a} % + ${bMl} ml of ${b} %`,
          strength,
          mixed({ abv: a }, aMl, { abv: b }, bMl).value("strengthPct")!,
        ],
      ),
      ...checks(
        "ml",
        0.01,
        [
          [40, -10, 101.938],
          [40, 0, 101.327],
          [40, 4, 101.074],
          [40, 30, 99.277],
          [20, 0, 100.534],
          [50, -10, 102.314],
        ] as const,
        ([abv, tC, volume]) => [`100 ml of ${abv} % vol at ${tC} °C, brought to 20 °C`, volume, expanded(abv, tC)],
      ),
    ],
  },
  {
    title: "Pearson squares",
    source:
      "Printed squares of winemaking and juice pages. Spirits are squared by volume there, which leaves the contraction out: within 0.1 % vol for a fortified wine, 0.6 for 90 % vol. Juice and syrup are squared by weight, which is exact.",
    checks: [
      {
        what: "5 of 40 % + 20 of 15 %",
        unit: "% vol",
        reference: 20,
        ours: mixed({ abv: 40 }, 5, { abv: 15 }, 20).value("strengthPct")!,
        within: 0.1,
      },
      {
        what: "13 of 10 % + 3 of 90 %",
        unit: "% vol",
        reference: 25,
        ours: mixed({ abv: 10 }, 13, { abv: 90 }, 3).value("strengthPct")!,
        within: 0.6,
      },
      {
        what: "41 g of 12 °Bx + 12 g of 65 °Bx",
        unit: "°Bx",
        reference: 24,
        ours: sweetened([12, g(41)], [65, g(12)]).value("brix")!,
        within: 0.001,
      },
    ],
  },
  {
    title: "Textbook arithmetic of mass over density",
    source: "15.0 ml of 0.792 g/ml with 15 ml of 1 g/ml, mixture 0.924 g/ml: 29.09 ml.",
    checks: [
      {
        what: "volume of the mixture",
        unit: "ml",
        reference: 29.0909,
        ours: batchOf(
          prep(
            "mix",
            [
              [stock("alcohol", { abv: 99, density: 0.792 }), ml(15)],
              [stock("water", { density: 1 }), ml(15)],
            ],
            { measured: { densityGPerMl: { value: 0.924, u: 0, why: "given" } } },
          ),
        ).volumeMl,
        within: 0.001,
      },
    ],
  },
  {
    title: "Syrups",
    source:
      "By weight: definition. Densities and mixes: ICUMSA polynomial, computed for this test by another program. 62 and 10 °Bx to 45 °Bx: food processing laboratory manual (163.5 kg of the thinner in 500 kg).",
    checks: (
      [
        ["1 + 1 by weight", "°Bx", 50, syrup(1, 1), "brix", 0.001],
        ["its density", "g/ml", 1.22965, syrup(1, 1), "densityGPerMl", 0.00002],
        ["its sugar", "g/100 ml", 61.483, syrup(1, 1), "sugarGPer100Ml", 0.01],
        ["2 + 1 by weight", "°Bx", 66.667, syrup(2, 1), "brix", 0.001],
        ["its density", "g/ml", 1.32675, syrup(2, 1), "densityGPerMl", 0.00002],
        ["its sugar", "g/100 ml", 88.45, syrup(2, 1), "sugarGPer100Ml", 0.01],
        ["100 g of 62 °Bx + 540 g water", "°Bx", 9.6875, sweetened([62, g(100)], [0, g(540)]), "brix", 0.001],
        ["100 ml of 50 °Bx + 100 ml water", "°Bx", 27.5972, sweetened([50, ml(100)], [0, ml(100)]), "brix", 0.005],
        ["its volume", "ml", 199.689, sweetened([50, ml(100)], [0, ml(100)]), "volumeMl", 0.01],
        ["50 ml of 65 °Bx + 150 ml of 10 °Bx", "°Bx", 26.3422, sweetened([65, ml(50)], [10, ml(150)]), "brix", 0.005],
        ["its volume", "ml", 199.626, sweetened([65, ml(50)], [10, ml(150)]), "volumeMl", 0.01],
        ["336.5 kg of 62 °Bx + 163.5 kg of 10 °Bx", "°Bx", 45, sweetened([62, g(336.5)], [10, g(163.5)]), "brix", 0.01],
      ] as const
    ).map(([what, unit, reference, outcome, figure, within]) => ({ what, unit, reference, ours: outcome.value(figure)!, within })),
  },
  {
    title: "Ethanol in a drink",
    source:
      "11 % vol × 175 ml: 15.2 g (1.925 UK units of 8 g by volume × 0.789). 13 % vol: 10.26 g in 100 ml, not the 12.7 that a common mistake gives.",
    checks: [
      {
        what: "13 % vol",
        unit: "g/100 ml",
        reference: 10.26,
        ours: batchOf(prep("wine", [[strong(13), ml(100)]])).masses[at.ethanol]!,
        within: 0.005,
      },
      { what: "13 % vol", unit: "% mass", reference: 10.46, ours: 100 * massFractionOf(13), within: 0.01 },
      { what: "10.46 % mass", unit: "% vol", reference: 13, ours: strengthOf(0.1046), within: 0.01 },
      { what: "100 g of 40 % vol fills", unit: "ml", reference: 105.48, ours: volumeOf(66.7, 33.3), within: 0.01 },
      {
        what: "its mass",
        unit: "g",
        reference: 94.805,
        ours: massOf(batchOf(prep("spirit", [[strong(40), ml(100)]])).masses),
        within: 0.001,
      },
    ],
  },
];
