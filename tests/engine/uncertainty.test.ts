import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { assess } from "../../server/engine/assess.ts";
import { figureNames } from "../../server/engine/plan.ts";
import { assessPrep } from "../../server/engine/prep.ts";
import { exactly, g, lime, ml, plan, pour, prep, spirit, stock, syrup, water } from "./plans.ts";

describe("one source counts once", () => {
  const strength = exactly(40, 1);
  const rum = stock("rum", { abv: strength });

  test("the same stock poured twice is as uncertain as poured once", () => {
    const once = assess(plan([pour(rum, 60), pour(water, 40)]));
    const twice = assess(plan([pour(rum, 30), pour(rum, 30), pour(water, 40)]));
    expect(twice.figure("strengthPct").plusMinus).toBeCloseTo(once.figure("strengthPct").plusMinus!, 8);
  });

  test("two stocks, each with its own uncertainty, are less uncertain together", () => {
    const other = stock("other rum", { abv: exactly(40, 1) });
    const one = assess(plan([pour(rum, 60), pour(water, 40)])).figure("strengthPct").plusMinus!;
    const both = assess(plan([pour(rum, 30), pour(other, 30), pour(water, 40)])).figure("strengthPct").plusMinus!;
    expect(both).toBeCloseTo(one / Math.SQRT2, 3);
  });

  test("the same jigger's spread in two pours adds up, two jiggers' in quadrature", () => {
    const jigger = { ml: exactly(30, 1) };
    const same = assess(plan([pour(rum, jigger), pour(water, jigger)])).figure("beforeVolumeMl").plusMinus!;
    const apart = assess(plan([pour(rum, ml(30, 1)), pour(water, ml(30, 1))])).figure("beforeVolumeMl").plusMinus!;
    expect(same / apart).toBeCloseTo(Math.SQRT2, 2);
  });

  test("through a prep too", () => {
    const batch = prep("batch", [
      [rum, g(100)],
      [water, g(50)],
    ]);
    const gradient = assess(plan([pour(batch, 60), pour(rum, 30)])).gradient("strengthPct");
    const alone = assess(plan([pour(rum, 100)])).gradient("strengthPct");
    expect(alone.get(strength)).toBeCloseTo(1, 6); // one % vol more on the label is one more in the glass
    expect(gradient.get(strength)).toBeGreaterThan(0.7);
    expect(gradient.get(strength)).toBeLessThan(1);
  });

  test("what a riff shares with its parent cancels in their difference", () => {
    const parent = assess(plan([pour(rum, 60), pour(lime, 22.5)], "shake")).gradient("strengthPct");
    const riff = assess(plan([pour(rum, 60), pour(lime, 20)], "shake")).gradient("strengthPct");
    const apart = Math.hypot(
      ...[...new Set([...parent.keys(), ...riff.keys()])].map((source) => ((parent.get(source) ?? 0) - (riff.get(source) ?? 0)) * source.u),
    );
    const alone = Math.hypot(...[...parent].map(([source, slope]) => slope * source.u));
    expect(apart).toBeLessThan(alone / 10);
  });
});

test("the model's own spread is in the water of every iced step: 12 % shaken, 15 % stirred, 25 % on crushed ice", () => {
  const spread = (method: string, kind: "cubed" | "crushed" = "cubed") => {
    const drink = assess(plan([pour(spirit, 60)], method, { ice: { kind, temperatureC: exactly(0) } }));
    const { value, plusMinus } = drink.figure("waterMl");
    return plusMinus! / value!;
  };
  expect(spread("shake")).toBeCloseTo(0.12, 3);
  expect(spread("stir")).toBeCloseTo(0.15, 3);
  expect(spread("shake", "crushed")).toBeCloseTo(0.25, 3);
});

test("how cold it gets is uncertain by a degree or two, whatever the pours are", () => {
  expect(assess(plan([pour(spirit, 60)], "shake")).figure("temperatureC").plusMinus).toBeCloseTo(1.2, 0);
  expect(assess(plan([pour(spirit, 60)], "stir")).figure("temperatureC").plusMinus).toBeCloseTo(1.5, 0);
  expect(assess(plan([pour(spirit, 60)])).figure("temperatureC").plusMinus).toBe(0);
});

test("sweetness carries the spread of the sugar's relative sweetness, plain sugar does not", () => {
  const fruit = assess(plan([pour(stock("fructose syrup", { sugar: 60, sugarKind: "fructose" }), 100)]));
  expect(fruit.figure("sugarGPer100Ml").plusMinus).toBe(0);
  expect(fruit.figure("sweetnessGPer100Ml").plusMinus! / fruit.value("sweetnessGPer100Ml")!).toBeCloseTo(0.1, 6);
  expect(assess(plan([pour(syrup, 100)])).figure("sweetnessGPer100Ml").plusMinus).toBe(0);
});

test("a prep's figures are uncertain by its parts'", () => {
  const outcome = assessPrep(
    prep("syrup", [
      [stock("sugar", { sugar: 100, per: "100 g", solid: true }), g(100, 2)],
      [water, g(100, 2)],
    ]),
  );
  expect(outcome.figure("massG")).toEqual({ value: expect.closeTo(200, 9), plusMinus: expect.closeTo(2 * Math.SQRT2, 6) });
  expect(outcome.figure("brix").plusMinus).toBeCloseTo(50 * 0.02 * Math.SQRT1_2, 4);
});

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const uncertain = (min: number, max: number, share: number) => between(min, max).map((value) => exactly(value, share * value));
const anyPour = fc
  .record({
    abv: uncertain(5, 45, 0.02),
    sugar: uncertain(2, 40, 0.05),
    acid: uncertain(0.5, 6, 0.1),
    ml: uncertain(15, 60, 0.03),
    tC: between(5, 25), // well above freezing, where the propagation is not meant to be linear
  })
  .map(({ abv, sugar, acid, ml, tC }) => pour(stock("any", { abv, sugar, acid }), { ml }, { temperatureC: exactly(tC, 1) }));
const anyDrink = fc
  .tuple(fc.array(anyPour, { minLength: 1, maxLength: 4 }), fc.constantFrom("shake", "stir", "build", "dry shake", "blend"))
  .map(([pours, method]) => plan(pours, method, { glass: { capacityMl: exactly(300, 5), washline: 0.9 } }));

test("no uncertainty is negative or missing", () =>
  fc.assert(
    fc.property(anyDrink, (drink) => {
      const outcome = assess(drink);
      for (const name of figureNames) {
        const { value, plusMinus } = outcome.figure(name);
        if (value !== null) expect(plusMinus).toBeGreaterThanOrEqual(0);
        else expect(plusMinus).toBeNull();
      }
    }),
    { numRuns: 40 },
  ));
