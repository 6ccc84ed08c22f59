import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Outcome } from "../../server/engine/plan.ts";
import { conversionsOf } from "../../server/features/quick-fixes.ts";
import { assessDrink } from "../../server/house/drink.ts";
import { entryNamed, houseOf, root } from "../house/make.ts";
import { actionsAt, applied, apply, titlesAt } from "./cursor.ts";

const bar = (line: string, house = "house Bar\n") => `=== bar.drink\n${house}=== spec.drink\ndrink Slip\n  method: shake 12 s\n${line}\n`;
const lineOf = (text: string, index = 2) => text.split("\n")[index]!.trim();

describe("one pour", () => {
  test.each([
    // 1 fl oz US = 29.5735295625 ml, NIST HB 44.
    ["  50 ml dry g<>in", "Convert to cl", "5 cl dry gin"],
    ["  22.5 ml dry g<>in", "Convert to cl", "2.25 cl dry gin"],
    ["  1½ oz dry g<>in", "Convert to ml", "44.36029434 ml dry gin"],
    ["  1 1/2 oz. of dry g<>in, frozen  # cold", "Convert to cl", "4.436029434 cl of dry gin, frozen  # cold"],
    ["  about 3 cl crème de cacao 🍫<>", "Convert to ml", "about 30 ml crème de cacao 🍫"],
    ["  10-15 ml lime ju<>ice", "Convert to cl", "1 to 1.5 cl lime juice"],
    ["  60 ml dry g<>in", "Convert to oz (US), rounded to 1/8 oz", "2 oz dry gin"],
    ["  top to 180 ml soda wa<>ter", "Convert to cl", "top to 18 cl soda water"],
    ["  1 tsp dry g<>in", "Convert to ml", "4.92892159375 ml dry gin"],
  ])("%s, %s", (line, title, expected) => {
    const after = lineOf(apply(bar(line), title));
    const number = /\d+\.\d{8,}/.exec(expected)?.[0];
    if (!number) return expect(after).toBe(expected);
    const written = /[\d.]+/.exec(after)![0];
    expect(Number(written) / Number(number)).toBeCloseTo(1, 9);
    expect(after.replace(written, number)).toBe(expected);
  });

  test("a pouring ounce keeps whole and half ounces exact, and the title says which ounce", () => {
    const house = "house Bar\n  ounce: 30 ml\n";
    expect(lineOf(apply(bar("  22.5 ml dry g<>in", house), "Convert to oz of 30 ml: 3/4 oz"))).toBe("3/4 oz dry gin");
    expect(lineOf(apply(bar("  50 ml dry g<>in", house), "Convert to oz of 30 ml: 1 2/3 oz"))).toBe("1 2/3 oz dry gin");
    expect(titlesAt(bar("  2 oz dry g<>in", "house Bar\n  ounce: imperial\n")).join()).toContain("Convert to ml: 56.826125 ml");
  });

  test("weight by the ingredient's density: 100 ml of 2 g/ml weigh 200 g", () => {
    const stock = "=== stock.drink\nstock heavy syrup\n  kind: syrup\n  abv: 0 %\n  sugar: 60 g/100 g\n  acid: none\n  density: 2 g/ml\n";
    expect(lineOf(apply(stock + bar("  100 ml heavy sy<>rup"), "Convert to g: 200 g"))).toBe("200 g heavy syrup");
    expect(lineOf(apply(stock + bar("  50 g heavy sy<>rup"), "Convert to ml: 25 ml"))).toBe("25 ml heavy syrup");
  });

  test("an unknown ingredient is never weighed", () => {
    expect(titlesAt(bar("  50 ml nobody's bre<>w")).some((title) => / g\b/.test(title))).toBe(false);
    expect(titlesAt(bar("  50 ml nobody's bre<>w")).some((title) => title.startsWith("Convert to cl"))).toBe(true);
  });

  test("dashes and counts are measures of their own", () => {
    expect(titlesAt(bar("  2 dashes orange bit<>ters"))).toEqual([]);
    expect(titlesAt(bar("  1 egg whi<>te"))).toEqual([]);
  });

  test("what fills up is not turned into a weight", () =>
    expect(titlesAt(bar("  top to 180 ml soda wa<>ter")).some((title) => title.includes("Convert to g"))).toBe(false));

  test("rounding says what it rounds, stands behind the exact amount, and is not called safe", () => {
    const { actions } = actionsAt(bar("  23 ml dry g<>in"));
    expect(actions[0]).toMatchObject({ title: "Round to 2.5 ml: 22.5 ml instead of 23 ml", safe: false, kind: "refactor.rewrite" });
    expect(actions[1]).toMatchObject({ title: "Convert to cl: 2.3 cl", safe: true });
    expect(actions[2]).toMatchObject({ title: "Convert to cl, rounded to 0.25 cl: 2.25 cl instead of 2.3 cl", safe: false });
  });

  test("no amount is said to stand instead of itself", () => {
    const titles = titlesAt(bar("  50 ml dry g<>in")).filter((title) => title.includes("rounded to 0.1 g"));
    expect(titles.length).toBeGreaterThan(0);
    for (const title of titles) expect(title).not.toMatch(/: (.+) instead of \1$/);
  });

  test("an amount that is measurable already is not offered rounded", () =>
    expect(titlesAt(bar("  22.5 ml dry g<>in")).some((title) => /rounded to 0.25 cl/.test(title))).toBe(false));
});

