/**
 * Pours taken into a prep: the drink holds what it held, within what a bar measures.
 *
 * Ethanol and water contract when they are mixed, by at most 3.7 % of their volumes together, near equal
 * volumes of each (OIML R 22, tables of 1975): so much less is poured of the mix than went into it.
 */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { suitabilityOf } from "../../../server/house/suitability.ts";
import { entryNamed } from "../../house/make.ts";
import { outcomeOf } from "./drinks.ts";
import { apply, chosen, houseAfter, offered, refusal, titles } from "./offered.ts";

const take = (count: number) => `Take ${count} pours into a prep of their own`;
const isOffered = (text: string) => titles(text).some((title) => title.startsWith("Take"));

describe("take pours into a prep", () => {
  test("the amounts stand in it, comments go along, and the drink pours what they come to", () => {
    const text = `drink Slip\r
  method: stir 20 s\r
\r
  # the old one\r
  <>45 ml aged rum, batched  # or less\r
  30 ml sweet vermouth, batched<>\r
  2 dashes orange bitters\r
`;
    expect(apply(text, take(2))).toBe(`drink Slip\r
  method: stir 20 s\r
\r
  75 ml Slip mix, batched\r
  2 dashes orange bitters\r
\r
prep Slip mix\r
  # the old one\r
  45 ml aged rum  # or less\r
  30 ml sweet vermouth\r
`);
  });

  test("the last pours of a file without a last line break, and a name that is taken", () => {
    const text = "prep Slip mix\n  1 part water\n\ndrink Slip\n  1 egg white\n  <>30 ml dry gin\n  30 ml dry vermouth<>";
    expect(apply(text, take(2)).slice(30)).toBe(
      "drink Slip\n  1 egg white\n  60 ml Slip mix 2\n\nprep Slip mix 2\n  30 ml dry gin\n  30 ml dry vermouth",
    );
  });

  test("a name that would not read is quoted in both places", () => {
    const text = 'drink "12 Bells"\n  <>30 ml dry gin\n  30 ml dry vermouth<>\n  10 ml lime juice\n';
    expect(apply(text, take(2))).toBe(
      'drink "12 Bells"\n  60 ml "12 Bells mix"\n  10 ml lime juice\n\nprep "12 Bells mix"\n  30 ml dry gin\n  30 ml dry vermouth\n',
    );
  });

  test("parts and weights add up", () => {
    const parts = "drink Slip\n  total: 90 ml\n  <>1 part dry gin\n  1/2 part dry vermouth<>\n  1 part bitter liqueur\n";
    expect(apply(parts, take(2))).toContain(
      "  1 1/2 parts Slip mix\n  1 part bitter liqueur\n\nprep Slip mix\n  1 part dry gin\n  1/2 part dry vermouth\n",
    );
    const weights = "prep Brine\n  <>20 g sea salt\n  80 g white sugar<>\n  to 400 g water\n";
    expect(apply(weights, take(2))).toContain(
      "prep Brine\n  100 g Brine mix\n  to 400 g water\n\nprep Brine mix\n  20 g sea salt\n  80 g white sugar\n",
    );
  });

  test("all of it as cold as it was: what stands in the fridge is chilled in the drink", () => {
    const stock = "=== stock.drink\nstock cold gin\n  kind: spirit\n  abv: 40 %\n  stored: fridge\n=== spec.drink\n";
    expect(apply(`${stock}drink Slip\n  <>30 ml cold gin\n  30 ml dry vermouth, chilled<>\n`, take(2))).toContain(
      "  60 ml Slip mix, chilled\n",
    );
    expect(isOffered(`${stock}drink Slip\n  <>30 ml cold gin\n  30 ml dry vermouth<>\n`)).toBe(false);
  });

  test.each([
    ["one pour", "  30 ml dry gin"],
    ["at two temperatures", "  30 ml dry gin, frozen\n  30 ml dry vermouth"],
    ["with an egg", "  30 ml dry gin\n  1 egg white"],
    ["with leaves", "  30 ml dry gin\n  6 mint leaves"],
    ["with a piece", "  30 ml dry gin\n  1 lime, juiced"],
    ["with an alternative", "  30 ml dry gin\n    or vodka\n  10 ml lime juice"],
    ["with an option", "  30 ml dry gin\n  30 ml dry vermouth, optional"],
    ["with what is poured after", "  30 ml dry gin\n  30 ml dry vermouth, after"],
    ["with what bubbles", "  30 ml dry gin\n  30 ml tonic water"],
    ["with what tops up", "  30 ml dry gin\n  top dry vermouth"],
    ["with a rinse", "  rinse absinthe\n  30 ml dry gin"],
    ["with a range", "  30 ml dry gin\n  10 to 15 ml dry vermouth"],
    ["with an estimate", "  30 ml dry gin\n  about 10 ml dry vermouth"],
    ["with what nobody declared", "  30 ml dry gin\n  30 ml nobody's brew"],
    ["in two measures", "  30 ml dry gin\n  30 g honey"],
    ["over a blank line", "  30 ml dry gin\n\n  30 ml dry vermouth"],
    ["over a field", "  30 ml dry gin\n  glass: coupe\n  30 ml dry vermouth"],
  ])("not %s", (_what, lines) => expect(isOffered(`drink Slip\n<>${lines}<>\n`)).toBe(false));

  test("not above an alternative of the last one, nor of a riff, nor of a prep that is more than mixed", () => {
    expect(isOffered("drink Slip\n<>  30 ml dry gin\n  30 ml dry vermouth<>\n\n  # else\n    or white vermouth\n")).toBe(false);
    expect(isOffered("drink Fog\n  5 ml fernet\n\ndrink Slip\n  from: Fog\n<>  30 ml dry gin\n  30 ml dry vermouth<>\n")).toBe(false);
    expect(isOffered("prep Slip\n<>  30 ml dry gin\n  30 ml dry vermouth<>\n  method: infuse 2 hours\n")).toBe(false);
  });

  test("not where a riff changes one of them, and it says which", () =>
    expect(
      refusal(
        "drink Slip\n<>  30 ml dry gin\n  30 ml dry vermouth<>\n\ndrink Ebb\n  from: Slip\n  swap gin for vodka\n  15 ml dry vermouth\n",
        take(2),
      ),
    ).toMatch(/^“Ebb” is a riff of this drink and names gin on a line of its own/));

  const liquid = fc.constantFrom(
    "dry gin",
    "overproof rum",
    "neutral spirit",
    "sweet vermouth",
    "orange liqueur",
    "simple syrup",
    "water",
    "lime juice",
  );
  const pours = fc.array(fc.tuple(fc.integer({ min: 2, max: 24 }), liquid), { minLength: 2, maxLength: 5 });
  const figures = ["strengthPct", "sweetnessGPer100Ml", "acidGPer100Ml", "afterVolumeMl", "ethanolG"] as const;
  test("of any pours the drink is the same, within what is poured of the mix", () =>
    fc.assert(
      fc.property(pours, fc.constantFrom("ml", "cl", "oz"), (taken, unit) => {
        const size = { ml: 1, cl: 10, oz: 30 }[unit];
        const lines = taken.map(([steps, of]) => `  ${Number(((2.5 * steps) / size).toFixed(4))} ${unit} ${of}`);
        const house = "=== house.drink\nhouse Bar\n  ounce: 30 ml\n=== spec.drink\n";
        const made = chosen(offered(`${house}drink Slip\n<>${lines.join("\n")}<>\n  10 ml honey\n`), take(taken.length));
        const after = houseAfter(made);
        const poured = /(\d[\d./ ]*) (?:ml|cl|oz) Slip mix/.exec(JSON.stringify(made.fix.edits))!;
        expect(poured).not.toBeNull();
        // The mix is poured to 2 %, and what it meets is so much more or less of the whole. No ice: a mix has cooled
        // down from its own heat of mixing, and melts less of it.
        const [one, other] = [made.house, after].map((each) => outcomeOf(each, "Slip").value("beforeVolumeMl")!);
        expect(Math.abs(other! / one! - 1)).toBeLessThan(0.021);
        for (const figure of figures) {
          const [was, is] = [made.house, after].map((each) => outcomeOf(each, "Slip").value(figure)!);
          expect(Math.abs(is! - was!), figure).toBeLessThan(0.025 * Math.max(was!, 1));
        }
        const sum = taken.reduce((all, [steps]) => all + 2.5 * steps, 0);
        expect(pouredMl(made.fix.edits, size)).toBeGreaterThan(0.963 * sum - 0.02 * sum);
        expect(pouredMl(made.fix.edits, size)).toBeLessThan(1.02 * sum);
        expect(suitabilityOf(after, entryNamed(after, "Slip")).contains.map(({ allergen }) => allergen)).toEqual(
          suitabilityOf(made.house, entryNamed(made.house, "Slip")).contains.map(({ allergen }) => allergen),
        );
      }),
      { numRuns: 40 },
    ));
});

function pouredMl(edits: unknown, size: number): number {
  const [, numeral] = /"[^"]*?([\d./ ]+) (?:ml|cl|oz) Slip mix/.exec(JSON.stringify(edits))!;
  const parts = numeral!.trim().split(" ");
  return size * parts.map((part) => part.split("/").map(Number)).reduce((sum, [top, bottom]) => sum + top! / (bottom ?? 1), 0);
}
