/** Stronger or weaker than the family, after melt. */
import { isStrongOrPlain } from "../house/adjust.ts";
import { isCyclic } from "../house/cycles.ts";
import { assessDrink } from "../house/drink.ts";
import { familyOf } from "../house/family.ts";
import { putRight } from "./put-right.ts";
import type { Rule } from "./rule.ts";
import { specimen } from "./specimen.ts";
import { findOutside, placeOfWindow, severityOf, showOutside, standard } from "./windows.ts";

export const strengthOutside: Rule = {
  code: "strength-outside",
  severity: "information",
  entries: ["drink"],
  docs: {
    title: "Stronger or weaker than its family",
    why: "Guests judge by the family how strong a drink is. The strength meant here is that of the finished drink, with the water that the ice brings. Families are common practice: a house writes its own, a drink its own `strength:`.",
    bad: specimen(["15 ml gin", "160 ml soda water"], { family: "dry highball", method: "build over 100 g cubed ice" }),
    good: specimen(["45 ml gin", "135 ml soda water"], { family: "dry highball", method: "build over 100 g cubed ice" }),
  },
  *check(house, entry) {
    if (isCyclic(house, entry)) return;
    const assessment = assessDrink(house, entry);
    const family = familyOf(house, assessment.flat);
    const outside = findOutside(assessment.outcome, family.windows.get("strength"));
    // Nothing with alcohol in it yet: the drink is not written to its end.
    if (!outside || (outside.side === "below" && outside.figure.value === 0)) return;
    const above = outside.side === "above";
    yield {
      severity: severityOf(entry, [outside]),
      place: placeOfWindow(entry, outside.window),
      what: `This is ${above ? "stronger" : "weaker"} than ${standard(assessment, family)}: ${showOutside(outside)}.`,
      ...putRight(
        house,
        assessment,
        family,
        ["strength"],
        isStrongOrPlain,
        above
          ? "Pour less of what is strong, add water, or name the family that it is."
          : "Pour more of what is strong, less of the rest, or name the family that it is.",
      ),
    };
  },
};
