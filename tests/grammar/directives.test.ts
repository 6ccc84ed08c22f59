/**
 * Directives in running text. The form is that of the CommonMark proposal for generic directives
 * (talk.commonmark.org, "Generic directives/plugins syntax", from memory), one line each.
 */
import fc from "fast-check";
import { expect, test } from "vitest";
import { readMarkdown, readWithin } from "../../grammar/markdown.ts";
import { print } from "../../grammar/print.ts";
import type { Directive } from "../../grammar/tree.ts";

/** Each directive with its line and what stands at its places. */
function directivesIn(text: string) {
  const { tree } = readMarkdown(text);
  return tree.entries.flatMap(({ lines }, index) =>
    lines.flatMap(({ content, text: line }, number) =>
      content.kind === "text" ? content.directives.map((one) => said(one, line, tree.starts[index]! + number)) : [],
    ),
  );
}

function said({ name, label, attributes, block, start, end }: Directive, line: string, number: number) {
  const words = [name, ...(label ? [label] : []), ...attributes.flatMap((one) => [one.name, ...(one.value ? [one.value] : [])])];
  for (const one of words) expect(line.slice(one.start, one.end)).toBe(one.text);
  return [number, line.slice(start, end), block];
}

test.each([
  ["in a sentence", "It is :strength[Lantern Sour] strong.", [[0, ":strength[Lantern Sour]", false]]],
  ["with attributes", ':pour[rum]{in="Lantern Sour" words}!', [[0, ':pour[rum]{in="Lantern Sour" words}', false]]],
  ["attributes alone", ":strength{of=x}", [[0, ":strength{of=x}", false]]],
  ["a block", "::spec[Lantern Sour]\n", [[0, "::spec[Lantern Sour]", true]]],
  ["a block without anything", "::contents\n", [[0, "::contents", true]]],
  ["a block between paragraphs that it touches", "a\n::spec[A]\nb\n", [[1, "::spec[A]", true]]],
  [
    "two on a line, on the second line of a quote",
    "> a\n> :see[A] and :see[B]\n",
    [
      [1, ":see[A]", false],
      [1, ":see[B]", false],
    ],
  ],
  [
    "in a heading and in a list",
    "# :see[A]\n\n- b :see[C]\n",
    [
      [0, ":see[A]", false],
      [2, ":see[C]", false],
    ],
  ],
  [
    "in the cells of a table",
    "| a | b |\n| - | - |\n| :see[A] | :see[A] |\n",
    [
      [2, ":see[A]", false],
      [2, ":see[A]", false],
    ],
  ],
  ["behind what was said in code", "`:see[A]` :see[A]", [[0, ":see[A]", false]]],
  ["brackets within brackets", ":see[A [b] c]", [[0, ":see[A [b] c]", false]]],
  ["in strong words", "**:see[A]**", [[0, ":see[A]", false]]],
  ["a colon is none", "At 12:30 there are two: one, other:[x]", []],
  ["escaped", "\\:see[A]", []],
  ["in code", "    :see[A]\n\n```\n:see[A]\n```\n", []],
  ["never closed", ":see[A", []],
  ["over two lines", ":see[A\nB]", []],
  ["a block with words behind it", "::spec[A] b", []],
  ["three colons", ":::spec[A]\n", []],
])("%s", (_what, text, expected) => expect(directivesIn(text)).toEqual(expected));

test("a text stands in its tree from heading to heading, and around specs", () => {
  const { tree } = readMarkdown("a\n\n# B\nc :see[A]\n\n```drink\ndrink A\n```\n## C\n");
  expect(tree.entries.map(({ kind, lines }) => [kind, lines.length])).toEqual([
    ["text", 2],
    ["text", 4],
    ["drink", 1],
    ["text", 1],
    ["text", 2],
  ]);
});

test("whatever stands in it is found at its place, and a name that is exchanged is read again", () => {
  const piece = fc.constantFrom(
    ":see[A]",
    "::spec[A]",
    "\n",
    "> ",
    "- ",
    "# ",
    "`",
    "**",
    " ",
    "| - |",
    "```drink",
    "drink A",
    "b",
    "\\",
    ":",
    "\r\n",
    "~~~",
  );
  fc.assert(
    fc.property(fc.array(piece, { maxLength: 30 }), (pieces) => {
      const text = pieces.join("");
      const read = readMarkdown(text);
      const found = directivesIn(text);
      const changed = print(read.tree).replaceAll("[A]", "[Other]");
      const again = readWithin(changed, read);
      const labels = again.entries.flatMap(({ lines }) =>
        lines.flatMap(({ content }) => (content.kind === "text" ? content.directives.map(({ label }) => label?.text) : [])),
      );
      // A block needs no label.
      expect(labels).toEqual(found.map(([, words]) => (String(words).includes("[") ? "Other" : undefined)));
    }),
    { numRuns: 3000 },
  );
});
