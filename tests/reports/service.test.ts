import { expect, test } from "vitest";
import { assessEntries } from "../../server/reports/assess.ts";
import { assessSchema } from "../../server/reports/assess-schema.ts";
import { drinkText } from "../../server/reports/drink-text.ts";
import { plainLook } from "../../server/reports/sheet.ts";
import { entryNamed, houseOf } from "../house/make.ts";
import { drinkReport, known } from "./figures.ts";

const ml = { units: "ml", ounceMl: 30 } as const;

test("the full sheet has a line for service, only where something is batched", () => {
  const service = { batchMl: known(74.6, 1), jiggerMl: 75, batched: ["gin", "aged rum"], beside: ["25 ml lemon juice", "top soda water"] };
  expect(drinkText(drinkReport({ service }), ml, plainLook)).toMatch(/^For service +75 ml batch \+ 25 ml lemon juice \+ top soda water$/m);
  expect(drinkText(drinkReport({ service }), { ...ml, units: "oz" }, plainLook)).toContain("2 1/2 oz batch + 25 ml lemon juice");
  expect(drinkText(drinkReport(), ml, plainLook)).not.toContain("For service");
});

test("the report's data has the batch, what it is made of and what is poured beside it", () => {
  const house = houseOf(
    "drink Slip\n  serves: 2\n  100 ml gin, batched\n  50 ml dry vermouth, batched\n  50 ml lemon juice\ndrink Rope\n  60 ml gin\n",
  );
  const entries = ["Slip", "Rope"].map((name) => entryNamed(house, name));
  const report = assessEntries(house, entries, { rules: [], report: () => undefined, pathOf: (uri) => uri });
  const [slip, rope] = assessSchema.parse(report).drinks;
  expect(slip!.service).toMatchObject({ jiggerMl: 75, batched: ["gin", "dry vermouth"], beside: ["25 ml lemon juice"] });
  expect(slip!.service!.batchMl.value).toBeCloseTo(75, 0);
  expect(rope!.service).toBeNull();
});
