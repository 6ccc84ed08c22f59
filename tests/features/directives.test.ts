/** Directives in the text of a book: what is offered, told, found and renamed. */
import { expect, test } from "vitest";
import type { DocumentSymbol } from "vscode-languageserver-types";
import { codeLenses, placesOfLens, resolveCodeLens } from "../../server/features/code-lens.ts";
import { hover } from "../../server/features/hover.ts";
import { references } from "../../server/features/references.ts";
import { rename } from "../../server/features/rename.ts";
import { documentSymbols } from "../../server/features/symbols.ts";
import { root } from "../house/make.ts";
import { labelsAt, take } from "./completing.ts";
import { fixtureOf } from "./cursor.ts";

const house = `=== house.drink
house Slack Water
  units: ml
  ounce: 30 ml

book Slack Water

stock aged rum
  kind: spirit
  abv: 43 %

prep dune honey
  200 g honey
  100 g water

drink Fog Bank
  50 ml aged rum
  25 ml lemon juice
  20 ml dune honey
  method: shake 12 s with cubed ice

drink Ebb
  60 ml dry gin
  method: stir 30 s with cubed ice
=== chapter.md
# Fog

`;
const at = (text: string) => fixtureOf(house + text);

test("a directive is offered where one is begun, and nothing in running text", () => {
  expect(labelsAt(`${house}It is :<>`)).toEqual(expect.arrayContaining(["strength", "pour", "see"]));
  expect(labelsAt(`${house}It is :str<>`)).toContain("strength");
  expect(labelsAt(`${house}::<>`)).toEqual(expect.arrayContaining(["spec", "contents", "index"]));
  expect(labelsAt(`${house}::<>`)).not.toContain("strength");
  for (const text of ["<>", "It is <>", "At 12:<>", "Note:<>", "A note: <>", ":see[Ebb] and <>", "word:s<>"]) {
    expect({ text, labels: labelsAt(house + text) }).toEqual({ text, labels: [] });
  }
});

test("what it takes is filled in", () => {
  expect(take(`${house}It is :str<>`, "strength", { snippets: true })).toBe("It is :strength[$1]");
  expect(take(`${house}It is :p<>`, "pour", { snippets: true })).toBe('It is :pour[$1]{in="$2"}');
  expect(take(`${house}It is :<>`, "strength", { snippets: true })).toBe("It is :strength[$1]");
  expect(take(`${house}::<>`, "spec", { snippets: true })).toBe("::spec[$1]");
  expect(take(`${house}::in<>`, "index", { snippets: true })).toMatch(/^::index\{by=\$\{2\|spirit,family,ingredient,strength\|\}\}$/);
});

test("a book's chapters are the texts below its folder that say something, each once", () => {
  const files = "\n=== book/two.md\n:see[Fog]\n=== book/more/three.md\n::contents\n=== book/one.md\n:see[Fog]\n=== other.md\n:see[Fog]\n";
  expect(labelsAt(`=== book/book.drink\nbook Slack Water\n  chapters: <>${files}`)).toEqual(["more/three.md", "one.md", "two.md"]);
  expect(labelsAt(`=== book/book.drink\nbook Slack Water\n  chapters: one.md; t<>${files}`)).toEqual(["more/three.md", "two.md"]);
});

test("a label is a recipe of the book, for a pour what is poured", () => {
  const recipes = labelsAt(`${house}:strength[<>`);
  expect(recipes.slice(0, 2).sort()).toEqual(["Ebb", "Fog Bank"]);
  expect(recipes).toContain("dune honey");
  expect(recipes).not.toContain("aged rum");
  expect(take(`${house}:see[fo<>] there`, "Fog Bank")).toBe(":see[Fog Bank] there");
  expect(take(`${house}:see[<>] there`, "Fog Bank")).toBe(":see[Fog Bank] there");
  expect(take(`${house}:strength[Ebb]{<>}`, "words")).toBe(":strength[Ebb]{words}");
  expect(take(`${house}:strength[Ebb]{units=<>}`, "both")).toBe(":strength[Ebb]{units=both}");
  expect(labelsAt(`${house}:pour[<>]{in="Fog Bank"}`)).toEqual(["aged rum", "lemon juice", "dune honey"]);
  expect(labelsAt(`${house}:pour[aged rum]{in="<>"}`)[0]).toBe("Fog Bank");
  expect(labelsAt(`${house}:pour[aged rum]{<>}`)).toEqual(["in", "words", "figures", "units"]);
  expect(labelsAt(`${house}:strength[Ebb]{units=<>}`)).toEqual(["metric", "US", "both"]);
});

test("a hover says what is printed, and the recipe", () => {
  const { house: all, document, position } = at(':pour[lemon <>juice]{in="Fog Bank"}');
  const { contents } = hover(all, document, position)!;
  expect((contents as { value: string }).value).toContain("Prints **25 ml**");
  expect((contents as { value: string }).value).toContain("Fog Bank");
});

test("a hover of what can say nothing says why", () => {
  const { house: all, document, position } = at(":strength[Nobo<>dy]");
  expect((hover(all, document, position)!.contents as { value: string }).value).toBe(
    "Prints nothing. No drink and no prep is called “Nobody”.",
  );
});

test("a recipe that is renamed is called by its new name in the text", () => {
  const { house: all, document, position } = at('It is :strength[Fog <>Bank] with :pour[aged rum]{in="fog bank"}.\n');
  const fix = rename(all, document, position, "Sea Fret");
  if ("because" in fix) throw new Error(fix.because);
  expect(fix.edits.map((edit) => edit.text).sort()).toEqual(["Sea Fret", "Sea Fret", "Sea Fret"]);
  expect(references(all, document, position, true, (uri) => uri).length).toBe(3);
});

test("the outline of a chapter has its recipes under the headings that lead to them", () => {
  const text = `${house}Words.

## Cold

\`\`\`drink
drink Slip
  50 ml gin
\`\`\`

### How cold

Only words: :see[Ebb].

## Shown

> ::spec[Fog Bank]

# No recipe here<>
`;
  const outline = (symbols: readonly DocumentSymbol[]): unknown[] =>
    symbols.map(({ name, children, range }) => [name, `${range.start.line}-${range.end.line}`, ...(children ? outline(children) : [])]);
  expect(outline(documentSymbols(at(text).document))).toEqual([
    ["Fog", "0-18", ["Cold", "4-14", ["Slip", "7-8", ["gin", "8-8"]]], ["Shown", "15-18", ["Fog Bank", "17-17"]]],
  ]);
});

test("above a recipe of a book stands in how many chapters it is told of", () => {
  const text = `${house}A :see[Fog Bank], :strength[Fog Bank] strong.\n\n# More\n\n::spec[Fog Bank]<>\n=== other.md\nA :see[Fog Bank].\n`;
  const { house: all } = at(text);
  const specs = all.document(`${root}/house.drink`)!;
  const said = codeLenses(all, specs).map((lens) => resolveCodeLens(all, lens, true));
  const of = (name: string) =>
    said.filter(
      ({ range, data }) =>
        data.shows === "chapters" &&
        specs.tree.entries.some((one, at) => one.name?.text === name && specs.tree.starts[at] === range.start.line),
    );
  expect(of("Fog Bank").map(({ command }) => command)).toEqual([
    expect.objectContaining({ title: "told of in 2 chapters", command: "mutchkin.showReferences" }),
  ]);
  expect(placesOfLens(all, of("Fog Bank")[0]!.data)).toHaveLength(3);
  expect(of("Ebb").map(({ command }) => command)).toEqual([{ title: "told of nowhere else", command: "" }]);
});
