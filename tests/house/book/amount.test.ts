/**
 * Amounts in print. Sizes: NIST Handbook 44 (2024), Appendix C: 1 US fluid ounce 29.57353 ml, 1 tablespoon
 * 14.787 ml, 1 teaspoon 4.929 ml, 1 avoirdupois ounce 28.34952 g; what rounds where is worked out by hand.
 */
import fc from "fast-check";
import { expect, test } from "vitest";
import { readLine } from "../../../grammar/line.ts";
import type { Pour } from "../../../grammar/tree.ts";
import { units } from "../../../grammar/units.ts";
import { mlOfPrinted, printedAmount } from "../../../server/house/book/amount.ts";
import { fractionText, spoken } from "../../../server/house/book/amount-text.ts";
import { poursOf } from "../../../server/house/book/pours.ts";
import { bound } from "../../../server/house/book/printed-units.ts";
import { recipeLines } from "../../../server/house/book/recipe-lines.ts";
import type { BookStyle } from "../../../server/house/book/style.ts";
import { plain, recipesIn } from "./drinks.ts";

function poured(text: string): Pour {
  const { content } = readLine(`  ${text} water`);
  if (content.kind !== "pour") throw new Error(`no pour: ${text}`);
  return content.pour;
}

const pouringOunce: BookStyle = { ...plain, ounceMl: 30, writtenOunceMl: 30 };

test.each([
  // 1.69 oz lies nearer to 1¾ than to 1½
  ["50 ml", "50 ml", "1¾ oz"],
  ["45 ml", "45 ml", "1½ oz"],
  ["22.5 ml", "22.5 ml", "¾ oz"],
  ["15 ml", "15 ml", "½ oz"],
  ["7.5 ml", "7.5 ml", "¼ oz"],
  // 2.03 and 2.54 teaspoons, where a quarter ounce is a quarter off
  ["10 ml", "10 ml", "2 teaspoons"],
  ["12.5 ml", "12.5 ml", "2½ teaspoons"],
  ["5 ml", "5 ml", "1 teaspoon"],
  ["2.5 ml", "2.5 ml", "½ teaspoon"],
  ["0.8 ml", "0.8 ml", "1 dash"],
  ["0.25 ml", "0.25 ml", "5 drops"],
  ["7 cl", "70 ml", "2¼ oz"],
  // 16.91, 33.81 and 50.72 oz: what the note on units promises is the nearest quarter, by the jug too
  ["500 ml", "500 ml", "17 oz"],
  ["1 l", "1 litre", "33¾ oz"],
  ["1500 ml", "1.5 litres", "50¾ oz"],
  ["112.5 ml", "112.5 ml", "3¾ oz"],
  // Ounces as they are written, whatever the step; ml at the nearest mark
  ["1 1/3 oz", "40 ml", "1⅓ oz"],
  ["0.75 oz", "22.5 ml", "¾ oz"],
  ["2 oz", "60 ml", "2 oz"],
  ["1 tsp", "5 ml", "1 teaspoon"],
  ["2 tbsp", "30 ml", "2 tablespoons"],
  ["1 cup", "235 ml", "1 cup"],
  // 17.64 oz and 10.58 oz: within a fortieth of 17½ and 10½; 1.06 oz is not of 1
  ["500 g", "500 g", "17½ oz by weight"],
  ["300 g", "300 g", "10½ oz by weight"],
  ["30 g", "30 g", "30 g"],
  ["20 g", "20 g", "20 g"],
  ["1200 g", "1.2 kg", "42½ oz by weight"],
  ["0.05 g", "50 mg", "50 mg"],
  ["2 oz wt", "57 g", "2 oz by weight"],
  // Counts, shakes and parts are the same everywhere
  ["1 dash", "1 dash", "1 dash"],
  ["3 dashes", "3 dashes", "3 dashes"],
  ["1 barspoon", "1 bar spoon", "1 bar spoon"],
  ["2 pinches", "2 pinches", "2 pinches"],
  ["1/2", "½", "½"],
  ["6", "6", "6"],
  ["2 leaves", "2 leaves", "2 leaves"],
  ["1 1/2 parts", "1½ parts", "1½ parts"],
  ["10-15 ml", "10–15 ml", "2–3 teaspoons"],
  ["20-30 ml", "20–30 ml", "¾–1 oz"],
  ["about 3 g", "about 3 g", "about 3 g"],
  ["about 60 ml", "about 60 ml", "about 2 oz"],
])("%s is printed as %s, and as %s", (text, metric, us) => {
  const pour = poured(text);
  expect([spoken(pour, plain, "metric"), spoken(pour, plain, "US")]).toEqual([metric, us]);
});

