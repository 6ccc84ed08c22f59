import { describe, expect, test } from "vitest";
import { type Way, waysTo, wayWith } from "../../server/house/bring-to.ts";
import { changeable } from "../../server/house/changeable.ts";
import { amountText, lineAfter } from "../../server/house/changed-line.ts";
import { leftOverText } from "../../server/house/left-over.ts";
import { readTarget, type Target } from "../../server/house/targets.ts";
import { entryNamed, houseOf } from "./make.ts";

function ask(text: string, name: string, to: string) {
  const house = houseOf(text);
  const of = changeable(house, entryNamed(house, name))!;
  const target = readTarget(house, of.entry, to);
  if ("problem" in target) throw new Error(target.problem);
  return { house, of, target };
}

function way(text: string, name: string, to: string, pour: string): Way & { says?: string; line?: string } {
  const { house, of, target } = ask(text, name, to);
  const found = wayWith(house, of, target, pour);
  if (!("pour" in found)) throw new Error(found.problem);
  const { reached } = found;
  return {
    ...found,
    ...(reached && { says: leftOverText(target, reached, of.settings) }),
    ...(reached?.edit && { line: lineAfter(reached.edit).text }),
  };
}

/** Labels that say what they hold to the last digit, so that a hand can do the same sum. */
const shelf = `stock plain sugar
  kind: sugar
  abv: 0 %
  sugar: 100 g/100 g sucrose
  acid: none

stock plain salt
  kind: salt
  abv: 0 %
  sugar: none
  acid: none
  salt: 100 g/100 g

stock pure citric
  kind: acid
  abv: 0 %
  sugar: none
  acid: 100 g/100 g citric

stock pure malic
  kind: acid
  abv: 0 %
  sugar: none
  acid: 100 g/100 g malic

stock sweet orange
  kind: juice
  abv: 0 %
  sugar: 10 g/100 ml
  acid: 0.8 g/100 ml as citric

stock sharp lime
  kind: juice
  abv: 0 %
  sugar: none
  acid: 6 g/100 ml as citric

stock sweet water
  kind: syrup
  abv: 0 %
  sugar: 60 g/100 ml sucrose
  acid: none

stock plain spirit
  kind: spirit
  abv: 40 %

`;

