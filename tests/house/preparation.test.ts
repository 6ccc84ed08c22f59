/** An evening worked out by hand, and what holds for every evening. Prices are invented. */
import fc from "fast-check";
import { evaluate } from "mathjs";
import { describe, expect, test } from "vitest";
import { assessDrink } from "../../server/house/drink.ts";
import { readMix } from "../../server/house/mix.ts";
import { drinksOn, type Preparation, prepare } from "../../server/house/preparation.ts";
import { later } from "../../server/house/use-by.ts";
import { entryNamed, houseIn, houseOf } from "./make.ts";

const date = "2026-11-28";

const bar = `house Test Room
  currency: GBP
  waste: 10 %

stock plain gin
  kind: spirit
  abv: 40 %
  price: 28.00 per 700 ml

stock white sugar
  kind: sugar
  price: 1.30 per kg

stock lime
  kind: fruit
  price: 0.40 per 1
  each: 80 g; wedge 10 g
  yield: juiced 25 ml

stock lime wedge
  kind: fruit
  each: 10 g

stock fizz water
  kind: mixer
  waste: none
  price: 8.40 per 24 x 200 ml

stock egg
  kind: egg
  each: 50 g
  price: 3.60 per 12

prep plain syrup
  1 part white sugar
  1 part water
  parts by: weight
  keeps: 14 days chilled

prep lime cordial
  200 g plain syrup
  200 g water
  keeps: 2 to 3 days chilled

drink Slack Rope
  garnish: 1 lime wedge
  60 ml plain gin
  25 ml lime juice

drink Taut Rope
  garnish: none
  30 ml plain gin
  100 g lime cordial
  50 ml fizz water
  1 egg

drink Long Rope
  garnish: none
  serves: 4
  120 ml plain gin
  80 g plain syrup

menu Card
  - Slack Rope 12.00
  - Taut Rope 12.00
  section For four
  - Long Rope 40.00
  - Slack Rope 12.00
`;

const house = houseOf(bar);
const card = entryNamed(house, "Card");
const evening = (serves: number, shares?: Readonly<Record<string, number>>): Preparation =>
  prepare(house, card, {
    serves,
    date,
    ...(shares && { shares: new Map(Object.entries(shares).map(([name, share]) => [entryNamed(house, name), share])) }),
  });
const bought = ({ purchases }: Preparation, name: string) => purchases.find(({ entry }) => entry.name!.text === name);
const made = ({ preps }: Preparation, name: string) => preps.find(({ entry }) => entry.name!.text === name);

describe("thirty serves of three drinks, ten each", () => {
  const plan = evening(30);

  test("a drink that stands twice on the menu is counted once", () =>
    expect(plan.drinks.map(({ drink, serves }) => [drink.name!.text, serves])).toEqual([
      ["Slack Rope", 10],
      ["Taut Rope", 10],
      ["Long Rope", 10],
    ]));

  test.each([
    // 10 × 60 + 10 × 30 + 10 × 120 ÷ 4 = 1200, ÷ 0.9 for the waste; two bottles of 700
    ["plain gin", "ml", 1200 / 0.9, 2, 56],
    // juice: 10 × 25 ÷ 25 = 10; wedges: 10 × 10 ÷ 80 = 1.25; ÷ 0.9
    ["lime", "piece", 11.25 / 0.9, 13, 5.2],
    // nothing is wasted; one case
    ["fizz water", "ml", 500, 1, 8.4],
    ["egg", "piece", 10 / 0.9, 1, 3.6],
    // cordial: 1000 g in batches of 400 are three, with 600 g of syrup; Long Rope 10 × 80 ÷ 4 = 200 g; half of 800 is sugar
    ["white sugar", "g", 400 / 0.9, 1, 1.3],
  ])("%s", (name, unit, needed, packs, cost) => {
    const one = bought(plan, name)!;
    expect(one).toMatchObject({ unit, packs, because: [] });
    expect(one.needed).toBeCloseTo(needed, 6);
    expect(one.cost).toBeCloseTo(cost, 8);
    expect(one.used).toBeCloseTo((needed / one.pack!.size) * one.pack!.price, 6);
  });

  test("what is made stands after what it is made of, in whole batches unless it is written in parts", () => {
    expect(plan.preps.map(({ entry }) => entry.name!.text)).toEqual(["plain syrup", "lime cordial"]);
    expect(made(plan, "lime cordial")).toMatchObject({ unit: "g", needed: 1000, batches: 3, makes: 1200 });
    const syrup = made(plan, "plain syrup")!;
    expect(syrup.batches).toBeUndefined();
    expect(syrup.needed).toBeCloseTo(800, 8);
    expect(syrup.makes).toBeCloseTo(800, 8);
    expect(syrup.parts.map(({ name, size }) => [name, size])).toEqual([
      ["white sugar", { g: expect.closeTo(400, 8) }],
      ["water", { g: expect.closeTo(400, 8) }],
    ]);
  });

  test("it is good for as long as it says, the shorter end of a range", () => {
    expect(made(plan, "plain syrup")!.useBy).toEqual({ date: "2026-12-12", keeps: "14 days chilled" });
    expect(made(plan, "lime cordial")!.useBy.date).toBe("2026-11-30");
  });

  test("water comes from the tap, and all can be told", () => {
    expect(bought(plan, "water")).toBeUndefined();
    expect(plan.untold).toEqual([]);
  });
});

