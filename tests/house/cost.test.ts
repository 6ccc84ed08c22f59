/** Cost and share of the price as a house states them. Prices are invented; each sum is done by hand beside its check. */
import { describe, expect, test } from "vitest";
import { prepare } from "../../server/house/preparation.ts";
import { costOfDrink } from "../../server/house/sales.ts";
import { showMoney } from "../../server/house/show.ts";
import { specimen } from "../../server/rules/specimen.ts";
import { entryNamed, houseOf } from "./make.ts";

const costIn = (text: string, name = "Slip Water") => {
  const house = houseOf(text);
  return costOfDrink(house, entryNamed(house, name));
};
const perServe = (text: string) => costIn(text)!.perServe.value;

const gin = "stock harbour gin\n  kind: spirit\n  abv: 40 %\n  price: 21.00 per 700 ml\n\n"; // 0.03 a millilitre
const house = (...lines: string[]) => `house The Slip\n  currency: GBP\n${lines.map((line) => `  ${line}\n`).join("")}\n`;
const drink = (pours: readonly string[], changes: Readonly<Record<string, string | undefined>> = {}) => specimen(pours, changes);

describe("cost", () => {
  test("is the pours at their prices; water from the tap costs nothing", () =>
    expect(perServe(`${house()}${gin}${drink(["50 ml harbour gin", "20 ml water"])}`)).toBeCloseTo(1.5, 8));

  test("counts the house's waste, and a stock's own instead of it", () => {
    // 1.50 ÷ 0.96, and 1.50 ÷ 0.9
    expect(perServe(`${house("waste: 4 %")}${gin}${drink(["50 ml harbour gin"])}`)).toBeCloseTo(1.5625, 8);
    const own = gin.replace("  abv", "  waste: 10 %\n  abv");
    expect(perServe(`${house("waste: 4 %")}${own}${drink(["50 ml harbour gin"])}`)).toBeCloseTo(1.5 / 0.9, 8);
    const none = gin.replace("  abv", "  waste: none\n  abv");
    expect(perServe(`${house("waste: 4 %")}${none}${drink(["50 ml harbour gin"])}`)).toBeCloseTo(1.5, 8);
  });

  test.each([
    // 0.40 a lime, which gives 25 ml and weighs 80 g
    ["half a lime, squeezed", "1/2 lime, juiced", 0.2],
    ["its juice, which nobody prices", "25 ml lime juice", 0.4],
    ["a wedge of 10 g of it", "1 lime wedge, muddled", 0.05],
    ["three eggs from a box of twelve at 3.60", "3 eggs", 0.9],
    ["20 g of mint at 1.20 for 30 g", "20 g mint", 0.8],
  ])("%s", (_what, pour, cost) => {
    const stock =
      "stock lime\n  kind: fruit\n  price: 0.40 per 1\n  each: 80 g; wedge 10 g\n  yield: juiced 25 ml\n\nstock lime wedge\n  each: 10 g\n\nstock egg\n  price: 3.60 per 12\n\nstock mint\n  price: 1.20 per 30 g\n\n";
    expect(perServe(`${house()}${gin}${stock}${drink(["50 ml harbour gin", pour])}`)! - 1.5).toBeCloseTo(cost, 6);
  });

  test.each([
    ["bought by the piece", "0.30 per 1"],
    ["bought by weight", "3.00 per kg"],
  ])("a peel is a sixth of a fruit that is %s, as much as is bought for it", (_what, price) => {
    const lemons = `stock lemon\n  kind: fruit\n  each: 100 g\n  price: ${price}\n\n`;
    const menu = "menu Card\n  - Slip Water 9.00\n";
    const text = `${house()}${gin}${lemons}${drink(["50 ml harbour gin"], { garnish: "lemon zest, expressed" })}\n\n${menu}`;
    // 0.30 a lemon, and a sixth of it; the gin left out
    expect(perServe(text)! - 1.5).toBeCloseTo(0.05, 6);
    const other = houseOf(text);
    const plan = prepare(other, entryNamed(other, "Card"), { serves: 60, date: "2026-11-28" });
    const lemon = plan.purchases.find(({ entry }) => entry.name?.text === "lemon")!;
    // What is bought for sixty drinks, paid by its amount, is sixty times what one drink costs.
    expect((lemon.needed / lemon.pack!.size) * lemon.pack!.price).toBeCloseTo(60 * 0.05, 6);
  });

  test("a juice's own price goes before its fruit's", () => {
    const stock = "stock lime\n  price: 0.40 per 1\n  yield: juiced 25 ml\n\nstock lime juice\n  price: 8.00 per l\n\n";
    expect(perServe(`${gin}${stock}${drink(["25 ml lime juice"])}`)).toBeCloseTo(0.2, 6);
  });

  test("a house's stock goes by the larder's other names for it", () =>
    // 10 leaves of 0.05 to 0.15 g at 3.00 for 30 g
    expect(perServe(`stock mint\n  price: 3.00 per 30 g\n\n${gin}${drink(["50 ml harbour gin", "10 mint leaves, muddled"])}`)).toBeCloseTo(
      1.6,
      6,
    ));

  test("garnish and rim are paid for, one of each where no number stands", () => {
    const stock =
      "stock olive\n  price: 10.00 per kg\n  each: 4 g\n\nstock sea salt\n  price: 5.00 per kg\n\nstock nutmeg\n  price: 20.00 per kg\n\n";
    // 2 × 4 g at 0.01; half of a rim of 2 g at 0.005; a pinch of 0.3 g at 0.02
    const fields = { garnish: "2 olives; grated nutmeg", rim: "sea salt, half" };
    expect(perServe(`${house()}${gin}${stock}${drink(["50 ml harbour gin"], fields)}`)).toBeCloseTo(1.5 + 0.08 + 0.005 + 0.006, 6);
    expect(perServe(`${house()}${gin}${stock}${drink(["50 ml harbour gin"], { garnish: "olive", serves: "2" })}`)).toBeCloseTo(
      0.75 + 0.04,
      6,
    );
  });

  test("is without a garnish that has no price, and says so", () => {
    const { perServe: cost, without } = costIn(
      `${house()}${gin}${drink(["50 ml harbour gin", "6 mint leaves, muddled"], { garnish: "lemon zest, expressed; paper flag" })}`,
    )!;
    expect(cost.value).toBeCloseTo(1.5, 8);
    expect(without).toEqual(["mint leaves", "lemon zest", "paper flag"]);
  });

  test("is at least that of what has a price, and says what has none", () => {
    const cost = costIn(`${house()}${gin}${drink(["50 ml harbour gin", "10 ml lemon juice", "5 ml brandy"])}`)!;
    expect(cost.perServe).toEqual({
      value: null,
      plusMinus: null,
      because: ["the price of lemon juice is not given", "the price of brandy is not given"],
    });
    expect(cost.pricedPerServe).toBeCloseTo(1.5, 8);
  });

  test("a rinse is paid for in full, though most of it is poured away", () => {
    const stock = "stock absinthe\n  abv: 65 %\n  price: 40.00 per l\n\n";
    expect(perServe(`${house()}${gin}${stock}${drink(["50 ml harbour gin", "rinse 5 ml absinthe, discarded"])}`)).toBeCloseTo(1.7, 6);
  });

  test("an option is not paid for", () =>
    expect(perServe(`${house()}${gin}${drink(["50 ml harbour gin", "10 ml harbour gin, optional"])}`)).toBeCloseTo(1.5, 8));

  test("bought ice is paid for by the piece, wherever it is", () => {
    const ice = "ice cut block\n  kind: large cube\n  weight: 120 g\n  price: 0.35 per 1\n\n";
    const made = drink(["50 ml harbour gin"], { glass: "rocks", method: "stir 20 s; strain over cut block" });
    expect(perServe(`${house()}${gin}${ice}${made}`)).toBeCloseTo(1.85, 6);
  });

  test("a prep's parts are paid for with what is strained out of it, over what it makes", () => {
    const prep =
      "stock bay leaf\n  price: 2.00 per 20 g\n\nprep bay gin\n  700 ml harbour gin\n  10 g bay leaves, strained out\n  yield: 680 ml\n\n";
    // (21.00 + 1.00) ÷ 680 a millilitre
    expect(perServe(`${house()}${gin}${prep}${drink(["50 ml bay gin"])}`)).toBeCloseTo((50 * 22) / 680, 6);
  });

  test("a drink poured in a drink brings its cost", () => {
    const base = "drink Base\n  40 ml harbour gin\n  10 ml water\n\n";
    // Four fifths of it are gin, but for what alcohol and water shrink by on mixing: under 1 %.
    expect(perServe(`${house()}${gin}${base}${drink(["50 ml Base"])}`)).toBeGreaterThanOrEqual(1.2);
    expect(perServe(`${house()}${gin}${base}${drink(["50 ml Base"])}`)).toBeLessThan(1.22);
  });

  test("what is priced in another currency is not added up", () => {
    const priced = (price: string) =>
      costIn(`${house()}${gin}${drink(["50 ml harbour gin", "5 ml quay rum"])}stock quay rum\n  kind: spirit\n  price: ${price}\n`)!;
    expect(priced("20.00 EUR per 700 ml").perServe.because?.join()).toContain("in EUR, and the house's prices are in GBP");
    expect(priced("€20.00 per 700 ml").perServe.value).toBeNull();
    expect(priced("£21.00 per 700 ml").perServe.value).toBeCloseTo(1.65, 6);
    expect(priced("GBP 21.00 per 700 ml").perServe.value).toBeCloseTo(1.65, 6);
    const below = `${house()}${gin}=== quay/house.drink\nhouse The Quay\n  currency: EUR\n\n${drink(["50 ml harbour gin"])}stock oil\n  price: 1 per l\n`;
    expect(costIn(below)).toBeUndefined();
  });

  test("a house that states no prices has no cost, nor has a drink in parts without a size", () => {
    expect(costIn(drink(["50 ml gin", "100 ml soda water"]))).toBeUndefined();
    expect(costIn(`${gin}${drink(["2 parts harbour gin", "1 part water"])}`)).toBeUndefined();
  });
});

