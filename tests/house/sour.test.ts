import { expect, test } from "vitest";
import { TextDocument } from "vscode-languageserver-textdocument";
import { toTextEdits } from "../../server/features/edits.ts";
import { assessDrink } from "../../server/house/drink.ts";
import { rules } from "../../server/rules/all.ts";
import { findingsOf } from "../../server/rules/run.ts";
import { entryNamed, houseOf, root } from "./make.ts";

// 4 : 2 : 1 of 40 % spirit, lime juice and agave syrup cut 2 : 1 is balanced: common practice, no source.
const syrup = "prep cut agave syrup\n  2 parts agave syrup\n  1 part water\n  parts by: weight\n";
const sour = (spirit: string, syrupMl: number) =>
  `${syrup}stock harbour spirit\n  kind: spirit\n  abv: 40 %\n\ndrink Slip\n  family: sour\n  glass: coupe\n  method: shake 12 s; fine strain\n  garnish: none\n  60 ml ${spirit}\n  30 ml lime juice\n  ${syrupMl} ml cut agave syrup\n`;

function balance(text: string) {
  const house = houseOf(text);
  const entry = entryNamed(house, "Slip");
  const fail = (code: string, cause: unknown): never => {
    throw new Error(code, { cause });
  };
  return { house, found: findingsOf(house, entry, rules, fail).filter(({ code }) => code === "unbalanced") };
}

test("4 : 2 : 1 of spirit, lime and agave syrup stands inside the sour's window", () => {
  expect(balance(sour("harbour spirit", 15)).found).toEqual([]);
});

test.each([
  ["three times the syrup", 45, "too sweet"],
  ["a quarter of the syrup", 3.75, "too sour"],
])("with %s it is found, and the fix ends it", (_what, ml, verdict) => {
  const text = sour("harbour spirit", ml);
  const { house, found } = balance(text);
  expect(found.map(({ what }) => what)).toEqual([expect.stringContaining(verdict)]);
  const fix = found[0]!.fixes!()[0]!;
  const document = house.document(`${root}/spec.drink`)!;
  const fixed = TextDocument.applyEdits(TextDocument.create("x", "x", 1, text), toTextEdits(house, document, fix));
  expect(fixed).not.toBe(text);
  expect(balance(fixed).found).toEqual([]);
});

const waterIn = (text: string): number => {
  const house = houseOf(text);
  return assessDrink(house, entryNamed(house, "Slip")).outcome.value("waterMl")!;
};

test("a spirit from the freezer takes up less water, a hot pour more", () => {
  const warm = waterIn(sour("harbour spirit", 15));
  expect(waterIn(sour("harbour spirit, frozen", 15))).toBeLessThan(warm - 5);
  expect(waterIn(sour("harbour spirit, hot", 15))).toBeGreaterThan(warm + 5);
});

test("what is poured after the ice is not shaken: the same water, whatever comes on top", () => {
  const text = sour("harbour spirit", 15);
  expect(waterIn(`${text}  75 ml brut sparkling wine, after\n`)).toBe(waterIn(text));
  expect(waterIn(`${text}  75 ml brut sparkling wine\n`)).toBe(waterIn(text));
});