test("a mix shares the serves out: three to one", () => {
  const plan = evening(40, { "Slack Rope": 3, "Taut Rope": 1 });
  expect(plan.drinks.map(({ serves }) => serves)).toEqual([30, 10, 0]);
  // 30 × 60 + 10 × 30
  expect(bought(plan, "plain gin")!.needed).toBeCloseTo(2100 / 0.9, 6);
});

test("what is used costs what the engine says the drinks cost", () => {
  const names = ["Slack Rope", "Long Rope"];
  const plan = evening(30, Object.fromEntries(names.map((name) => [name, 1])));
  const costs = names.map((name) => 15 * assessDrink(house, entryNamed(house, name)).outcome.value("costPerServe")!);
  expect(plan.purchases.reduce((all, { used }) => all + used!, 0)).toBeCloseTo(costs[0]! + costs[1]!, 6);
});

describe("what cannot be told", () => {
  const planOf = (text: string) => {
    const other = houseOf(`${bar.slice(0, bar.indexOf("drink Slack Rope"))}${text}`);
    return prepare(other, entryNamed(other, "Card"), { serves: 2, date });
  };
  const drink = (...lines: string[]) =>
    `drink Knot\n  garnish: none\n${lines.map((line) => `  ${line}\n`).join("")}\nmenu Card\n  - Knot 9.00\n`;

  test.each([
    ["no price", ["30 ml rum"], [], "no price of rum says in what size it is bought"],
    ["no amount", ["30 ml plain gin", "plain syrup"], [["plain syrup", "Knot", "how much plain syrup goes in is not given"]], undefined],
    [
      "no such thing",
      ["30 ml moon juice, squeezed twice"],
      [["moon juice", "Knot", "moon juice is in neither the house nor the larder"]],
      undefined,
    ],
    ["parts without a size", ["1 part plain gin"], [["plain gin", "Knot", "the parts of Knot have no size"]], undefined],
  ])("%s", (_what, pours, untold, noPack) => {
    const plan = planOf(drink(...pours));
    expect(plan.untold.map(({ name, of, because }) => [name, of, because])).toEqual(untold);
    if (noPack) expect(plan.purchases).toMatchObject([{ noPack, needed: expect.closeTo(60 / 0.9, 6), packs: null, cost: null }]);
  });

  test("a prep that is made from itself is said, and nothing is made of it", () => {
    const plan = planOf(`prep knot syrup\n  100 g knot syrup\n  100 g white sugar\n\n${drink("30 g knot syrup")}`);
    expect(plan.preps).toEqual([]);
    expect(plan.untold).toEqual([{ name: "knot syrup", of: "Knot", because: "knot syrup is made from itself" }]);
  });

  test("a prep says nothing of its keeping: then what goes into it says something of its own", () => {
    const plan = planOf(`prep gin syrup\n  100 g lime cordial\n\n${drink("30 g gin syrup")}`);
    expect(made(plan, "gin syrup")!.useBy).toEqual({ shortest: expect.objectContaining({ name: "lime cordial" }) });
  });
});

