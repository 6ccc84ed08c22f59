/** What a directive puts into a book's text, in the units and the numbers that it asks for. */
import { expect, test } from "vitest";
import { sayDegrees } from "../../../server/house/book/figures.ts";
import { recipeOf } from "../../../server/house/book/recipe.ts";
import { saidBy } from "../../../server/house/book/saying.ts";
import { styleOf } from "../../../server/house/book/style.ts";
import { valueNamed } from "../../../server/house/book/values.ts";
import { documentsOf, entryNamed, houseOf, root } from "../make.ts";
import { plain } from "./drinks.ts";

const specs = `house Pier
  country: GB

book Pier Head
  numbers: words to ten
  units shown: metric first

prep dune honey
  300 g honey
  150 g water, hot
  keeps: 21 days chilled
  credit: the late shift

prep loose syrup
  2 parts white sugar
  1 part water
  parts by: weight

drink Lamp
  family: sour
  glass: rocks, chilled
  garnish: 1 lemon wheel; mint, slapped
  method: dry shake 10 s; shake 12 s; fine strain
  50 ml white rum
  22.5 ml lemon juice
  20 ml dune honey
  2 dashes aromatic bitters
  top soda water

drink Lot
  method: stir 20 s
  2 parts white rum
  1 part dry vermouth

drink Fog
  50 ml some unheard-of spirit
  garnish: none
`;

function said(directive: string) {
  const house = houseOf(`${specs}=== chapter.md\n# Lamp\n\nIt is ${directive} there.\n`);
  const document = house.document(`${root}/chapter.md`)!;
  const entry = document.tree.entries.find(({ kind }) => kind === "text")!;
  const found = document.tree.entries
    .flatMap(({ lines }) => lines)
    .flatMap(({ content }) => (content.kind === "text" ? content.directives : []));
  const answer = saidBy(house, house.scopeOf(entry), found[0]!);
  return "text" in answer ? answer.text : `(${answer.because})`;
}

test.each([
  [":pour[lemon juice]{in=Lamp}", "22.5 ml"],
  [":pour[lemon juice]{in=Lamp units=US}", "¾ oz"],
  [":pour[lemon juice]{in=Lamp units=both}", "22.5 ml (¾ oz)"],
  [":pour[lemon juice]{in=Lamp words}", "twenty-two and a half millilitres"],
  [":pour[lemon juice]{in=Lamp units=US words}", "three quarters of an ounce"],
  [":pour[aromatic bitters]{in=Lamp}", "two dashes"],
  [":pour[aromatic bitters]{in=Lamp figures}", "2 dashes"],
  [":pour[honey]{in='dune honey' units=both}", "300 g (10½ oz by weight)"],
  [":pour[white rum]{in=Lot}", "two parts"],
  [":pour[soda water]{in=Lamp}", "(no amount of soda water is stated)"],
  [":pour[gin]{in=Lamp}", "(Lamp pours no “gin”)"],
  [":glass[Lamp]", "chilled rocks glass"],
  [":garnish[Lamp]", "a lemon wheel and slapped mint"],
  [":method[Lamp]", "dry-shaken for ten seconds, shaken for 12 seconds and fine-strained"],
  [":method[Lamp]{figures}", "dry-shaken for 10 seconds, shaken for 12 seconds and fine-strained"],
  [":yield[Lamp]", "one serve"],
  [":keeps[dune honey]", "21 days chilled"],
  [":keeps[dune honey]{words}", "twenty-one days chilled"],
  [":credit[dune honey]", "the late shift"],
  [":yield[loose syrup]", "(loose syrup is written in parts, so nobody says how much of it is made)"],
  [":garnish[Fog]", "(Fog states no garnish)"],
  [":family[Lamp]", "sour"],
])("%s says %s", (directive, text) => {
  expect(said(directive)).toBe(text);
});

test.each([
  [":strength[Lamp]", /^\d+(?:\.\d)? %$/],
  [":strength[Lamp]{words}", /^[a-z -]+ per cent$/],
  [":strength[Lot]", /^\d+(?:\.\d)? %$/],
  [":yield[dune honey]", /^about \d{2}0 ml$/],
  [":yield[dune honey]{units=both}", /^about \d{2}0 ml \(\d+[¼½¾]? oz\)$/],
  [":yield[dune honey]{units=US words}", /^about [a-z -]+ ounces$/],
  [":temperature[Lot]{units=both}", /^−?\d+(?:\.\d)? °C \(\d+(?:\.\d)? °F\)$/],
  [":temperature[Lot]{words}", /^(?:minus )?[a-z]+(?: point [a-z]+)? degrees? Celsius$/],
  [":standard-drinks[Lot]", /^\(Lot is in parts without a size/],
  [":energy[Lot]", /^\(Lot is in parts without a size/],
  [":strength[Fog]", /^\(.*unheard-of spirit/],
  [":energy[Fog]{words}", /^\(.*unheard-of spirit/],
  [":volume[Lot]", /^\(Lot is in parts without a size/],
])("%s says the figure or why not", (directive, text) => {
  expect(said(directive)).toMatch(text);
});

test.each([
  [{ value: -7.6, plusMinus: 0.3 }, "−7.6 °C (18.3 °F)"],
  [{ value: -7.6, plusMinus: 1.2 }, "−8 °C (18 °F)"],
])("a temperature has the digits that its uncertainty leaves: %o is %s", (figure, text) => {
  expect(sayDegrees(figure, { style: plain, systems: ["metric", "US"], numbers: "figures" })).toBe(text);
});

test("a drink without alcohol holds no units", () => {
  const house = houseOf("house Pier\n  country: GB\n\ndrink Dry\n  method: build\n  20 ml lime juice\n  100 ml water\n");
  const entry = entryNamed(house, "Dry");
  const style = styleOf(house, house.scopeOf(entry));
  expect(valueNamed("standard-drinks")!.say({ house, entry, style, systems: ["metric"], numbers: "figures" }, "")).toEqual({
    text: "no UK units",
  });
});

test("a syrup that is made otherwise changes what is said of everything that it is poured in", () => {
  const house = houseOf(`${specs}=== chapter.md\n# Lamp\n\n:yield[dune honey] :sweetness[Lamp] :energy[Lamp] :pour[white rum]{in=Lamp}\n`);
  const chapter = house.document(`${root}/chapter.md`)!;
  const text = chapter.tree.entries.find(({ kind }) => kind === "text")!;
  const directives = chapter.tree.entries
    .flatMap(({ lines }) => lines)
    .flatMap(({ content }) => (content.kind === "text" ? content.directives : []));
  const all = () => directives.map((directive) => saidBy(house, house.scopeOf(text), directive));
  const before = all();
  house.setDocument(documentsOf(specs.replace("300 g honey", "150 g honey"))[0]!);
  const after = all();
  expect(after.map((said, index) => JSON.stringify(said) !== JSON.stringify(before[index]))).toEqual([true, true, true, false]);
  const lamp = entryNamed(house, "Lamp");
  expect(recipeOf(house, lamp, styleOf(house, house.scopeOf(lamp))).figures).toContainEqual({
    label: "Energy",
    text: (after[2] as { text: string }).text,
  });
});
