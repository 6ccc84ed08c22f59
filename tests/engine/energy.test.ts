import { describe, expect, test } from "vitest";
import { assess } from "../../server/engine/assess.ts";
import { liquidOf } from "../../server/engine/composition.ts";
import { energyOf } from "../../server/engine/energy.ts";
import { at, massOf } from "../../server/engine/liquid.ts";
import type { Model } from "../../server/engine/plan.ts";
import { exactly, g, lime, ml, nobodyKnows, plan, pour, prep, spirit, stock, syrup, water } from "./plans.ts";

const per100G = (model: Model, unit: "kJ" | "kcal") => 100 * energyOf(liquidOf(model).perGram, unit);

describe("energy of 100 g, by Regulation (EU) 1169/2011 Annex XIV", () => {
  test("each column is added by itself: sugar is 17 kJ and 4 kcal, not 4.06", () => {
    expect(per100G(stock("sugar", { sugar: 100, per: "100 g" }), "kJ")).toBeCloseTo(1700, 8);
    expect(per100G(stock("sugar", { sugar: 100, per: "100 g" }), "kcal")).toBeCloseTo(400, 8);
  });

  test("ethanol 29 and 7, acid 13 and 3, fat 37 and 9, in 100 g of what holds 10 g of each", () => {
    const pure = stock("ethanol", { abv: 100 });
    expect(per100G(pure, "kJ")).toBeCloseTo(2900, 3);
    expect(per100G(pure, "kcal")).toBeCloseTo(700, 3);
    expect(per100G(stock("acid", { acid: 10, titrated: false, per: "100 g" }), "kJ")).toBeCloseTo(130, 8);
    expect(per100G(stock("oil", { fat: 10, per: "100 g" }), "kJ")).toBeCloseTo(370, 8);
    expect(per100G(stock("oil", { fat: 10, per: "100 g" }), "kcal")).toBeCloseTo(90, 8);
    expect(per100G(water, "kJ")).toBe(0);
  });

  test("other solids lie between fibre, 8, and protein, 17, and say how unsure that is", () => {
    const drink = assess(plan([pour(stock("oats", { solids: 10, per: "100 g" }), g(100))]));
    const { value, plusMinus } = drink.figure("energyKJ");
    expect(value).toBeCloseTo(125, 8);
    expect(plusMinus).toBeCloseTo(36, 6);
    expect(value! - 1.25 * plusMinus!).toBeCloseTo(80, 6);
    expect(value! + 1.25 * plusMinus!).toBeCloseTo(170, 6);
  });
});

describe("energy of a drink", () => {
  test("is the sum over what is poured, whatever the ice adds", () => {
    const sour = plan([pour(spirit, 60), pour(lime, 22.5), pour(syrup, 22.5)], "shake");
    const grams = (amountMl: number, of: Model, index: number) => (amountMl * liquidOf(of).perGram[index]!) / liquidOf(of).mlPerGram;
    const sugar = grams(22.5, syrup, at.sucrose) + grams(22.5, lime, at.glucose);
    const expected = (ethanol: number, carbohydrate: number, acid: number) =>
      ethanol * grams(60, spirit, at.ethanol) + carbohydrate * sugar + acid * grams(22.5, lime, at.acid);
    expect(assess(sour).value("energyKJ")).toBeCloseTo(expected(29, 17, 13), 8);
    expect(assess(sour).value("energyKcal")).toBeCloseTo(expected(7, 4, 3), 8);
  });

  test("a strength that is unsure makes it unsure: 29 kJ for each gram of ethanol", () => {
    const drink = assess(plan([pour(stock("rum", { abv: exactly(40, 1) }), 50)]));
    expect(drink.figure("energyKJ").plusMinus).toBeCloseTo(50 * 0.01 * 0.78923912 * 29, 6);
  });

  test("fat weighs, fills and is counted through a prep", () => {
    const wash = prep("wash", [
      [stock("cream", { fat: 36, per: "100 g" }), g(50)],
      [water, g(50)],
    ]);
    const { perGram } = liquidOf(wash);
    expect(massOf(perGram)).toBeCloseTo(1, 12);
    expect(perGram[at.fat]).toBeCloseTo(0.18, 12);
    expect(per100G(wash, "kJ")).toBeCloseTo(18 * 37, 8);
  });
});

describe("caffeine of what is steeped and strained out", () => {
  const leaves = stock("tea", { caffeineMg: 3000, per: "100 g" });
  const reason = ["how much of the caffeine of tea went over is not known"];
  const steeped = (of: Model) =>
    prep("steeped gin", [
      [spirit, ml(700)],
      [of, g(10), "discarded"],
    ]);

  test("is unknown and not nothing; all else is as if it had not been in", () => {
    const drink = assess(plan([pour(steeped(leaves), 50)]));
    expect(drink.figure("caffeineMg")).toEqual({ value: null, plusMinus: null, because: reason });
    expect(drink.value("ethanolG")).toBeCloseTo(50 * 0.4 * 0.78923912, 8);
    expect(drink.value("energyKJ")).not.toBeNull();
  });

  test("is unknown through a prep in a prep, and where it is in the drink itself", () => {
    const mix = prep("mix", [
      [steeped(leaves), ml(100)],
      [water, ml(100)],
    ]);
    expect(assess(plan([pour(mix, 50)])).figure("caffeineMg").because).toEqual(reason);
    expect(assess(plan([pour(spirit, 50)], "stir", { infused: [leaves] })).figure("caffeineMg").because).toEqual(reason);
  });

  test("is none where what is strained out holds none, and unknown where nobody knows what it is", () => {
    expect(assess(plan([pour(steeped(stock("bay", {})), 50)])).value("caffeineMg")).toBe(0);
    const nameless = stock("leaves", { caffeineMg: nobodyKnows("nobody knows these leaves") });
    expect(assess(plan([pour(steeped(nameless), 50)])).figure("caffeineMg").because).toEqual(["nobody knows these leaves"]);
  });
});
