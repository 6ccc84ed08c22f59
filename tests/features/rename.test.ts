import { readdirSync, readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { TextDocument } from "vscode-languageserver-textdocument";
import { print } from "../../grammar/print.ts";
import { changedTexts, toTextEdits } from "../../server/features/edits.ts";
import { ownNames } from "../../server/features/mentions.ts";
import { documentHighlights, references } from "../../server/features/references.ts";
import { prepareRename, rename } from "../../server/features/rename.ts";
import { assessDrink } from "../../server/house/drink.ts";
import type { Fix } from "../../server/house/finding.ts";
import type { House } from "../../server/house/house.ts";
import { houseOf, root } from "../house/make.ts";
import { type Fixture, fixtureOf } from "./cursor.ts";

const bar = `=== stock.drink
stock harbour rum
  aka: slip rum
  kind: spirit
  abv: 43 %
stock gin
  kind: spirit
  abv: 41 %
glass beaker
  holds: 200 ml
=== card.drink
prep brown syrup
  100 g white sugar
  100 g water
drink Été Sour # a comment
  glass: beaker, chilled
  method: shake 12 s
  50 ml harbour rum, frozen # the good one
    or 40 ml slip rum
  25 ml lemon juice
  20 ml brown syrup
drink Low Water
  from: Été Sour
  swap harbour rum for gin
  without brown syrup
menu Card
  - Été Sour 12.50
`;

function renamed(text: string, name: string) {
  const fixture = fixtureOf(text);
  const fix = rename(fixture.house, fixture.document, fixture.position, name);
  return "because" in fix ? fix.because : files(fixture, fix);
}

function files({ house }: Pick<Fixture, "house">, fix: Fix): string {
  return [...house.documents()]
    .map((document) => {
      const text = TextDocument.create(document.uri, "mutchkin", 0, print(document.tree));
      return `=== ${document.uri.slice(root.length + 1)}\n${TextDocument.applyEdits(text, toTextEdits(house, document, fix))}`;
    })
    .join("\n");
}

const at = (line: string, mark: string) => bar.replace(line, mark);

describe("renaming", () => {
  test("a stock is renamed where it is declared and where it is called, over files; its other name stays", () => {
    const after = renamed(at("50 ml harbour rum, frozen", "50 ml harb<>our rum, frozen"), "ferry rum") as string;
    expect(after).toContain("stock ferry rum\n  aka: slip rum");
    expect(after).toContain("50 ml ferry rum, frozen # the good one");
    expect(after).toContain("or 40 ml slip rum");
    expect(after).toContain("swap ferry rum for gin");
    expect(after).not.toContain("harbour");
  });

  test("another name is renamed by itself", () => {
    const after = renamed(at("or 40 ml slip rum", "or 40 ml sl<>ip rum"), "quay rum") as string;
    expect(after).toContain("stock harbour rum\n  aka: quay rum");
    expect(after).toContain("or 40 ml quay rum");
    expect(after).toContain("50 ml harbour rum");
  });

  test("a drink is renamed in its riffs and on the menu, its price kept", () => {
    const after = renamed(at("drink Été Sour", "drink Été S<>our"), "12 Bells") as string;
    expect(after).toContain('drink "12 Bells" # a comment');
    expect(after).toContain("from: 12 Bells");
    expect(after).toContain('- "12 Bells" 12.50');
  });

  test("a glass is renamed in fields", () => {
    expect(renamed(at("glass: beaker", "glass: bea<>ker"), "tumbler of ours")).toContain("glass: tumbler of ours, chilled");
  });
});

describe("a name that cannot be had is refused with the reason", () => {
  const refused = (name: string) => renamed(at("50 ml harbour rum, frozen", "50 ml harb<>our rum, frozen"), name);
  test("taken, in another case and number too", () => {
    expect(refused("gin")).toBe("“gin” is already a stock: line 5 of stock.drink. Choose another name.");
    expect(refused("Brown Syrups")).toContain("“Brown Syrups” is read as “brown syrup”, which is already a prep: line 1 of card.drink.");
    expect(refused("Été sour")).toContain("already a drink");
  });
  test("of the larder, where lines call it so", () => expect(refused("lemon juice")).toContain("built-in larder"));
  test("no name", () => {
    expect(refused("  ")).toContain("is no name");
    expect(refused("rum; gin")).toContain("is no name");
  });
  test("in the larder, nothing can be renamed", () => {
    const { house, document, position } = fixtureOf(at("25 ml lemon juice", "25 ml lem<>on juice"));
    expect(prepareRename(house, document, position)).toEqual({ because: expect.stringContaining("built-in larder") });
  });
  test("where no name stands", () => {
    const { house, document, position } = fixtureOf(at("method: shake 12 s", "meth<>od: shake 12 s"));
    expect(prepareRename(house, document, position)).toEqual({ because: expect.stringContaining("no name here") });
  });
});

test("references are all calls, and the declaration where it is wanted", () => {
  const { house, document, position } = fixtureOf(at("stock harbour rum", "stock harbour<> rum"));
  expect(references(house, document, position, false)).toHaveLength(3);
  expect(references(house, document, position, true)).toHaveLength(5);
  const card = fixtureOf(at("20 ml brown syrup", "20 ml brown <>syrup"));
  expect(documentHighlights(card.house, card.document, card.position)).toHaveLength(3);
});

const folder = "samples/halyard-room";
const demo = readdirSync(folder)
  .map((name) => `=== ${name}\n${readFileSync(`${folder}/${name}`, "utf8")}`)
  .join("\n");
const house = houseOf(demo);
const everything = [...house.documents()].flatMap((document) =>
  document.tree.entries.flatMap((entry) => ownNames(entry).map((own) => ({ document, entry, own }))),
);

/** What the demo house's drinks come to, in the order of the files. */
function figures(of: House): unknown[] {
  return [...of.documents()].flatMap(({ tree }) =>
    tree.entries
      .filter(({ kind }) => kind === "drink")
      .map((entry) =>
        (["strengthPct", "sweetnessGPer100Ml", "acidGPer100Ml", "afterVolumeMl", "costPerServe"] as const).map((name) =>
          assessDrink(of, entry).outcome.value(name),
        ),
      ),
  );
}

test("renaming anything but a stock leaves every figure of the demo house as it is, and can be undone", () => {
  const before = figures(house);
  // A stock takes what it leaves out from the larder by its name.
  const kept = everything.filter(({ entry }) => entry.kind !== "stock");
  const words = ["Kedge", "anchor, kedged", "for the boat", "7 knots", "#4 buoy", "Ünïcode 🍋", "top deck", "x", "of rum", "12.50"];
  let refused = 0;
  fc.assert(
    fc.property(fc.nat(kept.length - 1), fc.constantFrom(...words), (index, name) => {
      const { document, entry, own } = kept[index]!;
      const position = { line: house.getLineOf(entry) + own.place.line, character: own.place.start };
      const fix = rename(house, document, position, name);
      if ("because" in fix) {
        refused++;
        return;
      }
      const after = house.supposing(changedTexts(house, fix));
      expect(figures(after)).toEqual(before);
      const back = rename(after, after.document(document.uri)!, position, own.text);
      if ("because" in back) throw new Error(back.because);
      const texts = changedTexts(after, back);
      expect(texts).toHaveLength(changedTexts(house, fix).length);
      for (const { uri, tree } of texts) expect(plain(print(tree))).toBe(plain(print(house.document(uri)!.tree)));
    }),
    { numRuns: 40 },
  );
  expect(refused).toBeLessThan(20);
});

/** Case, number and a short form give way to the name as it is declared. */
function plain(text: string): string {
  return text.toLowerCase().replace(/\bcubes?\b|\bice\b/g, "");
}
