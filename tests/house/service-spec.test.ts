import { describe, expect, test } from "vitest";
import { assessDrink } from "../../server/house/drink.ts";
import { assessPrepEntry } from "../../server/house/prep.ts";
import { type ServiceSpec, serviceSpecOf } from "../../server/house/service-spec.ts";
import type { Measure } from "../../server/house/show.ts";
import { besideTexts, showService } from "../../server/house/show-service.ts";
import { entryNamed, houseOf } from "./make.ts";

const ml: Measure = { units: "ml", ounceMl: 30 };
const oz: Measure = { units: "oz", ounceMl: 30 };

const assess = (lines: readonly string[], house = "house Bar\n  ounce: 30 ml\n") => {
  const made = houseOf([`${house}drink Slip`, ...lines].join("\n  "));
  const assessment = assessDrink(made, entryNamed(made, "Slip"));
  return { assessment, spec: serviceSpecOf(made, assessment) };
};
const specOf = (...lines: string[]): ServiceSpec => assess(lines).spec!;
const said = (measure: Measure, ...lines: string[]) => {
  const { assessment, spec } = assess(lines);
  return spec && showService({ ...spec, beside: besideTexts(spec, assessment.plan.serves, measure) }, measure);
};

describe("in words, for one serve", () => {
  test.each([
    [["50 ml gin, batched", "25 ml aged rum, batched", "25 ml lemon juice"], "75 ml batch + 25 ml lemon juice"],
    [["50 ml gin, batched", "25 ml lemon juice, chilled", "top soda water"], "50 ml batch + 25 ml lemon juice, chilled + top soda water"],
    [["rinse absinthe, discarded", "50 ml gin, frozen, batched"], "50 ml batch + rinse absinthe, discarded"],
    [["50 ml gin, batched", "1 g salt, to rim"], "50 ml batch"],
    [["50 ml gin, batched", "6 mint leaves, muddled"], "50 ml batch + 6 mint leaves, muddled"],
    [
      ["serves: 4", "200 ml gin, batched", "90 ml lemon juice", "4 egg white", "6 dashes bitters"],
      "50 ml batch + 22.5 ml lemon juice + 1 egg white + 1.5 dashes bitters",
    ],
    [["serves: 3", "150 ml gin, batched", "40 ml lemon juice"], "50 ml batch + 13.3 ml lemon juice"],
    [["part: 30 ml", "2 parts gin, batched", "1 part lemon juice"], "60 ml batch + 30 ml lemon juice"],
    [["2 parts gin, batched", "1 part lemon juice"], "batch, nobody knows how much + 1 part lemon juice"],
    [["50 ml moonlight, batched", "10 ml gin"], "batch, nobody knows how much + 10 ml gin"],
    [["50 ml gin", "25 ml lemon juice"], undefined],
  ])("%j", (lines, expected) => expect(said(ml, ...lines)).toBe(expected));

  test("in the house's unit, what is written as it is written", () => {
    expect(said(oz, "50 ml gin, batched", "25 ml aged rum, batched", "25 ml lemon juice")).toBe("2 1/2 oz batch + 25 ml lemon juice");
    expect(said(oz, "serves: 2", "3 oz gin, batched", "1 1/2 oz lemon juice")).toBe("1 1/2 oz batch + 3/4 oz lemon juice");
  });
});

describe("how much of the batch", () => {
  const strong = "house Bar\n  jigger: 2.5 ml\nstock neutral spirit\n  kind: spirit\n  abv: 96 %\n";
  const half = assess(["50 ml neutral spirit, batched", "50 ml water, batched", "10 ml gin"], strong).spec!;

  test("is the mixture's: spirit and water take up less together", () => {
    // 50 ml of 96 % vol and 50 ml of water: 40.37 g + 49.91 g, and 41.96 g/100 g is 0.9315 g/ml: OIML R 22 (1975).
    expect(half.batchMl.value!).toBeGreaterThan(96.5);
    expect(half.batchMl.value!).toBeLessThan(97.2);
  });

  test("is what a prep of the same pours makes", () => {
    const house = houseOf(`${strong}prep Batch\n  50 ml neutral spirit\n  50 ml water\n`);
    expect(half.batchMl.value).toBeCloseTo(assessPrepEntry(house, entryNamed(house, "Batch")).value("volumeMl")!, 6);
  });

  test("is measured where the jigger comes within a hundredth of it, and said as it is elsewhere", () => {
    expect(specOf("50 ml gin, batched", "25 ml dry vermouth, batched").jiggerMl).toBe(75);
    expect(half.jiggerMl).toBe(97.5);
    const coarse = assess(["50 ml neutral spirit, batched", "50 ml water, batched"], strong.replace("2.5 ml", "10 ml"));
    expect(coarse.spec!.jiggerMl).toBeNull();
    expect(said(ml, "50 ml gin, batched", "2 dashes aromatic bitters, batched", "5 ml orange liqueur, batched")).toMatch(
      /^5[67] ml batch$/,
    );
  });

  test("holds the water that the method adds, where all of it is in the bottle", () => {
    const dry = specOf("50 ml gin, batched", "10 ml dry vermouth, batched").batchMl.value!;
    const wet = specOf("method: pre-dilute 25 %", "50 ml gin, batched", "10 ml dry vermouth, batched");
    expect(wet.batchMl.value! / dry).toBeGreaterThan(1.23); // water and spirit take up less together
    expect(wet.batchMl.value! / dry).toBeLessThan(1.25);
    expect(wet.waterMl).toBe(0);
  });

  test("else the water is poured beside it", () => {
    const spec = specOf("method: pre-dilute 25 %", "50 ml gin, batched", "10 ml lemon juice");
    expect(spec.jiggerMl).toBe(50);
    expect(spec.waterMl).toBeCloseTo(15, 0);
    expect(said(ml, "method: pre-dilute 25 %", "50 ml gin, batched", "10 ml lemon juice")).toMatch(
      /^50 ml batch \+ 10 ml lemon juice \+ 1[45][.\d]* ml water$/,
    );
  });

  test("a riff pours what its parent batches", () => {
    const house = houseOf(
      "drink Slip\n  50 ml gin, batched\n  25 ml lemon juice\ndrink Rope\n  from: Slip\n  swap lemon juice for lime juice\n",
    );
    const spec = serviceSpecOf(house, assessDrink(house, entryNamed(house, "Rope")))!;
    expect(showService({ ...spec, beside: besideTexts(spec, 1, ml) }, ml)).toBe("50 ml batch + 25 ml lime juice");
  });
});