describe("a drink", () => {
  const sour = (house = "house Bar\n") =>
    `=== bar.drink\n${house}=== spec.drink\ndrink S<>lip\n  glass: coupe\n  method: shake 12 s\n\n  60 ml dry gin\n  2.25 cl lime juice\n    or 22.5 ml lemon juice\n  22.5 ml simple syrup\n  2 dashes orange bitters\n  1 egg white\n`;

  test("all that is measured is converted, the rest is left", () => {
    const after = apply(sour("house Bar\n  ounce: 30 ml\n"), "Convert the drink to oz of 30 ml, exactly").split("\n");
    expect(after.slice(4)).toEqual([
      "  2 oz dry gin",
      "  3/4 oz lime juice",
      "    or 3/4 oz lemon juice",
      "  3/4 oz simple syrup",
      "  2 dashes orange bitters",
      "  1 egg white",
      "",
    ]);
  });

  test("to parts and back gives the drink that it was", () => {
    const inParts = apply(sour(), "Convert the drink to parts");
    expect(inParts).toContain(
      "  method: shake 12 s\n  part: 7.5 ml\n\n  8 parts dry gin\n  3 parts lime juice\n    or 3 parts lemon juice\n  3 parts simple syrup\n  2 dashes",
    );
    const back = apply(inParts.replace("Slip", "S<>lip"), "Convert the parts to ml");
    expect(back).toBe(sour().slice(sour().indexOf("drink S")).replace("<>", "").replace("2.25 cl", "22.5 ml"));
  });

  test("parts with a total go back to what the total shares out", () => {
    const text = "=== spec.drink\ndrink S<>lip\n  total: 90 ml\n  2 parts dry gin\n  3/4 part lime juice\n  1 part simple syrup\n";
    expect(apply(text, "Convert the parts to ml")).toBe("drink Slip\n  48 ml dry gin\n  18 ml lime juice\n  24 ml simple syrup\n");
  });

  test("parts without a size stay parts", () =>
    expect(titlesAt("drink S<>lip\n  2 parts dry gin\n  1 part lime juice\n").some((title) => title.includes("parts to"))).toBe(false));

  test("a riff converts its own lines and leaves the amounts that only tell two pours apart", () => {
    const text = `${sour().replace("<>", "")}\ndrink Slip, E<>bb\n  from: Slip\n  swap 60 ml dry gin for 45 ml aged rum\n  without 22.5 ml simple syrup\n`;
    const after = apply(text, "Convert the drink to cl, exactly");
    expect(after).toContain("swap 60 ml dry gin for 4.5 cl aged rum\n  without 22.5 ml simple syrup");
    expect(after).toContain("  60 ml dry gin\n");
  });

  test("on a pour there is that pour alone; a command has the whole drink too", () => {
    const text = "drink Slip\n  50 ml g<>in\n  20 ml lemon juice\n";
    expect(titlesAt(text).filter((title) => title.includes("the drink"))).toEqual([]);
    const house = houseOf(text.replace("<>", ""));
    const start = { line: 1, character: 4 };
    const all = conversionsOf(house, house.document(`${root}/spec.drink`)!, { start, end: start }).map(({ title }) => title);
    expect(all.slice(0, titlesAt(text).length)).toEqual(titlesAt(text));
    expect(all).toContain("Convert the drink to cl, exactly");
  });

  test("above the first entry nothing is offered", () =>
    expect(titlesAt("# Win<>ter\n\ndrink Slip\n  50 ml gin\n\ndrink Fog\n  50 ml gin\n")).toEqual([]));

  test("a file is converted whole, with its preps, and nothing is written twice", () => {
    const text = "prep brine\n  80 ml water\n  20 g sea salt\n\ndrink S<>lip\n  total: 9 cl\n  2 parts dry gin\n  5 ml brine\n";
    expect(apply(text, "Convert the whole file to cl, exactly")).toBe(
      "prep brine\n  8 cl water\n  20 g sea salt\n\ndrink Slip\n  total: 9 cl\n  2 parts dry gin\n  0.5 cl brine\n",
    );
  });
});