test.each([
  ["50 ml", "1⅔ oz"],
  ["22.5 ml", "¾ oz"],
  ["10 ml", "⅓ oz"],
  ["5 ml", "1 teaspoon"],
  // 16⅔ and 23⅓, which no jug shows
  ["500 ml", "16¾ oz"],
  ["700 ml", "23¼ oz"],
])("with a pouring ounce of 30 ml %s is %s", (text, us) => {
  expect(spoken(poured(text), pouringOunce, "US")).toBe(us);
});

test("grams stay beside where a book shows ounces only", () => {
  expect(spoken(poured("300 g"), { ...plain, systems: ["US"] }, "US")).toBe("10½ oz by weight (300 g)");
});

test.each([
  ["25 ml", "twenty-five millilitres", "three quarters of an ounce"],
  ["15 ml", "fifteen millilitres", "half an ounce"],
  ["22.5 ml", "twenty-two and a half millilitres", "three quarters of an ounce"],
  ["45 ml", "forty-five millilitres", "one and a half ounces"],
  ["52 ml", "fifty-two millilitres", "one and three-quarter ounces"],
  ["2 dashes", "two dashes", "two dashes"],
  ["1 dash", "one dash", "one dash"],
  ["105 ml", "one hundred and five millilitres", "three and a half ounces"],
  ["10-15 ml", "ten to fifteen millilitres", "two to three teaspoons"],
  ["about 3 g", "about three grams", "about three grams"],
  ["1/2", "half", "half"],
])("%s in words is %s, and %s", (text, metric, us) => {
  expect([spoken(poured(text), plain, "metric", "words"), spoken(poured(text), plain, "US", "words")]).toEqual([metric, us]);
});

test("words to ten are of what is counted; American books spell as Americans do", () => {
  const american: BookStyle = { ...plain, spelling: "American" };
  expect(["2 dashes", "12 dashes", "5 ml", "3"].map((text) => spoken(poured(text), plain, "metric", "words to ten"))).toEqual([
    "two dashes",
    "12 dashes",
    "5 ml",
    "three",
  ]);
  expect(spoken(poured("105 ml"), american, "metric", "words")).toBe("one hundred five milliliters");
  expect(spoken(poured("1 l"), american, "metric")).toBe("1 liter");
});

test("a sixteenth has no sign of its own", () => {
  expect([1 / 16, 1.0625, 0.15].map(fractionText)).toEqual(["1⁄16", "1 1⁄16", "0.15"]);
});

const samples = ["samples/halyard-room", "samples/slack-water"].flatMap(recipesIn);

test("what is printed in millilitres and grams, read again, is what the spec pours", () => {
  for (const { house, entry } of samples) {
    for (const pour of poursOf(house, entry)) {
      const unit = pour.quantity?.unit?.unit;
      if (pour.part || !unit || !["ml", "cl", "l", "g", "kg", "dash", "drop", "pinch"].includes(unit.id)) continue;
      const again = poured(spoken(pour, plain, "metric")).quantity!;
      const size = (one: typeof again) => one.value! * (one.unit!.unit.ml ?? one.unit!.unit.g!);
      expect(size(again)).toBeCloseTo(size(pour.quantity!), 9);
    }
  }
});

test("every amount in ounces of the samples can be measured: a step, an eighth, a third, or spoons", () => {
  for (const { house, entry } of samples) {
    for (const pour of poursOf(house, entry)) {
      const printed = printedAmount(pour, plain, "US");
      if (!printed || (printed.unit !== "oz" && printed.unit !== "tsp")) continue;
      expect(Number.isInteger(printed.low * 4), `${entry.name?.text}: ${printed.low} ${printed.unit}`).toBe(true);
      expect(printed.low).toBeGreaterThan(0);
      expect(mlOfPrinted(printed, plain)).toBeGreaterThan(0);
    }
  }
});

test("equal amounts stand once, and what has none has none", () => {
  const lines = samples.flatMap(({ house, entry }) => recipeLines(house, entry, plain));
  for (const { amounts } of lines) expect(new Set(amounts).size).toBe(amounts.length);
  expect(lines.find(({ name }) => name === "egg white")?.amounts).toEqual(["1"]);
  expect(lines.find(({ note }) => note?.startsWith("to top up"))).toMatchObject({ amounts: [], note: "to top up to 220 ml (7½ oz)" });
});

