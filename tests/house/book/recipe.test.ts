/** A recipe as data: whatever is written, what is printed is whole, the same each time, and never more than is known. */
import { expect, test } from "vitest";
import { poursOf } from "../../../server/house/book/pours.ts";
import { type Recipe, recipeOf } from "../../../server/house/book/recipe.ts";
import type { BookStyle } from "../../../server/house/book/style.ts";
import { styleOf } from "../../../server/house/book/style.ts";
import { valueRows } from "../../../server/house/book/values.ts";
import { assessDrink } from "../../../server/house/drink.ts";
import { serveOf } from "../../../server/house/serve.ts";
import { checkDigits } from "../digits.ts";
import { entryNamed, houseOf } from "../make.ts";
import { plain, recipesIn } from "./drinks.ts";

const samples = ["samples/halyard-room", "samples/slack-water"].flatMap(recipesIn);
const styles: readonly BookStyle[] = [
  plain,
  { ...plain, systems: ["US"], spelling: "American", numbers: "words", method: "steps" },
  { ...plain, systems: ["metric"], numbers: "words to ten", order: [["juice"], ["spirit"]] },
];

function textsOf({ name, headnote, facts, ingredients, method, figures, allergens, credit, family, spirit }: Recipe): string[] {
  const labelled = [...facts, ...figures].flatMap(({ label, text }) => [label, text]);
  const lines = ingredients.flatMap((line) =>
    [line, ...line.alternatives].flatMap(({ amounts, name, note }) => [...amounts, name, ...(note === undefined ? [] : [note])]),
  );
  const stated = [credit, family, spirit].flatMap((text) => text ?? []);
  return [name, ...headnote, ...labelled, ...lines, ...method.texts, allergens, ...stated];
}

