/** A prep written out where it is poured: the same drink, and not offered where a prep is more than its pours. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { outcomeOf } from "./drinks.ts";
import { apply, chosen, houseAfter, offered, refusal, titles } from "./offered.ts";

const inline = "Write what ";
const isOffered = (text: string) => titles(text).some((title) => title.startsWith(inline));
const syrup = (more = "") => `prep oxide\n  1 part white sugar\n  1 part water, hot\n  parts by: weight\n${more}\n`;
const slip = (more = "") => `drink Slip\n  50 ml dry gin\n  20 ml ox<>ide${more}\n`;

describe("write out a prep", () => {
  test("in proportion, at the temperature and with the words of its pour", () => {
    const text = `prep port mix\n  # by the crate\n  300 ml ruby port, chilled  # young\n  100 ml brandy\n  to 500 g water\n\n`;
    expect(isOffered(`${text}drink Slip\n  50 ml port m<>ix\n`)).toBe(false); // how much water that is, only a scale knows
    const plain = text.replace("  to 500 g water\n", "");
    expect(
      apply(`${plain}drink Slip\r\n    40 ml port m<>ix, frozen, batched  # or 50\n`, "Write what port mix is made of in its place").split(
        "drink Slip\r\n",
      )[1],
    ).toBe("    30 ml ruby port, frozen, batched  # or 50\n    10 ml brandy, frozen, batched\n");
  });

  test("a syrup by weight: equal weights weigh what the volume weighs, 1.23 g/ml at 50 °Bx", () => {
    // ICUMSA SPS-4 (1998): 50 g sucrose in 100 g at 20 °C have 1229.6 kg/m3.
    const after = apply(syrup() + slip(), inline);
    expect(after.slice(syrup().length)).toBe("drink Slip\n  50 ml dry gin\n  12.3 g white sugar\n  12.3 g water\n");
  });

  test("what fills up to a weight is what the rest leaves of it", () =>
    expect(apply("prep brine\n  20 g sea salt\n  to 100 g water\n\ndrink Slip\n  10 g br<>ine\n", inline)).toContain(
      "  2 g sea salt\n  8 g water\n",
    ));

  test("what no scale shows is told in milligrams", () =>
    expect(apply("prep saline\n  1 g sea salt\n  99 g water\n\ndrink Slip\n  2 g sal<>ine\n", inline)).toContain(
      "  20 mg sea salt\n  1.98 g water\n",
    ));

  test("parts in a drink, and a prep in a prep", () => {
    const mix = "prep mix\n  2 parts sweet vermouth\n  1 part fino sherry\n\n";
    expect(apply(`${mix}drink Slip\n  total: 90 ml\n  3 parts m<>ix\n  1 part gin\n`, inline)).toContain(
      "  total: 90 ml\n  2 parts sweet vermouth\n  1 part fino sherry\n  1 part gin\n",
    );
    expect(apply("prep brine\n  20 g sea salt\n  80 g water\n\nprep olive brine\n  50 g br<>ine\n  50 g water\n", inline)).toContain(
      "prep olive brine\n  10 g sea salt\n  40 g water\n  50 g water\n",
    );
  });

  test.each([
    ["measured", "  brix: 52\n"],
    ["of a stated yield", "  yield: 500 ml\n"],
    ["of stated allergens", "  allergens: milk\n"],
    ["of a stated diet", "  diet: vegan\n"],
    ["pasteurised", "  pasteurised: yes\n"],
    ["infused", "  method: infuse 2 days\n"],
    ["strained", "  method: stir; fine strain\n"],
    ["boiled down", "  method: reduce by half\n"],
    ["done to what nobody knows", "  method: leave it by the stove\n"],
    ["smoked, in a sentence", "  steps: Smoke it under a lid.\n"],
    ["with an alternative", "  10 ml lime juice\n    or verjus\n"],
    ["with an option", "  1 pinch sea salt, optional\n"],
    ["with what is strained out", "  6 bay leaves, strained out\n"],
    ["with what bubbles", "  1 part soda water\n"],
    ["of parts and something unknown", "  1 part nobody's powder\n"],
  ])("not one that is %s", (_what, more) => expect(isOffered(syrup(more) + slip())).toBe(false));

  test("but one that is only stirred, whatever the sentences warn of", () =>
    expect(isOffered(syrup("  method: stir\n  steps: Stir until it is clear. Do not boil it.\n") + slip())).toBe(true));

  test("not an estimate, a range, what tops up, what has an alternative, a line of a riff, a stock, a drink", () => {
    expect(isOffered(syrup() + slip().replace("20 ml", "about 20 ml"))).toBe(false);
    expect(isOffered(syrup() + slip().replace("20 ml", "15-20 ml"))).toBe(false);
    expect(isOffered(syrup() + slip().replace("20 ml", "top"))).toBe(false);
    expect(isOffered(syrup() + slip("\n\n    or simple syrup"))).toBe(false);
    expect(isOffered(`${syrup()}drink Fog\n  50 ml gin\n\n${slip("\n  from: Fog")}`)).toBe(false);
    expect(isOffered("drink Slip\n  50 ml dry g<>in\n")).toBe(false);
    expect(isOffered("drink Fog\n  50 ml gin\n\ndrink Slip\n  50 ml F<>og\n")).toBe(false);
  });

  test("not where a riff names it, or what would come in its place", () => {
    expect(refusal(`${syrup()}${slip()}\ndrink Ebb\n  from: Slip\n  without oxide\n`, inline)).toContain("names oxide");
    expect(refusal(`${syrup()}${slip()}\ndrink Ebb\n  from: Slip\n  10 ml water\n`, inline)).toContain("names water");
  });

  const part = fc.tuple(
    fc.integer({ min: 1, max: 40 }),
    fc.constantFrom("dry gin", "overproof rum", "sweet vermouth", "lime juice", "simple syrup", "water"),
  );
  test("of any mix: what is in the drink before its ice is the same", () =>
    fc.assert(
      fc.property(
        fc.uniqueArray(part, { minLength: 1, maxLength: 5, selector: ([, of]) => of }),
        fc.integer({ min: 5, max: 120 }),
        (parts, poured) => {
          const prep = `prep mix\n${parts.map(([steps, of]) => `  ${12.5 * steps} ml ${of}\n`).join("")}`;
          const made = chosen(offered(`${prep}\ndrink Slip\n  50 ml cream\n  ${poured} ml m<>ix\n`), inline);
          const after = houseAfter(made);
          for (const figure of ["beforeVolumeMl", "ethanolG", "acidGPer100Ml", "sweetnessGPer100Ml"] as const) {
            const [was, is] = [made.house, after].map((each) => outcomeOf(each, "Slip").value(figure)!);
            expect(Math.abs(is! - was!)).toBeLessThanOrEqual(0.005 * Math.abs(was!) + 1e-9);
          }
        },
      ),
      { numRuns: 40 },
    ));
});
