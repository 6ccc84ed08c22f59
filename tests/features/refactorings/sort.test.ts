/** Sorting pours: the order is practice, no source; that nothing else changes is not. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { codesIn } from "../../rules/check.ts";
import { anyBody, outcomeOf } from "./drinks.ts";
import { apply, chosen, houseAfter, offered, titles } from "./offered.ts";

const sort = "Sort the pours";
const isOffered = (text: string) => titles(text).some((title) => title.startsWith(sort));
const sorted = (lines: string, house = "") => apply(`${house}drink S<>lip\n${lines}`, sort).replace("drink Slip\n", "");

describe("sort the pours", () => {
  test("comments, allowances and alternatives go along; each line keeps its own indent and end", () =>
    expect(
      sorted(`  1 egg white\r
  20 ml simple syrup  # thick\r
  # allow unmeasurable: by eye\r
   23 ml lemon juice\r
    # in spring\r
    or verjus\r
  2 dashes orange bitters\r
  50 ml dry gin, frozen\r
`),
    ).toBe(`  50 ml dry gin, frozen\r
  2 dashes orange bitters\r
  # allow unmeasurable: by eye\r
   23 ml lemon juice\r
    # in spring\r
    or verjus\r
  20 ml simple syrup  # thick\r
  1 egg white\r
`));

  test("nothing crosses a blank line, a field, a stage", () => {
    expect(sorted("  20 ml simple syrup\n  50 ml dry gin\n\n  5 ml lime juice\n  10 ml aged rum\n")).toBe(
      "  50 ml dry gin\n  20 ml simple syrup\n\n  10 ml aged rum\n  5 ml lime juice\n",
    );
    expect(isOffered("drink S<>lip\n  20 ml simple syrup\n  glass: coupe\n  50 ml dry gin\n")).toBe(false);
    expect(isOffered("drink S<>lip\n  20 ml simple syrup\n  30 ml tonic water\n  50 ml dry gin\n")).toBe(false);
    expect(isOffered("drink S<>lip\n  20 ml lime juice, after\n  50 ml dry gin\n")).toBe(false);
  });

  test("a pour whose alternative stands apart stays where that finds it", () =>
    expect(sorted("  20 ml simple syrup\n  50 ml dry gin\n  30 ml lime juice\n\n    or verjus\n")).toBe(
      "  50 ml dry gin\n  20 ml simple syrup\n  30 ml lime juice\n\n    or verjus\n",
    ));

  test("by the house's own order, kinds of one rank as they are written, the rest behind", () => {
    const house = "=== house.drink\nhouse Bar\n  order: juice; syrup, spirit\n=== spec.drink\n";
    expect(sorted("  1 dash orange bitters\n  20 ml simple syrup\n  50 ml dry gin\n  10 ml lime juice\n", house)).toBe(
      "  10 ml lime juice\n  20 ml simple syrup\n  50 ml dry gin\n  1 dash orange bitters\n",
    );
    expect(titles(`${house}drink S<>lip\n  50 ml dry gin\n  10 ml lime juice\n`)).toContain("Sort the pours by the house's order");
    expect(codesIn("house Bar\n  order: juice; syrups\n")).toEqual(["wrong-value"]);
    expect(codesIn("house Bar\n  order: juice; syrup, spirit\n")).toEqual([]);
  });

  test("a prep goes by what it names first", () => {
    const preps = "prep oleo\n  100 g white sugar\n  50 ml lemon juice\n\nprep bay rum\n  700 ml aged rum\n\n";
    expect(apply(`${preps}drink S<>lip\n  10 ml oleo\n  20 ml lime juice\n  50 ml bay rum\n`, sort)).toContain(
      "drink Slip\n  50 ml bay rum\n  20 ml lime juice\n  10 ml oleo\n",
    );
  });

  test.each([
    ["sorted already", "  50 ml dry gin\n  20 ml lime juice\n"],
    ["layered", "  method: layer\n  20 ml simple syrup\n  50 ml dry gin\n"],
    ["floated", "  20 ml simple syrup\n  50 ml dry gin\n  10 ml port, floated\n"],
    ["poured in its order", "  method: warm the mug; pour in the order given\n  20 ml simple syrup\n  50 ml dry gin\n"],
    ["poured in its order, in a sentence", "  steps: Add in this order.\n  20 ml simple syrup\n  50 ml dry gin\n"],
  ])("not one that is %s", (_what, lines) => expect(isOffered(`drink S<>lip\n${lines}`)).toBe(false));

  test("of any drink: the same lines, the same figures, and sorted once is sorted", () =>
    fc.assert(
      fc.property(anyBody, (body) => {
        const text = `drink S<>lip\n${body}`;
        const before = offered(text);
        fc.pre(before.offers.some(({ title }) => title.startsWith(sort)));
        const after = apply(text, sort);
        expect(after.split("\n").sort()).toEqual(text.replace("<>", "").split("\n").sort());
        expect(isOffered(after.replace("drink S", "drink S<>"))).toBe(false);
        const made = chosen(before, sort);
        for (const figure of ["strengthPct", "ratio", "afterVolumeMl", "temperatureC", "costPerServe"] as const) {
          const [was, is] = [made.house, houseAfter(made)].map((house) => outcomeOf(house, "Slip").value(figure));
          if (was === null) expect(is).toBeNull();
          else expect(is).toBeCloseTo(was!, 9);
        }
      }),
      { numRuns: 40 },
    ));
});
