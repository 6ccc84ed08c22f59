/** Whatever stands in a file, both reports come out whole, in their published shape. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { assessEntries } from "../../server/reports/assess.ts";
import { assessSchema } from "../../server/reports/assess-schema.ts";
import { assessText } from "../../server/reports/assess-text.ts";
import { check, reportOf } from "../../server/reports/check.ts";
import { checkSchema } from "../../server/reports/check-schema.ts";
import { checkText } from "../../server/reports/check-text.ts";
import { prepsIn } from "../../server/reports/preps-in.ts";
import { plainLook } from "../../server/reports/sheet.ts";
import { rules } from "../../server/rules/all.ts";
import { houseOf } from "../house/make.ts";

const written = fc.constantFrom(
  "drink Knot",
  "drink Knot, Twice",
  "prep knot syrup",
  "stock knot spirit",
  "drink",
  "house Knot Room",
  "  from: Knot",
  "  from: Knot, Twice",
  "  family: sour",
  "  glass: coupe, chilled",
  "  method: dry shake; shake 12 s with cracked ice; fine strain",
  "  method: build over crushed ice",
  "  serves: 4",
  "  total: 90 ml",
  "  50 ml white rum, frozen",
  "  2 parts lime juice",
  "  1 part knot syrup",
  "  100 g sugar",
  "  1-1/2 oz knot spirit",
  "  top soda water",
  "  to 500 ml water",
  "  some mint",
  "  kind: spirit",
  "  abv: 40 %",
  "  brix: 50",
  "  yield: 300 ml",
  "  method: infuse 2 days; reduce by half; strain",
  "  method: milk-clarify; fat-wash; reduce to 0 ml",
  "  20 g mint, strained out",
  "  200 ml milk",
  "  swap white rum for knot spirit",
  "  without lime juice",
  "  steps:",
  "    Stir “slowly” 🍋 \u001b[31m",
);
const line = fc.oneof({ weight: 4, arbitrary: written }, { weight: 1, arbitrary: fc.string({ unit: "grapheme" }) });

test("any lines are checked and assessed", () => {
  fc.assert(
    fc.property(fc.array(line, { maxLength: 40 }), (lines) => {
      const house = houseOf(lines.join("\n"));
      const documents = [...house.documents()];
      const entries = documents.flatMap(({ tree }) => tree.entries);
      const asking = {
        rules,
        pathOf: (uri: string) => uri,
        report: (code: string, cause: unknown) => {
          throw new Error(code, { cause });
        },
      };
      const checked = checkSchema.parse(reportOf(check(house, documents, asking)));
      const assessed = assessSchema.parse(assessEntries(house, entries, asking));
      for (const { line: at } of checked.findings) expect(at).toBeLessThanOrEqual(lines.length + 1);
      for (const drink of entries.filter(({ kind }) => kind === "drink")) prepsIn(house, drink);
      const sheet = { measure: { units: "ml", ounceMl: 30 }, atLength: lines.length % 2 === 0, cautions: new Map() } as const;
      for (const text of [checkText(checked, plainLook), assessText(assessed, sheet, plainLook)]) {
        // Nothing that a terminal would obey but line breaks.
        expect(text.replaceAll("\n", "")).not.toMatch(/\p{Cc}/u);
        expect(text).not.toMatch(/NaN|Infinity|undefined/);
      }
    }),
    { numRuns: 150 },
  );
});
