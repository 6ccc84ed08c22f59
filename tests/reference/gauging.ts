/** What alcohol and water lose in volume when they meet: the gauger's tables, and the classic figures. */

import { density } from "../../server/engine/ethanol-water.ts";
import { checks, type Table } from "./checks.ts";

/** 60 °F, where US proof is twice the strength. */
const gaugingC = (60 - 32) / 1.8;

/** Mass fraction of a spirit of this US proof. */
function fractionOf(proof: number): number {
  let low = 0;
  let high = 1;
  while (high - low > 1e-12) {
    const p = (low + high) / 2;
    if ((200 * p * density(p, gaugingC)) / density(1, gaugingC) < proof) low = p;
    else high = p;
  }
  return low;
}
/** Parts of water by volume that make 100 parts of this proof. */
function waterIn(proof: number): number {
  const p = fractionOf(proof);
  return (100 * (1 - p) * density(p, gaugingC)) / density(0, gaugingC);
}
/** US gallons in a pound of a spirit of this proof, weighed in air of 1.2 kg/m³. */
function gallonsPerPound(proof: number): number {
  const inAir = (density(fractionOf(proof), gaugingC) - 1.2) / (1 - 1.2 / 8000);
  return 453.59237 / 3785.411784 / (inAir / 1000);
}
/** Pounds of water that bring so many pounds from one proof to another, all ethanol kept. */
const waterToProof = (pounds: number, from: number, to: number) => pounds * (fractionOf(from) / fractionOf(to) - 1);

/** Volume of so much ethanol and so much water together, all at one temperature. */
function together(ethanol: number, water: number, tC: number): number {
  const [a, w] = [ethanol * density(1, tC), water * density(0, tC)];
  return (a + w) / density(a / (a + w), tC);
}

export const gaugingTables: readonly Table[] = [
  {
    title: "Contraction, 60 °F",
    source:
      "US gauging manual, 27 CFR 30.66 table 6: parts of water that go with the alcohol in 100 parts; 30.64 table 4: gallons and proof gallons per pound. The rule for 191 to 188 proof rounds a factor to 1.01 on its way, hence its wider limit.",
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
        ([proof, printed]) => [`${proof} proof`, printed, waterIn(proof)],
      ),
      {
        what: "112 to 100 proof, water for 100 gal",
        unit: "gal",
        reference: 12.42,
        ours: (waterIn(100) * 112) / 100 - waterIn(112),
        within: 0.03,
      },
      {
        what: "191 to 188 proof, water for 100 gal",
        unit: "gal",
        reference: 1.84,
        ours: (waterIn(188) * 191) / 188 - waterIn(191),
        within: 0.06,
      },
      { what: "200 to 190 proof, water for 1000 lb", unit: "lb", reference: 82.03, ours: waterToProof(1000, 200, 190), within: 0.1 },
      { what: "190 proof", unit: "gal/lb", reference: 0.14718, ours: gallonsPerPound(190), within: 0.00003 },
      { what: "190 proof", unit: "proof gal/lb", reference: 0.27964, ours: 1.9 * gallonsPerPound(190), within: 0.00005 },
    ],
  },
  {
    title: "Contraction, 15 °C",
    source:
      "Concentration table (52 + 48) and wine glossary (100 + 100): the classic figures, which fit 15 °C and not the 20 °C that strengths are stated at.",
    checks: [
      { what: "52 ml ethanol + 48 ml water", unit: "ml", reference: 96.3, ours: together(52, 48, 15), within: 0.1 },
      { what: "100 l ethanol + 100 l water", unit: "l", reference: 192.75, ours: together(100, 100, 15), within: 0.02 },
    ],
  },
  {
    title: "Contraction, 20 °C",
    source:
      "School site (50 + 50, printed low), the classic figures again (52 + 48, 100 + 100), 19th-century note (55 + 45), solvent supplier (500 + 500: 960 to 970); within what their differences and the temperature allow. The last row: OIML R 22.",
    checks: [
      ...checks(
        "ml",
        0.3,
        [
          ["50 ml ethanol + 50 ml water", 96.26, together(50, 50, 20)],
          ["52 ml ethanol + 48 ml water", 96.3, together(52, 48, 20)],
          ["55 ml ethanol + 45 ml water", 96.23, together(55, 45, 20)],
          ["100 l ethanol + 100 l water, l", 192.75, together(100, 100, 20)],
        ] as const,
        (row) => row,
      ),
      {
        what: "strength of 100 l ethanol + 100 l water",
        unit: "% vol",
        reference: 51.8,
        ours: 10_000 / together(100, 100, 20),
        within: 0.1,
      },
      { what: "500 ml ethanol + 500 ml water", unit: "ml", reference: 965, ours: together(500, 500, 20), within: 5 },
      { what: "50 ml ethanol + 50 ml water, by the formula", unit: "ml", reference: 96.46, ours: together(50, 50, 20), within: 0.01 },
    ],
  },
];
