import fc from "fast-check";
import { expect, test } from "vitest";
import { plainLook, table, wrap } from "../../server/reports/sheet.ts";

// A ± alone glues its neighbours together, which may then be longer than a line.
const word = fc.stringMatching(/^[a-z±“”%.]{1,14}$/).filter((text) => text !== "±");
const words = fc.array(word, { minLength: 1, maxLength: 30 });

test("wrapping keeps every word in its order, and every line in the width where its words are short enough", () => {
  fc.assert(
    fc.property(words, fc.integer({ min: 30, max: 100 }), fc.integer({ min: 0, max: 8 }), (text, width, indent) => {
      const lines = wrap(text.join(" "), width, " ".repeat(indent)).split("\n");
      expect(lines.join(" ").split(/\s+/).filter(Boolean)).toEqual(text);
      for (const line of lines) expect(line.length).toBeLessThanOrEqual(width);
      for (const line of lines) expect(line.slice(0, indent).trim()).toBe("");
    }),
  );
});

test("a word longer than the line stays whole", () => {
  expect(wrap("see server/rules/README.md#unbalanced for why", 20)).toBe("see\nserver/rules/README.md#unbalanced\nfor why");
});

test("no cell is cut off, and no line ends in blanks", () => {
  const name = fc.stringMatching(/^[a-zéß綱 ]{1,60}$/).filter((text) => text.trim() !== "");
  const number = fc.oneof(fc.integer().map(String), fc.constantFrom("?", "–", "15.0\n± 0.6"));
  fc.assert(
    fc.property(fc.array(fc.tuple(name, number, number), { minLength: 1, maxLength: 6 }), (rows) => {
      const printed = rows.map(([name, ...numbers]) => ({ name, numbers }));
      const text = table(["Name"], [["One", "ml"], ["Two"]], printed, plainLook);
      for (const [index, [named, ...numbers]] of rows.entries()) {
        expect(text, `row ${index}`).toContain(named.trim().split(/\s+/)[0]!.slice(0, 16));
        for (const cell of numbers) for (const line of cell.split("\n")) expect(text).toContain(line);
      }
      expect(text).not.toMatch(/ $/m);
      expect(text).not.toContain("…");
    }),
  );
});
