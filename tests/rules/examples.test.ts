/** Every rule's own examples: what is bad is found, once and alone; what is good is not; every fix ends what it belongs to. */
import { describe, expect, test } from "vitest";
import { rules } from "../../server/rules/all.ts";
import { houseOf } from "../house/make.ts";
import { applied, apply, codesIn, findIn } from "./check.ts";

describe.each(rules.map((rule) => [rule.code, rule] as const))("%s", (code, { docs }) => {
  test("finds its bad example, once, and nothing else in it", () => {
    expect(codesIn(docs.bad)).toEqual([code]);
  });

  test("finds nothing in its good example", () => {
    expect(codesIn(docs.good)).toEqual([]);
  });

  test("has fixes that end the finding, each by itself, and cannot be put in twice", () => {
    const count = findIn(houseOf(docs.bad))[0]!.finding.fixes?.().length ?? 0;
    for (let way = 0; way < count; way++) {
      const house = houseOf(docs.bad);
      const fix = findIn(house)[0]!.finding.fixes!()[way]!;
      apply(house, fix);
      expect(findIn(house).map(({ finding }) => finding.code)).not.toContain(code);
      // An edit that is out of date changes nothing: its entry is in no text any more.
      if (fix.edits.some((edit) => "uri" in edit)) continue;
      for (const document of house.documents()) expect(applied(house, document, fix)).toBeUndefined();
    }
  });
});
