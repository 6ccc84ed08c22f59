/** Printed worked examples of mixing. */

import { batchOf } from "../../server/engine/composition.ts";
import { density, massFractionOf, strengthOf, volumeOf } from "../../server/engine/ethanol-water.ts";
import { at, massOf } from "../../server/engine/liquid.ts";
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

/** Parts of water by volume that make 100 parts of this US proof, all at 60 °F where proof is twice the strength. */
function gaugingWater(proof: number): number {
  const tC = (60 - 32) / 1.8;
  let low = 0;
  let high = 1;
  while (high - low > 1e-12) {
    const p = (low + high) / 2;
    if ((200 * p * density(p, tC)) / density(1, tC) < proof) low = p;
    else high = p;
  }
  return (100 * (1 - low) * density(low, tC)) / density(0, tC);
}
/** US gallons in a pound of a spirit of this proof, weighed in air of 1.2 kg/m³. */
const gallonsPerPound = (proof: number): number => {
  const tC = (60 - 32) / 1.8;
  const p = 1 - (gaugingWater(proof) * density(0, tC)) / 100 / rho(proof, tC);
  return 453.59237 / 3785.411784 / ((density(p, tC) - 1.2) / (1 - 1.2 / 8000) / 1000);
};
function rho(proof: number, tC: number): number {
  let p = 0.9;
  for (let i = 0; i < 60; i++) p = ((proof / 200) * density(1, tC)) / density(p, tC);
  return density(p, tC);
}
const expanded = (abv: number, tC: number) => (100 * density(massFractionOf(abv), tC)) / density(massFractionOf(abv), 20);

