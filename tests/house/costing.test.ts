/** A menu costed by hand. Prices are invented; each sum stands beside its check. */
import { describe, expect, test } from "vitest";
import { costedOn, movedBetween, standingOf, summaryOf } from "../../server/house/costing.ts";
import { supposePrice } from "../../server/house/supposed-price.ts";
import { entryNamed, houseOf } from "./make.ts";

/** 28.00 for 700 ml is 0.04 a millilitre, 10.00 a litre 0.01. */
const bar = (...lines: string[]) => `house Test Room
  currency: GBP
  tax: 20 %
  prices: with tax
  target cost: 22 %

stock plain gin
  kind: spirit
  abv: 40 %
  price: 28.00 per 700 ml

stock sour water
  kind: mixer
  price: 10.00 per l

prep gin syrup
  100 ml plain gin
  100 ml sour water

drink Slack Rope
  60 ml plain gin

drink Taut Rope
  50 ml plain gin
  100 ml sour water

drink Long Rope
  serves: 4
  200 ml plain gin

drink Blind Rope
  60 ml plain gin
  10 ml rum

drink Sour Rope
  100 ml sour water

menu Card
${lines.map((line) => `  ${line}\n`).join("")}`;

const house = houseOf(
  bar(
    "- Sour Rope 6.00",
    "section Strong 🍸",
    "- Slack Rope 12.00 / 45.00 carafe",
    "- Taut Rope 18.00",
    "- Long Rope 48.00",
    "- Blind Rope 12.00",
    "- Nobody 9.00",
    "- Long Rope",
  ),
);
const drinks = costedOn(house, entryNamed(house, "Card"));
const drinkNamed = (name: string) => drinks.find((drink) => drink.name === name)!;

describe("a drink on a menu", () => {
  test.each([
    // name, cost, net, tax, share, margin
    ["Sour Rope", 1, 5, 1, 0.2, 4], // 100 × 0.01; 6.00 ÷ 1.2
    ["Slack Rope", 2.4, 10, 2, 0.24, 7.6], // 60 × 0.04; 12.00 ÷ 1.2
    ["Taut Rope", 3, 15, 3, 0.2, 12], // 50 × 0.04 + 100 × 0.01
    ["Long Rope", 8, 40, 8, 0.2, 32], // 200 × 0.04 for all four serves, which the price buys together
  ])("%s", (name, cost, net, tax, share, margin) => {
    const drink = drinkNamed(name);
    expect(drink.cost.value).toBeCloseTo(cost, 8);
    expect(drink.net).toBeCloseTo(net, 8);
    expect(drink.tax).toBeCloseTo(tax, 8);
    expect(drink.share.value).toBeCloseTo(share, 8);
    expect(drink.margin.value).toBeCloseTo(margin, 8);
  });

  test("stands in the menu's order, under its section", () =>
    expect(drinks.map(({ section, name }) => `${section ?? "-"}: ${name}`)).toEqual([
      "-: Sour Rope",
      "Strong 🍸: Slack Rope",
      "Strong 🍸: Taut Rope",
      "Strong 🍸: Long Rope",
      "Strong 🍸: Blind Rope",
      "Strong 🍸: Nobody",
      "Strong 🍸: Long Rope",
    ]));

  test("of unknown cost stays unknown, with its reason and with what is known of it", () =>
    expect(drinkNamed("Blind Rope")).toMatchObject({
      cost: { value: null, because: ["the price of rum is not given"] },
      share: { value: null },
      margin: { value: null },
      known: expect.closeTo(2.4, 8),
      net: 10,
    }));

  test("that nobody declared, or that has no price, says so", () => {
    expect(drinkNamed("Nobody").cost.because).toEqual(["Nobody is in neither the house nor the larder"]);
    expect(drinks.at(-1)).toMatchObject({ price: null, because: ["no price is given"], share: { value: null } });
  });

  test("has further prices for sizes that nobody states", () => expect(drinkNamed("Slack Rope").others).toEqual(["£45.00 carafe"]));
});

test("prices without tax have it on top, and a tax that is not stated is not guessed", () => {
  const on = (text: string) => {
    const other = houseOf(text);
    return costedOn(other, entryNamed(other, "Card"))[0];
  };
  // 10.00 is all the house's, and the guest pays 2.00 more
  expect(on(bar("- Slack Rope 10.00").replace("with tax", "without tax"))).toMatchObject({ net: 10, tax: 2 });
  expect(on(bar("- Slack Rope 10.00").replace("  tax: 20 %\n", ""))).toMatchObject({ net: null, tax: null, margin: { value: null } });
});

test("the summary is of known shares only: 20, 20, 20 and 24 %", () => {
  const { shares, ...counts } = summaryOf(drinks);
  expect(counts).toEqual({ drinks: 7, costed: 5, shared: 4 });
  expect(shares!.low).toBeCloseTo(0.2, 8);
  expect(shares!.median).toBeCloseTo(0.2, 8);
  expect(shares!.high).toBeCloseTo(0.24, 8);
  expect(summaryOf([])).toEqual({ drinks: 0, costed: 0, shared: 0, shares: null });
});

