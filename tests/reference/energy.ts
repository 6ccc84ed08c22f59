/** Energy by the factors of food law, as printed in food tables that use them. */

import { assess } from "../../server/engine/assess.ts";
import { energyFactors } from "../../server/engine/energy.ts";
import { ethanolDensity } from "../../server/engine/ethanol-water.ts";
import { standardDrinkOf } from "../../server/engine/standard-drinks.ts";
import { exactly, plan, pour, stock } from "../engine/plans.ts";
import { type Check, checks, type Table } from "./checks.ts";

/** Grams in 100 g, and the energy printed for them. */
const printed = [
  { food: "cream liqueur, 17 % vol", fat: 13, carbohydrate: 22.5, protein: 3, ethanol: 12, kJ: 1262, kcal: 303 },
  { food: "sweet vermouth, 15 % vol", fat: 0, carbohydrate: 13.3, protein: 0, ethanol: 11, kJ: 545, kcal: 130 },
  { food: "beer, alcohol-free", fat: 0, carbohydrate: 5, protein: 0.4, ethanol: 0.4, kJ: 103, kcal: 24 },
] as const;

const poured = (ml: number, abv: number, sugar = 0) => assess(plan([pour(stock("wine", { abv, sugar }), { ml: exactly(ml) })]));
/** So many standard drinks of a country in a serve. */
const drinksIn = (country: string, ml: number, abv: number) => poured(ml, abv).value("ethanolG")! / standardDrinkOf(country).grams;

export const energyTables: readonly Table[] = [
  {
    title: "Energy from fat, carbohydrate, protein and ethanol",
    source:
      "Regulation (EU) 1169/2011, Annex XIV: 37, 17, 17 and 29 kJ/g; 9, 4, 4 and 7 kcal/g. Foods as printed, in whole numbers, by the Norwegian Food Composition Table, which adds by these factors. The United States' tables take 6.93 kcal for ethanol and factors of each food's own; they are not followed.",
    checks: printed.flatMap(({ food, ...grams }): Check[] =>
      (["kJ", "kcal"] as const).map((unit) => ({
        what: food,
        unit: `${unit}/100 g`,
        reference: grams[unit],
        ours: (["fat", "carbohydrate", "protein", "ethanol"] as const).reduce(
          (sum, part) => sum + grams[part] * energyFactors[part][unit],
          0,
        ),
        within: 0.5,
      })),
    ),
  },
  {
    title: "Energy of a drink",
    source:
      "The same factors: a liqueur of 15 % vol with 10 g of sugar in 100 ml, as worked on a drinks industry's page on responsible drinking.",
    checks: [
      { what: "100 ml", unit: "kJ", reference: 513, ours: poured(100, 15, 10).value("energyKJ")!, within: 1 },
      { what: "100 ml", unit: "kcal", reference: 123, ours: poured(100, 15, 10).value("energyKcal")!, within: 0.5 },
      { what: "30 ml", unit: "kJ", reference: 154, ours: poured(30, 15, 10).value("energyKJ")!, within: 0.5 },
      { what: "30 ml", unit: "kcal", reference: 37, ours: poured(30, 15, 10).value("energyKcal")!, within: 0.5 },
    ],
  },
  {
    title: "Standard drinks",
    source:
      "United Kingdom: units = % vol × ml ÷ 1000, as worked in public answers citing the NHS; a unit is 10 ml. United States (NIAAA): 12 fl oz of 5 % vol hold 0.6 fl oz, which is 14 g to 0.03 %. Grams of other countries: Kalinowski and Humphreys, Addiction 2016 (75 countries), as reported.",
    checks: [
      ...checks(
        "units",
        1e-6,
        [
          [175, 11, 1.925],
          [500, 5, 2.5],
          [750, 13, 9.75],
        ] as const,
        ([ml, abv, units]) => [`UK, ${ml} ml of ${abv} % vol`, units, drinksIn("GB", ml, abv)],
      ),
      { what: "US, 12 fl oz of 5 % vol", unit: "", reference: 1, ours: drinksIn("US", 12 * 29.5735295625, 5), within: 0.0005 },
      { what: "US, 0.6 fl oz of ethanol", unit: "g", reference: 14, ours: (0.6 * 29.5735295625 * ethanolDensity) / 1000, within: 0.005 },
      ...checks(
        "g",
        1e-9,
        [
          ["AU", 10],
          ["AT", 20],
          ["CL", 14],
          ["CN", 10],
          ["DE", 10],
          ["DK", 12],
          ["FR", 10],
          ["IE", 10],
          ["IN", 10],
          ["IS", 8],
          ["LU", 12.8],
          ["NZ", 10],
          ["SG", 10],
          ["US", 14],
          ["VN", 10],
        ] as const,
        ([country, grams]) => [country, grams, standardDrinkOf(country).grams],
      ),
    ],
  },
];