test("by the jug every amount in ounces is a multiple of the book's step, the nearest one", () => {
  fc.assert(
    fc.property(fc.integer({ min: 8 * 30 + 1, max: 4000 }), fc.constantFrom(1 / 2, 1 / 4, 1 / 8), (ml, ounceStep) => {
      const { low } = printedAmount(poured(`${ml} ml`), { ...pouringOunce, ounceStep }, "US")!;
      expect(Number.isInteger(low / ounceStep)).toBe(true);
      expect(Math.abs(low - ml / 30)).toBeLessThanOrEqual(ounceStep / 2 + 1e-9);
    }),
  );
});

test("no line ends between a number and its unit; a word beside a number is left alone", () => {
  expect(
    ["9.7 %", "125 g of ice", "25 ml (¾ oz)", "2 1⁄16 oz", "−8 to −4 °C (25 °F)", "10½ oz by weight", "2.4 UK units"].map(bound),
  ).toEqual([
    "9.7\u00a0%",
    "125\u00a0g of ice",
    "25\u00a0ml (¾\u00a0oz)",
    "2 1⁄16\u00a0oz",
    "−8 to −4\u00a0°C (25\u00a0°F)",
    "10½\u00a0oz by weight",
    "2.4\u00a0UK\u00a0units",
  ]);
  expect(bound("Strength 8 % · Energy 90 kcal")).toBe("Strength 8\u00a0%\u00a0· Energy 90\u00a0kcal");
  expect(["2 glasses", "6 limes", "in 12 ozonised", "1 kgx"].map(bound)).toEqual(["2 glasses", "6 limes", "in 12 ozonised", "1 kgx"]);
});

const numerals = fc.oneof(
  fc.nat(3000).map(String),
  fc.tuple(fc.nat(500), fc.nat(99)).map(([whole, broken]) => `${whole}.${broken}`),
  fc.tuple(fc.nat(20), fc.constantFrom("1/2", "1/3", "3/4", "5/8")).map(([whole, broken]) => (whole > 0 ? `${whole} ${broken}` : broken)),
  fc.tuple(fc.nat(50), fc.nat(50)).map(([one, other]) => `${one}-${one + other + 1}`),
);
const unitIds = fc.constantFrom(
  ...units.filter(({ dimension }) => ["volume", "mass", "part", "piece"].includes(dimension)).map(({ id }) => id),
);
const anyStyle = fc.record({
  systems: fc.constantFrom<BookStyle["systems"]>(["metric"], ["US"], ["metric", "US"]),
  ounceStep: fc.constantFrom(1 / 2, 1 / 4, 1 / 8, 1 / 16),
  ounceMl: fc.constantFrom(plain.ounceMl, 30, 25),
  spelling: fc.constantFrom<BookStyle["spelling"]>("British", "American"),
});

test("any amount of any unit is printed, in figures and in words, near what it was", () => {
  fc.assert(
    fc.property(numerals, unitIds, fc.boolean(), anyStyle, (numeral, unit, about, some) => {
      const pour = poured(`${about ? "about " : ""}${numeral} ${unit}`);
      const style = { ...plain, ...some };
      for (const system of style.systems) {
        for (const numbers of ["figures", "words", "words to ten"] as const) {
          expect(spoken(pour, style, system, numbers)).toMatch(/^[\p{L}\d¼½¾⅓⅔⅛⅜⅝⅞]/u);
          expect(spoken(pour, style, system, numbers)).not.toMatch(/undefined|NaN|null|Infinity| {2}|\s$|\d\.\d{5}/);
        }
        const printed = printedAmount(pour, style, system);
        const exact = pour.quantity!.unit!.unit.ml! * pour.quantity!.value! * (unit === "oz" ? style.writtenOunceMl / plain.ounceMl : 1);
        const ml = printed && mlOfPrinted({ ...printed, low: Math.min(printed.low, printed.high ?? printed.low) }, style);
        if (ml === undefined || pour.quantity!.upTo !== undefined || printed!.unit === unit || exact < 0.5) continue;
        // Half of the step, or of the spoon: no more than a quarter ounce, or a thirtieth of what is poured by the jug.
        expect(Math.abs(ml - exact)).toBeLessThanOrEqual(
          Math.max((style.ounceStep / 2) * style.ounceMl, style.ounceMl / 4, 0.04 * exact) + 1e-6,
        );
      }
    }),
    { numRuns: 500 },
  );
});