describe("for any amounts", () => {
  const units = ["ml", "cl", "oz", "dl"] as const;
  const amount = fc
    .tuple(fc.integer({ min: 1, max: 4000 }), fc.constantFrom(...units))
    .map(([hundredths, unit]) => `${hundredths / 100} ${unit}`);
  const ounce = fc.constantFrom("us", "imperial", "30 ml", "25 ml");
  const target = fc.constantFrom("ml", "cl", "oz", "g");

  test(
    "a conversion keeps every figure of the drink, and converting back gives the same amounts",
    () =>
      fc.assert(
        fc.property(fc.tuple(amount, amount, amount), ounce, target, ([gin, juice, syrup], ounceText, to) => {
          const house = `=== bar.drink\nhouse Bar\n  ounce: ${ounceText}\n=== spec.drink\n`;
          const text = `drink S<>lip\n  method: shake 12 s\n  ${gin} dry gin\n  ${juice} lime juice\n  ${syrup} simple syrup\n`;
          const there = convertedTo(house + text, to);
          if (there === undefined) return;
          const [before, after] = [text.replace("<>", ""), there].map((one) => outcomeOf(house + one));
          for (const figure of ["beforeMassG", "strengthPct", "waterMl", "acidGPer100Ml", "sugarGPer100Ml"] as const) {
            // The melt is itself found to about a part in a thousand million.
            expect(after!.value(figure)! / before!.value(figure)!).toBeCloseTo(1, 8);
          }
          const back = convertedTo(house + there.replace("Slip", "S<>lip"), gin.split(" ")[1]!);
          if (back === undefined) return;
          const written = /^ *([\d./ ]+) [a-z]/.exec(back.split("\n")[2]!)![1]!;
          expect(evaluate(written) / Number(gin.split(" ")[0])).toBeCloseTo(1, 8);
        }),
        { numRuns: 30 },
      ),
    20_000,
  );
});

function convertedTo(text: string, unit: string): string | undefined {
  const { fixture, actions } = actionsAt(text);
  const action = actions.find(({ title }) => title.startsWith(`Convert the drink to ${unit}`) && title.endsWith("exactly"));
  return action && applied(fixture, action);
}

function outcomeOf(text: string): Outcome {
  const house = houseOf(text);
  return assessDrink(house, entryNamed(house, "Slip")).outcome;
}

/** `1 1/2`, `3/4`, `0.5` */
function evaluate(numeral: string): number {
  return numeral
    .trim()
    .split(" ")
    .map((part) => part.split("/").map(Number))
    .reduce((sum, [top, bottom]) => sum + top! / (bottom ?? 1), 0);
}
