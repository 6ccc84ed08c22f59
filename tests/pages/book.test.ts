/** A book's page in a browser: valid, usable by everybody, whole, and as it prints. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { getDocument } from "pdfjs-dist/legacy/build/pdf.mjs";
import { expect, test } from "vitest";
import { printPdf } from "../../server/cli/browser-pdf.ts";
import { bookHtml } from "../../server/reports/book/html.ts";
import { bookFrom, bookOf, ferryBook, filesOf } from "../reports/book/books.ts";
import { accessFaults, inBrowser, markupFaults } from "./browser.ts";

const { open } = inBrowser();
const html = bookHtml(bookOf(ferryBook));

test("the page is valid HTML", async () => expect(await markupFaults(html)).toEqual([]));

test("the sample book has no faults, and is valid and usable as a whole", async () => {
  const book = bookFrom(filesIn("samples/slack-water"));
  expect(book.problems).toEqual([]);
  const sample = bookHtml(book);
  expect(await markupFaults(sample)).toEqual([]);
  expect(await accessFaults(await open(sample, "screen"))).toEqual([]);
});

/** The files of a folder of the project, by their names. */
function filesIn(folder: string): ReadonlyMap<string, string> {
  const names = readdirSync(folder).filter((name) => /\.(?:md|drink)$/.test(name));
  return new Map(names.map((name) => [name, readFileSync(join(folder, name), "utf8")]));
}

test("the sample book as a PDF: its trim, a number on every page but the first, and no recipe on two pages", async () => {
  const book = bookFrom(filesIn("samples/slack-water"));
  const pages = await pagesOf(await printPdf(bookHtml(book), ""));
  expect(pages[0]!.size.map((points) => Math.round((points / 72) * 25.4))).toEqual([156, 234]);
  expect(pages[0]!.text).toContain("Slack Water");
  expect(pages[0]!.text).not.toMatch(/\b1\b/);
  expect(pages[5]!.text).toMatch(/\b6\b/);
  const heads = book.recipes.map(({ number }) => new RegExp(`no\\.${number}(?!\\d)`));
  // Small capitals come out of a PDF letter by letter.
  const perPage = pages.map(({ text }) => {
    const letters = text.replaceAll(/\s/g, "").toLowerCase();
    return {
      begun: heads.filter((head) => head.test(letters)).length,
      ended: letters.match(/allergens(?=contains|noallergens|notstated|maycontain)/g)?.length ?? 0,
    };
  });
  expect(perPage.reduce((sum, { begun }) => sum + begun, 0)).toBe(book.recipes.length);
  for (const { begun, ended } of perPage) if (begun > 0) expect(ended).toBe(begun);
});

test("the short parts at the back share pages, and none of their titles ends one", async () => {
  const pages = await pagesOf(await printPdf(html, ""));
  const begun = ["A note on units Liquids", "Every recipe Drinks", "Index by spirit The", "Index by family The", "Index by strength The"];
  const found = pages.map(({ text }) => begun.filter((words) => text.includes(words)).length);
  expect(found.reduce((sum, count) => sum + count, 0)).toBe(begun.length);
  expect(Math.max(...found)).toBeGreaterThan(1);
});

async function pagesOf(pdf: Uint8Array): Promise<{ readonly size: number[]; readonly text: string }[]> {
  const document = await getDocument({ data: new Uint8Array(pdf), verbosity: 0 }).promise;
  const pages = [];
  for (let number = 1; number <= document.numPages; number++) {
    const page = await document.getPage(number);
    const { items } = await page.getTextContent();
    pages.push({
      size: page.view.slice(2),
      text: items
        .map((item) => ("str" in item ? item.str : ""))
        .join(" ")
        .replaceAll(/\s+/g, " "),
    });
  }
  return pages;
}

test.each(["light", "dark"] as const)("everybody can read it, %s", async (colorScheme) => {
  const page = await open(html, "screen");
  await page.emulateMedia({ media: "screen", colorScheme });
  expect(await accessFaults(page)).toEqual([]);
});

test("every link within leads somewhere, once, and nothing is fetched", async () => {
  const page = await open(html, "screen");
  const links = await page.$$eval("a[href^='#']", (all) => all.map((one) => decodeURIComponent(String(one.getAttribute("href")).slice(1))));
  const ids = await page.$$eval("[id]", (all) => all.map(({ id }) => id));
  expect(new Set(ids).size).toBe(ids.length);
  expect(links.length).toBeGreaterThan(10);
  for (const link of links) expect(ids).toContain(link);
  expect(html).not.toMatch(/(?:src|href)="(?!#|data:|https:\/\/example\.org\/)|@import|url\(/);
});

test("it fits a telephone: nothing is wider than the screen", async () => {
  const page = await open(html, "screen");
  await page.setViewportSize({ width: 360, height: 700 });
  expect(await page.evaluate("document.documentElement.scrollWidth")).toBeLessThanOrEqual(360);
});

test("what the author wrote is text, never markup of the page", () => {
  expect(html).toContain("Drinks for the &lt;last&gt; boat");
  expect(html).toContain("Dusk &amp; after");
});

test("the spelling of the book is the language of the page", () => {
  expect(html).toContain('<html lang="en-GB">');
  expect(bookHtml(bookOf(ferryBook.replace("  author", "  spelling: American\n  author")))).toContain('<html lang="en-US">');
});

test("the same book is the same page, from files in another order", () => {
  expect(bookHtml(bookFrom(new Map([...filesOf(ferryBook)].reverse())))).toBe(html);
});

test("an allergen is never denied by silence: every recipe says something of allergens", () => {
  expect(html.match(/<section class="recipe"/g)).toHaveLength(3);
  expect(html.match(/<span class="label">Allergens<\/span> \S/g)).toHaveLength(3);
});
