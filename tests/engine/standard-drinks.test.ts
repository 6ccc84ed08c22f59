import { expect, test } from "vitest";
import { standardDrinkOf, standardDrinks, worldDrink } from "../../server/engine/standard-drinks.ts";

/** Kalinowski and Humphreys, Addiction 2016, as reported in the trade press; Canada as 17.05 ml. */
test.each([
  ["AU", 10],
  ["AT", 20],
  ["CA", 13.45],
  ["CL", 14],
  ["CN", 10],
  ["DK", 12],
  ["FR", 10],
  ["DE", 10],
  ["IE", 10],
  ["IN", 10],
  ["IS", 8],
  ["LU", 12.8],
  ["NZ", 10],
  ["SG", 10],
  ["US", 14],
  ["VN", 10],
])("%s counts in %f g", (country, grams) => expect(standardDrinkOf(country).grams).toBe(grams));

test("a UK unit is 10 ml: 175 ml of 11 % are 1.925 of them (% vol × ml ÷ 1000), and about 8 g each", () => {
  const { grams, word } = standardDrinkOf("GB");
  expect((175 * 0.11 * 0.78924) / grams).toBeCloseTo(1.925, 4);
  expect(Math.round(grams)).toBe(8);
  expect(word).toBe("UK unit");
});

test("a US standard drink is 0.6 US fl oz: 12 oz of 5 %, 5 oz of 12 %, 1.5 oz of 40 % (NIAAA), 14 g to the whole gram", () => {
  for (const [ounces, share] of [
    [12, 0.05],
    [5, 0.12],
    [1.5, 0.4],
  ] as const)
    expect((ounces * share * 29.5735 * 0.78924) / standardDrinkOf("US").grams).toBeCloseTo(1, 2);
});

test("no country, or one that is not listed, counts in the World Health Organization's 10 g", () => {
  expect(standardDrinkOf(undefined)).toBe(worldDrink);
  expect(standardDrinkOf("AQ")).toBe(worldDrink);
  expect(worldDrink.grams).toBe(10);
});

test("each country once, in the order of the alphabet, with its source", () => {
  const countries = standardDrinks.map(({ country }) => country);
  expect(countries.length).toBeGreaterThanOrEqual(12);
  expect(countries).toEqual([...new Set(countries)].sort());
  for (const { source, word } of standardDrinks) expect(source && word).toBeTruthy();
});
