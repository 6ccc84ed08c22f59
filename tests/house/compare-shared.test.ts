/** Two houses that share their entries are told apart as two that were read one by one. */
import { expect, test } from "vitest";
import { compare } from "../../server/house/compare/compare.ts";
import { compareAhead } from "../../server/house/compare/touched.ts";
import type { House } from "../../server/house/house.ts";
import { documentsOf, houseOf } from "./make.ts";

const drinks = Array.from(
  { length: 12 },
  (_, index) =>
    `drink D${index}\n  glass: none\n  method: stir 20 s\n  garnish: none\n  50 ml pier spirit\n  20 ml ${index % 3 === 0 ? "plain syrup" : "water"}\n`,
);
const text = [
  "=== house.drink\nhouse H\n  currency: GBP\n  tax: 20 %\n  prices: with tax",
  "=== shelf.drink\nstock pier spirit\n  kind: spirit\n  abv: 40 %\n  price: 20.00 per 1 l\n\nprep plain syrup\n  1 part sugar\n  1 part water\n  parts by: weight",
  "=== riffs.drink\ndrink Riff\n  from: D0\n  + 5 ml water\n\ndrink Apart\n  from: D1\n  + 5 ml water",
  "=== menu.drink\nmenu Winter card\n  - D0 12.00\n  - D1 11.00\n  - Riff 13.00",
  ...drinks.map((drink, index) => `=== d${index}.drink\n${drink}`),
].join("\n");

/** The same house with some texts exchanged, its other entries being the same objects. */
function changed(before: House, after: string): House {
  const olds = new Map([...before.documents()].map((document) => [document.uri, document]));
  const house = before.supposing(documentsOf(after));
  const uris = new Set(documentsOf(after).map(({ uri }) => uri));
  for (const uri of olds.keys()) if (!uris.has(uri)) house.removeDocument(uri);
  return house;
}

const plainly = (comparison: ReturnType<typeof compare>) => {
  const bare = ({ before: _before, after: _after, ...rest }: object & { before?: unknown; after?: unknown }) => rest;
  return JSON.parse(
    JSON.stringify({
      drinks: comparison.drinks.map(({ pours, ...one }) => ({ ...bare(one), pours: pours?.changes.length })),
      things: comparison.things.map(bare),
      menus: comparison.menus.map(bare),
    }),
  );
};

test.each([
  ["nothing", text],
  ["a prep, and through it drinks and a riff", text.replace("1 part water\n  parts", "2 part water\n  parts")],
  ["a price", text.replace("20.00", "24.00")],
  ["an allergen of a stock", text.replace("abv: 40 %", "abv: 40 %\n  allergens: nuts")],
  ["a stock that is out", text.replace("abv: 40 %", "abv: 40 %\n  status: out")],
  ["a drink that another is a riff of", text.replace("50 ml pier", "45 ml pier")],
  ["a menu's price", text.replace("D1 11.00", "D1 9.00")],
  ["a drink taken from a menu", text.replace("\n  - Riff 13.00", "")],
  ["a new stock that a name means now", `${text}\n=== new.drink\nstock water\n  kind: mixer\n  sugar: 5 g/100 ml`],
  ["a file that is gone", text.slice(0, text.indexOf("=== d11.drink"))],
  ["another name", text.replace("drink D5", "drink Dory")],
  ["the house's tax", text.replace("tax: 20 %", "tax: 10 %")],
])("%s", (_what, after) => {
  const shared = houseOf(text);
  const apart = compare({ before: houseOf(text), after: houseOf(after) });
  expect(plainly(compare({ before: shared, after: changed(shared, after) }))).toEqual(plainly(apart));
  expect(apart.drinks.length + apart.menus.length > 0).toBe(after !== text);
});

test("only what can differ is computed on the earlier side, and after it was prepared nothing more", () => {
  const after = houseOf(text);
  const houses = {
    before: changed(after, text.replace("drink D5\n  glass: none\n  method: stir 20 s", "drink D5\n  glass: none\n  method: stir 30 s")),
    after,
  };
  for (const _piece of compareAhead(houses));
  const [one, other] = [houses.before.memo.computed, houses.after.memo.computed];
  expect(one).toBeGreaterThan(0);
  expect(one * 4).toBeLessThan(other);
  expect(compare(houses).drinks.map(({ name }) => name)).toEqual(["D5"]);
  // What is asked of both sides and not prepared is small: settings, the drink's own fields.
  expect(houses.before.memo.computed - one + houses.after.memo.computed - other).toBeLessThan(12);
});
