/** What a drink costs, each sum done by hand beside its check. Prices are invented. */
import { describe, expect, test } from "vitest";
import { assess } from "../../server/engine/assess.ts";
import { difference } from "../../server/engine/difference.ts";
import { type Figure, figureNames, type Model, type Price, type Uncertain } from "../../server/engine/plan.ts";
import { exactly, g, ml, nobodyKnows, plan, pour, prep, stock } from "./plans.ts";

const per = (unit: Price["per"], amount: number | Uncertain, waste?: Uncertain): Price => ({
  amount: typeof amount === "number" ? exactly(amount) : amount,
  per: unit,
  ...(waste && { waste }),
});
const priced = (of: Model, price: Price): Model => ({ ...of, price }) as Model;

const rum = priced(stock("rum", { abv: 40 }), per("ml", 21 / 700)); // 21.00 for 700 ml: 0.03 a millilitre
const lemon = priced(stock("lemon juice", { acid: 6 }), per("ml", 0.005)); // 5.00 a litre
const sugar = priced(stock("sugar", { sugar: 100, per: "100 g", solid: true }), per("g", 0.0013)); // 1.30 a kilo
const water = priced(stock("water", {}), per("g", 0));

const costOf = (pours: readonly ReturnType<typeof pour>[], more = {}): Figure => assess(plan(pours, [], more)).figure("costPerServe");

describe("cost of a serve", () => {
  test("is the sum of what is poured", () => {
    // 60 × 0.03 + 30 × 0.005 = 1.80 + 0.15
    expect(costOf([pour(rum, 60), pour(lemon, 30)]).value).toBeCloseTo(1.95, 10);
  });

  test("what is wasted is paid for too", () => {
    // A bottle of 21.00 of which 4 % is lost has cost 21.00 for 672 ml: 60 × 21 ÷ 672
    const wasted = priced(rum, per("ml", 0.03, exactly(0.04)));
    expect(costOf([pour(wasted, 60)]).value).toBeCloseTo(1.875, 10);
  });

  test("is for one of several serves", () => expect(costOf([pour(rum, 320)], { serves: 8 }).value).toBeCloseTo(1.2, 10));

  test("what is priced by weight and poured by volume is weighed by its density", () => {
    // 50 °Bx weighs 1.2296 g/ml (NBS Circular 440): 20 ml are 24.59 g, half of it sugar: 12.296 × 0.0013
    const syrup = prep("syrup", [
      [sugar, g(100)],
      [water, g(100)],
    ]);
    expect(costOf([pour(syrup, 20)]).value).toBeCloseTo(0.015985, 5);
  });

  test("what tops the drink up costs as much as goes in", () => {
    // Volumes add here: 30 ml of lemon juice without alcohol, then to 100 ml
    const soda = priced(stock("soda", {}), per("ml", 0.002));
    expect(costOf([pour(water, 30), pour(soda, { topToMl: exactly(100) })]).value).toBeCloseTo(0.14, 6);
  });

  test("by the piece it is counted, whatever a piece weighs", () => {
    const egg = stock("egg", { solids: 24, per: "100 g" });
    const two = pour(egg, g(100, 15), { price: per("all", 0.6) });
    expect(costOf([two])).toEqual({ value: 0.6, plusMinus: 0 });
    expect(costOf([pour(egg, { g: nobodyKnows("what an egg weighs is not given") }, { price: per("all", 0.6) })]).value).toBeCloseTo(0.6);
  });

  test("what lies beside the drink is paid for with it, and changes nothing else", () => {
    const bare = assess(plan([pour(rum, 60)], "shake"));
    const dressed = assess(plan([pour(rum, 60)], "shake", { beside: [{ of: sugar, amount: g(10) }] }));
    // 60 × 0.03 + 10 × 0.0013
    expect(dressed.value("costPerServe")).toBeCloseTo(1.813, 10);
    for (const name of figureNames.filter((one) => !one.endsWith("PerServe"))) expect(dressed.value(name)).toBe(bare.value(name));
  });
});

