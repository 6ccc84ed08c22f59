/** Every rule's own examples: what is bad is found, once and alone; what is good is not; every fix ends what it belongs to. */
import { describe, expect, test } from "vitest";
import { rules } from "../../server/rules/all.ts";
import { houseOf } from "../house/make.ts";
import { apply, codesIn, findIn } from "./check.ts";

describe.each(rules.map((rule) => [rule.code, rule] as const))("%s", (code, { docs }) => {
  test("finds its bad example, once, and nothing else in it", () => {
    expect(codesIn(docs.bad)).toEqual([code]);
  });

  test("finds nothing in its good example", () => {
    expect(codesIn(docs.good)).toEqual([]);
  });

  test("has fixes that end the finding, and then stop offering themselves", () => {
    const count = findIn(houseOf(docs.bad))[0]!.finding.fixes?.().length ?? 0;
    for (let index = 0; index < count; index++) {
      const house = houseOf(docs.bad);
      apply(house, findIn(house)[0]!.finding.fixes!()[index]!);
      expect(findIn(house).map(({ finding }) => finding.code)).not.toContain(code);
    }
  });
});
