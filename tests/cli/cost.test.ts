/** What `mutchkin assess` says of money. Prices are invented. */
import { expect, test } from "vitest";
import { assessSchema } from "../../server/reports/assess-schema.ts";
import { folderOf, mutchkin } from "./command.ts";

/** 60 × 0.04 = 2.40; of 12.00 ÷ 1.2 = 10.00 it takes 24 %. */
const bar = `=== bar.drink
house Test Room
  currency: GBP
  tax: 20 %
  prices: with tax
  target cost: 22 %

stock plain gin
  kind: spirit
  abv: 40 %
  price: 28.00 per 700 ml

drink Slack Rope
  glass: none
  method: none
  garnish: paper flag
  60 ml plain gin

drink Blind Rope
  glass: none
  method: none
  garnish: none
  60 ml plain gin
  10 ml rum

drink Free Rope
  glass: none
  method: none
  garnish: none
  60 ml rum

menu Card
  - Slack Rope 12.00
`;

test("the JSON holds the cost, its share of each price, and why it is unknown", async () => {
  const { out } = await mutchkin(folderOf(bar), ["assess", "--format", "json"]);
  const [slack, blind, free] = assessSchema.parse(JSON.parse(out)).drinks;
  expect(slack!.cost).toEqual({
    currency: "GBP",
    perServe: { value: 2.4, plusMinus: expect.any(Number) },
    pricedPerServe: 2.4,
    without: ["paper flag"],
    target: 0.22,
    sales: [{ menu: "Card", price: 12, net: 10, share: { value: 0.24, plusMinus: expect.any(Number) } }],
  });
  expect(blind!.cost).toMatchObject({
    perServe: { value: null, because: ["the price of rum is not given"] },
    pricedPerServe: 2.4,
    sales: [],
  });
  expect(free!.cost).toBeNull();
});

test("one drink at length has a line for it", async () => {
  const folder = folderOf(bar);
  const line = async (drink: string) => {
    const { out } = await mutchkin(folder, ["assess", "--drink", drink]);
    return /^Cost .*(?:\n {16}.*)*/m.exec(out)?.[0].replace(/\s+/g, " ");
  };
  expect(await line("Slack Rope")).toBe(
    "Cost £2.40 ± 0.03, 24 % of the price without tax, paper flag not counted; Card: £12.00, £10.00 without tax; the house means it to take 22 %",
  );
  expect(await line("Blind Rope")).toBe("Cost at least £2.40; the price of rum is not given");
  expect(await line("Free Rope")).toBeUndefined();
});

test("the table has a column for it only where something has a price", async () => {
  const priced = (await mutchkin(folderOf(bar), ["assess"])).out;
  expect(priced).toMatch(/^Drink .* Cost\n.* GBP\n/m);
  expect(priced).toMatch(/^Slack Rope .* 2\.40$/m);
  expect(priced).toMatch(/^Blind Rope .* \?$/m);
  expect(priced).toMatch(/^Free Rope .* –$/m);
  const bare = (await mutchkin(folderOf(bar.replace(/^ {2}price: .*\n/gm, "")), ["assess"])).out;
  expect(bare).not.toMatch(/Cost|GBP/);
});
