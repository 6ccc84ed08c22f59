import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { batchOf, liquidOf } from "../../server/engine/composition.ts";
import { at, massOf, volumeMl } from "../../server/engine/liquid.ts";
import type { PrepModel } from "../../server/engine/plan.ts";
import { assessPrep } from "../../server/engine/prep.ts";
import { citricPerGram } from "../../server/engine/substances.ts";
import { findTechnique } from "../../server/engine/techniques.ts";
import { exactly, g, lime, ml, nobodyKnows, prep, spirit, stock, sugar, syrup, water } from "./plans.ts";

describe("a label becomes a liquid", () => {
  test.each([
    ["a spirit", stock("spirit", { abv: 40 })],
    ["a liqueur", stock("liqueur", { abv: 25, sugar: 30 })],
    ["a sour cordial", stock("cordial", { abv: 12, sugar: 40, acid: 3 })],
  ])("%s holds in 100 ml what its label says", (_, model) => {
    const { perGram, mlPerGram } = liquidOf(model);
    const per100Ml = (index: number) => (100 * perGram[index]!) / mlPerGram;
    expect(per100Ml(at.ethanol) / 0.78923912).toBeCloseTo((model.abvPct as { value: number }).value, 8);
    expect(per100Ml(at.sucrose)).toBeCloseTo((model.sugars[0]?.amount as { value: number } | undefined)?.value ?? 0, 8);
    expect(massOf(perGram)).toBeCloseTo(1, 12);
  });

  test("a stated density is kept, and the water is what is left of the weight", () => {
    const cream = liquidOf(stock("cream", { solids: 39, sugar: 3, per: "100 g", density: 1.006 }));
    expect(1 / cream.mlPerGram).toBeCloseTo(1.006, 10);
    expect(cream.perGram[at.water]).toBeCloseTo(0.58, 10);
  });

  test("a heap of sugar is measured by its own density, and fills less once dissolved", () => {
    const heap = liquidOf(stock("sugar", { sugar: 100, per: "100 g", solid: true, density: 0.85 }));
    expect(heap.gPerMl).toBe(0.85);
    expect(heap.mlPerGram).toBeLessThan(0.66);
  });

  test("more than there is room for is unknown and says so", () => {
    expect(liquidOf(stock("nonsense", { sugar: 130, per: "100 g" })).reasons.sugar).toEqual([
      "what nonsense is said to hold is more than there is room for",
    ]);
  });

  test.each(["malic", "tartaric", "lactic", "acetic", "phosphoric", "ascorbic"] as const)(
    "weighed %s acid is as sour as its equivalent of citric",
    (acid) => {
      const perGram = liquidOf(stock("acid solution", { acid: 6, acidKind: acid, titrated: false, per: "100 g" })).perGram;
      expect(perGram[at.titratable]! / perGram[at.acid]!).toBeCloseTo(citricPerGram(acid), 12);
    },
  );
});

