/** Specs in Markdown: which lines are a block's, and that they read as they would in a file of their own. */
import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { mayHoldSpecs, readMarkdown } from "../../grammar/markdown.ts";
import { textOf } from "../../grammar/positions.ts";
import { print } from "../../grammar/print.ts";
import { read } from "../../grammar/read.ts";
import type { Entry } from "../../grammar/tree.ts";
import { anyText } from "./texts.ts";

/** The lines of the blocks, each with its number and margin. */
const inside = (text: string) => {
  const { tree, margins } = readMarkdown(text);
  const lines = print(tree).split(/\r\n|\r|\n/);
  return margins.flatMap((margin, line) => (typeof margin !== "string" ? [] : [[line, margin, lines[line]]]));
};

// The cases are those of the CommonMark Spec 0.31.2, chapters 4.5 (fenced code blocks), 5.1 and 5.2, with our tag.
describe("which lines are a spec's", () => {
  it.each([
    ["backticks", "```drink\ndrink A\n```\n", [[1, "", "drink A"]]],
    ["tildes", "~~~drink\ndrink A\n~~~\n", [[1, "", "drink A"]]],
    ["a blank before the tag", "``` drink\ndrink A\n```\n", [[1, "", "drink A"]]],
    ["more than the tag", "~~~~    drink startline=3 $%@#$\ndrink A\n~~~~\n", [[1, "", "drink A"]]],
    ["another tag that starts alike", "```drinks\ndrink A\n```\n", []],
    ["another tag", "```text\ndrink A\n```\n", []],
    ["no tag", "```\ndrink A\n```\n", []],
    [
      "a fence inside a longer one",
      "````drink\n```\ndrink A\n````\n",
      [
        [1, "", "```"],
        [2, "", "drink A"],
      ],
    ],
    ["a block inside another language's block", "````text\n```drink\ndrink A\n```\n````\n", []],
    ["never closed", "```drink\ndrink A", [[1, "", "drink A"]]],
    [
      "never closed, a line just begun",
      "```drink\ndrink A\n",
      [
        [1, "", "drink A"],
        [2, "", ""],
      ],
    ],
    ["just opened", "a\n```drink\n", [[2, "", ""]]],
    ["nothing in it", "```drink\n```\n", []],
    [
      "an indented fence takes as many blanks from each line",
      "  ```drink\n  drink A\n    x\n y\n  ```\n",
      [
        [1, "  ", "drink A"],
        [2, "  ", "  x"],
        [3, " ", "y"],
      ],
    ],
    ["an indented code block is none", "    ```drink\n    drink A\n    ```\n", []],
    [
      "a quote",
      "> ```drink\n> drink A\n>   x\n>\n>y\n> ```\n",
      [
        [1, "> ", "drink A"],
        [2, "> ", "  x"],
        [3, ">", ""],
        [4, ">", "y"],
      ],
    ],
    ["a quote's end closes the block", "> ```drink\n> drink A\n\nx\n", [[1, "> ", "drink A"]]],
    [
      "a list",
      "- a\n\n  ```drink\n  drink A\n    x\n  ```\n",
      [
        [3, "  ", "drink A"],
        [4, "  ", "  x"],
      ],
    ],
    ["a list's item that starts with a fence", "1. ```drink\n   drink A\n   ```\n", [[1, "   ", "drink A"]]],
    [
      "a quote in a list in a quote",
      "> 1. > ```drink\n>    > drink A\n>    >   x\n>    > ```\n",
      [
        [1, ">    > ", "drink A"],
        [2, ">    > ", "  x"],
      ],
    ],
    [
      "tabs that the list takes part of",
      "- a\n\n\t```drink\n\tdrink A\n\t\tx\n\t```\n",
      [
        [3, "\t", "drink A"],
        [4, "\t", "\tx"],
      ],
    ],
    ["an HTML comment hides it", "<!--\n```drink\ndrink A\n```\n-->\n", []],
    [
      "line ends of other systems",
      "```drink\r\ndrink A\r\n```\r\n\r~~~drink\rx\r~~~\r",
      [
        [1, "", "drink A"],
        [5, "", "x"],
      ],
    ],
  ])("%s", (_what, text, lines) => expect(inside(text)).toEqual(lines));
});

