import fc from "fast-check";
import { expect, test } from "vitest";
import { TextDocument } from "vscode-languageserver-textdocument";
import type { TextEdit } from "vscode-languageserver-types";
import { print } from "../../grammar/print.ts";
import { completion } from "../../server/features/completion.ts";
import { houseOf, root } from "../house/make.ts";
import { fixtureOf } from "./cursor.ts";

function labelsAt(text: string): string[] {
  const { house, document, position } = fixtureOf(text);
  const items = completion(house, document, position);
  return [...items].sort((one, other) => (one.sortText! < other.sortText! ? -1 : 1)).map(({ label }) => label);
}

/** The line with the cursor after an item is taken. */
function take(text: string, label: string): string {
  const { house, document, position } = fixtureOf(text);
  const item = completion(house, document, position).find((one) => one.label === label);
  const file = TextDocument.create(document.uri, "mutchkin", 0, print(document.tree));
  return TextDocument.applyEdits(file, [item!.textEdit as TextEdit]).split("\n")[position.line]!;
}

const shelf = "=== shelf.drink\nstock aged rum\n  kind: spirit\n  abv: 43 %\n=== spec.drink\n";

test.each([
  ["dr<>", ["drink", "prep"], ["abv"]],
  ["<>", ["drink"], []],
  ["drink Slip\n  <>", ["family", "glass", "swap"], ["abv", "drink"]],
  ["drink Slip\n  gla<>", ["glass", "garnish"], ["holds"]],
  ["drink Slip\n  glass: coupe\n  g<>", ["garnish"], ["glass"]],
  ["glass stem\n  <>", ["holds", "washline"], ["family"]],
  ["stock gin\n  kind: sp<>", ["spirit"], ["drink"]],
  ["stock gin\n  fizz: <>", ["yes", "no"], []],
  ["drink Slip\n  family: egg s<>", ["egg sour"], ["coupe"]],
  ["drink Slip\n  glass: <>", ["coupe"], ["egg sour"]],
  ["drink Slip\n  method: dry shake 10 s; sh<>", ["shake", "stir"], []],
  ["drink Slip\n  50 <>", ["ml", "dash", "lime juice"], ["egg sour"]],
  ["drink Slip\n  50 m<>", ["ml"], ["egg sour"]],
  ["drink Slip\n  50 ml l<>", ["lime juice"], ["ml", "coupe"]],
  ["drink Slip\n  50 ml gin, fro<>", ["frozen", "chilled"], ["gin"]],
  ["drink Slip\n  50 ml gin\n    or 50 ml l<>", ["lime juice"], []],
  ["drink Slip\n  50 ml dry gin\n\ndrink Fog\n  from: Slip\n  swap d<>", ["dry gin"], ["lime juice"]],
  ["drink Slip\n  50 ml dry gin\n\ndrink Fog\n  from: Slip\n  without <>", ["dry gin"], ["lime juice"]],
  ["drink Slip\n  50 ml dry gin\n\ndrink Fog\n  from: Slip\n  swap dry gin for 50 ml l<>", ["lime juice"], []],
  ["drink Slip\n\nmenu Winter\n  - S<>", ["Slip"], ["lime juice"]],
  ["drink Slip\n  glass: coupe, ch<>", [], ["coupe"]],
  ["drink Slip\n  story: Once <>", [], ["glass"]],
  ["drink Slip\n  50 ml gin # so <>", [], ["gin"]],
])("%j", (text, wanted, unwanted) => {
  const labels = labelsAt(text);
  expect(labels).toEqual(expect.arrayContaining(wanted));
  for (const label of unwanted) expect(labels).not.toContain(label);
});

test("the house's own comes before the larder's", () => {
  const labels = labelsAt(`${shelf}drink Slip\n  50 ml a<>`);
  expect(labels[0]).toBe("aged rum");
});

test.each([
  ["drink Crème 🍋\n  ½ oz dry g<>", "dry gin", "  ½ oz dry gin"],
  ["drink Slip\n  gar<>", "garnish", "  garnish: "],
  ["drink Slip\n  glass: co<>", "coupe", "  glass: coupe"],
  ["drink Slip\n  50 ml gin,fro<>", "frozen", "  50 ml gin,frozen"],
  ["pre<>", "prep", "prep "],
])("%j takes %s", (text, label, expected) => expect(take(text, label)).toBe(expected));

test("any text and any position are borne", () =>
  fc.assert(
    fc.property(fc.string({ unit: "grapheme", maxLength: 40 }), fc.nat(3), fc.nat(30), (text, line, character) => {
      const house = houseOf(`drink Slip\n  ${text}\n`);
      expect(completion(house, house.document(`${root}/spec.drink`)!, { line, character })).toBeInstanceOf(Array);
    }),
    { numRuns: 80 },
  ));
