/** Whatever an author may have typed so far: every printer prints it, and what is printed holds together. */
import fc from "fast-check";
import JSZip from "jszip";
import MarkdownIt from "markdown-it";
import { expect, test } from "vitest";
import { parseStringPromise } from "xml2js";
import { bookDocx } from "../../../server/reports/book/docx.ts";
import { bookHtml } from "../../../server/reports/book/html.ts";
import { chapterMarkdown } from "../../../server/reports/book/markdown.ts";
import { whatPrints } from "../../../server/reports/book/what-prints.ts";
import { bookFrom, filesOf, noDay } from "./books.ts";

const house = filesOf(`=== book.drink
book Any <Book> & more
drink Lamp & Sour
  method: shake 12 s
  50 ml dry gin
  25 ml lemon juice
    or 25 ml lime juice
  20 ml honey syrup
prep honey syrup
  200 g honey
  100 g water
`);
const sound = [
  ...[
    "a ",
    "*b* ",
    "**c** ",
    "# D\n",
    "## Lamp & Sour\n",
    "# Text\n",
    "\n",
    "\n\n",
    "> ",
    "- ",
    "  ",
    "1. ",
    "---\n",
    "`e` ",
    "<br>",
    "<!-- f -->",
  ],
  ...["&amp; ", "\\* ", "é🍋 ", "\r\n", ":strength[Lamp & Sour] ", ':see[honey syrup]{as="the <syrup>"} ', "\n::spec[Lamp & Sour]\n"],
  ...["\n```drink\ndrink G\n  30 ml dry gin\n```\n", "```text\nh\n```\n", "\n| i | j |\n| --- | ---: |\n| k | :see[honey syrup] |\n"],
  ...[
    "![l](pictures/dot.png) ",
    "[o](https://example.org/?a=b&c) ",
    "\n::index[]{by=ingredient}\n",
    "\n::contents[]\n",
    "\n::allergens[]\n",
  ],
];
const broken = [
  ...["\uFEFF", "\0", "\u00a0", "\t", "\r", ":", "[", "]", "{", "}", "|", "\\", '"', "```", "drink A\n", "  ?? 3\n", "&#0;"],
  ...[":see[", ":pour[x]{in=", "::spec[", "::index{", ":strength[Lamp & Sour]{words,x}", "::see[Lamp & Sour]", ":see[Lamp &\nSour]"],
  ...["book Other\n", "house Own\n", "prep Lamp & Sour\n", "  chapters: 02.md\n", "[^1]: ", ":keeps[honey syrup]{units=}", "-\t"],
  ...["::spec[nothing]\n", ":wrong[x] ", "```drink\n", "  30 ml lime juice\n", "```\n", "![m](none.png)", "[n](#d) ", "<i>"],
];
const chapter = fc.array(fc.constantFrom(...sound), { maxLength: 12 }).map((pieces) => pieces.join(""));
const anything = fc.array(fc.constantFrom(...sound, ...broken), { maxLength: 25 }).map((pieces) => pieces.join(""));
const bookWith = (text: string) => bookFrom(new Map([...house, ["01.md", text]]));

test("what is broken still prints, for whoever looks at it while it is written", () => {
  fc.assert(
    fc.property(anything, (text) => {
      const one = bookWith(text);
      expect(bookHtml(one)).toContain("</html>");
      for (const each of one.chapters) {
        expect(chapterMarkdown(one, each)).toBeTypeOf("string");
        expect(whatPrints(one, each)).toBeTypeOf("string");
      }
    }),
    { numRuns: 300 },
  );
});

test("whatever is wrong has its place in its file, and a word to do about it", () => {
  fc.assert(
    fc.property(anything, fc.constantFrom("", "  chapters: 01.md; 02.md; 01.md\n"), (text, fields) => {
      const files = new Map([...house, ["01.md", text], ["02.md", "# B\n"]]);
      files.set("book.drink", house.get("book.drink")!.replace("& more\n", `& more\n${fields}`));
      for (const { file, line, column, what, todo } of bookFrom(files).problems) {
        const there = files.get(file)?.split(/\r\n?|\n/)[line - 1];
        expect(there, what).toBeDefined();
        expect(column).toBeGreaterThan(0);
        expect(column, what).toBeLessThanOrEqual(there!.length + 1);
        expect(todo).not.toBe("");
      }
    }),
    { numRuns: 500 },
  );
});

test("a manuscript for Word is made of anything", async () => {
  await fc.assert(
    fc.asyncProperty(anything, async (text) => {
      expect((await bookDocx(bookWith(text), noDay)).length).toBeGreaterThan(0);
    }),
    { numRuns: 40 },
  );
});

test("a page without faults has every id once, and every link within it leads to one", () => {
  let count = 0;
  fc.assert(
    fc.property(chapter, (text) => {
      const one = bookWith(text);
      if (one.problems.length > 0) return;
      count++;
      const html = bookHtml(one);
      const ids = [...html.matchAll(/ id="([^"]*)"/g)].map(([, id]) => id!);
      expect(new Set(ids).size).toBe(ids.length);
      for (const [, link] of html.matchAll(/ href="#([^"]*)"/g)) expect(ids).toContain(decodeURIComponent(link!));
      expect(html).not.toMatch(/<syrup>|<Book>/);
    }),
    { numRuns: 300 },
  );
  expect(count).toBeGreaterThan(50);
});

test("a chapter without faults has no directive left in its Markdown", () => {
  const reader = new MarkdownIt("commonmark");
  fc.assert(
    fc.property(chapter, (text) => {
      const one = bookWith(text);
      if (one.problems.length > 0) return;
      for (const { type, children } of reader.parse(chapterMarkdown(one, one.chapters[0]!), {})) {
        const words = type === "inline" ? children!.filter((child) => child.type === "text").map(({ content }) => content) : [];
        expect(words.join("")).not.toMatch(/(?<!\\):(?:see|strength|spec|index|contents|allergens)\[/);
      }
    }),
    { numRuns: 300 },
  );
});

test("a manuscript is well-formed, and its links lead to its bookmarks", async () => {
  await fc.assert(
    fc.asyncProperty(chapter, async (text) => {
      const one = bookWith(text);
      if (one.problems.length > 0) return;
      const zip = await JSZip.loadAsync(await bookDocx(one, noDay));
      const document = await zip.file("word/document.xml")!.async("string");
      await parseStringPromise(document);
      const marks = [...document.matchAll(/<w:bookmarkStart w:name="([^"]*)"/g)].map(([, name]) => name!);
      expect(new Set(marks).size).toBe(marks.length);
      for (const [, name] of document.matchAll(/w:anchor="([^"]*)"/g)) expect(marks).toContain(name);
    }),
    { numRuns: 60 },
  );
});
