import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { print } from "../../grammar/print.ts";
import { documentLinks } from "../../server/features/document-links.ts";
import { anyText } from "../grammar/texts.ts";
import { houseOf, root } from "../house/make.ts";

const page = "file:///rules/README.md";

/** Each link of the text as `words -> target`. */
function linksIn(text: string, file = "spec.drink"): string[] {
  const house = houseOf(text);
  const document = house.document(`${root}/${file}`)!;
  const lines = print(document.tree).split("\n");
  return documentLinks(house, document, page).map(({ range: { start, end }, target }) => {
    expect(end.line).toBe(start.line);
    return `${lines[start.line]!.slice(start.character, end.character)} -> ${target}`;
  });
}
const linksOf = (line: string) => linksIn(`drink Slip\n  ${line}\n`);

describe("addresses", () => {
  test.each([
    ["# see https://example.org/salt.", "https://example.org/salt"],
    ["story: From http://example.org/a, or so.", "http://example.org/a"],
    ["50 ml gin # 🍋 (https://example.org/a_(b))", "https://example.org/a_(b)"],
    ["credit: the late shift, https://example.org", "https://example.org"],
    ["notes: <https://example.org/?q=1#top>", "https://example.org/?q=1#top"],
    ["# HTTPS://EXAMPLE.ORG!", "HTTPS://EXAMPLE.ORG"],
    ["# https://xn--bcher-kva.example/é…", "https://xn--bcher-kva.example/é"],
  ])("%s", (line, url) => expect(linksOf(line)).toEqual([`${url} -> ${url}`]));

  test("in prose that goes on, and two on a line", () =>
    expect(linksIn("drink Slip\n  story: Once\n    https://a.example and\n    https://b.example https://c.example\n")).toEqual([
      "https://a.example -> https://a.example",
      "https://b.example -> https://b.example",
      "https://c.example -> https://c.example",
    ]));

  test("of a stock's origin", () =>
    expect(linksIn("stock gin\n  origin: https://example.org/coast\n")).toEqual([
      "https://example.org/coast -> https://example.org/coast",
    ]));

  test.each([
    "# command:workbench.action.quit",
    "# javascript:alert(1)",
    "# file:///etc/passwd",
    "# vscode://x/y",
    "# data:text/html,x",
    "# mailto:a@example.org",
    "# https://",
    "# https:// example.org",
    "50 ml https://example.org",
    "garnish: https://example.org",
  ])("none in %s", (line) => expect(linksOf(line)).toEqual([]));
});

describe("files", () => {
  const house = (line: string) => `=== cards/winter.drink
drink Slip
  ${line}
=== preps.drink
prep brine
=== cards/our syrups/été.drink
prep syrup
=== cards/book.md
# Slack Water
`;
  const linksOf = (line: string) => linksIn(house(line), "cards/winter.drink");

  test.each([
    ["# as in ../preps.drink.", "../preps.drink", "preps.drink"],
    ["notes: (see ./../preps.drink)", "./../preps.drink", "preps.drink"],
    ["story: book.md says so.", "book.md", "cards/book.md"],
  ])("%s", (line, words, target) => expect(linksOf(line)).toEqual([`${words} -> ${root}/${target}`]));

  test("a name that needs escaping is found by its canonical spelling", () => {
    const escaped = "=== a/one.drink\ndrink Slip # see ../été.drink\n=== %C3%A9t%C3%A9.drink\nprep syrup\n";
    expect(linksIn(escaped, "a/one.drink")).toEqual([`../été.drink -> ${root}/%C3%A9t%C3%A9.drink`]);
  });

  test.each([
    "# nowhere.drink",
    "# preps.drink",
    "# ../../preps.drink",
    "# /house/preps.drink",
    "# file:///house/preps.drink",
    "# ../preps.drink:3",
    "# winter.drink",
    "# ../preps",
  ])("none in %s", (line) => expect(linksOf(line)).toEqual([]));
});

describe("rules", () => {
  test("an allowed rule's code leads to its page", () =>
    expect(linksOf("# allow missing-glass: poured at the table")).toEqual([`missing-glass -> ${page}#missing-glass`]));
  test("one that there is not leads nowhere, nor any where there is no page", () => {
    expect(linksOf("# allow missing-spoon: it is found fault with")).toEqual([]);
    const house = houseOf("# allow missing-glass: poured at the table\n");
    expect(documentLinks(house, house.document(`${root}/spec.drink`)!, undefined)).toEqual([]);
  });
});

// In time that grows with the square of its length this would take minutes.
test.each([")", "(", "https://a.example/)", "a.drink ", "."])("a line of 200,000 characters (%j) is read in no time", (piece) =>
  expect(Array.isArray(linksOf(`# https://a.example/${piece.repeat(200_000 / piece.length)}`))).toBe(true),
);

test("whatever the text: each link in its line, to the web, the house or the rules", () => {
  const piece = fc.oneof(
    fc.constantFrom(
      "https://",
      "http://a.example/",
      "command:x",
      "javascript:",
      "../",
      "spec.drink",
      ".md",
      "(",
      ")",
      ")",
      ".",
      "# ",
      " ",
      "  story: ",
    ),
    anyText,
  );
  fc.assert(
    fc.property(fc.array(piece), (pieces) => {
      const house = houseOf("=== other.drink\ndrink Slip\n");
      const text = pieces.join("");
      const [document] = [...houseOf(`=== spec.drink\n${text}`).documents()];
      house.setDocument(document!);
      const lines = document!.tree.entries.flatMap((entry) => entry.lines.map((line) => line.text));
      for (const { range, target } of documentLinks(house, document!, page)) {
        expect(range.end.character).toBeLessThanOrEqual(lines[range.start.line]!.length);
        expect(range.end.character).toBeGreaterThan(range.start.character);
        expect(target).toMatch(/^(https?:\/\/|file:\/\/\/house\/|file:\/\/\/rules\/)/i);
      }
    }),
  );
}, 60_000);
