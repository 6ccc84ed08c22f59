import { describe, expect, test } from "vitest";
import type { Model, PrepFigureName } from "../../server/engine/plan.ts";
import { strained } from "../../server/engine/processes.ts";
import { assessDrink } from "../../server/house/drink.ts";
import { assessPrepEntry, computedPrep, isSizeless, prepModel } from "../../server/house/prep.ts";
import { readingsIn, readOn } from "../../server/house/readings.ts";
import { stockFacts } from "../../server/house/stock.ts";
import { entryNamed, houseOf } from "./make.ts";

const prep = (...lines: string[]) => `prep it\n${lines.map((line) => `  ${line}\n`).join("")}`;
const outcomeOf = (...lines: string[]) => {
  const house = houseOf(prep(...lines));
  return assessPrepEntry(house, entryNamed(house, "it"));
};
const figureOf = (name: PrepFigureName, ...lines: string[]) => outcomeOf(...lines).value(name);
const partsOf = (...lines: string[]) => {
  const house = houseOf(prep(...lines));
  const model = prepModel(house, entryNamed(house, "it")) as Extract<Model, { type: "prep" }>;
  return model.parts.map(({ of, discarded, strained, sets }) => [of.name, sets ?? strained ?? (discarded ? "discarded" : "in")]);
};

const syrup = ["500 g white sugar", "500 g water"];

describe("how far it is boiled down", () => {
  test.each([
    ["reduce to 800 g", "massG", 800],
    ["reduce to 0.8 kg", "massG", 800],
    ["simmer 20 min to 700 ml", "volumeMl", 700],
    ["boil down to about 700 ml", "volumeMl", 700],
  ] as const)("%s", (method, name, size) => expect(figureOf(name, ...syrup, `method: ${method}`)).toBeCloseTo(size, 3));

  const juice = ["1 l orange juice"];
  const whole = figureOf("volumeMl", ...juice)!;
  test.each([
    ["reduce by half", 1 / 2],
    ["reduce to a half", 1 / 2],
    ["reduce by 40 %", 0.6],
    ["reduce to 40 %", 0.4],
    ["reduce by two thirds", 1 / 3],
    ["reduce to a quarter", 1 / 4],
  ])("%s leaves %d of the volume", (method, share) =>
    expect(figureOf("volumeMl", ...juice, `method: ${method}`)! / whole).toBeCloseTo(share, 4),
  );

  test.each(["reduce", "reduce 20 min", "simmer until thick", "reduce by 150 %"])("“%s” tells nobody, but a yield does", (method) => {
    expect(outcomeOf(...syrup, `method: ${method}`).figure("brix").because).toEqual(["it: how much boils away is not stated"]);
    expect(figureOf("massG", ...syrup, `method: ${method}`, "yield: 800 g")).toBeCloseTo(800, 3);
  });

  test("what is pre-diluted takes the water in", () =>
    expect(figureOf("strengthPct", "500 ml dry gin", "method: pre-dilute 25 %")! / figureOf("strengthPct", "500 ml dry gin")!).toBeCloseTo(
      1 / 1.25, // by volume, contraction within 1 %
      1,
    ));

  test("in parts, a share is known and a size is not", () => {
    const parts = ["1 part white sugar", "1 part water", "parts by: weight"];
    expect(figureOf("sugarToWater", ...parts, "method: reduce by half")).toBeGreaterThan(2);
    expect(figureOf("brix", ...parts, "method: reduce to 800 g")).toBeNull();
  });
});

