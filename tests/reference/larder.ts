/** The built-in larder, and the engine's mixtures, beside printed tables of foods, measures and glasses. */

import { imperialOunceMl, units } from "../../grammar/units.ts";
import { liquidOf } from "../../server/engine/composition.ts";
import { energyOf } from "../../server/engine/energy.ts";
import { at, noMasses, sugarOf, volumeMl } from "../../server/engine/liquid.ts";
import { findGlass } from "../../server/house/glass.ts";
import { stockFacts } from "../../server/house/stock.ts";
import { houseOf } from "../house/make.ts";
import { type Check, checks, type Table } from "./checks.ts";

const house = houseOf("drink none\n");
const scope = house.scopeOf([...house.documents()][0]!.tree.entries[0]!);
const liquid = (name: string) => {
  const { entry } = house.lookup(scope, "ingredient", name)[0]!;
  return liquidOf(stockFacts(house, entry).model);
};

const read = {
  sugar: (name: string) => 100 * sugarOf(liquid(name).perGram),
  ethanol: (name: string) => 100 * liquid(name).perGram[at.ethanol]!,
  acid: (name: string) => 100 * liquid(name).perGram[at.titratable]!,
  density: (name: string) => liquid(name).gPerMl,
  energy: (name: string) => 100 * energyOf(liquid(name).perGram, "kJ"),
} as const;

const printedIn: Partial<Record<keyof typeof read, string>> = { density: "g/ml", energy: "kJ/100 g" };

/** As printed in 100 g (density: g/ml); how far nature and makers go from it, as a share. */
const foods: readonly (readonly [
  what: keyof typeof read,
  within: number,
  ...printed: readonly (readonly [name: string, printed: number])[],
])[] = [
  [
    "sugar",
    0.15,
    ["lime juice", 1.69],
    ["lemon juice", 2.52],
    ["orange juice", 8.4],
    ["grapefruit juice", 9.1],
    ["pineapple juice", 9.98],
    ["apple juice", 9.62],
    ["tomato juice", 2.58],
    ["grape juice", 14.2],
    ["maple syrup", 60.46],
    ["agave syrup", 68.03],
    ["honey", 82.12],
    ["demerara sugar", 97.02],
    ["milk", 5.05],
    ["cream", 2.92],
    ["half and half", 4.13],
    ["tonic water", 8.8],
    ["cola", 9.94],
    ["ginger ale", 8.9],
    ["coffee liqueur", 38.3],
    ["cream liqueur", 22.5],
  ],
  ["ethanol", 0.07, ["table wine", 10.4], ["red wine", 10.6], ["white wine", 10.3], ["beer", 3.9], ["cream liqueur", 12]],
  ["acid", 0.2, ["apple juice", 0.43], ["cranberry juice", 2.31], ["orange juice", 0.87]],
  [
    "density",
    0.02,
    ["lime juice", 1.023],
    ["lemon juice", 1.031],
    ["orange juice", 1.048],
    ["pineapple juice", 1.057],
    ["tomato juice", 1.027],
    ["grape juice", 1.069],
    ["maple syrup", 1.331],
    ["honey", 1.433],
    ["milk", 1.031],
    ["cream", 1.006],
    ["egg white", 1.027],
    ["tonic water", 1.031],
    ["cola", 1.038],
    ["table wine", 0.998],
    ["spirit", 0.94],
    ["beer", 1.004],
  ],
  [
    "energy",
    0.12,
    ["milk", 254],
    ["cream", 1422],
    ["half and half", 515],
    ["coconut milk", 824],
    ["unsweetened coconut cream", 1381],
    ["egg yolk", 1346],
    ["cream liqueur", 1262],
    ["orange juice", 188],
    ["grapefruit juice", 163],
    ["apple juice", 191],
    ["cola", 176],
    ["tonic water", 142],
    ["ginger ale", 142],
    ["honey", 1272],
    ["maple syrup", 1088],
    ["table wine", 347],
    ["beer", 181],
  ],
];

/** Printed in 100 g: water, ethanol, sugars, other solids; and what a fluid ounce weighs, as a density. */
const liqueurs = [
  ["coffee liqueur", 31, 21.7, 46.8, 0.4, 1.177],
  ["mint liqueur, 36 % vol", 28.3, 29.8, 41.6, 0.3, 1.136],
  ["coffee cream liqueur, 17 % vol", 46.5, 13.8, 20.9, 18.5, 1.052],
] as const;

