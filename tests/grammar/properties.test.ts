import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { edit } from "../../grammar/edit.ts";
import { readLine } from "../../grammar/line.ts";
import { print } from "../../grammar/print.ts";
import { read } from "../../grammar/read.ts";
import type { Line, Tree } from "../../grammar/tree.ts";
import { anyChange, anyLine, anyText, apply } from "./texts.ts";

const linesOf = (tree: Tree): Line[] => tree.entries.flatMap((entry) => entry.lines);

describe("any text", () => {
  test.each([
    ["as people write", anyText],
    ["of any characters", fc.string({ unit: "binary", maxLength: 200 })],
    ["of odd line breaks", fc.string({ unit: fc.constantFrom("\r", "\n", " ", "a", "1", "\ufeff", "\u2028"), maxLength: 40 })],
  ])("%s is kept to the last character", (_, texts) => {
    fc.assert(
      fc.property(texts, (text) => {
        const tree = read(text);
        expect(print(tree)).toBe(text);
        expect(tree.lineCount).toBe(linesOf(tree).length);
        expect(tree.lineCount).toBe(text.split(/\r\n|\r|\n/).length);
      }),
      { numRuns: 500 },
    );
  });

  test("reads the same twice", () => {
    fc.assert(
      fc.property(anyText, (text) => {
        expect(read(text)).toEqual(read(text));
      }),
    );
  });

  test("has spans that lie in their line, within what holds them, and hold what they say", () => {
    fc.assert(
      fc.property(anyText, (text) => {
        for (const line of linesOf(read(text))) checkSpans(line, line.text, 0, line.text.length);
      }),
      { numRuns: 500 },
    );
  });

  test("is unread only where it holds no letter and no digit", () => {
    fc.assert(
      fc.property(anyLine, (text) => {
        if (readLine(text).content.kind === "unread") expect(text.replace(/#.*/, "")).not.toMatch(/[\p{L}\d]/u);
      }),
      { numRuns: 3000 },
    );
  });

  test("has at most one problem a line, in words that name no token", () => {
    fc.assert(
      fc.property(anyLine, (text) => {
        const { problem } = readLine(text);
        if (!problem) return;
        expect(problem.what).not.toMatch(/token|RangeMark|Numeral|undefined|NaN/);
        expect(problem.todo).not.toMatch(/token|RangeMark|Numeral|undefined|NaN/);
        expect(problem.end).toBeGreaterThanOrEqual(problem.start);
      }),
      { numRuns: 500 },
    );
  });
});

describe("edits", () => {
  test("give the tree that a fresh reading gives", () => {
    fc.assert(
      fc.property(anyText, fc.array(anyChange, { minLength: 1, maxLength: 4 }), (text, changes) => {
        let tree = read(text);
        let expected = text;
        for (const change of changes) {
          tree = edit(tree, [change]);
          expected = apply(expected, change);
          expect(print(tree)).toBe(expected);
          expect(tree).toEqual(read(expected));
        }
        expect(edit(read(text), changes)).toEqual(tree);
      }),
      { numRuns: 400 },
    );
  });

  test("keep the very entries whose lines they do not change", () => {
    fc.assert(
      fc.property(anyText, anyChange, (text, change) => {
        const before = read(text);
        const after = edit(before, [change]);
        const first = before.entries.findIndex((entry, index) => entry !== after.entries[index]);
        if (first < 0) return;
        const kept = after.entries.filter((entry) => before.entries.includes(entry)).length;
        const same = countSameEnds(before, after);
        expect(kept).toBeGreaterThanOrEqual(same);
      }),
      { numRuns: 500 },
    );
  });
});

/** Every object with a start and an end that stands in a line's reading. */
function checkSpans(node: unknown, text: string, from: number, to: number): void {
  if (typeof node !== "object" || node === null) return;
  if (Array.isArray(node)) {
    for (const child of node) checkSpans(child, text, from, to);
    return;
  }
  const span = node as { start?: unknown; end?: unknown; text?: unknown; quoted?: unknown; instead?: unknown };
  let [low, high] = [from, to];
  if (typeof span.start === "number" && typeof span.end === "number") {
    expect(span.start).toBeGreaterThanOrEqual(from);
    expect(span.end).toBeLessThanOrEqual(to);
    expect(span.start).toBeLessThanOrEqual(span.end);
    if (typeof span.text === "string" && !span.quoted) expect(text.slice(span.start, span.end)).toBe(span.text);
    [low, high] = [span.start, span.end];
  }
  for (const [key, child] of Object.entries(node))
    if (key !== "unit" || !("dimension" in Object(child))) checkSpans(child, text, low, high);
}

/** How many entries at the head and at the end of the two trees say the same with nothing changed around them. */
function countSameEnds(before: Tree, after: Tree): number {
  const text = (tree: Tree, index: number) => tree.entries[index]?.lines.map((line) => line.text + line.eol).join("");
  let head = 0;
  while (
    head < Math.min(before.entries.length, after.entries.length) - 1 &&
    text(before, head + 1) === text(after, head + 1) &&
    text(before, head) === text(after, head)
  )
    head++;
  return head;
}