describe("parts become a prep", () => {
  test("one to one by weight is 50 °Bx, by volume of water and sugar's own heap it is not", () => {
    const outcome = assessPrep(
      prep("syrup", [
        [sugar, g(100)],
        [water, g(100)],
      ]),
    );
    expect(outcome.value("brix")).toBeCloseTo(50, 10);
    expect(outcome.value("massG")).toBeCloseTo(200, 10);
    const heap = stock("sugar", { sugar: 100, per: "100 g", solid: true, density: 0.85 });
    expect(
      assessPrep(
        prep("syrup", [
          [heap, ml(100)],
          [water, ml(100)],
        ]),
      ).value("brix"),
    ).toBeCloseTo((100 * 85) / (85 + 99.82), 2);
  });

  test("`to 100 g` brings the whole to 100 g, wherever it stands", () => {
    const acid = stock("citric acid", { acid: 100, per: "100 g", solid: true });
    const outcome = assessPrep(
      prep("acid solution", [
        [water, { upToG: exactly(100) }],
        [acid, g(6)],
      ]),
    );
    expect(outcome.value("massG")).toBeCloseTo(100, 10);
    expect(outcome.value("acidGPer100G")).toBeCloseTo(6, 10);
  });

  test("`to 1000 ml` brings the whole to that volume, contraction counted", () => {
    const parts = prep("diluted", [
      [stock("ethanol", { abv: 96 }), ml(500)],
      [water, { upToMl: exactly(1000) }],
    ]);
    const outcome = assessPrep(parts);
    expect(outcome.value("volumeMl")).toBeCloseTo(1000, 6);
    expect(outcome.value("strengthPct")).toBeCloseTo(48, 6);
    expect(batchOf(parts).masses[at.water]).toBeGreaterThan(500); // 520 ml of water, not 500
  });

  test("`to` a total that is passed already adds nothing", () => {
    expect(
      assessPrep(
        prep("full", [
          [water, g(120)],
          [water, { upToG: exactly(100) }],
        ]),
      ).value("massG"),
    ).toBeCloseTo(120, 10);
  });

  test("what is discarded brings nothing, not even a reason", () => {
    const herbs = stock("herbs", { sugar: nobodyKnows("herbs have no label") });
    const outcome = assessPrep(
      prep("infusion", [
        [syrup, g(100)],
        [herbs, g(10), "discarded"],
      ]),
    );
    expect(outcome.value("massG")).toBeCloseTo(100, 10);
    expect(outcome.value("brix")).toBeCloseTo(50, 10);
  });

  test("measured values override, and clear what was unknown of them", () => {
    const fermented: PrepModel = prep("ferment", [[syrup, g(100)]], {
      steps: [{ does: findTechnique("ferment")!.process! }],
      measured: { brix: exactly(12), abvPct: exactly(4), densityGPerMl: exactly(1.04) },
    });
    const outcome = assessPrep(fermented);
    expect(outcome.value("brix")).toBeCloseTo(12, 8);
    expect(outcome.value("densityGPerMl")).toBeCloseTo(1.04, 10);
    expect(outcome.value("acidGPer100G")).toBeNull();
    expect(outcome.figure("acidGPer100G").because).toEqual(["ferment: how far the fermentation went is not known"]);
    const strong = assessPrep(prep("bottled", [[spirit, g(100)]], { measured: { abvPct: exactly(35) } }));
    expect(strong.value("strengthPct")).toBeCloseTo(35, 8);
  });

  test("a prep in a prep is the same as its parts", () => {
    const whole = assessPrep(
      prep("all", [
        [spirit, g(60)],
        [lime, g(30)],
        [syrup, g(30)],
      ]),
    );
    const nested = assessPrep(
      prep("outer", [
        [
          prep("inner", [
            [spirit, g(120)],
            [lime, g(60)],
          ]),
          g(90),
        ],
        [syrup, g(30)],
      ]),
    );
    for (const name of ["massG", "volumeMl", "brix", "strengthPct", "acidGPer100G"] as const) {
      expect(nested.value(name)).toBeCloseTo(whole.value(name)!, 9);
    }
  });

  test("nothing at all is unknown", () => {
    expect(assessPrep(prep("empty", [])).figure("brix")).toEqual({ value: null, plusMinus: null, because: ["empty has nothing in it"] });
  });
});

const anyStock = fc
  .record({
    abv: fc.double({ min: 0, max: 70, noNaN: true }),
    sugar: fc.double({ min: 0, max: 60, noNaN: true }),
    acid: fc.double({ min: 0, max: 8, noNaN: true }),
  })
  .filter(({ abv, sugar }) => abv + sugar < 100)
  .map((label) => stock("any", label));

test("mixing keeps every mass, and never makes volume", () =>
  fc.assert(
    fc.property(fc.array(fc.tuple(anyStock, fc.double({ min: 1, max: 200, noNaN: true })), { minLength: 1, maxLength: 6 }), (parts) => {
      const { masses } = batchOf(
        prep(
          "mix",
          parts.map(([of, grams]) => [of, g(grams)] as const),
        ),
      );
      for (const index of [at.water, at.ethanol, at.sucrose, at.acid, at.titratable]) {
        const sum = parts.reduce((total, [of, grams]) => total + grams * liquidOf(of).perGram[index]!, 0);
        expect(masses[index]).toBeCloseTo(sum, 8);
      }
      const apart = parts.reduce((total, [of, grams]) => total + grams * liquidOf(of).mlPerGram, 0);
      expect(volumeMl(masses)).toBeLessThan(apart * 1.002); // two syrups may gain 0.1 %; spirit and water only lose
    }),
  ));
