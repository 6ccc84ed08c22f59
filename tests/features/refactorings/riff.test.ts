/** A new riff: it stands below, is called what nothing else is called, and comes to what its parent comes to. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { writtenName } from "../../../server/house/write.ts";
import { codesIn } from "../../rules/check.ts";
import { anyBody, anyName, meaningOf } from "./drinks.ts";
import { apply, chosen, houseAfter, offered, titles } from "./offered.ts";

const make = "Make a riff of";

describe("make a riff", () => {
  test("below the drink and the comments that are still its own, above those of the next one", () =>
    expect(apply("drink S<>lip\n    50 ml dry gin\n    # or genever\n\n# Next\n\ndrink Fog\n  50 ml dry gin\n", make)).toBe(
      "drink Slip\n    50 ml dry gin\n    # or genever\n\ndrink Slip, riff\n    from: Slip\n\n# Next\n\ndrink Fog\n  50 ml dry gin\n",
    ));

  test("the file's line breaks, and a last line that has none", () =>
    expect(apply("drink Slip\r\n  50 ml dry g<>in", make)).toBe("drink Slip\r\n  50 ml dry gin\r\n\r\ndrink Slip, riff\r\n  from: Slip"));

  test("a name that is taken, by a drink or by anything poured, is left alone", () => {
    const text = "drink S<>lip\n  50 ml dry gin\n\ndrink Slip, Riffs\n  50 ml gin\n\nprep slip, riff 2\n  1 part water\n";
    expect(apply(text, make)).toContain("drink Slip, riff 3\n  from: Slip\n");
  });

  test("not of a preps, nor of what has no name, nor of the second of two", () => {
    expect(titles("prep br<>ine\n  50 ml water\n").some((title) => title.startsWith(make))).toBe(false);
    expect(titles("drink<>\n  50 ml dry gin\n").some((title) => title.startsWith(make))).toBe(false);
    expect(titles("drink Slip\n  50 ml dry gin\n\ndrink S<>lip\n  5 ml dry gin\n").some((title) => title.startsWith(make))).toBe(false);
  });

  test("of any drink by any name it comes to the same and finds nothing new", () =>
    fc.assert(
      fc.property(anyName, anyBody, (name, body) => {
        const text = `drink <>${writtenName(name)}\n${body}`;
        const made = chosen(offered(text), `${make} ${name}`);
        const after = houseAfter(made);
        expect(meaningOf(after, `${name}, riff`)).toEqual(meaningOf(made.house, name));
        const plain = text.replace("<>", "");
        expect(codesIn(apply(text, make)).filter((code) => !codesIn(plain).includes(code))).toEqual([]);
      }),
      { numRuns: 25 },
    ));
});
