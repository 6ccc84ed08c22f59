/**
 * How much of a liquid is ice in the cold. Where a solution of so much freezes at t, any weaker one is ice
 * and just that solution at t: so the share of ice follows from a table of freezing points alone, by the
 * lever rule. Freezing points: CRC Handbook, 102nd ed., as in tests/reference/freezing.ts.
 */
import { describe, expect, test } from "vitest";
import { inTheCold } from "../../server/engine/cold.ts";
import { massFractionOf } from "../../server/engine/ethanol-water.ts";
import { exactly, g, nobodyKnows, prep, stock, water } from "./plans.ts";

const solution = (label: Parameters<typeof stock>[1]) => stock("solution", { ...label, per: "100 g" });
const ethanol = (massPct: number) =>
  prep("ethanol and water", [
    [stock("pure alcohol", { abv: 100 }), g(massPct)],
    [water, g(100 - massPct)],
  ]);

describe("by the lever rule", () => {
  test.each([
    // 20 % of ethanol freezes at −10.92 °C: of 10 % half is ice there. 30 % at −20.47: of 20 % a third.
    ["10 % mass of ethanol at −10.92 °C", ethanol(10), -10.92, 1 - 10 / 20],
    ["20 % mass of ethanol at −20.47 °C", ethanol(20), -20.47, 1 - 20 / 30],
    // 42 % of sucrose freezes at −4.93 °C, 30 % at −2.64.
    ["21 % mass of sucrose at −4.93 °C", solution({ sugar: 21 }), -4.93, 1 - 21 / 42],
    ["20 % mass of sucrose at −2.64 °C", solution({ sugar: 20 }), -2.64, 1 - 20 / 30],
    // 20 % of salt freezes at −16.46 °C.
    ["5 % mass of salt at −16.46 °C", solution({ salt: 5 }), -16.46, 1 - 5 / 20],
  ] as const)("%s", (_what, model, tC, share) => {
    expect(inTheCold(model, exactly(tC)).iceShare.value).toBeCloseTo(share, 2);
  });
});

test("a spirit of 40 % vol stays liquid at −18 °C: it freezes at −23.6 (the table interpolated)", () => {
  const cold = inTheCold(stock("spirit", { abv: 40 }), exactly(-18));
  expect(cold.freezingC.value).toBeCloseTo(-23.63, 0);
  expect(cold.iceShare).toEqual({ value: 0, plusMinus: 0 });
});

test("one of 20 % vol does not: it freezes at −8.2, and 16.2 % mass of it stand against 27.6 at −18 (interpolated)", () => {
  // 26 % mass freezes at −16.41 °C, 28 % at −18.43: −18 is 27.6 %.
  expect(100 * massFractionOf(20)).toBeCloseTo(16.2, 1);
  const { freezingC, iceShare } = inTheCold(stock("wine", { abv: 20 }), exactly(-18, 2));
  expect(freezingC.value).toBeCloseTo(-8.16, 0);
  expect(iceShare.value).toBeCloseTo(1 - 16.2 / 27.6, 2);
  expect(iceShare.plusMinus).toBeGreaterThan(0.02);
});

test("colder is never less ice", () => {
  const wine = stock("wine", { abv: 12, sugar: 4 });
  const shares = [-2, -4, -6, -10, -18, -25].map((tC) => inTheCold(wine, exactly(tC)).iceShare.value!);
  expect(shares).toEqual([...shares].sort((one, other) => one - other));
  expect(shares[0]).toBe(0);
  expect(shares.at(-1)).toBeGreaterThan(0.6);
});

test("what nobody knows of it leaves it unknown, with the reason", () => {
  const bottle = stock("bottle", { abv: nobodyKnows("the strength of bottle is not given") });
  expect(inTheCold(bottle, exactly(-18)).iceShare).toEqual({
    value: null,
    plusMinus: null,
    because: ["the strength of bottle is not given"],
  });
});
