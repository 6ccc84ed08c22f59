import { describe, expect, test } from "vitest";
import { TextDocument } from "vscode-languageserver-textdocument";
import { print } from "../../grammar/print.ts";
import { definition } from "../../server/features/definition.ts";
import { foldingRanges } from "../../server/features/folding.ts";
import { documentSymbols } from "../../server/features/symbols.ts";
import { houseOf, root } from "../house/make.ts";
import { fixtureOf } from "./cursor.ts";

const documentOf = (text: string) => houseOf(text).document(`${root}/spec.drink`)!;

describe("symbols", () => {
  const text =
    "# above\n\ndrink Crème 🍋\n  glass: coupe\n  about 1½ oz gin, frozen\n\n# below\nmenu Winter\n  section Before the boat\n  - Slip 12\ncocktail\n";

  test("entries with their pours and sections", () =>
    expect(
      documentSymbols(documentOf(text)).map(({ name, detail, children }) => [
        name,
        detail,
        children?.map((child) => [child.name, child.detail]),
      ]),
    ).toEqual([
      ["Crème 🍋", "drink", [["gin, frozen", "about 1½ oz"]]],
      ["Winter", "menu", [["Before the boat", "section"]]],
      ["cocktail", "", undefined],
    ]));

  test("a selection lies in its range, and the range ends with what is said", () => {
    const [drink] = documentSymbols(documentOf(text));
    expect(drink!.range).toEqual({ start: { line: 2, character: 0 }, end: { line: 4, character: "  about 1½ oz gin, frozen".length } });
    expect(drink!.selectionRange).toEqual({ start: { line: 2, character: 6 }, end: { line: 2, character: 14 } });
  });
});

describe("folding", () => {
  test("entries, prose over several lines with its blanks, comments", () =>
    expect(
      foldingRanges(
        documentOf("# one\n# two\ndrink Slip\n  story: Named for\n    the lamp.\n\n    Long ago.\n  50 ml gin\n\n# three\nstock gin\n"),
      ),
    ).toEqual([
      { startLine: 0, endLine: 1, kind: "comment" },
      { startLine: 2, endLine: 7 },
      { startLine: 3, endLine: 6 },
    ]));
});

describe("definition", () => {
  /** The texts that the name at the cursor leads to. */
  const leadsTo = (text: string) => {
    const { house, document, position } = fixtureOf(text);
    return definition(house, document, position).map(({ uri, range }) => {
      const file = TextDocument.create(uri, "mutchkin", 0, print(house.document(uri)!.tree));
      return `${uri.slice(root.length + 1)}: ${file.getText(range)}`;
    });
  };
  const shelf =
    "=== shelf.drink\nstock crème de cacao 🍫\n  aka: cacao; dark cacao\n\nglass stem\n  holds: 200 ml\n\nfamily low sour\n  ratio: none\n\nprep syrup\n  1 part sugar\n=== spec.drink\n";

  test.each([
    ["drink Slip\n  ½ oz crème de c<>acao 🍫, frozen\n", ["shelf.drink: crème de cacao 🍫"]],
    ["drink Slip\n  20 ml cac<>ao\n", ["shelf.drink: cacao; dark cacao"]],
    ["drink Slip\n  glass: st<>em, chilled\n", ["shelf.drink: stem"]],
    ["drink Slip\n  family: low so<>ur\n", ["shelf.drink: low sour"]],
    ["drink Slip\n  20 ml syrup\n    or 10 ml sy<>rup\n", ["shelf.drink: syrup"]],
    ["drink Slip\n\ndrink Fog\n  from: Sl<>ip\n", ["spec.drink: Slip"]],
    ["drink Slip\n\nmenu Winter\n  - Sl<>ip 12\n", ["spec.drink: Slip"]],
    ["drink Slip\n  20 ml syrup\n\ndrink Fog\n  from: Slip\n  swap syr<>up for 10 ml cacao\n", ["shelf.drink: syrup"]],
    ["drink Slip\n  20 ml dry g<>in\n", []],
    ["drink Slip\n  20 ml nobody's g<>in\n", []],
    ["drink Slip\n  20 ml syrup, fro<>zen\n", []],
  ])("%j", (text, expected) => expect(leadsTo(shelf + text)).toEqual(expected));
});
