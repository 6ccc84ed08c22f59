import { describe, expect, test } from "vitest";
import { codesIn, findOne } from "./check.ts";

const prep = (...lines: string[]) => `prep it\n${lines.map((line) => `  ${line}\n`).join("")}  measured: 2026-03-01\n`;
const syrup = ["500 g white sugar", "500 g water"]; // 49.9 °Bx, by arithmetic

describe("a reading that speaks against the pours", () => {
  // A bar's refractometer is right to half a degree: practice. Outside twice that it is told.
  test.each([
    [50.8, 0],
    [49, 0],
    [51.2, 1],
    [48.6, 1],
  ])("%d °Bx for 49.9: %d findings", (brix, count) => expect(codesIn(prep(...syrup, `brix: ${brix}`))).toHaveLength(count));

  test("a refractometer that counts the acid in is right, and so is one that does not", () => {
    const cordial = [...syrup, "60 g citric acid"]; // 47.1 °Bx of sugar, 52.8 of all that is dissolved, by arithmetic
    for (const brix of [47, 50, 53]) expect(codesIn(prep(...cordial, `brix: ${brix}`))).not.toContain("reading-differs");
    expect(codesIn(prep(...cordial, "brix: 56"))).toContain("reading-differs");
  });

  test("names both, and what would do that", () => {
    const { located } = findOne(prep("500 ml gin", "300 g white sugar", "brix: 50"), "reading-differs");
    expect(located.finding.what).toMatch(/^50\.0 ± 0\.5 °Bx was read, and the pours make 3\d(\.\d)? (± [\d.]+ )?°Bx\. .*alcohol/);
  });

  test("is looked for in strength and density, and never in a pH", () => {
    expect(codesIn(prep("500 ml water", "abv: 5 %"))).toContain("reading-differs");
    expect(codesIn(prep(...syrup, "density: 1.15 g/ml"))).toContain("reading-differs");
    expect(codesIn(prep(...syrup, "density: 1.23 g/ml"))).toEqual([]);
    expect(codesIn(prep(...syrup, "ph: 12"))).toEqual([]);
  });

  test("is not looked for where nothing is computed", () =>
    expect(codesIn(prep("500 g water", "100 g white sugar", "method: ferment 3 days", "brix: 4", "abv: 5 %"))).not.toContain(
      "reading-differs",
    ));
});