describe("a supposed price", () => {
  const supposing = (text: string, from = house) => {
    const supposed = supposePrice(from, from.scopeOf(entryNamed(from, "Card")), text);
    if ("problem" in supposed) throw new Error(supposed.problem);
    return supposed;
  };
  const moved = (text: string) => {
    const { house: other } = supposing(text);
    return movedBetween(drinks, costedOn(other, entryNamed(other, "Card")), 0.22);
  };

  test("moves what is poured of it, and nothing else", () => {
    // a tenth more of 2.40, 2.00 and 8.00; Blind Rope by what is known of it
    expect(moved("plain gin +10 %").map(({ before, after }) => [before.name, after.known - before.known])).toEqual([
      ["Slack Rope", expect.closeTo(0.24, 8)],
      ["Taut Rope", expect.closeTo(0.2, 8)],
      ["Long Rope", expect.closeTo(0.8, 8)],
      ["Blind Rope", expect.closeTo(0.24, 8)],
      ["Long Rope", expect.closeTo(0.8, 8)],
    ]);
  });

  test("says which drinks cross the target", () => {
    const crossing = (text: string) => moved(text).flatMap(({ before, crosses }) => (crosses ? [`${before.name} ${crosses}`] : []));
    // 20 % becomes 24 % for Long Rope (8.00 × 1.2 of 40), 22.7 % for Taut Rope (3.40 of 15)
    expect(crossing("plain gin +20 %")).toEqual(["Taut Rope up", "Long Rope up"]);
    // 24 % becomes 21.6 %
    expect(crossing("plain gin −10 %")).toEqual(["Slack Rope down"]);
    expect(standingOf(drinkNamed("Slack Rope"), undefined)).toBeUndefined();
  });

  test.each([
    ["plain gin +10 %", "30.80 per 700 ml"],
    ["plain gin -12.5%", "24.50 per 700 ml"],
    ["plain gin 24.00 per 500 ml", "24.00 per 500 ml"],
    ["Plain Gin 30", "30.00 per 700 ml"],
    ["sour water +1 %", "10.10 per l"],
  ])("%s", (text, after) => expect(supposing(text).after).toBe(after));

  test("comes on top of the one before", () =>
    expect(supposing("plain gin +10 %", supposing("plain gin +10 %").house).after).toBe("33.88 per 700 ml"));

  test.each(["", "  price:\n", "  price: none\n"])("may be the first of a stock that had none: %j", (price) => {
    const without = houseOf(bar("- Slack Rope 12.00").replace("  price: 28.00 per 700 ml\n", price));
    const { house: other, before } = supposing("plain gin 28.00 per 700 ml", without);
    expect(before).toBeUndefined();
    expect(costedOn(other, entryNamed(other, "Card"))[0]!.cost.value).toBeCloseTo(2.4, 8);
    expect(supposePrice(without, without.scopeOf(entryNamed(without, "Card")), "plain gin +10 %")).toMatchObject({
      problem: "plain gin has no price that could change.",
    });
  });

  test.each([
    ["plain jin +10 %", "“plain jin +10 %” names no stock that is known here.", "Did you mean “plain gin”?"],
    ["gin syrup +10 %", "gin syrup is made here, so it has no price of its own.", "Name what goes into it."],
    ["plain gin +10", "“+10” behind plain gin reads as no change and as no price.", "Write a stock"],
    ["plain gin -110 %", "The price of plain gin cannot fall by more than all of it.", "Give less"],
    ["celery 3 per 1", "celery is the larder's, and the house does not buy it.", "Write a `stock celery`"],
    ["", "“” names no stock that is known here.", "Write a stock"],
  ])("%j is not understood, and says why", (text, problem, todo) =>
    expect(supposePrice(house, house.scopeOf(entryNamed(house, "Card")), text)).toEqual({ problem, todo: expect.stringContaining(todo) }),
  );

  test("changes nothing in the house that it is supposed of", () => expect(costedOn(house, entryNamed(house, "Card"))).toEqual(drinks));
});

test("prices in the blocks of a chapter may be supposed too", () => {
  const block = (text: string) =>
    ["- point", "", "  ```drink", ...text.split("\n").map((line) => (line ? `  ${line}` : "")), "  ```", ""].join("\n");
  const [head, ...rest] = bar("- Slack Rope 12.00").split(/\n\n(?=drink|stock|menu)/);
  const chapter = houseOf(`=== book.md\n# Ropes 🪢\n\n${[head!, ...rest].map(block).join("\nsaid in between\n\n")}`);
  const card = entryNamed(chapter, "Card");
  const supposed = supposePrice(chapter, chapter.scopeOf(card), "plain gin +10 %");
  if ("problem" in supposed) throw new Error(supposed.problem);
  expect(costedOn(chapter, card)[0]!.cost.value).toBeCloseTo(2.4, 8);
  // The menu keeps its place in the text.
  const same = supposed.house.document(chapter.getDocumentOf(card).uri)!.tree.entries[chapter.getIndexOf(card)]!;
  expect(same.name!.text).toBe("Card");
  expect(costedOn(supposed.house, same)[0]!.cost.value).toBeCloseTo(2.64, 8);
});