describe("what leaves it again", () => {
  test("is what is marked, and a plant wherever somebody strains; sugar, acid and salt dissolve", () => {
    const pours = ["500 ml gin", "20 g mint", "100 g strawberry", "50 g white sugar", "2 g sea salt"];
    const dissolved = [
      ["sugar", "in"],
      ["salt", "in"],
    ];
    expect(partsOf(...pours, "method: infuse 2 hours; fine strain").slice(1)).toEqual([
      ["mint", "herb"],
      ["strawberry", "fruit"],
      ...dissolved,
    ]);
    expect(partsOf(...pours, "method: infuse 2 hours").slice(1)).toEqual([["mint", "discarded"], ["strawberry", "in"], ...dissolved]);
    expect(partsOf("500 g water", "100 g strawberry, muddled", "method: strain")[1]).toEqual(["strawberry", "in"]);
    expect(partsOf("500 g water", "30 g coffee, strained out")[1]).toEqual(["coffee", "coffee"]);
    expect(partsOf("500 g water", "30 g nobody's bark, strained out")[1]).toEqual(["nobody's bark", "other"]);
  });

  test("is the curd of milk and the fat of butter where they are washed with, marked or not", () => {
    for (const marked of ["", ", strained out"])
      expect(partsOf("500 ml gin", `200 ml milk${marked}`, "method: milk-clarify; strain")[1]).toEqual(["milk", "curd"]);
    expect(partsOf("500 ml gin", "100 g butter", "method: fat-wash; strain")[1]).toEqual(["butter", "fat"]);
    expect(partsOf("500 ml gin", "100 g sesame paste, strained out", "method: fat-wash")[1]).toEqual(["sesame paste", "fat"]);
    expect(partsOf("500 ml gin", "200 ml milk")[1]).toEqual(["milk", "in"]);
  });

  test("holds back its share, and what came out in truth goes before that", () => {
    const infusion = ["500 g water", "30 g coffee, strained out"];
    expect(figureOf("massG", ...infusion)).toBeCloseTo(500 - 30 * strained.coffee.holdsG.value, 6);
    expect(figureOf("massG", ...infusion, "yield: 430 g")).toBeCloseTo(430, 6);
  });
});

test("a yield gives parts their size", () => {
  const parts = ["2 parts white sugar", "1 part water", "parts by: weight"];
  const house = houseOf(prep(...parts));
  expect(isSizeless(house, entryNamed(house, "it"))).toBe(true);
  const sized = houseOf(prep(...parts, "yield: 700 ml"));
  expect(isSizeless(sized, entryNamed(sized, "it"))).toBe(false);
  expect(figureOf("volumeMl", ...parts, "yield: 700 ml")).toBeCloseTo(700, 6);
});

describe("readings", () => {
  test("go before what is computed, and what is computed is still there", () => {
    const house = houseOf(prep(...syrup, "brix: 48", "ph: 5.5", "measured: 2026-03-01"));
    const entry = entryNamed(house, "it");
    expect(assessPrepEntry(house, entry).value("brix")).toBeCloseTo(48, 8);
    expect(computedPrep(house, entry).value("brix")).toBeCloseTo(49.9, 1); // sugar of 99.8 g/100 g: USDA SR28 19335
    expect(readingsIn(entry).map(({ field, value }) => [field, value.value])).toEqual([
      ["brix", 48],
      ["ph", 5.5],
    ]);
    expect(readOn(entry)).toBe("2026-03-01");
  });

  test("of a reduced wine, its strength, make it known in a drink", () => {
    const wine = ["750 ml red wine", "method: reduce to 400 ml"];
    const strengthOf = (...more: string[]) => {
      const house = houseOf(`${prep(...wine, ...more)}\ndrink Slip\n  30 ml it\n  30 ml dry gin\n`);
      return assessDrink(house, entryNamed(house, "Slip")).outcome.value("strengthPct");
    };
    expect(strengthOf()).toBeNull();
    expect(strengthOf("abv: 0.4 %", "measured: 2026-03-01")).toBeGreaterThan(15);
  });
});

describe("substances by their names", () => {
  const modelOf = (...lines: string[]) => {
    const house = houseOf(`stock powder\n${lines.map((line) => `  ${line}\n`).join("")}`);
    return stockFacts(house, entryNamed(house, "powder")).model;
  };

  // 1.094 g of the monohydrate do what 1 g of citric acid does: juice trade's conversion (Gerald McDonald).
  test.each(["citric monohydrate", "citric acid monohydrate"])("%s is weighed with its water", (acid) => {
    const { acids } = modelOf("kind: acid", `acid: 1.094 g/100 g ${acid}`);
    expect(acids).toMatchObject([{ acid: "citric", titrated: false }]);
    expect((acids[0]!.amount as { value: number }).value).toBeCloseTo(1, 3);
  });

  test("glucose is sold with its water, and malic acid is not", () => {
    expect((modelOf("kind: sugar", "sugar: 100 g/100 g glucose monohydrate").sugars[0]!.amount as { value: number }).value).toBeCloseTo(
      90.91, // 180.156 ÷ 198.171
      2,
    );
    expect(modelOf("kind: acid", "acid: 100 g/100 g malic monohydrate").acids[0]!.amount).toHaveProperty("because");
    expect(modelOf("kind: acid", "acid: 100 g/100 g citric anhydrous").acids[0]!.amount).toHaveProperty("value", 100);
  });
});
