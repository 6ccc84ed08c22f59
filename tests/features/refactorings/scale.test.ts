/** Scaling: every amount by one factor, whatever is for each serve as it is; back again, and it is the text that it was. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { figureNames } from "../../../server/engine/plan.ts";
import { scaleAt } from "../../../server/features/refactorings/scale.ts";
import { assessDrink } from "../../../server/house/drink.ts";
import { entryNamed, houseIn, houseOf, root } from "../../house/make.ts";
import { anyBody, outcomeOf } from "./drinks.ts";
import { apply, chosen, houseAfter, offered, offeredOn, refusal, textAfter, titles } from "./offered.ts";

const scaling = (text: string) => titles(text).filter((title) => title.startsWith("Scale"));

/** What the file is once its drink is scaled as somebody typed, or what is wrong with that. */
function typed(text: string, size: string): string {
  const house = houseOf(text);
  const document = house.document(`${root}/spec.drink`)!;
  const fix = scaleAt(house, document, 1, size);
  return "problem" in fix ? fix.problem : textAfter(house, document, fix);
}

describe("to so many serves", () => {
  test("what is offered: a few, never what it is already, and back to one", () => {
    expect(scaling("drink S<>lip\n  50 ml dry gin\n")).toEqual([
      "Scale to 2 serves",
      "Scale to 4 serves",
      "Scale to 8 serves",
      "Scale to 700 ml before ice",
    ]);
    expect(scaling("drink S<>lip\n  serves: 4\n  50 ml dry gin\n").slice(0, 3)).toEqual([
      "Scale to 1 serve",
      "Scale to 2 serves",
      "Scale to 8 serves",
    ]);
    const house = "=== house.drink\nhouse Bar\n  bottle: 1 l\n=== spec.drink\n";
    expect(scaling(`${house}drink S<>lip\n  50 ml dry gin\n`)).toContain("Scale to 1 l before ice");
  });

  test("every kind of amount, and the words that want another number", () => {
    const text = `drink S<>lip
  method: shake 12 s with 200 g cubed ice; strain over 120 g cubed ice
  garnish: 1 lime wheel, dried; mint; 3 cloves
  price: 12.50

  50ml dry gin
  1½ oz. of lime juice  # fresh
    or 2 barspoons verjus
  1 dash orange bitters
  1 egg white
  6 mint leaves
  1 mint leaf
  1 lime, juiced
  10-15 ml honey
  top to 180 ml soda water
  rinse absinthe
`;
    expect(apply(text, "Scale to 8 serves")).toBe(`drink Slip
  method: shake 12 s with 1600 g cubed ice; strain over 120 g cubed ice
  garnish: 8 lime wheels, dried; mint; 24 cloves
  price: 100.00
  serves: 8

  400ml dry gin
  12 oz. of lime juice  # fresh
    or 16 barspoons verjus
  8 dashes orange bitters
  8 egg whites
  48 mint leaves
  8 mint leaves
  8 limes, juiced
  80 to 120 ml honey
  top to 1440 ml soda water
  rinse absinthe
`);
  });

  test("parts stay, and what says how large they are grows", () =>
    expect(apply("drink S<>lip\n  total: 90 ml\n  2 parts dry gin\n  1 part lime juice\n  1 dash bitters\n", "Scale to 2 serves")).toBe(
      "drink Slip\n  total: 180 ml\n  serves: 2\n  2 parts dry gin\n  1 part lime juice\n  2 dashes bitters\n",
    ));

  test("a riff goes along, even an amount that only tells two pours apart; its serve is the same", () => {
    const text =
      "drink S<>lip\n  glass: coupe\n  30 ml dry gin\n  20 ml dry gin, frozen\n\ndrink Ebb\n  from: Slip\n  swap 20 ml dry gin for aged rum\n  without 30 ml dry gin\n  12.5 ml fernet\n";
    const made = chosen(offered(text), "Scale to 4 serves, with its 1 riff");
    const after = houseAfter(made);
    for (const figure of ["strengthPct", "fillShare", "sugarGPer100Ml"] as const)
      expect(outcomeOf(after, "Ebb").value(figure)).toBeCloseTo(outcomeOf(made.house, "Ebb").value(figure)!, 9);
  });

  test("a riff that counts its own serves is left to a person", () =>
    expect(refusal("drink S<>lip\n  30 ml gin\n\ndrink Ebb\n  from: Slip\n  serves: 2\n  5 ml fernet\n", "Scale to 2")).toContain("“Ebb”"));

  test("not offered: a riff, parts without a size, nothing that has an amount, an amount that reads in two ways, a pour", () => {
    expect(scaling("drink Slip\n  50 ml gin\n\ndrink E<>bb\n  from: Slip\n  5 ml fernet\n")).toEqual([]);
    expect(scaling("drink S<>lip\n  2 parts gin\n  1 part lime juice\n")).toEqual([]);
    expect(scaling("drink S<>lip\n  top soda water\n")).toEqual([]);
    expect(scaling("drink S<>lip\n  1,000 ml gin\n")).toEqual([]);
    expect(scaling("drink Slip\n  50 ml g<>in\n")).toEqual([]);
  });

  const perServe = new Set(["fillShare", "costPerServe", "pricedPerServe"]);
  const grows = /(?:Ml|MassG|KJ|Kcal|ethanolG|caffeineMg)$/;
  test("of any drink a serve is the same, and scaled back the text is", () =>
    fc.assert(
      fc.property(anyBody, fc.constantFrom(2, 3, 7, 8, 50), (body, by) => {
        const text = `drink Slip\n${body}`;
        const house = houseOf(text);
        const before = assessDrink(house, entryNamed(house, "Slip"));
        const { serves } = before.plan;
        const there = typed(text, `${serves * by} serves`);
        const after = outcomeOf(houseOf(there), "Slip");
        for (const figure of figureNames) {
          const [one, other] = [before.outcome.value(figure), after.value(figure)];
          const factor = grows.test(figure) && !/Per100Ml|GPerMl/.test(figure) && !perServe.has(figure) ? by : 1;
          if (one === null) expect(other).toBeNull();
          else expect(other! / factor).toBeCloseTo(one, 6);
        }
        expect(amountsOf(typed(there, String(serves)))).toEqual(amountsOf(text));
      }),
      { numRuns: 40 },
    ));

  test("of each drink of the demo house", () => {
    const house = houseIn("samples/halyard-room");
    let scaled = 0;
    for (const { tree } of house.documents()) {
      for (const { kind, name } of tree.entries) {
        const offers = kind === "drink" ? offeredOn(house, name!.text) : undefined;
        if (!offers?.offers.some(({ title }) => title.startsWith("Scale to 4 serves"))) continue;
        const after = houseAfter(chosen(offers, "Scale to 4 serves"));
        for (const figure of ["strengthPct", "dilutionShare", "fillShare", "costPerServe", "temperatureC"] as const) {
          const before = outcomeOf(house, name!.text).value(figure);
          if (before !== null)
            expect(`${name!.text} ${figure} ${outcomeOf(after, name!.text).value(figure)!.toFixed(6)}`).toBe(
              `${name!.text} ${figure} ${before.toFixed(6)}`,
            );
        }
        scaled++;
      }
    }
    expect(scaled).toBeGreaterThan(10);
  });
});