export const exampleTables: readonly Table[] = [
  {
    title: "Contraction, 60 °F",
    source:
      "US gauging manual, 27 CFR 30.66 table 6: parts of water that go with the alcohol in 100 parts; 30.64 table 4: gallons per pound.",
    checks: [
      ...checks(
        "parts",
        0.02,
        [
          [191, 5.59],
          [188, 7.36],
          [112, 47.75],
          [100, 53.73],
        ] as const,
        ([proof, printed]) => [`${proof} proof`, printed, gaugingWater(proof)],
      ),
      {
        what: "112 proof to 100 proof, water for 100 gal",
        unit: "gal",
        reference: 12.42,
        ours: (gaugingWater(100) * 56) / 50 - gaugingWater(112),
        within: 0.03,
      },
      { what: "190 proof", unit: "gal/lb", reference: 0.14718, ours: gallonsPerPound(190), within: 0.00003 },
    ],
  },
  {
    title: "Contraction, 20 °C",
    source:
      "School site (50 + 50, low: 96.26), concentration table (52 + 48), wine glossary (100 + 100, figures of 15 °C), 19th-century note (55 + 45), solvent supplier (500 + 500: 960 to 970), pharmacy class (95 % vol + water); within what the differences between them and the temperature allow.",
    checks: [
      {
        what: "50 ml ethanol + 50 ml water",
        unit: "ml",
        reference: 96.26,
        ours: mixed({ abv: 100 }, 50, {}, 50).value("volumeMl")!,
        within: 0.3,
      },
      {
        what: "the same by the legal formula",
        unit: "ml",
        reference: 96.46,
        ours: mixed({ abv: 100 }, 50, {}, 50).value("volumeMl")!,
        within: 0.01,
      },
      {
        what: "52 ml ethanol + 48 ml water",
        unit: "ml",
        reference: 96.3,
        ours: mixed({ abv: 100 }, 52, {}, 48).value("volumeMl")!,
        within: 0.2,
      },
      {
        what: "55 ml ethanol + 45 ml water",
        unit: "ml",
        reference: 96.23,
        ours: mixed({ abv: 100 }, 55, {}, 45).value("volumeMl")!,
        within: 0.3,
      },
      {
        what: "100 l ethanol + 100 l water",
        unit: "l",
        reference: 192.75,
        ours: mixed({ abv: 100 }, 100, {}, 100).value("volumeMl")!,
        within: 0.2,
      },
      { what: "its strength", unit: "% vol", reference: 51.8, ours: mixed({ abv: 100 }, 100, {}, 100).value("strengthPct")!, within: 0.1 },
      {
        what: "500 ml ethanol + 500 ml water",
        unit: "ml",
        reference: 965,
        ours: mixed({ abv: 100 }, 500, {}, 500).value("volumeMl")!,
        within: 5,
      },
      {
        what: "50 ml of 95 % vol + 50 ml water",
        unit: "ml",
        reference: 97,
        ours: mixed({ abv: 95 }, 50, {}, 50).value("volumeMl")!,
        within: 0.5,
      },
    ],
  },
  {
    title: "Mixes of spirits, 20 °C",
    source: "Mass balance through the OIML formula, computed for this test by another program.",
    checks: [
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
    checks: [
      {
        what: "1 + 1 by weight",
        unit: "°Bx",
        reference: 50,
        ours: assessPrep(
          prep("syrup", [
            [sugar, g(1)],
            [water, g(1)],
          ]),
        ).value("brix")!,
        within: 0.001,
      },
      {
        what: "its density",
        unit: "kg/m³",
        reference: 1229.65,
        ours:
          1000 *
          assessPrep(
            prep("syrup", [
              [sugar, g(1)],
              [water, g(1)],
            ]),
          ).value("densityGPerMl")!,
        within: 0.02,
      },
      {
        what: "its sugar",
        unit: "g/100 ml",
        reference: 61.483,
        ours: assessPrep(
          prep("syrup", [
            [sugar, g(1)],
            [water, g(1)],
          ]),
        ).value("sugarGPer100Ml")!,
        within: 0.01,
      },
      {
        what: "2 + 1 by weight",
        unit: "°Bx",
        reference: 66.667,
        ours: assessPrep(
          prep("syrup", [
            [sugar, g(2)],
            [water, g(1)],
          ]),
        ).value("brix")!,
        within: 0.001,
      },
      {
        what: "its sugar",
        unit: "g/100 ml",
        reference: 88.45,
        ours: assessPrep(
          prep("syrup", [
            [sugar, g(2)],
            [water, g(1)],
          ]),
        ).value("sugarGPer100Ml")!,
        within: 0.01,
      },
      {
        what: "100 g of 62 °Bx + 540 g water",
        unit: "°Bx",
        reference: 9.6875,
        ours: assessPrep(
          prep("mix", [
            [sweet(62), g(100)],
            [water, g(540)],
          ]),
        ).value("brix")!,
        within: 0.001,
      },
      {
        what: "100 ml of 50 °Bx + 100 ml water",
        unit: "°Bx",
        reference: 27.5972,
        ours: assessPrep(
          prep("mix", [
            [sweet(50), ml(100)],
            [water, ml(100)],
          ]),
        ).value("brix")!,
        within: 0.005,
      },
      {
        what: "its volume",
        unit: "ml",
        reference: 199.689,
        ours: assessPrep(
          prep("mix", [
            [sweet(50), ml(100)],
            [water, ml(100)],
          ]),
        ).value("volumeMl")!,
        within: 0.01,
      },
      {
        what: "50 ml of 65 °Bx + 150 ml of 10 °Bx",
        unit: "°Bx",
        reference: 26.3422,
        ours: assessPrep(
          prep("mix", [
            [sweet(65), ml(50)],
            [sweet(10), ml(150)],
          ]),
        ).value("brix")!,
        within: 0.005,
      },
      {
        what: "336.5 kg of 62 °Bx + 163.5 kg of 10 °Bx",
        unit: "°Bx",
        reference: 45,
        ours: assessPrep(
          prep("mix", [
            [sweet(62), g(336.5)],
            [sweet(10), g(163.5)],
          ]),
        ).value("brix")!,
        within: 0.01,
      },
    ],
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
