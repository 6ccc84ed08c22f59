/** Energy by the factors of food law, as printed in food tables that use them. */

import { energyFactors } from "../../server/engine/energy.ts";
import type { Check, Table } from "./checks.ts";

/** Grams in 100 g, and the energy printed for them. */
const printed = [
  { food: "cream liqueur, 17 % vol", fat: 13, carbohydrate: 22.5, protein: 3, ethanol: 12, kJ: 1262, kcal: 303 },
  { food: "beer, alcohol-free", fat: 0, carbohydrate: 5, protein: 0.4, ethanol: 0.4, kJ: 103, kcal: 24 },
] as const;

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
];
