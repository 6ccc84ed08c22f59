/** Methods in sentences. What reads well is practice, no source; that every technique has its words is not. */
import { expect, test } from "vitest";
import { techniques } from "../../../server/engine/techniques.ts";
import { madeHow, makingOf } from "../../../server/house/book/method.ts";
import { methodWords } from "../../../server/house/book/method-words.ts";
import { recipeOf } from "../../../server/house/book/recipe.ts";
import type { BookStyle } from "../../../server/house/book/style.ts";
import { entryNamed, houseOf } from "../make.ts";
import { plain } from "./drinks.ts";

function told(drink: string, style: BookStyle = { ...plain, systems: ["metric"] }) {
  const house = houseOf(`drink Slip\n${drink}`);
  return makingOf(house, entryNamed(house, "Slip"), style).texts;
}

test("every word of every technique is told and done", () => {
  expect(Object.keys(methodWords).sort()).toEqual(techniques.flatMap(({ words }) => words).sort());
});

test.each([
  ["shake 12 s; fine strain", "Shake for 12 seconds with cubed ice. Fine-strain into a chilled coupe."],
  ["Dry shake  10 s; shake 1 s", "Dry-shake for 10 seconds. Shake for 1 second with cubed ice. Pour into a chilled coupe."],
  ["dry-shake 10 s; shake", "Dry-shake for 10 seconds. Shake with cubed ice. Pour into a chilled coupe."],
  ["stir with cracked ice 20-30 s; strain", "Stir with cracked ice for 20–30 seconds. Strain into a chilled coupe."],
  ["stir 20 s; strain over large cube", "Stir for 20 seconds with cubed ice. Strain into a chilled coupe over a large cube."],
  ["stir 20 s; strain over 2 large cubes", "Stir for 20 seconds with cubed ice. Strain into a chilled coupe over 2 large cubes."],
  ["build over 110 g cubed ice", "Build over 110 g of cubed ice in a chilled coupe."],
  ["build", "Build over cubed ice in a chilled coupe."],
  ["throw 6 times; strain", "Throw 6 times with cubed ice. Strain into a chilled coupe."],
  ["shake without ice; strain", "Shake without ice. Strain into a chilled coupe."],
  ["shake 8 s; strain into the coupe", "Shake for 8 seconds with cubed ice. Strain into the coupe."],
  ["pre-dilute 25 %; hold at -5 C", "Dilute with 25 % of its volume in water. Hold at −5 °C. Pour into a chilled coupe."],
  ["carbonate to 3 vol", "Carbonate to 3 volumes. Pour into a chilled coupe."],
  ["shake 8 s, hard; strain", "Shake for 8 seconds with cubed ice, hard. Strain into a chilled coupe."],
  ["pour in the order given; one turn of the spoon", "Pour in the order given. One turn of the spoon."],
])("%s", (method, sentences) => {
  expect(told(`  glass: coupe, chilled\n  method: ${method}\n  50 ml gin\n`)).toEqual([sentences]);
});

test("what is done to the glass and on top is told where no step says it", () => {
  const drink = (method: string) =>
    told(
      `  glass: highball\n  rim: sea salt, half\n  garnish: 1 orange wheel; 3 cloves\n  method: ${method}\n  50 ml gin\n  rinse absinthe, discarded\n  top soda water\n  10 ml port, floated\n`,
    )[0];
  expect(drink("shake 8 s; strain")).toBe(
    "Coat half of the rim with sea salt. Rinse the glass with absinthe and pour it away. Shake for 8 seconds with cubed ice. Strain into a highball glass. Top with soda water. Float the port on top.",
  );
  expect(drink("rinse the highball with absinthe; shake 8 s; strain; top with soda water; float port")).toBe(
    "Coat half of the rim with sea salt. Rinse the highball with absinthe. Shake for 8 seconds with cubed ice. Strain into a highball glass. Top with soda water. Float port.",
  );
});

test("what is muddled is muddled first, named once", () => {
  const pours = "  50 ml white rum\n  6 mint leaves, muddled\n  1/2 lime, muddled\n";
  const tail = "Shake for 8 seconds with cubed ice.";
  expect(told(`  method: shake 8 s\n${pours}`)).toEqual([`Muddle the mint leaves and lime. ${tail}`]);
  expect(told(`  method: muddle; shake 8 s\n${pours}`)).toEqual([`Muddle the mint leaves and lime. ${tail}`]);
  expect(told(`  method: muddle gently; shake 8 s\n${pours}`)).toEqual([`Muddle gently. ${tail}`]);
  expect(told("  method: muddle; shake 8 s\n  50 ml white rum\n")).toEqual([`Muddle. ${tail}`]);
});

test("the garnish stands among the facts, and not again in the method", () => {
  const house = houseOf("drink Slip\n  method: stir 8 s\n  garnish: 1 lime wheel\n  50 ml gin\n");
  const { facts, method } = recipeOf(house, entryNamed(house, "Slip"), plain);
  expect(facts).toContainEqual({ label: "Garnish", text: "A lime wheel" });
  expect(method.texts.join(" ")).not.toMatch(/lime/i);
});

test("what is hot and only built meets no ice", () => {
  expect(told("  method: build\n  50 ml dark rum\n  100 ml water, hot\n")).toEqual(["Build."]);
  expect(told("  method: shake 10 s\n  50 ml dark rum\n  30 ml espresso, hot\n")).toEqual(["Shake for 10 seconds with cubed ice."]);
});

test("in steps there is a text for each, in words the numbers are words, in two systems both stand", () => {
  const drink = "  method: stir 8 s; hold at -5 C\n  50 ml gin\n";
  const style: BookStyle = { ...plain, method: "steps", numbers: "words to ten" };
  expect(told(drink, style)).toEqual(["Stir for eight seconds with cubed ice.", "Hold at −5 °C (23 °F)."]);
});

test("what was written in sentences goes before, in its paragraphs or as a step for each sentence", () => {
  const drink = "  method: stir 8 s\n  garnish: olive\n  steps:\n    Stir it. Wait for\n    the horn.\n\n    Then drink.\n  50 ml gin\n";
  expect(told(drink)).toEqual(["Stir it. Wait for the horn.", "Then drink."]);
  expect(told(drink, { ...plain, method: "steps" })).toEqual(["Stir it.", "Wait for the horn.", "Then drink."]);
});

test("no method, and one that is none, are nothing", () => {
  expect([told("  glass: coupe\n  garnish: olive\n  50 ml gin\n"), told("  method: none\n  50 ml gin\n")]).toEqual([[], []]);
});

test("a prep's method names no ice and no glass; made, it stands in a sentence", () => {
  const house = houseOf(
    "prep tea rum\n  500 ml white rum\n  10 g black tea, strained out\n  method: infuse 2 hours at 60 C; fine strain; reduce to 300 ml\n",
  );
  const entry = entryNamed(house, "tea rum");
  expect(makingOf(house, entry, plain).texts).toEqual(["Infuse for 2 hours at 60 °C (140 °F). Fine-strain. Reduce to 300 ml (10¼ oz)."]);
  expect(madeHow(house, entry, { ...plain, systems: ["metric"] }, "words")).toBe(
    "infused for two hours at 60 °C, fine-strained and reduced to three hundred millilitres",
  );
});