describe("to a volume", () => {
  test("that is what meets the ice, and a serve stays one", () => {
    const text =
      "drink Slip\n  glass: highball\n  method: shake 12 s\n  50 ml dry gin\n  25 ml lime juice\n  20 ml simple syrup\n  top to 200 ml soda water\n";
    const [before, after] = [text, typed(text, "700 ml")].map((one) => outcomeOf(houseOf(one), "Slip"));
    expect(after!.value("beforeVolumeMl")).toBeCloseTo(700, 1);
    for (const figure of ["strengthPct", "fillShare", "ratio"] as const)
      expect(after!.value(figure)! / before!.value(figure)!).toBeCloseTo(1, 3);
  });

  test("and back, to the five digits that a volume is scaled in", () => {
    const text = "drink Slip\n  50 ml dry gin\n  22.5 ml lime juice\n  2 dashes orange bitters\n";
    const numbers = (of: string) => [...of.matchAll(/^ {2}([\d.]+) (?:ml|dash)/gm)].map(([, number]) => Number(number));
    const before = outcomeOf(houseOf(text), "Slip").value("beforeVolumeMl")!;
    const back = numbers(typed(typed(text, "1 l"), `${before} ml`));
    expect(back).toHaveLength(3);
    for (const [index, number] of numbers(text).entries()) expect(back[index]! / number).toBeCloseTo(1, 4);
  });

  test("a prep: with what a batch makes, and what it is filled up to", () => {
    const text = "prep br<>ine\n  80 g sea salt\n  to 400 g water\n  yield: 350 ml\n";
    expect(scaling(text)).toEqual(["Scale to 1 l"]);
    expect(apply(text, "Scale to 1 l")).toBe("prep brine\n  228.57 g sea salt\n  to 1142.9 g water\n  yield: 1000 ml\n");
  });

  test("not a prep whose method says what it comes to, nor one in parts", () => {
    expect(scaling("prep st<>out syrup\n  500 ml stout\n  method: reduce to 300 ml\n")).toEqual([]);
    expect(scaling("prep sy<>rup\n  1 part white sugar\n  1 part water\n  parts by: weight\n")).toEqual([]);
  });

  test("a reason where nobody knows how much it is", () =>
    expect(refusal("drink S<>lip\n  2 sprigs nobody's weed\n", "Scale to 700 ml")).toMatch(/^How much there is of it is unknown: /));
});

describe("to what is typed", () => {
  const text = "drink Slip\n  30 ml dry gin\n";
  test.each([
    ["8", "  serves: 8\n  240 ml dry gin\n"],
    [" 2 serves ", "  serves: 2\n  60 ml dry gin\n"],
    ["2.5", "  serves: 2.5\n  75 ml dry gin\n"],
    ["1 l", "  serves: 33.33\n  1000 ml dry gin\n"],
    ["6 cl", "  serves: 2\n  60 ml dry gin\n"],
  ])("%s", (size, lines) => expect(typed(text, size)).toBe(`drink Slip\n${lines}`));

  test.each([
    ["", "is no size"],
    ["many", "is no size"],
    ["2 to 4", "is no size"],
    ["8 serves please", "is no size"],
    ["0", "Nothing can be scaled to 0"],
    ["-2", "Nothing can be scaled to −2"],
    ["20 g", "is no volume"],
    ["3 dashes", "is no volume"],
    ["100000", "more than a bar pours"],
    ["100000 l", "more than a bar mixes"],
  ])("“%s”", (size, problem) => expect(typed(text, size)).toContain(problem));
});

/** The numbers of the pours, whatever the words beside them. */
function amountsOf(text: string): string[] {
  const lines = text.split("\n").filter((line) => /^ +(?:or |top to )?(?:about )?[\d½]/.test(line));
  return lines.map((line) => line.replace(/5ml/, "5 ml").replace(/(\d)-(\d)/, "$1 to $2"));
}
