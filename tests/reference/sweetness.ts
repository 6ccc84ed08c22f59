/** Relative sweetness. */

import { assess } from "../../server/engine/assess.ts";
import type { StockModel, SugarName } from "../../server/engine/plan.ts";
import { assessDrink } from "../../server/house/drink.ts";
import { ml, plan, pour, stock } from "../engine/plans.ts";
import { entryNamed, houseOf } from "../house/make.ts";
import type { Check, Table } from "./checks.ts";

/** Of a solution of one sugar, as the engine weighs it beside its own weight of sugar. */
function sweetnessOf(sugarKind: SugarName): number {
  return sweetnessIn(stock("solution", { sugar: 10, sugarKind }));
}

function sweetnessIn(of: StockModel): number {
  const outcome = assess(plan([pour(of, ml(100))]));
  return outcome.value("sweetnessGPer100Ml")! / outcome.value("sugarGPer100Ml")!;
}

const published: readonly (readonly [SugarName, low: number, high: number])[] = [
  ["sucrose", 1, 1],
  ["glucose", 0.5, 0.8],
  ["fructose", 1.2, 1.8],
  ["lactose", 0.15, 0.4],
  ["maltose", 0.3, 0.5],
  ["invert", 1, 1.3],
];

/** Of a gram of it as it is, its water counted. */
function sweetnessOfLarder(name: string): number {
  const house = houseOf(`drink Spoon\n  100 g ${name}\n`);
  const { outcome } = assessDrink(house, entryNamed(house, "Spoon"));
  return (outcome.value("sweetnessGPer100Ml")! * outcome.value("afterVolumeMl")!) / 100 / 100;
}

const ofTheLarder: readonly Check[] = [
  { what: "honey, for its weight", unit: "", reference: 1, ours: sweetnessOfLarder("honey"), within: 0.15 },
  { what: "maple syrup, for its weight", unit: "", reference: 0.601, ours: sweetnessOfLarder("maple syrup"), within: 0.005 },
  { what: "agave syrup, for its weight", unit: "", reference: 0.915, ours: sweetnessOfLarder("agave syrup"), within: 0.005 },
];

export const sweetnessTables: readonly Table[] = [
  {
    title: "Relative sweetness, sucrose = 1",
    source:
      "Middles and half-widths of the union of: Public Health Nutr. 2022;26:952 table 2; J. Food Sci. Technol. 2011;51:611 table 2; Sweeteners: Nutritional Aspects, Applications and Production Technology, table 2.1; A Dictionary of Food and Nutrition. Invert sugar is what its halves are.",
    checks: published.map(([sugar, low, high]) => ({
      what: low === high ? sugar : `${sugar}: ${low} to ${high}`,
      unit: "",
      reference: (low + high) / 2,
      ours: sweetnessOf(sugar),
      within: Math.max(0.001, (high - low) / 2),
    })),
  },
  {
    title: "Relative sweetness of mixtures, by their sugars",
    source:
      "Honey: Public Health Nutr. 2022;26:952 table 2, which counts all sugars at their own sweetness. High-fructose syrup: 1.0 to 1.2 in J. Food Sci. Technol. 2011;51:611 table 2, for 55 parts fructose, 42 glucose, 3 maltose (composition from memory). Maple and agave syrup: worked by hand from their sugars in USDA SR28 19353 and 19912 with the middles above.",
    checks: [
      ...ofTheLarder,
      {
        what: "high-fructose syrup, for its sugar",
        unit: "",
        reference: 1.1,
        ours: sweetnessIn({
          ...stock("syrup", {}),
          sugars: (
            [
              ["fructose", 55],
              ["glucose", 42],
              ["maltose", 3],
            ] as const
          ).map(([sugar, parts]) => ({ sugar, amount: { value: parts / 2, u: 0, why: "test" }, per: "100 ml" })),
        }),
        within: 0.1,
      },
    ],
  },
];
