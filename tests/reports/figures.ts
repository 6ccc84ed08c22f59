/** Reports written by hand, so that a test of how they are printed hangs on no formula. */
import type { DrinkReport, FigureReport, PrepReport } from "../../server/reports/assess-schema.ts";

export function known(value: number, plusMinus = 0): FigureReport {
  return { value, plusMinus };
}

export function unknown(...because: string[]): FigureReport {
  return { value: null, plusMinus: null, because };
}

export function drinkReport(changed: Partial<DrinkReport> = {}): DrinkReport {
  return {
    name: "Slack Rope",
    file: "bar.drink",
    line: 8,
    family: "sour",
    before: { volumeMl: known(107, 2), massG: known(112, 2), strengthPct: known(22.4, 0.3) },
    dilution: { waterMl: known(53, 7), share: known(0.496, 0.067), temperatureC: known(-6.82, 0.47) },
    after: {
      volumeMl: known(160.4, 7.2),
      strengthPct: known(15.03, 0.62),
      sugarGPer100Ml: known(8.94, 0.52),
      sweetnessGPer100Ml: known(8.94, 0.52),
      acidGPer100Ml: known(0.852, 0.058),
      ratio: known(10.49, 0.74),
      saltGPer100Ml: known(0),
      temperatureC: known(-6.82, 0.47),
    },
    glass: { capacityMl: known(240, 5), fillShare: known(0.668, 0.031) },
    service: null,
    standing: [],
    cost: null,
    serve: {
      ethanolG: known(18.9, 0.5),
      standardDrinks: known(2.39, 0.06),
      counted: { country: "GB", grams: 7.8924, word: "UK unit", source: "by hand" },
      energyKJ: known(772, 22),
      energyKcal: known(186, 5),
      caffeineMg: known(0),
    },
    allergens: { contains: [{ allergen: "egg", names: ["egg white"], assumed: false }], notStated: ["hemp water"] },
    diets: [
      { diet: "vegan", suits: false, assumed: false, because: ["egg white"] },
      { diet: "kosher", suits: null, assumed: false, because: [] },
    ],
    keeps: { text: "1 day chilled", name: "lemon juice" },
    findings: [],
    ...changed,
  };
}

export function prepReport(changed: Partial<PrepReport> = {}): PrepReport {
  return {
    name: "bay syrup",
    allergens: { contains: [], notStated: [] },
    diets: [],
    keeps: null,
    massG: known(300, 2),
    volumeMl: known(228.4, 1.8),
    densityGPerMl: known(1.3135, 0.004),
    brix: known(64.7, 0.9),
    sugarToWater: known(1.83, 0.07),
    strengthPct: known(0),
    acidGPer100G: known(0.0017, 0.0009),
    boiledOffG: known(0),
    leftBehindG: known(12, 3),
    measured: { on: null, brix: null, densityGPerMl: null, strengthPct: null, ph: null },
    ...changed,
  };
}
