/** The same arithmetic by general-purpose libraries that know no drinks: units, molar masses, propagation. */
import { derivative, evaluate, unit } from "mathjs";
import { MF } from "mf-parser";
import { findUnit } from "../../grammar/units.ts";
import { assess } from "../../server/engine/assess.ts";
import { assessPrep } from "../../server/engine/prep.ts";
import { acids, sugars } from "../../server/engine/substances.ts";
import { celsiusOf } from "../../server/house/values.ts";
import { exactly, plan, pour, prep, stock } from "../engine/plans.ts";
import { checks, type Table } from "./checks.ts";

const formulas = [
  ["citric", "C6H8O7"],
  ["malic", "C4H6O5"],
  ["tartaric", "C4H6O6"],
  ["lactic", "C3H6O3"],
  ["acetic", "C2H4O2"],
  ["phosphoric", "H3PO4"],
  ["ascorbic", "C6H8O6"],
  ["sucrose", "C12H22O11"],
  ["lactose", "C12H22O11"],
  ["maltose", "C12H22O11"],
  ["glucose", "C6H12O6"],
  ["fructose", "C6H12O6"],
] as const;

/** A standard uncertainty to first order, by the formula's own derivatives, found symbolically. */
function propagated(formula: string, inputs: Readonly<Record<string, readonly [value: number, u: number]>>): number {
  const values = Object.fromEntries(Object.entries(inputs).map(([name, [value]]) => [name, value]));
  return Math.hypot(...Object.entries(inputs).map(([name, [, u]]) => derivative(formula, name).evaluate(values) * u));
}

const sugar = stock("sugar", { sugar: 100, per: "100 g", solid: true });
const syrup = prep("syrup", [
  [sugar, { g: exactly(200, 4) }],
  [stock("water", {}), { g: exactly(100, 3) }],
]);
const juices = plan([
  pour(stock("a", { sugar: exactly(9, 0.7), acid: exactly(0.9, 0.1), per: "100 g" }), { g: exactly(60, 2) }),
  pour(stock("b", { sugar: exactly(2, 0.2), acid: exactly(5.8, 0.3), per: "100 g" }), { g: exactly(20, 1) }),
]);
const blend = { s1: [9, 0.7], a1: [0.9, 0.1], m1: [60, 2], s2: [2, 0.2], a2: [5.8, 0.3], m2: [20, 1] } as const;
const fahrenheit = (degrees: number) =>
  celsiusOf({ value: degrees, unit: { unit: findUnit("F")! } } as Parameters<typeof celsiusOf>[0], "read")!.value;

export const secondOpinionTables: readonly Table[] = [
  {
    title: "Units, a second opinion",
    source: "mathjs 15.2, a general-purpose mathematics library; the gallon also as the 231 cubic inches that define it.",
    checks: [
      ...checks(
        "ml",
        1e-9,
        [
          ["fl oz", "1 floz"],
          ["tsp", "1/6 floz"],
          ["tbsp", "1/2 floz"],
          ["cup", "1 cup"],
          ["pint", "1 pint"],
          ["quart", "1 quart"],
          ["gallon", "231 in^3"],
          ["cl", "1 cl"],
          ["l", "1 l"],
        ] as const,
        ([ours, theirs]) => [`1 ${ours} = ${theirs}`, evaluate(theirs).toNumber("ml"), findUnit(ours)!.ml!],
      ),
      ...checks(
        "g",
        1e-9,
        [
          ["oz wt", "oz"],
          ["lb", "lbm"],
          ["kg", "kg"],
          ["mg", "mg"],
        ] as const,
        ([ours, theirs]) => [`1 ${ours}`, unit(1, theirs).toNumber("g"), findUnit(ours)!.g!],
      ),
      ...checks(
        "°C",
        1e-9,
        [0, 32, 60, 150, 212].map((degrees) => [degrees] as const),
        ([degrees]) => [`${degrees} °F`, unit(degrees, "degF").toNumber("degC"), fahrenheit(degrees)],
      ),
    ],
  },
  {
    title: "Molar masses, a second opinion",
    source: "mf-parser 3.9, a parser of chemical formulas with its own table of atomic weights.",
    checks: checks("g/mol", 0.002, formulas, ([name, formula]) => [
      `${name}, ${formula}`,
      new MF(formula).getInfo().mass,
      { ...acids, ...sugars }[name].molarMass,
    ]),
  },
  {
    title: "Propagation, a second opinion",
    source:
      "Standard uncertainties by the formulas' symbolic derivatives (mathjs 15.2), where a formula can be written down: mixes by weight.",
    checks: [
      {
        what: "200 ± 4 g sugar + 100 ± 3 g water, ± of the °Brix",
        unit: "°Bx",
        reference: propagated("100 s / (s + w)", { s: [200, 4], w: [100, 3] }),
        ours: assessPrep(syrup).figure("brix").plusMinus!,
        within: 1e-3,
      },
      {
        what: "two juices, ± of sugar ÷ acid",
        unit: "",
        reference: propagated("(s1 m1 + s2 m2) / (a1 m1 + a2 m2)", blend),
        ours: assess(juices).figure("ratio").plusMinus!,
        within: 1e-3,
      },
      {
        what: "two juices, ± of their weight",
        unit: "g",
        reference: propagated("m1 + m2", blend),
        ours: assess(juices).figure("beforeMassG").plusMinus!,
        within: 1e-6,
      },
    ],
  },
];
