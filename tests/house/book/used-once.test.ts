/** The bottles that a reader would buy for one recipe alone. */
import { expect, test } from "vitest";
import { usedOnce } from "../../../server/house/book/used-once.ts";
import { entryNamed, houseOf } from "../make.ts";

const house = houseOf(`stock kelp gin
  kind: spirit
  abv: 40 %

prep pier syrup
  100 g white sugar
  100 g water

drink One
  garnish: lemon zest
  50 ml kelp gin
  20 ml lemon juice
    or 20 ml sloe gin
  10 ml pier syrup

drink Two
  from: One
  20 ml dry vermouth

drink Three
  garnish: lemon zest
  50 ml aged rum
  10 ml grapefruit juice
`);
const once = (...names: string[]) =>
  usedOnce(
    house,
    names.map((name) => entryNamed(house, name)),
  ).map(({ name, recipe }) => [name, recipe.name!.text]);

test("it is the bottle that one recipe pours, and no other, a riff among them", () => {
  expect(once("One", "Two", "Three", "pier syrup")).toEqual([
    ["dry vermouth", "Two"],
    ["aged rum", "Three"],
  ]);
  expect(once("One", "Three")).toEqual([
    ["kelp gin", "One"],
    ["aged rum", "Three"],
  ]);
  expect(once()).toEqual([]);
});