function densityOf(water: number, ethanol: number, sugar: number, solids: number): number {
  const masses = noMasses();
  for (const [row, grams] of [
    [at.water, water],
    [at.ethanol, ethanol],
    [at.sucrose, sugar],
    [at.solids, solids],
  ] as const)
    masses[row] = grams;
  return (water + ethanol + sugar + solids) / volumeMl(masses);
}

/** Ours, as the middle of what is printed; within half of its width. */
const inside = (what: string, unit: string, ours: number, low: number, high: number): Check => ({
  what: `${what}, ${low} to ${high}`,
  unit,
  reference: (low + high) / 2,
  ours,
  within: (high - low) / 2,
});
const barMeasure = (id: string) => units.find((unit) => unit.id === id)!.ml!;
const capacity = (name: string) => findGlass(house, house.lookup(scope, "glass", name)[0]!.entry)!.plan.capacityMl.value;

export const larderTables: readonly Table[] = [
  {
    title: "The larder and the food tables",
    source:
      "USDA SR28 (2016) and the Norwegian Food Composition Table, in 100 g; acids: Krueger Food Laboratories, Coppola et al. 1978, Penniston et al. 2008. The larder's ranges were set around these figures, so this finds a slip of the pen and proves nothing. Left out: citric acid of lemon and lime, which is not all of their acid; sugars that count the acids in; ethanol of the coffee liqueur, which does not agree with its own strength. Energy: the United States' tables count by factors of each food's own, 1 to 10 % from the Regulation's, most for lemon and lime, which are left out; so is egg white, whose solids are protein and nothing else.",
    checks: foods.flatMap(([what, within, ...rows]) =>
      rows.map(([name, printed]) => ({
        what: `${name}, ${what}`,
        unit: printedIn[what] ?? "g/100 g",
        reference: printed,
        ours: read[what](name),
        within: within * printed,
      })),
    ),
  },
  {
    title: "Density of liqueurs from what is in them",
    source:
      "USDA SR28: weights of a fluid ounce, right to 1 or 2 %, beside the composition printed with them. The only published figures for ethanol, sugar and water together that were at hand; too coarse to tell whether volumes over the ethanol and water add.",
    checks: checks("g/ml", 0.033, liqueurs, ([name, water, ethanol, sugar, solids, printed]) => [
      name,
      printed,
      densityOf(water, ethanol, sugar, solids),
    ]),
  },
  {
    title: "Bar measures",
    source:
      "Common practice, no source; the drop: pharmacists' 20 in a millilitre, from 0.03 to 0.1 by liquid and dropper. Wide on purpose.",
    checks: [
      inside("dash", "ml", barMeasure("dash"), 0.6, 1),
      inside("barspoon", "ml", barMeasure("barspoon"), 2.5, 5),
      inside("drop", "ml", barMeasure("drop"), 0.03, 0.1),
      inside("splash", "ml", barMeasure("splash"), 5, 10),
    ],
  },
  {
    title: "Glasses",
    source: "Hospitality guides' nominal sizes to the brim, common practice and no standard; the pint: UK Weights and Measures Act 1985.",
    checks: [
      inside("coupe", "ml", capacity("coupe"), 180, 240),
      inside("rocks", "ml", capacity("rocks"), 148, 300),
      inside("double rocks", "ml", capacity("double rocks"), 350, 470),
      inside("highball", "ml", capacity("highball"), 227, 350),
      inside("collins", "ml", capacity("collins"), 296, 410),
      inside("flute", "ml", capacity("flute"), 177, 300),
      inside("stemmed cone", "ml", capacity("stemmed cone"), 89, 341),
      inside("snifter", "ml", capacity("snifter"), 180, 500),
      inside("copper mug", "ml", capacity("copper mug"), 410, 590),
      inside("julep cup", "ml", capacity("julep cup"), 350, 470),
      { what: "pint glass", unit: "ml", reference: 20 * imperialOunceMl, ours: capacity("pint glass"), within: 0.5 },
    ],
  },
];
