/** Formatting as edits: small ones, none where nothing is to do, and the drinks come to the same. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { TextDocument } from "vscode-languageserver-textdocument";
import type { Range, TextEdit } from "vscode-languageserver-types";
import { read } from "../../grammar/read.ts";
import { formatting, formattingOnType } from "../../server/features/formatting.ts";
import { assessDrink } from "../../server/house/drink.ts";
import { anyText } from "../grammar/texts.ts";
import { houseOf } from "../house/make.ts";

const documentOf = (text: string) => ({ uri: "file:///house/a.drink", version: 1, tree: read(text) });
const apply = (text: string, edits: TextEdit[]) => TextDocument.applyEdits(TextDocument.create("a", "mutchkin", 0, text), edits);
const formatted = (text: string, range?: Range) => apply(text, formatting(documentOf(text), range));

test("an edit touches only what differs", () => {
  const edits = formatting(documentOf("drink Slip\n  50ml gin\n  garnish: none\n"));
  expect(edits).toEqual([{ range: { start: { line: 1, character: 4 }, end: { line: 1, character: 4 } }, newText: " " }]);
});

test("the text ends in one line break, of the file's own kind", () => {
  expect(formatted("drink Slip\r\n  50 ml gin")).toBe("drink Slip\r\n  50 ml gin\r\n");
  expect(formatted("drink Slip\n  50 ml gin\n\n  \n\n")).toBe("drink Slip\n  50 ml gin\n");
  expect(formatted("")).toBe("");
});

test("a range changes its own lines only; the line above a fresh one is formed as one types", () => {
  const text = "drink Slip\n    50ml gin\n    25ml lemon juice\n";
  expect(formatted(text, { start: { line: 2, character: 0 }, end: { line: 3, character: 0 } })).toBe(
    "drink Slip\n    50ml gin\n  25 ml lemon juice\n",
  );
  expect(apply(text, formattingOnType(documentOf(text), { line: 2, character: 0 }))).toBe(
    "drink Slip\n  50 ml gin\n    25ml lemon juice\n",
  );
});

test("on any text: twice is once, and a whole range is the whole text but for its end", () => {
  fc.assert(
    fc.property(anyText, (text) => {
      const once = formatted(text);
      expect(formatted(once)).toBe(once);
      const all = { start: { line: 0, character: 0 }, end: { line: text.split(/\r\n|\r|\n/).length, character: 0 } };
      expect(formatted(text, all).trimEnd()).toBe(once.trimEnd());
    }),
    { numRuns: 500 },
  );
});

test("on any text the drinks come to the same figures", () => {
  fc.assert(
    fc.property(anyText, (text) => {
      expect(figuresOf(formatted(text))).toEqual(figuresOf(text));
    }),
    { numRuns: 150 },
  );
});

function figuresOf(text: string) {
  const house = houseOf(text);
  return [...house.documents()].flatMap(({ tree }) =>
    tree.entries
      .filter(({ kind }) => kind === "drink")
      .map((entry) => {
        const { outcome } = assessDrink(house, entry);
        return (["strengthPct", "sweetnessGPer100Ml", "acidGPer100Ml", "afterVolumeMl"] as const).map((name) => outcome.value(name));
      }),
  );
}