test("a drink poured in a drink is made like a prep, and a peel is a sixth of a fruit", () => {
  const other = houseOf(`${bar}
stock orange
  kind: fruit
  price: 0.36 per 1

drink Double Rope
  garnish: orange zest, expressed
  60 ml Slack Rope

menu Other
  - Double Rope 15.00
`);
  const plan = prepare(other, entryNamed(other, "Other"), { serves: 12, date });
  expect(made(plan, "Slack Rope")).toMatchObject({ unit: "ml", needed: 720, batches: 9 });
  // 720 ml out of 85 ml each: nine of 60 ml
  expect(bought(plan, "plain gin")!.needed).toBeCloseTo(540 / 0.9, 6);
  expect(bought(plan, "orange")!.needed).toBeCloseTo(2 / 0.9, 6);
});

describe("of any evening", () => {
  const demo = houseIn("samples/halyard-room");
  const menu = entryNamed(demo, "Winter card");
  const drinks = drinksOn(demo, menu);
  const mixes = fc
    .array(fc.integer({ min: 0, max: 9 }), { minLength: drinks.length, maxLength: drinks.length })
    .filter((mix) => mix.some(Boolean));
  const sharesOf = (mix: readonly number[]) => new Map(drinks.map((drink, index) => [drink, mix[index]!]));

  test("twice the covers never need less, and every pack bought covers the need", () =>
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 300 }), mixes, (serves, mix) => {
        const [once, twice] = [1, 2].map((times) => prepare(demo, menu, { serves: times * serves, date, shares: sharesOf(mix) }));
        for (const one of once!.purchases) {
          const more = twice!.purchases.find(({ entry }) => entry === one.entry)!;
          expect(more.needed).toBeGreaterThanOrEqual(one.needed - 1e-9);
          expect(more.packs ?? 0).toBeGreaterThanOrEqual(one.packs ?? 0);
          if (one.pack) expect(one.packs! * one.pack.size).toBeGreaterThanOrEqual(one.needed * (1 - 1e-8));
        }
        for (const { entry, needed, makes } of once!.preps) {
          expect(makes).toBeGreaterThanOrEqual(needed * (1 - 1e-8));
          expect(twice!.preps.find((more) => more.entry === entry)!.makes).toBeGreaterThanOrEqual(makes! - 1e-9);
        }
      }),
      { numRuns: 25 },
    ));

  test("each prep stands after all that it is made of", () =>
    fc.assert(
      fc.property(mixes, (mix) => {
        const order = prepare(demo, menu, { serves: 50, date, shares: sharesOf(mix) }).preps;
        const names = order.map(({ entry }) => entry.name!.text);
        for (const [index, { parts }] of order.entries())
          for (const { name } of parts) if (names.includes(name)) expect(names.indexOf(name)).toBeLessThan(index);
      }),
      { numRuns: 25 },
    ));

  test("what is poured of a random mix is what is bought less what is left over and what is wasted", () =>
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 500 }), fc.tuple(fc.nat(9), fc.nat(9), fc.nat(9)), (serves, mix) => {
        fc.pre(mix.some(Boolean));
        const [slack, taut, long] = mix;
        const gin = bought(evening(serves, { "Slack Rope": slack, "Taut Rope": taut, "Long Rope": long }), "plain gin");
        const poured = sum([`${60 * slack} ml`, `${30 * taut} ml`, `${30 * long} ml`], serves / (slack + taut + long));
        const out = gin ? (gin.packs! * gin.pack!.size - gin.leftOver!) * 0.9 : 0;
        expect(out).toBeCloseTo(poured, 6);
      }),
    ));
});

