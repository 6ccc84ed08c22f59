/** An `or` without a pour above it. */
import { flatten } from "../house/riff.ts";
import { isFaulty } from "./places.ts";
import type { Rule } from "./rule.ts";
import { specimen } from "./specimen.ts";

export const orphanOr: Rule = {
  code: "orphan-or",
  severity: "warning",
  entries: ["drink"],
  docs: {
    title: "An alternative to nothing",
    why: "`or` belongs to the pour above it. Where there is none, its ingredient is in no drink, and its allergens are on no card.",
    bad: specimen(["or vodka", "50 ml gin"]),
    good: specimen(["50 ml gin", "or vodka"]),
  },
  *check(house, entry) {
    for (const { kind, line, start, end } of flatten(house, entry).problems) {
      if (kind !== "orphan-or" || isFaulty(entry.lines[line]!)) continue;
      yield {
        place: { line, start, end },
        what: "There is no pour above this line that it could be an alternative to, so it counts for nothing.",
        todo: "Put it below the pour that it stands in for.",
      };
    }
  },
};
