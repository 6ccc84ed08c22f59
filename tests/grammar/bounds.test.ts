/** What a file can cost: time grows with its length and no faster, whatever stands in it. */
import { describe, expect, test } from "vitest";
import { readLine } from "../../grammar/line.ts";
import { makeCheckedParser } from "../../grammar/parser.ts";
import { longestLine } from "../../grammar/problems.ts";
import { read } from "../../grammar/read.ts";
import { say } from "./say.ts";

test("the grammar passes chevrotain's own checks", () => {
  expect(() => makeCheckedParser()).not.toThrow();
});

const pieces = [
  ...["1", "1 ", "1/", "1/1 ", "1-", "1,", "1.", "1,000", "½", "½ ", "1 1/2", "1 to ", "to ", "to 1 ", "to about ", "about ", "about 1 "],
  ...["-", "- ", ".", ",", ", ", ";", ":", ": ", '"', '" ', '"a', "#", " #", "# ", ' # "', '"a # b" ', "/", " / ", "£", "£1 / "],
  ...[
    " ",
    "\t",
    "a",
    "a ",
    "for ",
    "a for ",
    '"a for ',
    "or ",
    "fl ",
    "1 fl ",
    "1 oz ",
    "%",
    "1%",
    "oz.",
    "°",
    "e\u0301",
    "🍋",
    "\ufeff",
    "all ",
  ],
];
const starts = [
  "",
  "  ",
  "  50 ml ",
  "  - ",
  "  swap ",
  "  or ",
  "  without ",
  "  method: ",
  "  aka: ",
  "  price: ",
  "  x: ",
  "drink ",
  "dri ",
  "  # allow ",
];

describe("the longest line that is read", () => {
  test.each(pieces)("of nothing but %j is read in no time", (piece) => {
    for (const start of starts) {
      const line = (start + piece.repeat(longestLine)).slice(0, longestLine);
      const begin = performance.now();
      readLine(line);
      // Such a line takes a few milliseconds; the rest is room for a busy machine.
      expect(performance.now() - begin).toBeLessThan(2000);
    }
  });

  test.each(pieces)("of twice as many %j takes no more than a few times as long", (piece) => {
    for (const start of ["", "  50 ml ", "  swap ", "  aka: "]) {
      const time = (length: number) => {
        const lines = Array.from({ length: 5 }, (_, run) => `${(start + piece.repeat(length)).slice(0, length)}${run} ${length}`);
        return Math.min(
          ...lines.map((line) => {
            const begin = performance.now();
            readLine(line);
            return performance.now() - begin;
          }),
        );
      };
      // Below the clock's grain and the machine's jitter, nothing can be told.
      expect(time(longestLine - 20)).toBeLessThan(8 * time(longestLine / 2) + 25);
    }
  });
});

test("a file of a hundred thousand lines, or of one, is read without a deep stack", () => {
  expect(read("drink A\n".repeat(100_000)).entries.length).toBe(100_000);
  expect(read("\n".repeat(100_000)).lineCount).toBe(100_001);
  expect(read(`drink A\n  story: ${"x".repeat(1_000_000)}`).lineCount).toBe(2);
  expect(read("x".repeat(1_000_000)).entries[0]?.lines[0]?.content.kind).toBe("unread");
});

test("what was read stays right when the memory of lines has been turned over twice", () => {
  const texts = ["  50 ml gin, frozen # a", "  garnish: lemon zest, 2; salt", "  - Lantern 12.50", "drink A", "  swap a for b for c"];
  const before = texts.map(say);
  const first = readLine(texts[0]!);
  for (let n = 0; n < 60_000; n++) readLine(`  ${n} ml gin`);
  expect(readLine(texts[0]!)).not.toBe(first);
  expect(readLine(texts[0]!)).toEqual(first);
  expect(texts.map(say)).toEqual(before);
});

test("equal lines are read once", () => {
  expect(readLine("  50 ml gin, chilled")).toBe(readLine("  50 ml gin, chilled"));
});
