/** Water from melting ice. */

import { assess } from "../../server/engine/assess.ts";
import { liquidOf } from "../../server/engine/composition.ts";
import { ethanolWaterContent, fusionHeat, heatContent, mixingHeat, waterHeat } from "../../server/engine/heat.ts";
import { at, freezingPoint } from "../../server/engine/liquid.ts";
import { plan, pour, stock } from "../engine/plans.ts";
import { checks, type Table } from "./checks.ts";

/** 90 ml with 4 g sugar in 100 ml at 20 °C, on 150 g of ice at 0 °C. */
const dilution = (method: "shake" | "stir", abv: number) =>
  assess(plan([pour(stock("mix", { abv, sugar: 4 }), 90)], method)).value("dilutionShare")!;
const toFourDigits = (share: number) => Math.round(share * 10_000) / 10_000;
const shaken = (a: number) => toFourDigits(-1.567 * a * a + 1.742 * a + 0.203);
const stirred = (a: number) => toFourDigits(-1.21 * a * a + 1.246 * a + 0.145);
const strengths = [15, 18, 20, 22, 25, 28, 30, 32, 35, 38, 40] as const;

/**
 * Grams of ice at 0 °C that bring 100 ml of this strength from 20 °C to equilibrium, none left over: the
 * plain balance, from the engine's heats and freezing points, without its heat of mixing.
 */
function equilibriumMelt(abv: number): number {
  const { perGram, mlPerGram } = liquidOf(stock("mix", { abv }));
  const masses = perGram.map((amount) => (100 * amount) / mlPerGram);
  const [waterG, ethanolG] = [masses[at.water]!, masses[at.ethanol]!];
  const fraction = ethanolG / (waterG + ethanolG);
  const unmixed = (tC: number) => (waterG + ethanolG) * (ethanolWaterContent(fraction, tC) - mixingHeat(fraction));
  let low = 0;
  let high = 100;
  while (high - low > 1e-9) {
    const melt = (low + high) / 2;
    masses[at.water] = waterG + melt;
    const tC = freezingPoint(masses);
    if (unmixed(20) - unmixed(tC) > melt * (fusionHeat + heatContent(waterHeat, tC))) low = melt;
    else high = melt;
  }
  return low;
}

export const dilutionTables: readonly Table[] = [
  {
    title: "Dilution, shaken and stirred: a calibration",
    source:
      "D. Arnold, Liquid Intelligence (2014), regressions of measured dilution (water added ÷ volume before), from memory. The techniques' constants were set to these figures: this shows how well one set of constants follows them from 15 to 40 % vol, and proves nothing more.",
    checks: [
      ...strengths.map((abv) => ({
        what: `shaken, ${abv} % vol`,
        unit: "",
        reference: shaken(abv / 100),
        ours: dilution("shake", abv),
        within: 0.05 * shaken(abv / 100),
      })),
      ...strengths.map((abv) => ({
        what: `stirred, ${abv} % vol`,
        unit: "",
        reference: stirred(abv / 100),
        ours: dilution("stir", abv),
        within: 0.05 * stirred(abv / 100),
      })),
    ],
  },
  {
    title: "Ice melted at equilibrium",
    source:
      "Plain balance of heat, computed for this test by another program: g per 100 ml at 20 °C, ice at 0 °C, none left over, no vessel. Made here from the engine's heat capacities, freezing points and heat of fusion; without its heat of mixing, which adds 2 % at 12 % vol and 15 % at 40 % vol.",
    checks: checks(
      "g",
      1.5,
      [
        [12, 31],
        [15, 32.5],
        [20, 35.1],
        [24, 37.2],
        [30, 40.3],
        [35, 43],
        [40, 45.8],
      ] as const,
      ([abv, computed]) => [`${abv} % vol`, computed, equilibriumMelt(abv)],
    ),
  },
];