describe("by hand", () => {
  test.each([
    // Sugar by weight: sugar ÷ (sugar + water), the definition of °Brix.
    ["prep p\n  200 g plain sugar\n  100 g water\n", "66 brix", "plain sugar", (66 / 34) * 100],
    ["prep p\n  200 g plain sugar\n  100 g water\n", "66 brix", "water", (34 / 66) * 200],
    ["prep p\n  2 parts plain sugar\n  1 part water\n  parts by: weight\n", "66 brix", "plain sugar", 66 / 34],
    // 100 g of 62 °Bx and 540 g of water are 9.6875 °Bx: mass balance.
    ["prep p\n  62 g plain sugar\n  38 g water\n", "9.6875 brix", "water", 38 + 540],
    // Salt by weight: 20 % is one part to four.
    ["prep p\n  10 g plain salt\n  80 g water\n", "salt 20 %", "plain salt", 20],
    ["prep p\n  10 g plain salt\n  to 100 g water\n", "20 g/100 g salt", "plain salt", 20],
    // A salt solution of 1 : 5 by weight is common practice, no source; a quarter of a part more makes it 1 : 4.
    ["prep p\n  1 part plain salt\n  5 parts water\n  parts by: weight\n", "salt 20 %", "plain salt", 1.25],
    ["prep p\n  1 part plain salt\n  4 parts water\n  parts by: weight\n", "salt 20 %", "plain salt", 1],
    // 60 ml of 40 % vol and 30 ml of water at 20 °C are 26.705 % vol: OIML R 22.
    ["prep p\n  60 ml plain spirit\n", "strength 26.705 %", "water", 30],
  ])("%j to %s with %s", (text, to, pour, exact) => {
    const { reached } = way(shelf + text, "p", to, pour);
    expect(reached!.exact / exact).toBeCloseTo(1, 3);
  });

  test("56 to 50 % vol takes 12.42 parts of water to a hundred", () => {
    // US gauging manual table 6 (27 CFR 30.66), at 60 °F, where the figures differ by less than 0.1.
    const { reached } = way("stock overproof\n  kind: spirit\n  abv: 56 %\n\nprep p\n  100 ml overproof\n", "p", "strength 50 %", "water");
    expect(Math.abs(reached!.exact - 12.42)).toBeLessThan(0.1);
  });

  test("orange juice of 0.8 to lime's 6 g/100 ml: 5.2 g of citric acid for each 100 ml that it makes", () => {
    const text = `${shelf}prep p\n  1 l sweet orange\n`;
    const citric = way(text, "p", "acid of sharp lime", "pure citric").reached!;
    // What dissolves adds volume, 0.598 ml a gram (CRC Handbook, see `liquid.ts`): 8 + x = 0.06 × (1000 + 0.598 x).
    expect(citric.exact).toBeCloseTo(52 / (1 - 0.06 * 0.598), 1);
    expect(citric).toMatchObject({ step: 0.1, amount: 53.9 });
    // 1.047 g of malic acid titrate as 1 g of citric: fruit juice acids conversions.
    expect(way(text, "p", "acid of sharp lime", "pure malic").reached!.exact / citric.exact).toBeCloseTo(1.047, 2);
    expect(way(text, "p", "acid of sharp lime", "sharp lime").problem).toMatch(
      /^However much sharp lime goes in, the acid does not rise above/,
    );
  });

  const mixed = (syrup: string) => `${shelf}drink d\n  60 ml plain spirit\n  30 ml sharp lime\n  ${syrup} sweet water\n`;
  test("ratio 8 on 1.8 g of acid is 14.4 g of sugar: 24 ml, of which 25 ml is the nearest and leaves a third over", () => {
    const { reached, says, line } = way(mixed("20 ml"), "d", "ratio 8", "sweet water");
    expect(reached!.exact).toBeCloseTo(24, 6);
    expect(reached!.leftOver).toBeCloseTo(15 / 1.8 - 8, 6);
    expect(says).toMatch(/^Ratio 8\.3 ± 0\.\d+: 0\.3 above; 24 ml would meet it, in steps of 2\.5 ml\.$/);
    expect(line).toBe("  25 ml sweet water");
  });
  test("by lime: 12 g of sugar on 1.5 g of acid, 25 ml to the drop", () => {
    const { reached, says } = way(mixed("20 ml"), "d", "ratio 8", "sharp lime");
    expect(reached!.exact).toBeCloseTo(25, 6);
    expect(says).toMatch(/^Ratio 8\.0 ± 0\.\d+: nothing to speak of is left over\.$/);
  });
});

describe("how a pour is measured", () => {
  const sour = (lines: string, house = "") => `${house}drink d\n  method: shake 12 s\n  60 ml rum\n  30 ml lime juice\n${lines}`;
  test.each([
    ["  20 ml plain syrup\n", "", "plain syrup", /^[\d.]+ ml$/, 2.5],
    ["  2 cl plain syrup\n", "", "plain syrup", /^[\d.]+ cl$/, 0.25],
    ["  2/3 oz plain syrup\n", "house h\n  ounce: 30 ml\n  jigger: 7.5 ml\n\n", "plain syrup", /^\d? ?[\d/]+ oz$/, 0.25],
    ["  12 g sugar\n", "", "sugar", /^[\d.]+ g$/, 0.1],
    ["  12 g sugar\n", "house h\n  scale: 1 g\n\n", "sugar", /^\d+ g$/, 1],
    ["  3 barspoons sugar\n", "", "sugar", /^\d+ barspoons$/, 1],
  ])("%j%s", (line, house, pour, text, step) => {
    const { pour: found, reached } = way(sour(line, house), "d", "ratio 9", pour);
    expect(amountText(found, reached!.amount)).toMatch(text);
    expect(reached!.step).toBeCloseTo(step, 9);
    expect(reached!.amount / step).toBeCloseTo(Math.round(reached!.amount / step), 6);
  });
  test("one of several is one, and so is written", () =>
    expect(way("drink d\n  100 ml water\n  2 dashes saline\n", "d", "salt 0.16 g/100 ml", "saline").line).toBe("  1 dash saline"));
  test("what serves eight is measured eight times", () =>
    expect(
      way("drink d\n  serves: 8\n  400 ml rum\n  200 ml lime juice\n  200 ml plain syrup\n", "d", "ratio 9", "plain syrup").reached!.step,
    ).toBe(20));
  test("parts of a total share it out anew", () => {
    // 1 part of 40 % in 3 parts is 13.3 % vol; in a total that stays, 2 in 4 are 20: volumes, contraction aside.
    const { reached } = way(
      `${shelf}drink d\n  total: 120 ml\n  1 part plain spirit\n  2 parts water\n`,
      "d",
      "strength 20 %",
      "plain spirit",
    );
    expect(reached!.amount).toBe(2);
    expect(reached!.after.value("afterVolumeMl")).toBeCloseTo(120, -1);
  });
  test("what a jigger is too coarse for goes in by the drop, if no unit was named", () => {
    const text = "drink d\n  150 ml lemonade\n";
    expect(way(text, "d", "salt 0.1 g/100 ml", "saline").line).toMatch(/^ {2}\d+ drops saline$/);
    expect(way(text, "d", "salt 0.1 g/100 ml", "1 dash saline").line).toMatch(/^ {2}\d+ dash(es)? saline$/);
  });
});