test("each block is read by itself: nothing of one stands under an entry of the one before", () => {
  const { tree } = readMarkdown(
    "Prose\n```drink\ndrink A\n  50 ml gin\n```\ndrink deep\n```drink\n25 ml rum\n20 ml gin\ndrink B\n```\nend\n",
  );
  const entries = tree.entries.map((entry) => [entry.kind, textOf(entry).trim().split("\n").length, entry.name?.text]);
  expect(entries).toEqual([
    ["text", 1, undefined],
    ["drink", 2, "A"],
    ["text", 1, undefined],
    ["preamble", 2, undefined],
    ["drink", 1, "B"],
    ["text", 1, undefined],
  ]);
  // Each block's own first line that stands under no entry is found fault with, and never a line of prose.
  expect(tree.entries.flatMap(({ lines }) => lines.filter(({ problem }) => problem).map(({ text }) => text))).toEqual(["25 ml rum"]);
});

const containers = fc.array(fc.constantFrom("> ", "- ", "1. ", "   > "), { maxLength: 4 });

test("a spec reads inside lists and quotes as in a file of its own, at its places plus the margin", () => {
  fc.assert(
    fc.property(anyText, containers, fc.constantFrom("```", "~~~", "``````"), (any, around, fence) => {
      // A fence of the same signs closes the block, and a tab is worth less behind a margin.
      const spec = any.replace(/[\r\0\t]/g, "").replace(/[`~]/g, "");
      const lead = around.map((one) => (one.includes(">") ? one : one.replace(/./g, " "))).join("");
      const first = around.join("");
      const lines = spec.split("\n");
      const text = [`${first}${fence}drink`, ...lines.map((line) => `${lead}${line}`), `${lead}${fence}`, ""].join("\n");
      const { tree, margins } = readMarkdown(text);
      const own = tree.entries.filter((_entry, index) => margins[tree.starts[index]!] !== undefined);
      expect(own.map(textOf).join("")).toBe(`${spec}\n`);
      const alone = read(`${spec}\n`);
      const said = (entries: readonly Entry[]) =>
        entries.map(({ kind, lines }) => [kind, lines.map(({ content, problem }) => [content, problem])]);
      // The line behind the last line break of a file is none of a block's.
      const expected = said(alone.entries);
      expected.at(-1)![1] = (expected.at(-1)![1] as unknown[]).slice(0, -1) as never;
      expect(said(own)).toEqual(expected.filter(([, lines]) => (lines as unknown[]).length > 0));
      const raw = text.split("\n");
      for (const [line, margin] of margins.entries()) if (typeof margin === "string") expect(raw[line]!.startsWith(margin)).toBe(true);
    }),
    { numRuns: 300 },
  );
});

test("any text at all gives as many lines as it has, and says quickly where it holds no spec", () => {
  const piece = fc.constantFrom(
    "```drink",
    "~~~drink",
    "```",
    "> ",
    "- ",
    "\n",
    "\n\n",
    "\r\n",
    "\t",
    "  ",
    "drink A",
    "50 ml gin",
    "<!--",
    "é",
    "\0",
  );
  fc.assert(
    fc.property(fc.array(fc.oneof(piece, fc.string({ maxLength: 5 }))), (pieces) => {
      const text = pieces.join("");
      const { tree, margins } = readMarkdown(text);
      expect(tree.lineCount).toBe(text.split(/\r\n|\r|\n/).length);
      expect(margins.length).toBe(tree.lineCount);
      if (!mayHoldSpecs(text)) expect(margins.every((margin) => margin === undefined)).toBe(true);
    }),
    { numRuns: 2000 },
  );
});
