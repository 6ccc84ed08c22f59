/** To parts and back: preps of any size, and drinks with their riffs. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { assessDrink } from "../../server/house/drink.ts";
import { assessPrepEntry } from "../../server/house/prep.ts";
import { entryNamed, houseOf } from "../house/make.ts";
import { actionsAt, applied, apply, titlesAt } from "./cursor.ts";

const inParts = (text: string) => titlesAt(text).filter((title) => / parts/.test(title));

describe("a prep", () => {
  test("by weight, in the least whole numbers, and back to a kilogram", () => {
    const text = "prep ho<>ney mix\n  400 g honey  # heather\n    or 400 g agave syrup\n  150 g water, hot\n  keeps: 7 days\n";
    const parts =
      "prep honey mix\n  8 parts honey  # heather\n    or 8 parts agave syrup\n  3 parts water, hot\n  parts by: weight\n  keeps: 7 days\n";
    expect(apply(text, "Convert the prep to parts by weight")).toBe(parts);
    expect(apply(parts.replace("ho", "ho<>"), "Convert the parts to g, 1 kg in all")).toBe(
      "prep honey mix\n  727.27 g honey  # heather\n    or 727.27 g agave syrup\n  272.73 g water, hot\n  keeps: 7 days\n",
    );
  });

  test("by volume, and back to a litre in the house's unit", () => {
    expect(apply("prep m<>ix\n  750 ml sweet vermouth\n  25 cl fino sherry\n", "Convert the prep to parts by volume")).toBe(
      "prep mix\n  3 parts sweet vermouth\n  1 part fino sherry\n  parts by: volume\n",
    );
    const house = "=== bar.drink\nhouse Bar\n  units: oz\n  ounce: 25 ml\n=== spec.drink\n";
    expect(apply(`${house}prep m<>ix\n  3 parts sweet vermouth\n  1 part fino sherry\n`, "Convert the parts to oz, 1 l in all")).toBe(
      "prep mix\n  30 oz sweet vermouth\n  10 oz fino sherry\n",
    );
  });

  test.each([
    ["weighed and measured", "  100 g honey\n  50 ml water\n"],
    ["counted", "  100 g honey\n  4 cloves\n"],
    ["by hand", "  100 g honey\n  1 pinch sea salt\n"],
    ["by a range", "  100 g honey\n  40 to 50 g water\n"],
    ["filled up", "  20 g sea salt\n  to 100 g water\n"],
    ["of a stated yield", "  100 g honey\n  50 g water\n  yield: 120 ml\n"],
    ["boiled down to a volume", "  500 ml stout\n  200 ml water\n  method: reduce to 300 ml\n"],
    ["one pour", "  100 g honey\n"],
    ["parts with a solid that say neither weight nor volume", "  1 part white sugar\n  1 part water\n"],
  ])("not one that is %s", (_what, lines) => expect(inParts(`prep m<>ix\n${lines}`)).toEqual([]));

  const of = fc.uniqueArray(fc.constantFrom("aged rum", "sweet vermouth", "lime juice", "honey", "water"), { minLength: 2, maxLength: 4 });
  test("of any amounts it holds the same in proportion, there and back", () =>
    fc.assert(
      fc.property(
        of,
        fc.array(fc.integer({ min: 1, max: 4000 }), { minLength: 4, maxLength: 4 }),
        fc.constantFrom("g", "ml"),
        (names, tenths, unit) => {
          const text = `prep m<>ix\n${names.map((name, index) => `  ${tenths[index]! / 10} ${unit} ${name}\n`).join("")}`;
          const there = convertedTo(text, "Convert the prep to parts");
          if (there === undefined) return expect(names).toContain("honey"); // which is no liquid to measure
          const back = convertedTo(there.replace("prep m", "prep m<>"), "Convert the parts to")!;
          for (const figure of ["strengthPct", "brix", "acidGPer100G", "densityGPerMl"] as const) {
            const [was, parts, is] = [text.replace("<>", ""), there, back].map((one) => prepFigure(one, figure));
            expect(parts).toBeCloseTo(was!, 6);
            expect(is).toBeCloseTo(was!, 2);
          }
        },
      ),
      { numRuns: 40 },
    ));
});

describe("a drink with riffs", () => {
  const strengths = (text: string) =>
    ["Slip", "Ebb"].map((name) => {
      const house = houseOf(text.replace("<>", ""));
      const { outcome } = assessDrink(house, entryNamed(house, name));
      return [outcome.value("strengthPct")!.toFixed(6), outcome.value("afterVolumeMl")!.toFixed(6)];
    });

  test("an amount that tells two pours apart goes along to parts, and back", () => {
    const text =
      "drink S<>lip\n  30 ml dry gin\n  15 ml dry gin, frozen\n  15 ml lime juice\n\ndrink Ebb\n  from: Slip\n  swap 15 ml dry gin for aged rum\n  5 ml fernet\n";
    const there = apply(text, "Convert the drink to parts of 15 ml, with its 1 riff");
    expect(there).toContain("  swap 1 part dry gin for aged rum\n  5 ml fernet\n");
    expect(strengths(there)).toEqual(strengths(text));
    const back = apply(there.replace("drink S", "drink S<>"), "Convert the parts to ml, with its 1 riff");
    expect(back).toBe(text.replace("<>", ""));
  });

  test("a riff's own parts go along", () => {
    const text = "drink S<>lip\n  part: 20 ml\n  2 parts dry gin\n  1 part lime juice\n\ndrink Ebb\n  from: Slip\n  1/2 part lime juice\n";
    const after = apply(text, "Convert the parts to ml, with its 1 riff");
    expect(after).toBe("drink Slip\n  40 ml dry gin\n  20 ml lime juice\n\ndrink Ebb\n  from: Slip\n  10 ml lime juice\n");
    expect(strengths(after)).toEqual(strengths(text));
  });

  test("not where a riff has a size of its own, or shares the total out anew", () => {
    const slip = "drink S<>lip\n  total: 90 ml\n  2 parts dry gin\n  1 part lime juice\n\ndrink Ebb\n  from: Slip\n";
    expect(inParts(`${slip}  total: 60 ml\n`)).toEqual([]);
    expect(inParts(`${slip}  2 parts lime juice\n`)).toEqual([]);
    expect(inParts(`${slip}  swap lime juice for verjus\n`)).toEqual(["Convert the parts to ml"]);
    expect(
      inParts("drink S<>lip\n  30 ml dry gin\n  15 ml lime juice\n\ndrink Ebb\n  from: Slip\n  part: 10 ml\n  1 part fernet\n"),
    ).toEqual([]);
  });
});

function convertedTo(text: string, title: string): string | undefined {
  const { fixture, actions } = actionsAt(text);
  const action = actions.find((one) => one.title.startsWith(title));
  return action && applied(fixture, action);
}

function prepFigure(text: string, figure: "strengthPct" | "brix" | "acidGPer100G" | "densityGPerMl"): number {
  const house = houseOf(text);
  return assessPrepEntry(house, entryNamed(house, "mix")).value(figure)!;
}
