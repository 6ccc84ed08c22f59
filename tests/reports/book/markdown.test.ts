/** A book as plain Markdown: the author's words to the letter, and what the directives stand for. */

import fc from "fast-check";
import MarkdownIt from "markdown-it";
import { expect, test } from "vitest";
import { backMarkdown, chapterMarkdown, frontMarkdown } from "../../../server/reports/book/markdown.ts";
import { bookOf, ferryBook } from "./books.ts";

function printed(text: string): Map<string, string> {
  const book = bookOf(text);
  const [front, back] = [frontMarkdown(book), backMarkdown(book)];
  return new Map([
    [front.name, front.text],
    ...book.chapters.map((chapter) => [chapter.file, chapterMarkdown(book, chapter)] as const),
    ...(back ? [[back.name, back.text] as const] : []),
  ]);
}

test("what has no directive and no spec is as it was, to the byte", () => {
  const piece = fc.constantFrom(
    "a",
    "*b*",
    "# C",
    "\n",
    "\r\n",
    "\n\n",
    "> ",
    "- ",
    "1. ",
    "    d",
    "```text\n",
    "| e |",
    "\\",
    "é🍋",
    "[x]: /y",
    "12:30",
    "\uFEFF",
    "\r",
  );
  fc.assert(
    fc.property(fc.array(piece, { maxLength: 25 }), (pieces) => {
      const text = pieces.join("");
      expect(printed(`=== book.drink\nbook A\n=== 01.md\n${text}`).get("01.md")).toBe(text);
    }),
    { numRuns: 1000 },
  );
});

test("a value in the first line stands in its place behind a byte order mark", () => {
  const chapter = "\uFEFFPour :pour[dry gin]{in=B} and no more.\n";
  expect(printed(`=== book.drink\nbook A\n\ndrink B\n  50 ml dry gin\n=== 01.md\n${chapter}`).get("01.md")).toBe(
    "\uFEFFPour 50 ml and no more.\n",
  );
});

test("a recipe in the first line has the mark before its first line alone", () => {
  const text = printed("=== book.drink\nbook A\n\ndrink B\n  50 ml dry gin\n=== 01.md\n\uFEFF::spec[B]\n").get("01.md")!;
  expect(text.lastIndexOf("\uFEFF")).toBe(0);
  expect(text).toContain("50 ml");
});

test("values stand where the directives stood, and everything around them is as it was", () => {
  const text = printed(ferryBook).get("01-dusk.md")!;
  expect(text).toMatch(/^It is \d\d\.\d % strong, holds 20 ml of syrup;\n/m);
  expect(text).toContain(
    "see [the \\*mug\\*](02-night.md#night-mug) and [the night](02-night.md#by-hand) or [home](https://example.org/a_b).",
  );
  expect(text).toMatch(/^\| 1 \| \d\d\.\d % \|$/m);
  expect(text).toContain("- two **strong** *words* `code`\n\n  of two paragraphs\n\n3. three\n");
});

test("a recipe in a quote stays in it, and names what it is made of as links", () => {
  const text = printed(ferryBook).get("01-dusk.md")!;
  const quote = text.split("\n").filter((line) => line.startsWith(">"));
  expect(quote[0]).toBe("> ## Lamp Sour");
  expect(quote.join("\n")).toMatch(/^> \| 20.ml \| \S+.oz \| \[honey syrup\]\(back-matter\.md#honey-syrup\) \|$/m);
  expect(quote.join("\n")).toContain("For whoever trims the \\*lamp\\*.");
});

test("a heading that names the recipe is its name; the block itself is gone, any other block stays", () => {
  const text = printed(ferryBook).get("02-night.md")!;
  expect(text.match(/Night Mug/g)).toHaveLength(1);
  expect(text).not.toContain("```drink");
  expect(text).toContain("```text\ndrink no spec\n```\n");
});

test("every link leads to a heading of the file that it names, for a reader of Markdown that is not ours", () => {
  const files = printed(ferryBook);
  const reader = new MarkdownIt();
  const headings = new Map([...files].map(([name, text]) => [name, headingsIn(reader, text)]));
  let count = 0;
  for (const [name, text] of files) {
    for (const { children } of reader.parse(text, {})) {
      for (const link of children ?? []) {
        const href = link.attrGet("href");
        if (link.type !== "link_open" || href?.startsWith("https:")) continue;
        const [file, anchor] = decodeURIComponent(href!).split("#");
        expect(headings.get(file || name), href!).toContain(anchor);
        count++;
      }
    }
  }
  expect(count).toBeGreaterThan(10);
});

/** As the sites that show Markdown make them: lower case, no punctuation, dashes for blanks (practice, no source). */
function headingsIn(reader: MarkdownIt, text: string): string[] {
  const tokens = reader.parse(text, {});
  return tokens.flatMap(({ type }, index) => {
    const words = tokens[index + 1]?.children?.map(({ content }) => content).join("") ?? "";
    return type === "heading_open"
      ? [
          words
            .toLowerCase()
            .replace(/[^\w\- ]/g, "")
            .replaceAll(" ", "-"),
        ]
      : [];
  });
}
