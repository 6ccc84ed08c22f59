/** The manuscript for Word, opened by programs that are not ours: mammoth, which reads Word, and xml2js. */
import JSZip from "jszip";
import mammoth from "mammoth";
import { afterEach, expect, test, vi } from "vitest";
import { parseStringPromise } from "xml2js";
import { bookDocx } from "../../../server/reports/book/docx.ts";
import { bookFrom, bookOf, ferryBook, filesOf, noDay } from "./books.ts";

afterEach(() => {
  vi.useRealTimers();
});

test("the same book is the same bytes, on another day and from files in another order", async () => {
  vi.useFakeTimers({ toFake: ["Date"] });
  vi.setSystemTime(new Date("2026-01-01T10:00:00Z"));
  const one = await bookDocx(bookOf(ferryBook), noDay);
  vi.setSystemTime(new Date("2027-06-02T11:30:10Z"));
  const other = await bookDocx(bookFrom(new Map([...filesOf(ferryBook)].reverse())), noDay);
  expect(Buffer.compare(Buffer.from(one), Buffer.from(other))).toBe(0);
});

async function opened() {
  const buffer = Buffer.from(await bookDocx(bookOf(ferryBook), noDay));
  const { value: html, messages } = await mammoth.convertToHtml(
    { buffer },
    {
      styleMap: [
        "p[style-name='Recipe Name'] => h6.recipe:fresh",
        "p[style-name='Headnote'] => p.headnote:fresh",
        "p[style-name='Method'] => p.method:fresh",
      ],
    },
  );
  return { html, messages: messages.map(({ message }) => message), zip: await JSZip.loadAsync(buffer) };
}

test("mammoth finds the headings, the styles by name, the tables with their heads, the picture with its words", async () => {
  const { html } = await opened();
  expect(html).toMatch(/<h1>(?:<a id="[^"]*"><\/a>)?Dusk &amp; after<\/h1>/);
  expect(html).toMatch(/<h2>(?:<a id="[^"]*"><\/a>)?By hand<\/h2>/);
  expect([...html.matchAll(/<h6 class="recipe">(?:<a id="[^"]*"><\/a>)?([^<]*)<\/h6>/g)].map(([, name]) => name)).toEqual([
    "Lamp Sour",
    "Night Mug",
    "Honey syrup",
  ]);
  expect(html).toContain('<p class="headnote">For whoever trims the *lamp*.</p>');
  expect(html).toMatch(/<thead><tr><th><p>Metric<\/p><\/th><th><p>US<\/p><\/th><th><p>Ingredient<\/p><\/th><\/tr><\/thead>/);
  expect(html).toMatch(/<img alt="A dot" src="data:image\/png;base64,/);
  expect(html).toContain("<strong>strong</strong>");
  expect(html).toContain('<a href="https://example.org/a_b">home</a>');
});

test("every part of the file is well-formed XML, and every link within leads to a bookmark", async () => {
  const { zip, html } = await opened();
  const parts = Object.keys(zip.files).filter((name) => /\.(?:xml|rels)$/.test(name));
  expect(parts).toContain("word/document.xml");
  for (const name of parts) await expect(parseStringPromise(await zip.file(name)!.async("string"))).resolves.toBeTruthy();
  const document = await zip.file("word/document.xml")!.async("string");
  const marks = [...document.matchAll(/<w:bookmarkStart w:name="([^"]*)"/g)].map(([, name]) => name);
  const links = [...document.matchAll(/w:anchor="([^"]*)"/g)].map(([, name]) => name!);
  expect(new Set(marks).size).toBe(marks.length);
  expect(links.length).toBeGreaterThan(10);
  for (const name of links) expect(marks).toContain(name);
  expect(html.match(/href="#/g)!.length).toBe(links.length);
});

test("a recipe stays together: every paragraph of its table of ingredients says itself that it keeps with the next", async () => {
  const { zip } = await opened();
  const document = await zip.file("word/document.xml")!.async("string");
  const paragraphs = [...document.matchAll(/<w:p>(?:(?!<\/w:p>).)*<w:pStyle w:val="Ingredient(?:Head)?"\/>(?:(?!<\/w:p>).)*<\/w:p>/gs)];
  expect(paragraphs.length).toBeGreaterThan(20);
  for (const [paragraph] of paragraphs) expect(paragraph).toContain("<w:keepNext/>");
});

test("lines grow with their type: a heading of two lines is not set in the height of the text's", async () => {
  const { zip } = await opened();
  const styles = await zip.file("word/styles.xml")!.async("string");
  const spacings = [...styles.matchAll(/<w:spacing\b[^>]*w:line="[^>]*>/g)].map(([spacing]) => spacing);
  expect(spacings.length).toBeGreaterThan(3);
  // ECMA-376 part 1, 17.3.1.33: with the rule "auto" a line is so many 240ths of its own height.
  for (const spacing of spacings) expect(spacing).toContain('w:lineRule="auto"');
});

test("it names no day", async () => {
  const { zip } = await opened();
  expect(await zip.file("docProps/core.xml")!.async("string")).not.toMatch(/created|modified/);
  expect(Object.values(zip.files).map(({ date }) => date.getUTCFullYear())).toEqual(Object.keys(zip.files).map(() => 1980));
});
