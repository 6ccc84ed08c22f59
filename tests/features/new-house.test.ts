/** The house that is written for a folder without one: it works at once, and nothing that is there is touched. */
import { describe, expect, it, test } from "vitest";
import type { CreateFile, TextDocumentEdit, TextEdit } from "vscode-languageserver-types";
import { currencyCodes } from "../../grammar/currencies.ts";
import { read } from "../../grammar/read.ts";
import { standardDrinks } from "../../server/engine/standard-drinks.ts";
import { countryChoices, newHouse, type WrittenHouse, whyNoHouse } from "../../server/features/new-house.ts";
import { assessDrink } from "../../server/house/drink.ts";
import { entryNamed, houseOf, root } from "../house/make.ts";
import { findIn } from "../rules/check.ts";

const asked = { folder: root, name: "The Halyard Room", country: "GB" };

const written = (answer: ReturnType<typeof newHouse>) => {
  if ("because" in answer) throw new Error(answer.because);
  return answer;
};
const texts = ({ edit }: WrittenHouse) =>
  (edit.documentChanges ?? []).flatMap((change) =>
    "edits" in change ? [[change.textDocument.uri, (change.edits[0] as TextEdit).newText] as const] : [],
  );

describe.each(countryChoices().map(({ country }) => country))("a house in “%s”", (country) => {
  const house = houseOf("");
  for (const [uri, text] of texts(written(newHouse(house, { ...asked, country }))))
    house.setDocument({ uri, version: null, tree: read(text) });

  it("has nothing to be put right", () => expect(findIn(house)).toEqual([]));

  it("computes its first spec whole, inside the window of its family", () => {
    const { outcome } = assessDrink(house, entryNamed(house, "First Ferry"));
    for (const figure of ["strengthPct", "afterVolumeMl", "ratio", "dilutionShare"] as const)
      expect(outcome.value(figure)).toBeGreaterThan(0);
  });
});

test("the first spec is opened at its name", () => {
  const answer = written(newHouse(houseOf(""), asked));
  const [, text] = texts(answer).find(([uri]) => uri === answer.open.uri)!;
  expect(text.split("\n")[answer.open.position.line]!.slice(answer.open.position.character)).toBe("First Ferry");
});

test("files that are there keep their names and their texts, and a create that meets one fails", () => {
  const house = houseOf("=== drinks.drink\ndrink Slip\n  50 ml gin\n");
  const { edit } = written(newHouse(house, asked));
  const created = (edit.documentChanges as (CreateFile | TextDocumentEdit)[]).flatMap((change) => ("kind" in change ? [change] : []));
  expect(created.map(({ uri }) => uri)).toEqual([`${root}/house.drink`, `${root}/drinks-2.drink`, `${root}/menu.drink`]);
  for (const { options } of created) expect(options).toEqual({ overwrite: false, ignoreIfExists: false });
});

test("a folder with a house gets no second one; a folder below it may", () => {
  const house = houseOf("=== bar.drink\n# ours\nhouse X\n");
  expect(newHouse(house, asked)).toEqual({ because: expect.stringContaining("line 2 of bar.drink") });
  expect(whyNoHouse(house, `${root}/summer`)).toBeUndefined();
});

test.each(["", "  ", "a\nb", "The “Room”", "Bar # 4"])("“%s” is no name", (name) => {
  expect(newHouse(houseOf(""), { ...asked, name })).toHaveProperty("because");
});

test("every country with a standard drink can be chosen, with a currency of ISO 4217", () => {
  const choices = countryChoices();
  expect(
    choices
      .map(({ country }) => country)
      .filter(Boolean)
      .sort(),
  ).toEqual(standardDrinks.map(({ country }) => country).sort());
  for (const { country, description } of choices) if (country) expect(currencyCodes.has(description.slice(4))).toBe(true);
});