describe("share of the price", () => {
  const sold = (settings: readonly string[], more = "", changes: Readonly<Record<string, string | undefined>> = {}) =>
    costIn(`${house(...settings)}${gin}${drink(["60 ml harbour gin"], changes)}${more}`)!.sales.map(({ menu, price, net, share }) => [
      menu?.name?.text,
      price,
      net && Number(net.toFixed(4)),
      share.value && Number(share.value.toFixed(4)),
    ]);

  test.each([
    // The cost is 60 × 0.03 = 1.80. 12.00 with a tax of 20 % leaves 10.00.
    ["with its tax", ["tax: 20 %", "prices: with tax"], 10, 0.18],
    ["without its tax", ["tax: 20 %", "prices: without tax"], 12, 0.15],
    ["where the house states a tax and not where it is, with it", ["tax: 20 %"], 10, 0.18],
    ["where no tax is stated", [], 12, 0.15],
    ["with a tax that nobody states", ["prices: with tax"], null, null],
  ] as const)("%s", (_what, settings, net, share) => expect(sold(settings, "", { price: "12.00" })).toEqual([[undefined, 12, net, share]]));

  test("of each menu that lists it, by any of its names, and of no price of something else", () => {
    const menus =
      "\nmenu Card\n  - Slip Water 12.00\n  - Other 9.00\n\nmenu Late card\n  - Slipper £15.00 / 45.00 carafe\n\nmenu Abroad\n  - Slip Water €11\n\nmenu Unpriced\n  - Slip Water\n";
    expect(sold([], menus, { aka: "Slipper" })).toEqual([
      ["Card", 12, 12, 0.15],
      ["Late card", 15, 15, 0.12],
    ]);
  });

  test("a bowl is sold whole", () => {
    // 600 ml at 0.03 are 18.00, of 60.00
    const text = `${house()}${gin}${drink(["600 ml harbour gin"], { serves: "10", price: "60" })}`;
    expect(costIn(text)!.perServe.value).toBeCloseTo(1.8, 8);
    expect(costIn(text)!.sales[0]!.share.value).toBeCloseTo(0.3, 8);
  });
});

test.each([
  [{ value: 2.953, u: 0.041 }, "GBP", "£2.95 ± 0.04"],
  [{ value: 2.953, u: 0.02 }, "GBP", "£2.95"],
  [{ value: 0.08, u: 0.004 }, "EUR", "€0.08"],
  [{ value: 184.6, u: 7 }, "JPY", "¥185 ± 7"],
  [{ value: 1.2345, u: 0 }, "KWD", "KWD\u00a01.235"],
  [{ value: 1240, u: 0 }, undefined, "1,240.00"],
  [{ value: 3, u: 0 }, "POUNDS", "3.00"],
  [{ value: null }, "GBP", "unknown"],
] as const)("%j in %s is %s", (shown, currency, text) => expect(showMoney(shown, currency)).toBe(text));
