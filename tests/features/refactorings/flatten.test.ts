/** A riff written out: the same drink without its parent, to the last figure, and its own riffs as they were. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { print } from "../../../grammar/print.ts";
import type { House } from "../../../server/house/house.ts";
import { flatten } from "../../../server/house/riff.ts";
import { entryNamed, houseIn } from "../../house/make.ts";
import { findIn } from "../../rules/check.ts";
import { anyBody, meaningOf } from "./drinks.ts";
import { apply, chosen, houseAfter, offered, offeredOn, titles } from "./offered.ts";

const flat = "Flatten into a drink of its own";

const sour = `drink Slip
  family: egg sour
  glass: coupe, chilled
  garnish: none
  price: 12.00

  # from the rail
  50ml dry gin, frozen  # cold
  22.5 ml lemon juice
    or verjus
  20 ml simple syrup
  1 egg white
  top to 120 ml soda water
`;

describe("flatten a riff", () => {
  test("fields, pours, alternatives, modifiers and comments of both stand in it; what is only the parent's does not", () =>
    expect(
      apply(
        `${sour}\ndrink Slip, E<>bb
  from: Slip  # of the winter
  garnish: 1 lime wheel
  story: It goes out,
    and comes in.

  # no egg in the second week
  without egg white
  # less of it
  15 ml lemon juice
  swap simple syrup for honey
    or 10 ml agave syrup
  5 ml absinthe, muddled
`,
        flat,
      ).slice(sour.length + 1),
    ).toBe(`drink Slip, Ebb
  # of the winter
  family: egg sour
  glass: coupe, chilled
  garnish: 1 lime wheel
  story: It goes out,
    and comes in.

  # no egg in the second week
  # from the rail
  50ml dry gin, frozen  # cold
  # less of it
  15 ml lemon juice
    or 22.5 ml verjus
  20 ml honey
    or 10 ml agave syrup
  5 ml absinthe, muddled
  top to 120 ml soda water
`));

  test("a modifier that the riff's line leaves out comes along, and a pour that stays late says so", () => {
    const text = "drink Slip\n  50 ml dry gin, frozen\n  rinse absinthe\n\ndrink E<>bb\n  from: Slip\n  60 ml dry gin\n  5 ml absinthe\n";
    expect(apply(text, flat)).toContain("drink Ebb\n  60 ml dry gin, frozen\n  5 ml absinthe, after\n");
  });

  test("a riff that changes nothing yet", () =>
    expect(apply("drink Slip\r\n  50 ml dry gin\r\n\r\ndrink E<>bb\r\n  from: Slip\r\n", flat)).toBe(
      "drink Slip\r\n  50 ml dry gin\r\n\r\ndrink Ebb\r\n  50 ml dry gin\r\n",
    ));

  test("not where a change of it finds nothing to change, nor where the parent is not there", () => {
    expect(titles(`${sour}\ndrink E<>bb\n  from: Slip\n  without aged rum\n`)).not.toContain(flat);
    expect(titles("drink E<>bb\n  from: Nobody's\n  50 ml gin\n")).not.toContain(flat);
    expect(titles("drink S<>lip\n  50 ml gin\n")).not.toContain(flat);
  });

  test("not where an alternative has no amount and would take the riff's", () =>
    expect(
      titles("drink Slip\n  top soda water\n    or tonic water\n\ndrink E<>bb\n  from: Slip\n  top to 90 ml soda water\n"),
    ).not.toContain(flat));

  test("not where what bubbles takes the place of what is shaken: no line says that it is", () =>
    expect(titles(`${sour}\ndrink E<>bb\n  from: Slip\n  swap simple syrup for soda water\n`)).not.toContain(flat));

  test("not where the riff's own house means something else by a name", () => {
    const text = `=== house.drink\nhouse Above\n=== ab.drink\n${sour}=== below/house.drink\nhouse Below\n\nstock dry gin\n  kind: spirit\n  abv: 57 %\n=== below/b.drink\ndrink E<>bb\n  from: Slip\n`;
    expect(titles(text)).not.toContain(flat);
  });

  const change = fc.constantFrom(
    "  60 ml dry gin\n",
    "  15 ml lemon juice, chilled\n",
    "  without all dry gin\n",
    "  swap dry gin for aged rum\n",
    "  swap lemon juice for 30 ml verjus\n    or lime juice\n",
    "  12.5 ml orange liqueur\n",
    "  # as it was\n",
    "  top soda water\n",
    "  glass: rocks\n",
    "  method: stir 20 s; strain\n",
  );
  test("of any riff: the same figures, allergens and diets, and the same in its own riffs", () =>
    fc.assert(
      fc.property(anyBody, fc.uniqueArray(change, { maxLength: 5 }), (body, changes) => {
        const text = `drink Slip\n${body}\ndrink Eb<>b\n  from: Slip\n${changes.join("")}\ndrink Neap\n  from: Ebb\n  5 ml fernet\n  30 ml lime juice\n`;
        const before = offered(text);
        fc.pre(before.offers.some(({ title }) => title === flat));
        const made = chosen(before, flat);
        const after = houseAfter(made);
        for (const name of ["Slip", "Ebb", "Neap"]) expect(meaningOf(after, name)).toEqual(meaningOf(made.house, name));
        expect(flatten(after, entryNamed(after, "Ebb")).parent).toBeUndefined();
      }),
      { numRuns: 40 },
    ));

  test("of the demo house's riffs: the same, and nothing is found that was not", () => {
    const house = houseIn("samples/halyard-room");
    const riffs = [...house.documents()].flatMap(({ tree }) => tree.entries.filter((entry) => flatten(house, entry).parent));
    expect(riffs.length).toBeGreaterThan(2);
    for (const riff of riffs) {
      const name = riff.name!.text;
      const document = house.getDocumentOf(riff);
      const after = houseAfter(chosen(offeredOn(house, name), flat));
      expect(print(after.document(document.uri)!.tree)).not.toBe(print(document.tree));
      expect(meaningOf(after, name)).toEqual(meaningOf(house, name));
      expect(codes(after)).toEqual(codes(house));
    }
  });
});

function codes(house: House): string[] {
  return findIn(house)
    .map(({ finding }) => finding.code)
    .sort();
}
