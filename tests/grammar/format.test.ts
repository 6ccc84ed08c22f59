/** The canonical form: the same form twice, the same words, the same sense, and what does not read is left alone. */
import { readdirSync, readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { formatEntry } from "../../grammar/format.ts";
import { read } from "../../grammar/read.ts";
import type { Tree } from "../../grammar/tree.ts";
import { anyText } from "./texts.ts";

const formatted = (text: string) => {
  const { entries } = read(text);
  return entries.map((entry) => entry.lines.map(({ eol }, line) => formatEntry(entry)[line] + eol).join("")).join("");
};

test.each([
  ["a head", "drink   Slip  # x", "drink Slip # x"],
  ["a word in capitals", "Drink Slip", "drink Slip"],
  ["a field", "drink X\n\tGlass :coupe,chilled", "drink X\n\tGlass :coupe,chilled"],
  ["a field's blanks", "drink X\n\tGlass:   coupe ,chilled  ", "drink X\n  glass: coupe, chilled"],
  ["a list", "drink X\n  method: dry shake 10s;shake  12 s ;fine strain", "drink X\n  method: dry shake 10 s; shake 12 s; fine strain"],
  ["a pour", "drink X\n 50ml   aged rum ,frozen   # cold", "drink X\n  50 ml aged rum, frozen # cold"],
  ["an alternative", "drink X\n  50 ml gin\n  # or\n  or 40ml rum", "drink X\n  50 ml gin\n  # or\n    or 40 ml rum"],
  ["a quoted name", 'drink X\n  50 ml "a  b #1" ,frozen', 'drink X\n  50 ml "a  b #1", frozen'],
  ["a menu line", "menu M\n  -Slip   12.50", "menu M\n  - Slip 12.50"],
  [
    "prose, its inner shape kept",
    "drink X\n story: a\n   b\n     c\n\n   d\n 50 ml gin",
    "drink X\n  story: a\n    b\n      c\n\n    d\n  50 ml gin",
  ],
  ["a swap", "drink X\n  swap  gin   for 60ml rum", "drink X\n  swap gin for 60 ml rum"],
  ["per cent", "stock x\n  abv:   43%", "stock x\n  abv: 43%"],
  ["a comment", "drink X\n      # far in\n# at the margin\n  50 ml gin", "drink X\n  # far in\n# at the margin\n  50 ml gin"],
  ["what does not read", "drink X\n     2,5  cl   gin", "drink X\n     2,5  cl   gin"],
  ["an unknown entry", "drnk X\n     50ml gin", "drnk X\n     50ml gin"],
  ["a decimal comma's list", "drink X\n  garnish: a ,b;  c", "drink X\n  garnish: a, b; c"],
])("%s", (_, text, expected) => expect(formatted(text)).toBe(expected));

test("every entry of a text takes its form, whatever follows it", () => {
  fc.assert(
    fc.property(fc.array(anyText, { minLength: 1, maxLength: 3 }), (texts) => {
      for (const entry of read(texts.join("\n")).entries) {
        const alone = read(entry.lines.map(({ text, eol }, line) => text + (line === entry.lines.length - 1 ? "" : eol)).join(""));
        // What stands under no head, and a lone line break inside a pair, read otherwise alone.
        if (entry.kind === "preamble" || alone.entries.length !== 1 || alone.entries[0]!.lines.length !== entry.lines.length) continue;
        const last = entry.lines.length - 1;
        expect(formatEntry(entry).slice(0, last)).toEqual(formatEntry(alone.entries[0]!).slice(0, last));
      }
    }),
    { numRuns: 300 },
  );
  expect(formatted("drink A\n  50ml gin\n\ndrink B\n  60ml rum\n")).toBe("drink A\n  50 ml gin\n\ndrink B\n  60 ml rum\n");
});

const bare = (text: string) => text.toLowerCase().replace(/[^\S\r\n]/g, "");
const sense = ({ entries }: Tree) =>
  entries.map(({ kind, lines }) => [kind, lines.map(({ content, problem, comment }) => [content.kind, problem?.code, comment?.text])]);

describe("on any text", () => {
  test("the form is the same when it is formed again", () => {
    fc.assert(
      fc.property(anyText, (text) => {
        expect(formatted(formatted(text))).toBe(formatted(text));
      }),
      { numRuns: 1000 },
    );
  });

  test("nothing but blanks and the case of opening words changes, and every line goes on saying what it said", () => {
    fc.assert(
      fc.property(anyText, (text) => {
        expect(bare(formatted(text))).toBe(bare(text));
        expect(sense(read(formatted(text)))).toEqual(sense(read(text)));
      }),
      { numRuns: 1000 },
    );
  });
});

test("the demo house stands in its canonical form", () => {
  for (const file of readdirSync("samples/halyard-room")) {
    const text = readFileSync(`samples/halyard-room/${file}`, "utf8");
    expect(formatted(text), file).toBe(text);
  }
});

test("the larder stands in its canonical form", () => {
  for (const file of readdirSync("server/larder").filter((name) => name.endsWith(".drink"))) {
    const text = readFileSync(`server/larder/${file}`, "utf8");
    expect(formatted(text), file).toBe(text);
  }
});