/** Volumes added up by a library that knows units. */
function sum(volumes: readonly string[], times: number): number {
  return evaluate(`number((${volumes.join(" + ")}) * ${times}, "ml")`);
}

describe("a mix", () => {
  const drinks = ["Slack Rope", "Taut Rope"].map((name) => ({ drink: entryNamed(house, name), names: [name] }));
  const read = (text: string) => {
    const mix = readMix(text, drinks);
    return "problem" in mix
      ? `${mix.line}: ${mix.problem}`
      : {
          ...Object.fromEntries([...mix.shares].map(([drink, share]) => [drink.name!.text, share])),
          strange: mix.strange.map(({ name, near }) => [name, ...near]),
        };
  };

  test.each([
    ["plain lines", "# Friday 🌙\nSlack Rope: 3\n\nTaut Rope : 0.5\n"],
    ["CSV with a head", 'drink,share\r\nSlack Rope,3\r\n"Taut Rope",0.5\r\n'],
    ["semicolons and a byte order mark", "\uFEFFslack rope;3\nTaut Rope; 0.5"],
    ["a mark against formulas", "'=Rope,0\nSlack Rope,3\nTaut Rope,0.5".replace("'=Rope,0\n", "")],
  ])("of %s", (_what, text) => expect(read(text)).toEqual({ "Slack Rope": 3, "Taut Rope": 0.5, strange: [] }));

  test("keeps the names that are not on the menu, and adds up what stands twice", () =>
    expect(read("Slack Rope: 1\nSlak Rope: 2\nSlack Rope: 2")).toEqual({ "Slack Rope": 3, strange: [["Slak Rope", "Slack Rope"]] }));

  test.each([
    ["Slack Rope", "1: “Slack Rope” does not read as a drink and its share"],
    ["Slack Rope: 1\nTaut Rope: many", "2: “Taut Rope: many” does not read as a drink and its share"],
    ["Slack Rope,1\nTaut Rope,-2", "2: “-2” behind Taut Rope is no share"],
    ["Slack Rope,1,2", "1: “Slack Rope,1,2” does not read as a drink and its share"],
    ['"Slack Rope,1', '1: “"Slack Rope,1” does not read as a drink and its share'],
  ])("%j cannot be counted with", (text, problem) => expect(read(text)).toBe(problem));
});

test("a batch makes what its `yield:` says, whatever went in", () => {
  const other = houseOf(`${bar}
prep strained syrup
  100 g white sugar
  400 ml water
  yield: 300 ml

drink Short Rope
  20 ml strained syrup

menu Short
  - Short Rope 9.00
`);
  // 31 × 20 = 620 ml in batches of 300
  const syrup = made(prepare(other, entryNamed(other, "Short"), { serves: 31, date }), "strained syrup")!;
  expect(syrup).toMatchObject({ unit: "ml", batches: 3 });
  expect(syrup.needed).toBeCloseTo(620, 8);
  expect(syrup.makes).toBeCloseTo(900, 1);
  expect(syrup.parts[0]!.size).toEqual({ g: expect.closeTo(300, 8) });
});

test("what takes an hour or longer is to be begun in time", () => {
  const other = houseOf(`${bar}
prep slow gin
  100 ml plain gin
  method: infuse 30 min; rest 24 hours; fine strain

drink Slow Rope
  20 ml slow gin

menu Slow
  - Slow Rope 9.00
`);
  expect(made(prepare(other, entryNamed(other, "Slow"), { serves: 1, date }), "slow gin")!.long).toEqual(["rest 24 hours"]);
});

test.each([
  ["2026-11-28", 14 * 86400, "2026-12-12"],
  ["2028-02-28", 86400, "2028-02-29"], // a leap year
  ["2026-12-31", 86400, "2027-01-01"],
  ["2026-11-28", 6 * 3600, "2026-11-28"],
  ["2026-02-31", 0, "2026-03-03"], // not a day, and told from one by that
])("%s and %d seconds are %s", (from, seconds, to) => expect(later(from, seconds)).toBe(to));