describe("which line is changed", () => {
  const parent = "drink d\n  60 ml rum\n  10 ml lime juice\n  20 ml lime juice\n  20 ml plain syrup\n  top to 200 ml soda water\n";
  test("a pour that is there twice is told apart by its amount", () => {
    const { house, of, target } = ask(parent, "d", "ratio 5");
    expect(wayWith(house, of, target, "lime juice")).toEqual({ problem: expect.stringContaining("“10 ml lime juice”") });
    expect(way(parent, "d", "ratio 5", "20 ml lime juice").line).toMatch(/^ {2}[\d.]+ ml lime juice$/);
  });
  test("a riff writes its own line, and none that would mean another pour", () => {
    const riff = `${parent}\ndrink r\n  from: d\n  swap rum for gin\n`;
    expect(way(riff, "r", "ratio 5", "10 ml lime juice").line).toMatch(/^ {2}[\d.]+ ml lime juice$/);
    expect(way(riff, "r", "ratio 5", "20 ml lime juice").reached).not.toHaveProperty("edit");
    expect(way(riff, "r", "strength 9 %", "gin").line).toMatch(/^ {2}swap rum for [\d.]+ ml gin$/);
  });
  test("a new pour stands above what fills up, as it was typed", () => {
    const { reached } = way(parent, "d", "sweetness 9 g/100 ml", '"plain syrup", frozen');
    expect(reached!.edit!.line).toBe(4);
    const house = houseOf("drink d\n  50 ml gin\n    or rum\n  top soda water\n  glass: highball\n");
    const of = changeable(house, entryNamed(house, "d"))!;
    const found = wayWith(house, of, readTarget(house, of.entry, "sweetness 4") as Target, "sugar, muddled") as Way;
    expect(lineAfter(found.reached!.edit!)).toEqual({ line: 3, text: expect.stringMatching(/^ {2}[\d.]+ g sugar, muddled$/) });
  });
  test("what is topped up to a volume is changed there", () =>
    expect(way(parent, "d", "strength 10 %", "soda water").line).toMatch(/^ {2}top to [\d.]+ ml soda water$/));
});

