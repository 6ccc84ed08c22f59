import { expect, test } from "vitest";
import { edit } from "../../grammar/edit.ts";
import { countParsed } from "../../grammar/line.ts";
import { print } from "../../grammar/print.ts";
import { read } from "../../grammar/read.ts";
import type { Tree } from "../../grammar/tree.ts";

const at = (line: number, character: number) => ({ line, character });
const insert = (line: number, character: number, text: string) => ({
  range: { start: at(line, character), end: at(line, character) },
  text,
});

/** A file of a thousand drinks of seven lines, each line its own. */
const entryCount = 1000;
const linesEach = 7;
const drink = (n: number) =>
  `drink Tide ${n}\n  family: sour\n  garnish: lemon zest ${n}\n  story: Number ${n}\n    of many.\n  ${n} ml gin ${n}\n  20 ml lemon juice\n`;
const big = read(Array.from({ length: entryCount }, (_, n) => drink(n)).join(""));

/** The places of the entries that are not the very objects of the tree before. */
function changed(before: Tree, after: Tree): number[] {
  return after.entries.flatMap((entry, index) => (entry === before.entries[index] ? [] : [index]));
}

/** The tree after the edit, and how many lines were parsed for it. */
function measure(tree: Tree, ...changes: Parameters<typeof edit>[1]): { after: Tree; parsed: number } {
  const before = countParsed();
  const after = edit(tree, changes);
  return { after, parsed: countParsed() - before };
}

test.each([
  ["in a pour", insert(500 * linesEach + 5, 5, "1")],
  ["in a field", insert(500 * linesEach + 2, 12, "dried ")],
  ["in a head", insert(500 * linesEach, 6, "High ")],
  ["in prose", insert(500 * linesEach + 4, 5, "nearly ")],
  ["a new line", insert(500 * linesEach + 5, 3, "0 ml rum\n  5")],
])("a change %s of a file of 1,000 entries keeps the other 999, and parses its own lines only", (_, change) => {
  const { after, parsed } = measure(big, change);
  expect(changed(big, after)).toEqual([500]);
  expect(parsed).toBeLessThanOrEqual(2);
  expect(after).toEqual(read(print(after)));
});

test("an entry that moves down stays the same object", () => {
  const { after, parsed } = measure(big, insert(0, 0, "# card\n\n\n"));
  expect(after.entries[0]?.kind).toBe("preamble");
  expect(after.entries.slice(1).every((entry, index) => entry === big.entries[index])).toBe(true);
  expect(after.starts[1]).toBe(3);
  expect(parsed).toBe(0);
});

test("a whole new text that differs in one line is a change of that line", () => {
  const text = print(big).replace("of many.\n  500 ml", "of many.\n  501 ml");
  const { after, parsed } = measure(big, { text });
  expect(changed(big, after)).toEqual([500]);
  expect(parsed).toBe(1);
});

test("a change to the same text changes nothing", () => {
  expect(edit(big, [{ text: print(big) }])).toBe(big);
  expect(edit(big, [insert(3, 3, "")])).toBe(big);
});

test("a word at the margin closes the entry above it, and what follows it is its own", () => {
  const before = read("drink A\n  50 ml gin\n  20 ml lemon juice\ndrink B\n  50 ml rum\n");
  const split = edit(before, [insert(2, 0, "dri\n")]);
  expect(split.entries.map(({ kind, lines }) => [kind, lines.length])).toEqual([
    ["drink", 2],
    ["unknown", 2],
    ["drink", 3],
  ]);
  expect(split.entries[2]).toBe(before.entries[1]);
  const joined = edit(split, [{ range: { start: at(2, 0), end: at(3, 0) }, text: "" }]);
  expect(joined).toEqual(before);
  expect(joined.entries[1]).toBe(before.entries[1]);
});

test("a head that is indented joins the entry above it", () => {
  const before = read("drink A\n  50 ml gin\ndrink B\n  50 ml rum\ndrink C\n");
  const after = edit(before, [insert(2, 0, "  ")]);
  expect(after.entries.map(({ lines }) => lines.length)).toEqual([4, 2]);
  expect(after.entries[1]).toBe(before.entries[2]);
});

test("a field at the margin goes where the entry above it takes it", () => {
  const before = read("stock A\nglass: coupe\n  50 ml gin\ndrink C\n");
  expect(before.entries.map(({ kind }) => kind)).toEqual(["stock", "unknown", "drink"]);
  const after = edit(before, [{ range: { start: at(0, 0), end: at(0, 5) }, text: "drink" }]);
  expect(after.entries.map(({ kind }) => kind)).toEqual(["drink", "drink"]);
  expect(after).toEqual(read(print(after)));
  expect(after.entries[1]).toBe(before.entries[2]);
});

test("a line feed behind a lone carriage return makes one line break of the two", () => {
  const before = read("drink A\r  50 ml gin\r");
  const after = edit(before, [insert(1, 0, "\n")]);
  expect(print(after)).toBe("drink A\r\n  50 ml gin\r");
  expect(after).toEqual(read(print(after)));
});

test("places out of range are taken as the nearest in range, and turned ranges are turned back", () => {
  const before = read("drink A\n  50 ml gin");
  expect(print(edit(before, [insert(99, 99, "!")]))).toBe("drink A\n  50 ml gin!");
  expect(print(edit(before, [insert(-1, 5, "!")]))).toBe("!drink A\n  50 ml gin");
  expect(print(edit(before, [insert(0, 99, "!")]))).toBe("drink A!\n  50 ml gin");
  expect(print(edit(before, [{ range: { start: at(1, 4), end: at(1, 2) }, text: "40" }]))).toBe("drink A\n  40 ml gin");
});

test("characters count in UTF-16 units, behind emoji and loose accents too", () => {
  const before = read("drink A\n  50 ml cre\u0300me 🍋 gin, hot");
  const after = edit(before, [{ range: { start: at(1, 18), end: at(1, 21) }, text: "rum" }]);
  expect(print(after)).toBe("drink A\n  50 ml cre\u0300me 🍋 rum, hot");
  expect(after.entries[0]?.lines[1]?.content).toMatchObject({ pour: { name: { start: 8, end: 26, commas: [21] } } });
});
