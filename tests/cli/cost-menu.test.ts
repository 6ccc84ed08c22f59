/** `mutchkin cost`. Prices are invented; the sums are done by hand. */
import { parse } from "csv-parse/sync";
import { expect, test } from "vitest";
import { costSchema } from "../../server/reports/cost-schema.ts";
import { plainLook } from "../../server/reports/sheet.ts";
import { folderOf, mutchkin } from "./command.ts";

/** 60 × 0.04 = 2.40; of 12.00 ÷ 1.2 = 10.00 it takes 24 %. */
const bar = `=== bar.drink
house Test Room
  currency: GBP
  tax: 20 %
  prices: with tax
  target cost: 25 %

stock plain gin
  kind: spirit
  abv: 40 %
  price: 28.00 per 700 ml

drink Slack Rope
  garnish: paper flag
  60 ml plain gin

drink =Blind Rope
  garnish: none
  60 ml plain gin
  10 ml rum

menu Card
  section On deck
  - Slack Rope 12.00
  - =Blind Rope 14.00

menu Late card
  - Slack Rope 10.00
`;

test("all menus are costed, or those that are named, from the paths that are given", async () => {
  const folder = folderOf(bar);
  const menusOf = async (...argv: string[]) =>
    costSchema.parse(JSON.parse((await mutchkin(folder, ["cost", ...argv, "--format", "json"])).out)).menus.map(({ menu }) => menu);
  expect(await menusOf()).toEqual(["Card", "Late card"]);
  expect(await menusOf("late card")).toEqual(["Late card"]);
  expect(await menusOf("bar.drink", "Card")).toEqual(["Card"]);
});

test("the text is readable in 80 columns, unknown with its reason", async () => {
  const { code, out } = await mutchkin(folderOf(bar), ["cost", "Card"], { look: { ...plainLook, width: 80 } });
  expect(code).toBe(0);
  for (const line of out.split("\n")) expect(line.length).toBeLessThanOrEqual(80);
  expect(out).toMatch(/^On deck\nSlack Rope +12\.00 +2\.00 +2\.40 +0\.\d\d +24\.?\d? +7\.60$/m);
  expect(out).toMatch(/^=Blind Rope +14\.00 +2\.33 +\? +\? +\?$/m);
  expect(out.replace(/\s+/g, " ")).toContain("? costs at least £2.40; the price of rum is not given");
  expect(out).toContain("without paper flag, of no known price");
  expect(out).toContain("Share           24 %; the cost of 1 is not known");
  expect(out).toContain("25 %: no drink above it");
});

test("the ± stands beside the cost where there is room, so that a drink is one line, and below it where there is none", async () => {
  const lines = async (width: number) =>
    (await mutchkin(folderOf(bar), ["cost", "Card"], { look: { ...plainLook, width } })).out.split("\n");
  const at = (all: readonly string[]) => all.slice(all.findIndex((line) => line.startsWith("Slack Rope")));
  expect(at(await lines(80))[1]).not.toMatch(/±/);
  expect(at(await lines(60))[1]).toMatch(/^ +± 0\.\d\d$/);
});

test("a supposed price says what it moves and which drinks cross the target", async () => {
  const { out } = await mutchkin(folderOf(bar), ["cost", "Card", "--if", "plain gin +10 %", "--if", "plain gin 35.00 per 700 ml"]);
  // 60 × 0.05 = 3.00
  expect(out.replace(/\n/g, " ")).toContain(
    "With plain gin at 30.80 per 700 ml, not 28.00 per 700 ml; plain gin at 35.00 per 700 ml, not 30.80 per 700 ml: 2 drinks of 2",
  );
  expect(out).toMatch(/^Slack Rope +2\.40 +3\.00 +24\.0 +30\.0\* +−0\.60$/m);
  expect(out).toMatch(/^=Blind Rope +≥ 2\.40 +≥ 3\.00 +\? +\? +\?$/m);
  expect(out).toContain("Now above       * the target of 25 %: Slack Rope");
});

test("the JSON is of its schema, and holds what was supposed", async () => {
  const { out } = await mutchkin(folderOf(bar), ["cost", "Card", "--if", "plain gin +25 %", "--format", "json"]);
  const [card] = costSchema.parse(JSON.parse(out)).menus;
  expect(card).toMatchObject({
    currency: "GBP",
    taxRate: 0.2,
    target: 0.25,
    supposed: [{ stock: "plain gin", before: "28.00 per 700 ml", after: "35.00 per 700 ml" }],
    summary: { drinks: 2, costed: 1, shared: 1, over: 0, moved: 2 },
  });
  expect(card!.drinks[0]).toMatchObject({ section: "On deck", line: 23, net: 10, known: 2.4, supposed: { known: 3, crosses: "up" } });
});

test("the CSV has a line for each drink, and a name that starts like a formula is marked", async () => {
  const { out } = await mutchkin(folderOf(bar), ["cost", "Card", "--format", "csv"]);
  const rows: Record<string, string>[] = parse(out, { columns: true });
  expect(rows.map(({ drink, price, cost, share, ...row }) => [drink, price, cost, share, row["why unknown"]])).toEqual([
    ["Slack Rope", "12", "2.4", "0.24", ""],
    ["'=Blind Rope", "14", "", "", "the price of rum is not given"],
  ]);
});

test.each([
  [["cost", "Crd"], "There is no menu and no file or folder “Crd” here.\nDid you mean “Card”?"],
  [["cost", "Card", "--if", "plain jin +10 %"], "Did you mean “plain gin”?"],
  [["cost", "Card", "--if", "plain gin dearer"], "“dearer” behind plain gin reads as no change and as no price."],
])("%j ends with 2 and says why", async (argv, words) => {
  const { code, out, err } = await mutchkin(folderOf(bar), argv);
  expect({ code, out }).toEqual({ code: 2, out: "" });
  expect(err).toContain(words);
});

test("without a menu there is nothing to cost", async () => {
  const { code, err } = await mutchkin(folderOf(bar.slice(0, bar.indexOf("menu Card"))), ["cost"]);
  expect(code).toBe(2);
  expect(err).toContain("There is no menu here.");
});