describe("what cannot be, in words", () => {
  const drink =
    "drink d\n  method: shake 12 s\n  60 ml rum\n  30 ml lime juice\n  20 ml plain syrup\n  top soda water\n  1 egg white\n  6-8 g sugar\n  gin\n  glass: highball\n  mint leaves, optional\n  10 ml cream, optional\n";
  test.each([
    ["ratio 8", "rum", /Unknown|unknown|how much gin/],
    ["ratio 8", "top soda water", /^Soda water fills up what is left/],
    ["ratio 8", "egg white", /^Egg white is counted/],
    ["ratio 8", "sugar", /^Sugar is poured by a range/],
    ["ratio 8", "gin", /^No amount of gin is written/],
  ])("%s by %s", (to, pour, words) => expect(way(drink, "d", to, pour).problem).toMatch(words));
  test.each([
    ["ratio 8", "cream", /written there, but as none of the liquid/],
    ["ratio 8", "lime jiuce", /Did you mean “lime juice”/],
    ["ratio 8", "# none", /nothing that goes into the liquid/],
    ["ratio 8", "d", /^D is made from d, and cannot go into it/],
  ])("%s by %s is not understood", (to, pour, words) => {
    const { house, of, target } = ask(drink, "d", to);
    expect(wayWith(house, of, target, pour)).toEqual({ problem: expect.stringMatching(words) });
  });
  const plain = "drink d\n  60 ml rum\n  30 ml lime juice\n  20 ml plain syrup\n";
  test.each([
    [plain, "ratio 8", "water", /^Water does not move the ratio: it stays/],
    [plain, "strength 30 %", "plain syrup", /^Even without any plain syrup the strength is/],
    [plain, "strength 30 %", "water", /^Water only leads further away: the strength is [\d.]+ % vol now\.$/],
    [plain, "ratio 0.2", "lime juice", /^However much lime juice goes in, the ratio does not fall below/],
    [plain, "ratio 200", "lime juice", /beyond that there is less than 0\.15 g of acid/],
    ["drink d\n  2 parts rum\n  1 part lime juice\n", "volume 90 ml", "rum", /parts without a size/],
    ["drink d\n  2 parts rum\n  1 part lime juice\n", "strength 20 %", "10 ml water", /beside which an amount of water says nothing/],
    ["drink d\n  total: 90 ml\n  2 parts rum\n  1 part lime juice\n", "volume 100 ml", "rum", /share out `total:`/],
    ["prep d\n  100 g sugar\n  100 g water\n  brix: 49\n", "60 brix", "sugar", /^The reading in `brix:` stands over what is computed/],
    ["prep d\n  100 g nettles\n  100 g water\n", "60 brix", "sugar", /^The sugar is unknown: nettles is in neither/],
  ])("%j: %s by %s", (text, to, pour, words) => expect(way(text, "d", to, pour).problem).toMatch(words));
  test("where no pour was named, those that matter are told of, and none that makes another drink of it", () => {
    const { of, target } = ask(plain, "d", "ratio 9");
    const ways = waysTo(of, target);
    const met = ways.flatMap(({ pour, reached }) => (reached ? [pour.ingredient.resolution.text] : []));
    expect(met.sort()).toEqual(["lime juice", "plain syrup"]);
    expect(waysTo(of, { ...target, value: 40 }).map(({ problem }) => problem)).toContainEqual(
      expect.stringMatching(/^It would take [\d.]+ ml /),
    );
  });
});

describe("what was asked", () => {
  const drink = "drink d\n  60 ml rum\n  30 ml lime juice\n  20 ml plain syrup\n\ndrink e\n  50 ml gin\n";
  const read = (to: string, text = drink) => {
    const house = houseOf(text);
    return readTarget(house, entryNamed(house, "d"), to);
  };
  test.each([
    ["ratio 8", "ratio", 8],
    ["8 ratio", "ratio", 8],
    ["strength 18 %", "strengthPct", 18],
    ["18 % vol", "strengthPct", 18],
    ["18 % abv", "strengthPct", 18],
    ["120 ml", "afterVolumeMl", 120],
    ["volume 1 1/2 oz", "afterVolumeMl", 1.5 * 29.5735295625], // US fluid ounce: NIST HB 44
    ["sugar 70 g/l", "sweetnessGPer100Ml", 7],
    ["acid 0.8 g/100 ml as citric", "acidGPer100Ml", 0.8],
    ["0.4 g/100 ml of salt", "saltGPer100Ml", 0.4],
  ])("%s", (to, figure, value) => {
    const target = read(to) as Target;
    expect(target.goal.figure).toBe(figure);
    expect(target.value).toBeCloseTo(value, 9);
  });
  test.each([
    ["the strength of e", "strengthPct"],
    ["strength of “e”", "strengthPct"],
  ])("%s", (to, figure) => expect(read(to)).toMatchObject({ goal: { figure }, like: "e" }));
  test.each([
    ["66 brix", "brix", 66],
    ["66 °Bx", "brix", 66],
    ["sugar 66 %", "brix", 66],
    ["20 % salt", "saltGPer100G", 20],
    ["acid 6 g/100 ml", "acidGPer100Ml", 6],
    ["acid 6 %", "acidGPer100G", 6],
    ["acid of lime juice", "acidGPer100Ml", 6],
  ])("%s of a prep", (to, figure, value) =>
    expect(read(to, "prep d\n  100 g water\n")).toMatchObject({ goal: { figure }, value: expect.closeTo(value, 6) }),
  );
  test.each([
    ["", /one number/],
    ["9", /does not say of what/],
    ["6 g/100 ml", /does not say of what/],
    ["ratio", /one number/],
    ["sweetness 7 to 8", /one number/],
    ["strenght 18 %", /Did you mean “strength”/],
    ["66 brix", /nothing|not/],
    ["acid 6 %", /not counted in “%”/],
    ["acid of nobody", /There is no drink “nobody”/],
    ["ratio of e", /The ratio of e is unknown: less than/],
    ["strength -3 %", /below zero/],
  ])("“%s” is answered in words", (to, words) => expect(read(to)).toEqual({ problem: expect.stringMatching(words) }));
});
