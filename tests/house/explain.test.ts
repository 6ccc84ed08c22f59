/** The sum behind a figure gives the figure: redone here from the words that a reader sees. */
import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { assessDrink } from "../../server/house/drink.ts";
import { explain } from "../../server/house/explain.ts";
import { entryNamed, houseOf } from "./make.ts";

const folder = "samples/halyard-room";
const texts = readdirSync(folder).map((name) => `=== ${name}\n${readFileSync(`${folder}/${name}`, "utf8")}`);
const house = houseOf(texts.join("\n"));
const drinks = [...house.documents()].flatMap(({ tree }) => tree.entries).filter(({ kind }) => kind === "drink");

it("says of a hot drink that nothing melts, and that the glass takes part", () => {
  const hot = houseOf("glass mug\n  holds: 300 ml\n\ndrink Slip\n  glass: mug\n  method: build\n  50 ml rum\n  120 ml hot water\n");
  const { sums } = explain(hot, assessDrink(hot, entryNamed(hot, "Slip")));
  const said = (figure: string) => sums.find((one) => one.figure === figure)!;
  expect(said("waterMl").working).toBe("no ice, so nothing melts");
  expect(said("temperatureC").working).toMatch(/^build: [\d.]+ °C, without ice; shared with the glass at /);
  expect(said("temperatureC").doubts.map(({ what }) => what)).not.toContainEqual(expect.stringContaining("by the model"));
});

describe.each(drinks.map((drink) => [drink.name!.text, drink] as const))("the sums of %s", (_name, drink) => {
  const assessment = assessDrink(house, drink);
  const { brought, sums } = explain(house, assessment);
  const redo = (figure: string) => {
    const sum = sums.find((one) => one.figure === figure)!;
    return {
      shown: sum.result.value,
      working: sum.working ?? "",
      numbers: [...(sum.working ?? "").matchAll(/\d+(?:\.\d+)?(?:e-?\d+)?/g)].map(([text]) => Number(text)),
    };
  };

  it("adds up what is in the vessel to its weight before the ice", () => {
    const inside = brought.filter((_, index) => assessment.plan.pours[index]?.stage === "vessel");
    const grams = inside.reduce((sum, { g }) => sum + g, 0);
    expect(grams).toBeCloseTo(assessment.outcome.value("beforeMassG")!, 6);
  });

  it("gives strength, sugar, acid and ratio by hand, to the three digits that are written", () => {
    const { shown, numbers } = redo("strengthPct");
    const [g, density, ml, of] = numbers;
    if (shown! > 0.1) {
      expect((100 * ml!) / of! / shown!).toBeCloseTo(1, 1.7);
      expect(g! / density! / ml!).toBeCloseTo(1, 1.7);
    }
    for (const figure of ["sugarGPer100Ml", "acidGPer100Ml"]) {
      const { shown, numbers } = redo(figure);
      expect(Math.abs((100 * numbers[0]!) / numbers[1]! - shown!)).toBeLessThanOrEqual(0.01 * shown! + 0.001);
    }
    const ratio = redo("ratio");
    if (ratio.shown !== null) expect(ratio.numbers[0]! / ratio.numbers[1]! / ratio.shown).toBeCloseTo(1, 1.7);
  });

  it("gives the energy by hand: each factor times its grams, added", () => {
    for (const figure of ["energyKJ", "energyKcal"]) {
      const { shown, working } = redo(figure);
      const terms = [...working.matchAll(/([\d.]+) × ([\d.]+(?:e-?\d+)?) g/g)];
      const sum = terms.reduce((so, [, factor, grams]) => so + Number(factor) * Number(grams), 0);
      expect(sum / shown!).toBeCloseTo(1, 1.7);
    }
  });

  it("names where the uncertainty comes from, and never more than all of it", () => {
    for (const { doubts } of sums) {
      const shares = doubts.map(({ share }) => share);
      expect(shares.reduce((sum, share) => sum + share, 0)).toBeLessThanOrEqual(1 + 1e-9);
      expect(shares).toEqual([...shares].sort((one, other) => other - one));
    }
  });
});

describe("assumptions", () => {
  it("names what the larder gave, and not what the house states", () => {
    const { house, drink } = one("drink X\n  50 ml gin\n  25 ml lemon juice\n\nstock gin\n  kind: spirit\n  abv: 41 %\n");
    const { assumptions } = explain(house, assessDrink(house, drink));
    expect(assumptions.some((text) => text.startsWith("lemon juice (the larder's lemon juice): "))).toBe(true);
    expect(assumptions.join()).not.toContain("strength 41");
  });

  it("says why a figure is unknown instead of a sum", () => {
    const { house, drink } = one("drink X\n  50 ml gin\n  mystery, to taste\n");
    const strength = explain(house, assessDrink(house, drink)).sums.find(({ figure }) => figure === "strengthPct")!;
    expect(strength.working).toBeUndefined();
    expect(strength.result.because).toBeDefined();
  });
});

function one(text: string) {
  const house = houseOf(text);
  return { house, drink: entryNamed(house, "X") };
}
