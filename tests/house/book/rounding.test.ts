/** A drink in ounces is the same drink, or somebody is told which pour to round the other way. The tolerances are practice, no source. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { mlOfPrinted, printedAmount } from "../../../server/house/book/amount.ts";
import { poursOf } from "../../../server/house/book/pours.ts";
import { type RoundedOff, roundingOf } from "../../../server/house/book/rounding.ts";
import type { BookStyle } from "../../../server/house/book/style.ts";
import { assessDrink } from "../../../server/house/drink.ts";
import { entryNamed, houseOf } from "../make.ts";
import { plain, recipesIn } from "./drinks.ts";

const quarters: BookStyle = { ...plain, systems: ["US"] };
const halves: BookStyle = { ...plain, systems: ["US"], ounceStep: 1 / 2 };

function sour(rumMl: number, lemonMl: number, syrupMl: number, more = ""): string {
  return `prep plain syrup\n  1 part white sugar\n  1 part water\n  parts by: weight\n\ndrink Slip\n${more}  method: shake 12 s\n  ${rumMl} ml white rum\n  ${lemonMl} ml lemon juice\n  ${syrupMl} ml plain syrup\n`;
}

function rounded(text: string, style: BookStyle) {
  const house = houseOf(text);
  return roundingOf(house, entryNamed(house, "Slip"), style);
}

test("26 ml of lemon go up to an ounce, 18 of syrup down to a half: the ratio falls to some 0.72 of itself, and the lemon turns", () => {
  const found = rounded(sour(60, 26, 18), quarters) as RoundedOff;
  const [, now, own] = /its ratio is ([\d.]+) in place of ([\d.]+)/.exec(found.off[0]!)!.map(Number);
  // Syrup by lemon: (1/2) / (18/26) = 0.722; the little sugar of the lemon moves that by less than a tenth.
  expect(now! / own!).toBeGreaterThan(0.722);
  expect(now! / own!).toBeLessThan(0.722 * 1.1);
  // With three quarters of lemon it is 0.667 by 0.692, with as much of syrup 1.08 but sweeter by a seventh.
  expect(found.flip).toMatchObject({ from: "1 oz", to: "¾ oz" });
  expect(found.todo).toBe("Lemon juice is to be rounded down, to ¾ oz in place of 1 oz: pour an amount that comes out so.");
});

test("of two that would do, the one that comes nearer turns", () => {
  // 41 by 32 ml is 1.28. As printed 1½ by 1 oz; 1¼ by 1 is 1.25, 1½ by 1¼ would be 1.2.
  const found = rounded(sour(60, 32, 41), quarters) as RoundedOff;
  expect(found.flip?.pour.ingredient.resolution.text).toBe("plain syrup");
  expect(found.flip).toMatchObject({ from: "1½ oz", to: "1¼ oz" });
});

test("25 and 20 ml come right in eighths only: 0.8 is 1, 1, then 0.714", () => {
  expect(rounded(sour(60, 25, 20), halves)).toMatchObject({ step: 1 / 8, todo: "Set a finer step in the book: `ounce step: ⅛ oz`." });
  expect(rounded(sour(60, 25, 20), { ...halves, ounceStep: 1 / 8 })).toEqual({ fine: true });
});

test("with a pouring ounce what comes out in fractions is the same drink", () => {
  expect(rounded(sour(50, 22.5, 20), { ...halves, ounceMl: 30, writtenOunceMl: 30 })).toEqual({ fine: true });
});

test("a window goes before the tolerance, wide or narrow", () => {
  const wide = "  ratio: 1 to 20\n  strength: 5 to 30 %\n  sugar: 0 to 20 g/100 ml\n  acid: 0 to 5 g/100 ml\n";
  expect(rounded(sour(60, 26, 18), quarters)).not.toEqual({ fine: true });
  expect(rounded(sour(60, 26, 18, wide), quarters)).toEqual({ fine: true });
  // 25 ml become ¾ oz: the ratio falls by a tenth, which is let pass where nobody draws a line.
  expect(rounded(sour(60, 30, 25), quarters)).toEqual({ fine: true });
  const house = houseOf(sour(60, 30, 25));
  const own = assessDrink(house, entryNamed(house, "Slip")).outcome.value("ratio")!;
  const narrow = `  ratio: ${(own * 0.98).toFixed(3)} to ${(own * 1.02).toFixed(3)}\n`;
  expect(rounded(sour(60, 30, 25, narrow), quarters)).toMatchObject({ off: [expect.stringMatching(/^its ratio is [\d.]+, below /)] });
});

test("millilitres of a metric spec are never off", () => {
  fc.assert(
    fc.property(fc.integer({ min: 20, max: 70 }), fc.integer({ min: 10, max: 40 }), fc.integer({ min: 10, max: 40 }), (...amounts) => {
      expect(rounded(sour(...amounts), { ...plain, systems: ["metric"] })).toEqual({ fine: true });
    }),
    { numRuns: 10 },
  );
});

test("the pour that is said to turn brings the drink back", () => {
  let flips = 0;
  fc.assert(
    fc.property(fc.integer({ min: 20, max: 70 }), fc.integer({ min: 12, max: 40 }), fc.integer({ min: 12, max: 40 }), (...amounts) => {
      const house = houseOf(sour(...amounts));
      const entry = entryNamed(house, "Slip");
      const found = roundingOf(house, entry, halves);
      if ("fine" in found || !found.flip) return;
      flips++;
      const { flip } = found;
      const printed = poursOf(house, entry).map((pour) =>
        pour.ingredient === flip.pour.ingredient ? flip.ml : mlOfPrinted(printedAmount(pour, halves, "US")!, halves)!,
      );
      const again = houseOf(sour(printed[0]!, printed[1]!, printed[2]!));
      const [before, after] = [assessDrink(house, entry).outcome, assessDrink(again, entryNamed(again, "Slip")).outcome];
      const share = (name: "ratio" | "sweetnessGPer100Ml" | "acidGPer100Ml") => after.value(name)! / before.value(name)! - 1;
      expect(Math.abs(share("ratio"))).toBeLessThanOrEqual(0.15 + 1e-9);
      expect(Math.abs(share("acidGPer100Ml"))).toBeLessThanOrEqual(0.15 + 1e-9);
      expect(Math.abs(after.value("strengthPct")! - before.value("strengthPct")!)).toBeLessThanOrEqual(1.5 + 1e-9);
    }),
    { numRuns: 60, seed: 7 },
  );
  expect(flips).toBeGreaterThan(3);
});

test("the samples' drinks stand in quarter ounces of their own", () => {
  for (const { house, entry } of ["samples/halyard-room", "samples/slack-water"].flatMap(recipesIn)) {
    const style: BookStyle = { ...plain, ounceMl: 30, writtenOunceMl: 30 };
    expect([entry.name?.text, roundingOf(house, entry, style)]).toEqual([entry.name?.text, { fine: true }]);
  }
});
