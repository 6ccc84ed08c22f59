/** `mutchkin card`: what is asked for, what is written where, and a PDF by a real browser, read by another program. */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { getDocument } from "pdfjs-dist/legacy/build/pdf.mjs";
import { describe, expect, onTestFinished, test } from "vitest";
import { printPdf } from "../../server/cli/browser-pdf.ts";
import { cardSchema } from "../../server/reports/card-schema.ts";
import { folderOf, mutchkin, soundHouse } from "./command.ts";

const bar = `${soundHouse}
drink Long Rope
  from: Slack Rope
  45 ml plain spirit

menu Winter card
  - Long Rope 9.00
  - Ghost 8.00
`;
const card = (...argv: string[]) => mutchkin(folderOf(bar), ["card", ...argv]);
const namesIn = (html: string) => [...html.matchAll(/<h2[^>]*>([^<]*)/g)].map(([, name]) => name!.trim());

describe("what is asked for", () => {
  test("every drink of the folder where nothing is named, as a page", async () => {
    const { code, out, err } = await card();
    expect({ code, err }).toEqual({ code: 0, err: "" });
    expect(out).toMatch(/^<!doctype html>/);
    expect(namesIn(out)).toEqual(["Slack Rope", "Long Rope"]);
  });

  test.each([
    [["long rope"], ["Long Rope"]],
    [
      ["Long Rope", "bar.drink", "Slack Rope"],
      ["Long Rope", "Slack Rope"],
    ],
    [["Slack Rope", "Slack Rope"], ["Slack Rope"]],
  ])("%j", async (argv, names) => expect(namesIn((await card(...argv)).out)).toEqual(names));

  test("a menu's drinks, and what it lists that nobody declares", async () => {
    const { code, out, err } = await card("Winter card");
    expect(namesIn(out)).toEqual(["Long Rope"]);
    expect({ code, err }).toEqual({ code: 0, err: "On the menu, but no drink of that name is known, so there is no card: Ghost.\n" });
  });

  test("as data, in the published shape", async () => {
    const { out } = await card("--format", "json");
    expect(cardSchema.parse(JSON.parse(out)).cards.map(({ name, file }) => [name, file])).toEqual([
      ["Slack Rope", "bar.drink"],
      ["Long Rope", "bar.drink"],
    ]);
  });

  test("the paper is the country's, or the one asked for", async () => {
    const page = async (country: string, ...argv: string[]) => {
      const folder = folderOf(bar.replace("house Test Room", `house Test Room\n  country: ${country}`));
      return /@page \{ size: (\S+ \S+);/.exec((await mutchkin(folder, ["card", ...argv])).out)?.[1];
    };
    // ISO 216; ANSI/ASME Y14.1: 8.5 by 11 inches.
    expect(await page("GB")).toBe("210mm 297mm");
    expect(await page("US")).toBe("215.9mm 279.4mm");
    expect(await page("US", "--page", "a4")).toBe("210mm 297mm");
  });

  test.each([
    [["Slakc Rope"], "There is no drink, no menu and no file or folder “Slakc Rope” here.\nDid you mean “Slack Rope”?\n"],
    [["--format", "pdf"], "A PDF is nothing that a terminal could show.\nSay where it goes: `--out cards.pdf`.\n"],
    [["--format", "json", "--out", "cards.pdf"], "“cards.pdf” ends in .pdf, and `--format json` was asked for.\nLeave one of them out.\n"],
    [["--ink", "gold"], "Allowed choices are light, saving."],
  ])("what cannot be carried out ends with 2: %j", async (argv, words) => {
    const { code, out, err } = await card(...argv);
    expect({ code, out }).toEqual({ code: 2, out: "" });
    expect(err).toContain(words);
  });
});

describe("a file", () => {
  test("is what its ending says, and nothing is printed", async () => {
    const folder = folderOf(bar);
    expect(await mutchkin(folder, ["card", "--out", "cards.html"])).toEqual({ code: 0, out: "", err: "" });
    expect(readFileSync(join(folder, "cards.html"), "utf8")).toBe((await mutchkin(folder, ["card"])).out);
  });

  test("a PDF has a page for every four cards, and every card's words", async () => {
    const drinks = Array.from({ length: 9 }, (_, index) => `\ndrink Rope Number ${index + 1}\n  from: Slack Rope\n`).join("");
    const folder = folderOf(bar + drinks);
    expect(await mutchkin(folder, ["card", "--out", "cards.pdf"])).toEqual({ code: 0, out: "", err: "" });
    const pages = await textOf(readFileSync(join(folder, "cards.pdf")));
    const cards = namesIn((await mutchkin(folder, ["card"])).out);
    expect(cards).toHaveLength(11);
    expect(pages).toHaveLength(Math.ceil(cards.length / 4));
    for (const [index, name] of cards.entries()) expect(pages[Math.floor(index / 4)]).toContain(name);
    for (const page of pages) expect(page).toMatch(/Allergens.*60 ml ≈ 2 oz|Allergens.*45 ml ≈ 1 1\/2 oz/);
  });

  test("where there is no browser, nothing is written, and it is told what to do", async () => {
    const folder = folderOf(bar);
    const before = process.env.CHROME_PATH;
    onTestFinished(() => {
      if (before === undefined) delete process.env.CHROME_PATH;
      else process.env.CHROME_PATH = before;
    });
    process.env.CHROME_PATH = join(folder, "no browser");
    const { code, err } = await mutchkin(folder, ["card", "--out", "cards.pdf"]);
    expect(code).toBe(2);
    expect(err).toContain(
      "and nothing stands there.\nSet CHROME_PATH to the browser's program, or write the page with `--out` and a name that ends in .html: opened",
    );
    expect(existsSync(join(folder, "cards.pdf"))).toBe(false);
  });
});

describe("the browser", () => {
  const leftovers = () => readdirSync(tmpdir()).filter((name) => name.startsWith("mutchkin-print-"));

  test("none on the whole machine is said", async () => {
    await expect(printPdf("<p>Hello</p>", "", async () => undefined)).rejects.toThrow("There is no browser here to make the PDF with");
  });

  test("one that prints nothing is said, with what it said, and leaves nothing behind", async () => {
    const before = leftovers();
    // Node knows none of a browser's options.
    await expect(printPdf("<p>Hello</p>", "", async () => process.execPath)).rejects.toThrow(/made no PDF: .*bad option/);
    expect(leftovers()).toEqual(before);
  });
});

/** A page's words in their order, one text for each. */
async function textOf(pdf: Uint8Array): Promise<string[]> {
  const document = await getDocument({ data: new Uint8Array(pdf), verbosity: 0 }).promise;
  const pages: string[] = [];
  for (let number = 1; number <= document.numPages; number++) {
    const { items } = await (await document.getPage(number)).getTextContent();
    pages.push(
      items
        .map((item) => ("str" in item ? item.str : ""))
        .join(" ")
        .replaceAll(/\s+/g, " "),
    );
  }
  await document.destroy();
  return pages;
}
