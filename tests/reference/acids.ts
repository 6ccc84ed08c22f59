/** Titratable acid from weighed acid. */

import { assess } from "../../server/engine/assess.ts";
import type { AcidKind } from "../../server/engine/plan.ts";
import { assessPrep } from "../../server/engine/prep.ts";
import { acids, anhydrousShare, citricPerGram, equivalentWeight } from "../../server/engine/substances.ts";
import { exactly, g, ml, plan, pour, prep, stock, water } from "../engine/plans.ts";
import { checks, type Table } from "./checks.ts";

const weighed = (acidKind: AcidKind) => stock(acidKind, { acid: 100, acidKind, titrated: false, per: "100 g", solid: true });
const solution = (...parts: readonly (readonly [AcidKind, number])[]) =>
  assessPrep(prep("solution", [...parts.map(([acid, grams]) => [weighed(acid), g(grams)] as const), [water, { upToG: exactly(100) }]]));
/** g/l by so many ml of 0.1 N alkali on so many ml. */
const titrated = (acid: AcidKind, titreMl: number, sampleMl: number) => (0.1 * titreMl * equivalentWeight(acid)) / sampleMl;
const ratioOf = (sugar: number, acid: number) =>
  assess(plan([pour(stock("juice", { sugar, acid, per: "100 g" }), ml(100))])).value("ratio")!;

export const acidTables: readonly Table[] = [
  {
    title: "Equivalent weights",
    source: "AOAC and OIV factors in g per milliequivalent (five figures from memory; citric 0.064, tartaric 0.075 and acetic 0.060 read).",
    checks: checks(
      "g/meq",
      0.00003,
      [
        ["citric", 0.06404],
        ["malic", 0.06705],
        ["tartaric", 0.07505],
        ["lactic", 0.09008],
        ["acetic", 0.06005],
        ["phosphoric", 0.049],
        ["ascorbic", 0.17612],
      ] as const,
      ([acid, printed]) => [acid, printed, equivalentWeight(acid) / 1000],
    ),
  },
  {
    title: "As sour as citric acid",
    source:
      "Juice trade's conversion of fruit acids (Gerald McDonald): 1 g citric = 1.047 g malic = 1.172 g tartaric, in titratable acidity.",
    checks: [
      ...checks(
        "g",
        0.001,
        [
          ["malic", 0.955],
          ["tartaric", 0.853],
        ] as const,
        ([acid, printed]) => [`1 g ${acid} acid`, printed, citricPerGram(acid)],
      ),
      {
        what: "1.094 g citric acid monohydrate",
        unit: "g",
        reference: 1,
        ours: 1.094 * anhydrousShare("citric")!,
        within: 0.001,
      },
    ],
  },
  {
    title: "One per cent of each acid, as a drink counts it",
    source: "64.04 g/eq of citric acid ÷ the AOAC and OIV equivalent weight of the other: g of citric acid in 100 g, to 0.1 % of itself.",
    checks: checks(
      "g/100 g",
      0.001,
      [
        ["citric", 1],
        ["malic", 64.04 / 67.05],
        ["tartaric", 64.04 / 75.05],
        ["lactic", 64.04 / 90.08],
        ["acetic", 64.04 / 60.05],
        ["phosphoric", 64.04 / 49.0],
        ["ascorbic", 64.04 / 176.12],
      ] as const,
      ([acid, equivalent]) => [acid, Number(equivalent.toFixed(4)), solution([acid, 1]).value("acidGPer100G")!],
    ),
  },
  {
    title: "Acid solutions made by weight",
    source: "Arithmetic with the equivalent weights above, to 0.1 % of itself: grams made up to 100 g with water.",
    checks: [
      { what: "6 g citric", unit: "g/100 g", reference: 6, ours: solution(["citric", 6]).value("acidGPer100G")!, within: 0.006 },
      {
        what: "4 g citric + 2 g malic",
        unit: "g/100 g",
        reference: 5.9104,
        ours: solution(["citric", 4], ["malic", 2]).value("acidGPer100G")!,
        within: 0.006,
      },
      {
        what: "3 g tartaric + 3 g lactic",
        unit: "g/100 g",
        reference: 4.693,
        ours: solution(["tartaric", 3], ["lactic", 3]).value("acidGPer100G")!,
        within: 0.005,
      },
    ],
  },
  {
    title: "Titrations",
    source:
      "Printed laboratory arithmetic: 0.1 N sodium hydroxide; wine 75 g/eq (15 ml, 12 ml of titre; 10 ml, 1 ml of titre), vinegar 60 g/eq (AOAC 930.35 J; 2 ml, 1 ml of titre), 0.0042 mol of tartaric acid, and the monohydrate of citric acid (juice trade).",
    checks: [
      { what: "wine, 15 ml: 12 ml of titre, as tartaric", unit: "g/l", reference: 6, ours: titrated("tartaric", 12, 15), within: 0.005 },
      { what: "wine, 10 ml: 1 ml of titre, as tartaric", unit: "g/l", reference: 0.75, ours: titrated("tartaric", 1, 10), within: 0.001 },
      { what: "vinegar, 2 ml: 1 ml of titre, as acetic", unit: "g/l", reference: 3, ours: titrated("acetic", 1, 2), within: 0.01 },
      { what: "0.0042 mol tartaric acid", unit: "g", reference: 0.63, ours: 0.0042 * acids.tartaric.molarMass, within: 0.001 },
      {
        what: "1.094 g citric acid monohydrate, without its water",
        unit: "g",
        reference: 1,
        ours: (1.094 * acids.citric.molarMass) / (acids.citric.molarMass + 18.015),
        within: 0.001,
      },
    ],
  },
  {
    title: "Density of citric acid solutions",
    source: "CRC Handbook of Chemistry and Physics, 102nd ed. (2021), 20 °C.",
    checks: checks(
      "kg/m³",
      1,
      [
        [10, 1040.2],
        [20, 1085.8],
        [30, 1134.6],
      ] as const,
      ([mass, printed]) => [`${mass} % mass`, printed, 1000 * solution(["citric", mass]).value("densityGPerMl")!],
    ),
  },
  {
    title: "Sugar–acid ratio",
    source: "US orange grade limits, 7 CFR 51.1178 table II: soluble solids ÷ acid as citric.",
    checks: checks(
      "",
      0.01,
      [
        [11, 1.294, 8.5],
        [10, 1.111, 9],
        [12, 1.412, 8.5],
      ] as const,
      ([solids, acid, printed]) => [`${solids} % and ${acid} %`, printed, ratioOf(solids, acid)],
    ),
  },
  {
    title: "Molar masses",
    source: "CRC Handbook, as printed in its solution tables.",
    checks: checks(
      "g/mol",
      0.002,
      [
        ["citric", 192.124],
        ["lactic", 90.078],
        ["acetic", 60.052],
      ] as const,
      ([acid, printed]) => [acid, printed, acids[acid].molarMass],
    ),
  },
];
