/** A batch as data and as a page: whole, in its published shape, and fit for a wall, whatever stands in the file. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { batchOf } from "../../server/house/batch.ts";
import { batchReport } from "../../server/reports/batch.ts";
import { batchSchema } from "../../server/reports/batch-schema.ts";
import { batchText } from "../../server/reports/batch-text.ts";
import { plainLook } from "../../server/reports/sheet.ts";
import { entryNamed, houseOf } from "../house/make.ts";

function pageOf(text: string, name: string, serves: number): string {
  const house = houseOf(text);
  const batch = batchOf(house, entryNamed(house, name), { serves }, { made: "2026-11-28" });
  if ("problem" in batch) throw new Error(batch.problem);
  return batchText(
    batchReport(house, batch, () => "bar.drink"),
    batch.settings,
    plainLook,
  );
}

const bar = `house Slip Bar
  country: GB
stock plain spirit
  kind: spirit
  abv: 40 %
  allergens: none
stock plain syrup
  kind: syrup
  sugar: 60 g/100 ml
  abv: 0 %
  keeps: 14 days chilled
  allergens: none
`;

test("the amounts come first, then the rest, each under its heading", () => {
  const page = pageOf(
    `${bar}drink Rope\n  method: stir 30 s; strain over large cube\n  garnish: lemon zest\n  50 ml plain spirit\n  10 ml plain syrup\n`,
    "Rope",
    20,
  );
  const order = [
    "In the bottle",
    "plain spirit",
    "water",
    "Comes to",
    "As served",
    "In the cold",
    "Use by",
    "Not in the bottle",
    "Work",
    "At the bar",
    "Label",
    "Mind",
  ];
  const places = order.map((word) => page.search(new RegExp(`^${word}`, "m")));
  expect(places).toEqual([...places].sort((one, other) => one - other));
  expect(places[0]).toBeGreaterThan(0);
  expect(page).toMatch(/^plain spirit +1000 ml +9\d\d(?:\.\d)? g +exact$/m);
  expect(page).toMatch(/^\| Made 2026-11-28\. Use by 2026-12-12\.$/m);
  expect(page.replace(/\s+/g, " ")).toContain("then as the spec has it: strain over large cube.");
  expect(page).toContain("local codes decide");
});

test("what the ice would have given is told with how sure that is, apart from water that the spec pours", () => {
  const page = pageOf(`${bar}drink Rope\n  method: stir 30 s\n  50 ml plain spirit\n  10 ml water\n`, "Rope", 20);
  expect(page).toMatch(/^water +200 ml/m);
  expect(page).toMatch(/^water for the ice +\d+(?:\.5)? ml/m);
  expect(page.replace(/\s+/g, " ")).toMatch(/Water: for what the ice would have melted, \d+ ± \d+ ml\./);
});

test("what is solid is dissolved first, in the water where there is some", () => {
  const rope = (method: string) => pageOf(`${bar}drink Rope\n${method}  50 ml plain spirit\n  5 g white sugar\n`, "Rope", 20);
  expect(rope("  method: stir 30 s\n")).toMatch(/^2\. Dissolve 100 g white sugar in the water, \d/m);
  expect(rope("")).toMatch(/^2\. Dissolve 100 g white sugar in the weakest of what is poured/m);
});

test("what can hurt is said: raw egg in the glass, alcohol by the bottle, weak bottles", () => {
  const page = pageOf(
    `${bar}drink Egg Rope\n  method: shake 12 s\n  50 ml plain spirit\n  20 ml plain syrup\n  1 egg white\n`,
    "Egg Rope",
    40,
  );
  expect(page).toMatch(/^! Raw egg: tell the guest/m);
  // 2 l of 40 % vol hold 800 ml of alcohol, and a UK unit is 10 ml of it.
  expect(page).toMatch(/^! All of it holds 80 UK units/m);
  expect(page).not.toContain("alcohol does not keep it");
  expect(page).toMatch(/As served: Assumed to contain egg/);
  expect(page).toMatch(/^\| No allergens, by all that is stated or assumed\.$/m);
  expect(pageOf(`${bar}drink Weak Rope\n  20 ml plain spirit\n  60 ml plain syrup\n`, "Weak Rope", 40)).toContain(
    "alcohol does not keep it",
  );
});

test("a house that pours ounces reads ounces", () => {
  const page = pageOf(
    bar.replace("GB", "US\n  units: oz\n  jigger: 0.25 oz").concat("drink Rope\n  1 1/2 oz plain spirit\n  1/4 oz plain syrup\n"),
    "Rope",
    5,
  );
  expect(page).toMatch(/^plain spirit +7 1\/2 oz /m);
  expect(page).toMatch(/^plain syrup +1 1\/4 oz /m);
});

const line = fc.oneof(
  {
    weight: 4,
    arbitrary: fc.constantFrom(
      "drink Knot",
      "drink Knot, Twice",
      "prep knot syrup",
      "stock knot spirit",
      "house Knot Room",
      "  from: Knot",
      "  method: dry shake; shake 12 s with cracked ice; fine strain",
      "  method: stir 20 s; strain over cubed ice",
      "  method: pre-dilute 25 %; hold at -5 C",
      "  serves: 4",
      "  total: 90 ml",
      "  50 ml white rum, batched",
      "  50 ml white rum, frozen",
      "  2 parts lime juice",
      "  1 part knot syrup",
      "  100 g sugar",
      "  1-1/2 oz knot spirit",
      "  2 dashes clove bitters",
      "  top soda water",
      "  some mint",
      "  keeps: 3 days",
      "  abv: 40 %",
      "  garnish: grated almond; knot syrup",
      "  units: oz",
      "  jigger: 10 ml",
      "  swap white rum for knot spirit",
      "    or knot syrup",
    ),
  },
  { weight: 1, arbitrary: fc.string({ unit: "grapheme" }) },
);

test("any lines are batched in the published shape, or refused in words", () => {
  const ended = { mixed: 0, refused: 0 };
  fc.assert(
    fc.property(
      fc.array(line, { maxLength: 40 }),
      fc.oneof(
        fc.record({ serves: fc.double({ min: 0.01, max: 500, noNaN: true }) }),
        fc.record({ ml: fc.integer({ min: 1, max: 20_000 }) }),
      ),
      fc.option(fc.boolean(), { nil: undefined }),
      (lines, size, water) => {
        const house = houseOf(["drink Knot", ...lines].join("\n"));
        for (const entry of [...house.documents()].flatMap(({ tree }) => tree.entries)) {
          if (entry.kind !== "drink") continue;
          const batch = batchOf(house, entry, size, { made: "2026-11-28", ...(water !== undefined && { water }) });
          ended["problem" in batch ? "refused" : "mixed"]++;
          const report = "problem" in batch ? undefined : batchSchema.parse(batchReport(house, batch, (uri) => uri));
          const text = "problem" in batch ? batch.problem : batchText(report!, batch.settings, plainLook);
          expect(text.replaceAll("\n", "")).not.toMatch(/NaN|Infinity|undefined/);
          if (report) expect(text.replaceAll("\n", "")).not.toMatch(/\p{Cc}/u);
        }
      },
    ),
    { numRuns: 150 },
  );
  expect(Math.min(ended.mixed, ended.refused)).toBeGreaterThan(10);
});