test("every text of every sample is one: nothing empty, nothing unknown, no two blanks, no float noise", () => {
  expect(samples.length).toBeGreaterThan(60);
  for (const style of styles) {
    for (const { house, entry } of samples) {
      for (const text of textsOf(recipeOf(house, entry, style))) {
        expect(text).toMatch(/^\S(?:.*\S)?$/u);
        expect(text).not.toMatch(/undefined|NaN|null|unknown|Infinity| {2}|\d\.\d{4}|\[object| ,|,,/);
      }
    }
  }
});

test("sentences end, each step is one text, and every drink that has a method has sentences", () => {
  for (const style of styles) {
    for (const { house, entry } of samples) {
      const { method, kind } = recipeOf(house, entry, style);
      if (kind === "drink") expect(method.texts.length, entry.name?.text).toBeGreaterThan(0);
      for (const text of method.texts) expect(text).toMatch(/^\p{Lu}.*[.!?]$/u);
      if (style.method === "sentences" && kind === "drink") expect(method.texts.length).toBeLessThan(4);
    }
  }
});

test("a house read anew gives the same recipes", () => {
  const again = recipesIn("samples/slack-water");
  for (const [index, { house, entry }] of recipesIn("samples/slack-water").entries()) {
    const texts = [again[index]!, { house, entry }].map((one) =>
      textsOf(recipeOf(one.house, one.entry, styleOf(one.house, one.house.scopeOf(one.entry)))),
    );
    expect(texts[0]).toEqual(texts[1]);
  }
});

test("every pour is a line, whatever the order; nothing that comes after the ice goes before it", () => {
  for (const { house, entry } of samples) {
    for (const style of styles) {
      const names = recipeOf(house, entry, style).ingredients.map(({ name }) => name);
      const pours = poursOf(house, entry);
      expect([...names].sort()).toEqual(pours.map(({ ingredient }) => ingredient.resolution.text).sort());
      const late = pours.filter(({ stage }) => stage === "after").map(({ ingredient }) => ingredient.resolution.text);
      if (pours.findIndex(({ stage }) => stage === "after") === pours.length - late.length)
        expect(names.slice(names.length - late.length).sort()).toEqual(late.sort());
    }
  }
});

test("ingredients stand in the book's order of kinds, but for a drink that is poured in its own", () => {
  const pours = "  15 ml orange liqueur\n  22.5 ml lime juice\n  45 ml white rum\n  60 ml soda water\n";
  const house = houseOf(
    `house Pier\n  order: liqueur; spirit\n\nbook Pier Head\n  order: spirit; juice\n\ndrink Mixed\n  method: shake 8 s\n${pours}\ndrink Laid\n  method: layer\n${pours}`,
  );
  const names = (name: string) => {
    const entry = entryNamed(house, name);
    return recipeOf(house, entry, styleOf(house, house.scopeOf(entry))).ingredients.map((line) => line.name);
  };
  expect(names("Mixed")).toEqual(["white rum", "lime juice", "orange liqueur", "soda water"]);
  expect(names("Laid")).toEqual(["orange liqueur", "lime juice", "white rum", "soda water"]);
});

test("no figure in figures has a digit that its uncertainty denies", () => {
  for (const { house, entry } of samples) {
    if (entry.kind !== "drink") continue;
    const assessment = assessDrink(house, entry);
    const { outcome } = assessment;
    const said = (name: string) => {
      const found = valueRows
        .find((row) => row.name === name)!
        .say({ house, entry, style: plain, systems: ["metric"], numbers: "figures" }, "");
      return "text" in found ? found.text : "";
    };
    checkDigits(said("strength"), outcome.figure("strengthPct"));
    checkDigits(said("dilution"), outcome.figure("dilutionShare"), 100);
    checkDigits(said("temperature"), outcome.figure("temperatureC"));
    checkDigits(said("ratio"), outcome.figure("ratio"));
    checkDigits(said("acid"), outcome.figure("acidGPer100Ml"));
    checkDigits(said("volume"), outcome.figure("afterVolumeMl"), 1 / assessment.plan.serves);
    checkDigits(said("energy"), serveOf(house, assessment).energyKcal);
  }
});

test("one drink, as it stands on the page", () => {
  const { house } = samples[0]!;
  const recipe = recipeOf(house, entryNamed(house, "Lantern Sour"), { ...plain, ounceMl: 30, writtenOunceMl: 30 });
  expect(recipe).toMatchObject({
    kind: "drink",
    name: "Lantern Sour",
    family: "egg sour",
    spirit: "aged rum",
    facts: [
      { label: "Glass", text: "Chilled coupe" },
      { label: "Serves", text: "1" },
      { label: "Garnish", text: "Expressed lemon zest and grated nutmeg" },
    ],
    method: {
      form: "sentences",
      texts: ["Dry-shake for 10 seconds. Shake for 12 seconds with cubed ice. Fine-strain into a chilled coupe."],
    },
    allergens: "Contains egg. Not stated for clove bitters.",
  });
  expect(recipe.ingredients.map(({ amounts, name, note }) => [amounts.join(" | "), name, note])).toEqual([
    ["50 ml | 1⅔ oz", "aged rum", "frozen"],
    ["22.5 ml | ¾ oz", "lemon juice", undefined],
    ["20 ml | ⅔ oz", "smoked maple syrup", undefined],
    ["2 dashes", "clove bitters", undefined],
    ["1", "egg white", undefined],
    ["1 pinch", "sea salt", "optional"],
  ]);
  expect(recipe.ingredients[1]!.alternatives).toMatchObject([{ amounts: ["22.5 ml", "¾ oz"], name: "lemon-strength acid" }]);
  expect(recipe.ingredients[2]!.recipe?.name?.text).toBe("smoked maple syrup");
});

const odd = `drink Odd
  method: shake 8 s
  60 ml gin, batched
  1/2 lime, juiced
  20 ml black tea, at 150 F
  some mint
  hot sauce, to taste
  rinse 5 ml absinthe, discarded
  top to 180 ml soda water

drink Lot
  total: 90 ml
  method: stir 20 s
  2 parts gin
  1 part dry vermouth

drink Loose
  method: stir 20 s
  2 parts gin
  1 part dry vermouth

prep weak salt
  2 g sea salt
    or 3 g kosher salt
  to 100 g water
  allergens: none
`;

test("what has no amount of its own says what it does", () => {
  const house = houseOf(odd);
  const lines = (name: string) =>
    recipeOf(house, entryNamed(house, name), plain).ingredients.map(({ amounts, name, note }) => [amounts.join(" | "), name, note]);
  expect(lines("Odd")).toEqual([
    ["60 ml | 2 oz", "gin", undefined],
    ["½", "lime", "juiced"],
    ["20 ml | ¾ oz", "black tea", "at 66 °C (150 °F)"],
    ["some", "mint", undefined],
    ["", "hot sauce", "to taste"],
    ["5 ml | 1 teaspoon", "absinthe", "to rinse the glass, poured away"],
    ["", "soda water", "to top up to 180 ml (6 oz)"],
  ]);
  expect(lines("weak salt")).toEqual([
    ["2 g", "sea salt", undefined],
    ["", "water", "to make 100 g (3½ oz by weight) in all"],
  ]);
  expect(recipeOf(house, entryNamed(house, "weak salt"), plain).ingredients[0]!.alternatives).toEqual([
    { amounts: ["3 g"], name: "kosher salt" },
  ]);
});

test("parts of a total are amounts; without one they are parts, and nobody says how many drinks that is", () => {
  const house = houseOf(odd);
  const [lot, loose] = ["Lot", "Loose"].map((name) => recipeOf(house, entryNamed(house, name), plain));
  expect(lot!.ingredients.map(({ amounts }) => amounts)).toEqual([
    ["60 ml", "2 oz"],
    ["30 ml", "1 oz"],
  ]);
  expect(loose!.ingredients.map(({ amounts }) => amounts)).toEqual([["2 parts"], ["1 part"]]);
  expect([lot, loose].map((recipe) => recipe!.facts.map(({ label }) => label))).toEqual([["Serves"], []]);
  expect([lot, loose].map((recipe) => recipe!.figures.map(({ label }) => label))).toEqual([
    ["Strength", "A serve holds", "Energy"],
    ["Strength"],
  ]);
});

test("of what holds no alcohol no strength and no units are told, of what may hold some they are", () => {
  const house = houseOf(
    "house Pier\n  country: GB\n\nprep plain syrup\n  500 g white sugar\n  500 g water\n\ndrink Dry\n  method: build\n  30 ml plain syrup\n  20 ml lime juice\n  100 ml water\n\ndrink Wet\n  method: build\n  20 ml white rum\n  100 ml water\n\ndrink Fog\n  method: build\n  20 ml an unheard-of thing\n",
  );
  const of = (name: string) => recipeOf(house, entryNamed(house, name), plain);
  expect(["plain syrup", "Dry", "Wet", "Fog"].map((name) => [of(name).hasNoAlcohol, of(name).figures.map(({ label }) => label)])).toEqual([
    [true, []],
    [true, ["Energy"]],
    [false, ["Strength", "A serve holds", "Energy"]],
    [false, []],
  ]);
});

test("in an American book the sulphites are sulfites, and a stock keeps its name", () => {
  const house = houseOf(
    "stock grey flavour\n  kind: wine\n  allergens: sulphites\n\ndrink Slip\n  50 ml grey flavour\n  10 ml colour water\n",
  );
  const { allergens, ingredients } = recipeOf(house, entryNamed(house, "Slip"), { ...plain, spelling: "American" });
  expect(allergens).toBe("Contains sulfites. Not stated for colour water.");
  expect(ingredients.map(({ name }) => name)).toEqual(["grey flavour", "colour water"]);
});
