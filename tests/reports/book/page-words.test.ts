/** What a page says of a recipe besides how it is made: cautions, no alcohol, figures by column, numbers that keep their units. */
import mammoth from "mammoth";
import { expect, test } from "vitest";
import { bookDocx } from "../../../server/reports/book/docx.ts";
import { bookHtml } from "../../../server/reports/book/html.ts";
import { chapterMarkdown } from "../../../server/reports/book/markdown.ts";
import { units } from "../../../server/reports/book/notes.ts";
import { asides } from "../../../server/reports/book/recipe-words.ts";
import { recipeTable } from "../../../server/reports/book/tables.ts";
import { whatPrints } from "../../../server/reports/book/what-prints.ts";
import { bookOf, noDay } from "./books.ts";

const pier = `=== book.drink
house Pier
  country: GB
  ounce: 30 ml
  cautions: shown

book Pier Head

drink Lee Side
  family: sour
  glass: coupe
  method: shake 12 s; strain
  garnish: none
  52.5 ml white rum
  22.5 ml lemon juice
  15 ml sugar syrup
  1 egg white

drink Fair Copy
  glass: collins
  method: build over 125 g cubed ice
  20 ml lime juice
  20 ml sugar syrup
  100 ml water

drink Small Change
  method: build
  25 ml white rum
  200 ml water

prep loose syrup
  200 g white sugar
  100 g water
=== one.md
# Decks

It is :strength[Lee Side] strong over 125 g of ice, at 6 %.

::spec[Lee Side]

::spec[Fair Copy]

::spec[Small Change]

::spec[loose syrup]
`;
const book = bookOf(pier);
const recipeNamed = (name: string) => book.recipes.find(({ recipe }) => recipe.name === name)!.recipe;

test("cautions stand behind the allergens, in short words that leave the last one to local codes", () => {
  expect(asides(book, recipeNamed("Lee Side")).slice(0, 2)).toEqual([
    { label: "Allergens", text: expect.stringMatching(/egg/) },
    { label: "Caution", text: "Raw egg. Local codes decide." },
  ]);
  expect(asides(book, recipeNamed("Fair Copy")).map(({ label }) => label)).not.toContain("Caution");
  for (const text of [bookHtml(book), chapterMarkdown(book, book.chapters[0]!)]) expect(text).toContain("Raw egg. Local codes decide.");
});

test("a caution that is let stand is printed no more, and its chapter is printed anew", () => {
  const allowed = bookOf(pier.replace("  1 egg white\n", "  1 egg white # allow raw-egg: it comes in a carton\n"));
  expect(bookHtml(allowed)).not.toContain("Raw egg");
  const [one, other] = [book, allowed].map((each) => whatPrints(each, each.chapters[0]!));
  expect(one).not.toBe(other);
});

test("what holds no alcohol says so once, and nothing says 0 % or 0 units", () => {
  expect(asides(book, recipeNamed("Fair Copy")).at(-1)!.text).toMatch(/^No alcohol · Energy \d+ kcal$/);
  expect(
    asides(book, recipeNamed("loose syrup"))
      .map(({ text }) => text)
      .join(" "),
  ).not.toMatch(/alcohol|Strength/);
  expect(/>[^<]*(?<![\d.])0.(?:%|UK)[^<]*/.exec(bookHtml(book))?.[0]).toBeUndefined();
});

test("the table of recipes has the units in its heads, and numbers or words in its cells", () => {
  const [drinks] = recipeTable(book);
  if (drinks?.kind !== "table") throw new Error("no table");
  expect(drinks.columns.map(({ head }) => head)).toEqual([
    "Recipe",
    "No.",
    "Family",
    "Strength, %",
    "A serve holds, UK units",
    "Energy, kcal",
  ]);
  for (const row of drinks.rows) for (const cell of row.slice(3)) expect(cell.join("")).toMatch(/^(?:[\d.]+|none|not known)$/);
  // 25 ml at 40 % are one UK unit of 10 ml: the singular is no unit of its own.
  expect(drinks.rows.map((row) => row[4]!.join(""))).toContain("1");
});

test("on a page a number keeps its unit on its line; Markdown has plain blanks", async () => {
  const html = bookHtml(book);
  const body = html.slice(html.indexOf("<main"));
  const loose = /[\d¼½¾] (?:ml|g|%|oz|kcal|UK)(?!\w)/;
  expect(body.match(loose)?.[0]).toBeUndefined();
  expect(body).toMatch(/>52\.5\u00a0ml</);
  expect(body).toMatch(/125\u00a0g of ice, at 6\u00a0%/);
  const { value } = await mammoth.extractRawText({ buffer: Buffer.from(await bookDocx(book, noDay)) });
  expect(value.match(loose)?.[0]).toBeUndefined();
  expect(value).toMatch(/125\u00a0g of ice, at 6\u00a0%/);
  expect(chapterMarkdown(book, book.chapters[0]!)).not.toContain("\u00a0");
});

test("the note on units promises what is done: the nearest step, and how far off that may be", () => {
  const text = units(book)
    .flatMap((block) => (block.kind === "paragraph" ? block.words : []))
    .join(" ");
  expect(text).toContain("rounded to the nearest ¼, so a single pour may be off by half of that.");
  expect(text).toContain("Below eight ounces");
});
