import { expect, test } from "vitest";
import { assessEntries } from "../../server/reports/assess.ts";
import { assessSchema } from "../../server/reports/assess-schema.ts";
import { assessText } from "../../server/reports/assess-text.ts";
import { plainLook } from "../../server/reports/sheet.ts";
import { entryNamed, houseOf } from "../house/make.ts";

const sheet = { measure: { units: "ml", ounceMl: 30 }, atLength: false, cautions: new Map() } as const;

function assessed(text: string, ...names: string[]) {
  const house = houseOf(text);
  const fail = (code: string, cause: unknown): never => {
    throw new Error(code, { cause });
  };
  const entries = names.map((name) => entryNamed(house, name));
  const report = assessEntries(house, entries, { rules: [], report: fail, pathOf: (uri) => uri });
  return { report: assessSchema.parse(report), shown: assessText(report, sheet, plainLook) };
}

test("a syrup says its ratio and its °Brix, what boiled off, what stayed behind, and what was read", () => {
  const { report, shown } = assessed(
    "prep pier syrup\n  200 g white sugar\n  200 g water\n  10 g mint\n  method: simmer to 300 g; strain\n  ph: 5.1\n  measured: 2026-03-01\n\nprep brine\n  20 g sea salt\n  80 g water\n",
    "pier syrup",
    "brine",
  );
  const [syrup, brine] = report.preps;
  // 199.6 g of sugar in 300 g: 66.5 °Bx, 1.99 : 1, by arithmetic.
  expect(syrup!.brix.value).toBeCloseTo(66.53, 2);
  expect(syrup!.sugarToWater.value).toBeCloseTo(1.988, 3);
  expect(syrup!.boiledOffG.value).toBeCloseTo(100, 3);
  expect(syrup!.massG.value! + syrup!.boiledOffG.value! + syrup!.leftBehindG.value!).toBeCloseTo(400, 2);
  expect(syrup!.measured).toEqual({ on: "2026-03-01", brix: null, densityGPerMl: null, strengthPct: null, ph: 5.1 });
  expect(brine!.sugarToWater).toMatchObject({ value: null, because: [expect.stringContaining("not what one calls a syrup")] });
  expect(shown).toMatch(/^pier syrup +\d+ .* 66\.5 +1\.99 /m);
  expect(shown).toMatch(/^ {2}read 2026-03-01: pH 5\.1$/m);
  expect(shown).toMatch(/^brine .* – /m);
});

test("what is all sugar, by a reading that leaves no room for water, has no ratio to it", () => {
  const { report } = assessed("prep dry syrup\n  100 g white sugar\n  abv: 40 %\n", "dry syrup");
  expect(report.preps[0]!.sugarToWater).toEqual({ value: null, plusMinus: null, because: ["there is no water in it"] });
});