describe("cost of a prep", () => {
  const berries = priced(stock("berries", { sugar: 5, per: "100 g", solid: true }), per("g", 0.012));

  test("counts what is strained out", () => {
    // 700 ml of rum at 21.00 and 100 g of berries at 1.20 are 22.20 for 700 ml: 70 ml are a tenth
    const steeped = prep("berry rum", [
      [rum, ml(700)],
      [berries, g(100), "discarded"],
    ]);
    expect(costOf([pour(steeped, 70)]).value).toBeCloseTo(2.22, 6);
  });

  test("is shared out over what it is said to make", () => {
    // The same 22.20 for the 600 ml that came through the cloth: 60 ml are a tenth
    const strained = prep(
      "berry rum",
      [
        [rum, ml(700)],
        [berries, g(100), "discarded"],
      ],
      { makes: ml(600) },
    );
    expect(costOf([pour(strained, 60)]).value).toBeCloseTo(2.22, 6);
  });

  test("passes through a prep of a prep", () => {
    // 100 ml of lemon juice at 0.50 in 200 ml of water: 0.50 ÷ 300 a millilitre, halved again
    const half = prep("half", [
      [lemon, ml(100)],
      [water, ml(200)],
    ]);
    const quarter = prep("quarter", [
      [half, ml(150)],
      [water, ml(150)],
    ]);
    expect(costOf([pour(quarter, 60)]).value).toBeCloseTo((60 * 0.5) / 300 / 2, 4);
  });
});

describe("what nobody prices", () => {
  const gin = stock("gin", { abv: 40 });

  test("makes the cost unknown and says so; the rest of it is at least that much", () => {
    const drink = assess(plan([pour(rum, 60), pour(gin, 20)]));
    expect(drink.figure("costPerServe")).toEqual({ value: null, plusMinus: null, because: ["the price of gin is not given"] });
    expect(drink.value("pricedPerServe")).toBeCloseTo(1.8, 10);
    expect(drink.value("strengthPct")).not.toBeNull();
  });

  test("is named once, through preps too, and where it is strained out", () => {
    const infused = prep("infusion", [
      [rum, ml(100)],
      [gin, ml(10), "discarded"],
    ]);
    expect(costOf([pour(infused, 20), pour(gin, 5)]).because).toEqual(["the price of gin is not given"]);
  });

  test("a strength that nobody states leaves the cost known where it is bought as it is poured", () => {
    const blind = priced(stock("bottle", { abv: nobodyKnows("the strength of bottle is not given") }), per("ml", 0.03));
    expect(costOf([pour(blind, 60)]).value).toBeCloseTo(1.8, 10);
    expect(costOf([pour(blind, g(60))]).because).toEqual(["the strength of bottle is not given"]);
  });

  test("an amount that nobody gives leaves it unknown", () =>
    expect(costOf([pour(rum, { ml: nobodyKnows("how much rum goes in is not given") })]).because).toEqual([
      "how much rum goes in is not given",
    ]));
});

describe("uncertainty of cost", () => {
  test("comes from the jigger and from the waste, in quadrature", () => {
    // 60 ± 0.7 ml at 0.03 ÷ 0.96: ± 0.021875; 1.80 ÷ 0.96² for each 1 of waste, ± 0.01: ± 0.01953
    const wasted = priced(rum, per("ml", 0.03, exactly(0.04, 0.01)));
    expect(costOf([pour(wasted, ml(60, 0.7))]).plusMinus).toBeCloseTo(Math.hypot(0.021875, 0.0195313), 6);
  });

  test("what two drinks share is not counted twice", () => {
    const spirit = pour(rum, ml(60, 0.7));
    const one = assess(plan([spirit, pour(lemon, ml(30, 0.7))]));
    const other = assess(plan([spirit, pour(lemon, ml(20, 0.7))]));
    // The rum is the same pour; two jiggers of lemon juice differ by 0.005 × 0.7 × √2
    const apart = difference(one, other, "costPerServe");
    expect(apart.value).toBeCloseTo(0.05, 10);
    expect(apart.plusMinus).toBeCloseTo(0.005 * 0.7 * Math.SQRT2, 8);
  });
});
