import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { edit } from "../../grammar/edit.ts";
import { readLine } from "../../grammar/line.ts";
import { print } from "../../grammar/print.ts";
import { read } from "../../grammar/read.ts";
import type { Line, Tree } from "../../grammar/tree.ts";
import { anyChange, anyLine, anyText, apply, place } from "./texts.ts";

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

  test("keep the very entries whose lines, and whose neighbours above, they do not touch", () => {
    fc.assert(
      fc.property(anyText, place, place, anyText, (text, one, other, inserted) => {
        const before = read(text);
        const after = edit(before, [{ range: { start: one, end: other }, text: inserted }]);
        const [from, to] = [one, other].map(({ line }) => Math.min(Math.max(line, 0), before.lineCount - 1)).sort((a, b) => a - b) as [
          number,
          number,
        ];
        before.entries.forEach((entry, index) => {
          const start = before.starts[index]!;
          const end = start + entry.lines.length;
          // The entry right above a change may gain what no longer opens an entry of its own.
          const isAbove = (before.starts[index + 1] ?? end) < from - 1;
          // An unknown head may be a field that the entry above takes now; an entry's own word stands for itself.
          const head = entry.lines[0]!.content;
          const isBelow = start > to + 1 && head.kind === "entry" && head.entry !== undefined;
          if (isAbove || isBelow) expect(after.entries).toContain(entry);
        });
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
