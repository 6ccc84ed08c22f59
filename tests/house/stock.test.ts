import { expect, test } from "vitest";
import { stockFacts } from "../../server/house/stock.ts";
import { entryNamed, houseOf } from "./make.ts";

function model(text: string, name: string) {
  const house = houseOf(text);
  return stockFacts(house, entryNamed(house, name)).model;
}

test("what the label says is used as stated; what it leaves out comes from the larder, marked as assumed", () => {
  const { abvPct, acids } = model("stock lemon juice\n  kind: juice\n  acid: 5.5 g/100 ml as citric\n", "lemon juice");
  expect(acids[0]!.amount).toMatchObject({ value: 5.5, why: "stated for lemon juice" });
  expect(acids[0]!.amount).not.toHaveProperty("assumed");
  expect(abvPct).toMatchObject({ value: 0, assumed: true });
});

test("what nobody states is unknown and says so", () => {
  expect(model("stock lamp oil\n", "lamp oil").abvPct).toEqual({ because: "the strength of lamp oil is not given" });
});

test("a stock's kind brings wide figures of its kind", () => {
  const { abvPct } = model("stock night liqueur\n  kind: liqueur\n", "night liqueur");
  expect(abvPct).toMatchObject({ assumed: true });
  expect((abvPct as { u: number }).u).toBeGreaterThan(2);
});

test("a nearer brix goes before the larder's sugar, and the larder's density does not outlive another sugar", () => {
  const { sugars, densityGPerMl } = model("stock maple syrup\n  brix: 50\n", "maple syrup");
  expect(sugars).toHaveLength(1);
  expect(sugars[0]).toMatchObject({ per: "100 g", amount: { value: 50 } });
  expect(densityGPerMl).toBeUndefined();
});

test("a range stands for its middle, its half width for two standard uncertainties", () => {
  const { sugars } = model("stock lamp cordial\n  kind: syrup\n  sugar: 50 to 60 g/100 ml\n", "lamp cordial");
  expect(sugars[0]!.amount).toMatchObject({ value: 55, u: 2.5 });
});
