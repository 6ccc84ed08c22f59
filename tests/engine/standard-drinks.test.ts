import { expect, test } from "vitest";
import { standardDrinkOf, standardDrinks, worldDrink } from "../../server/engine/standard-drinks.ts";

// Their sizes stand beside published ones in tests/reference/energy.ts.

test("no country, or one that is not listed, counts in the World Health Organization's 10 g", () => {
  expect(standardDrinkOf(undefined)).toBe(worldDrink);
  expect(standardDrinkOf("AQ")).toBe(worldDrink);
  expect(worldDrink.grams).toBe(10);
});

test("where sources disagree one figure is taken: Canada's by volume, Switzerland's and Japan's as rounded", () => {
  // Canada: 17.05 ml at 0.789 g/ml, beside 13.5 and 13.6 g; Switzerland: 10 to 12 g; Japan: 20 g, beside 19.75 (encyclopedia tables).
  expect(standardDrinkOf("CA").grams).toBeCloseTo(17.05 * 0.789, 2);
  expect(standardDrinkOf("CH").grams).toBe(10);
  expect(standardDrinkOf("JP").grams).toBe(20);
});

test("each country once, in the order of the alphabet, with its word and its source", () => {
  const countries = standardDrinks.map(({ country }) => country);
  expect(countries.length).toBeGreaterThanOrEqual(12);
  expect(countries).toEqual([...new Set(countries)].sort());
  for (const { source, word } of standardDrinks) expect(source && word).toBeTruthy();
});
