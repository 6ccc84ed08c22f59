/** A riff of a drink that nobody declares. */
import { findFieldIn } from "../house/entry.ts";
import { askFor, nearestNames } from "../house/nearest.ts";
import { isNone } from "../house/values.ts";
import { placeOf } from "./places.ts";
import type { Rule } from "./rule.ts";
import { specimen } from "./specimen.ts";

const parent = specimen(["50 ml gin"]);

export const missingParent: Rule = {
  code: "missing-parent",
  severity: "error",
  entries: ["drink"],
  docs: {
    title: "A riff of nothing",
    why: "A riff takes its pours, glass, method and garnish from the drink that it names. From one that is not there it takes nothing, and its swaps change nothing.",
    bad: `${parent}\ndrink Slip Water, Short\n  from: Slip Wtaer\n  glass: rocks\n  method: none\n  garnish: none\n  40 ml gin\n`,
    good: `${parent}\ndrink Slip Water, Short\n  from: Slip Water\n  40 ml gin\n`,
  },
  *check(house, entry) {
    const from = findFieldIn(entry, "from");
    const value = from?.field.value;
    if (!from || !value || isNone(from.field) || house.lookup(house.scopeOf(entry), "drink", value.text).length > 0) return;
    const near = nearestNames(house, house.scopeOf(entry), "drink", value.text);
    const place = placeOf(from.line, value);
    yield {
      place,
      what: `There is no drink “${value.text}”, so this riff takes nothing from it.`,
      todo: askFor(near, "Name a drink that is there, or take the line out."),
      fixes: () => near.map((other) => ({ title: `Change to “${other}”`, safe: false, edits: [{ entry, ...place, text: other }] })),
    };
  },
};
