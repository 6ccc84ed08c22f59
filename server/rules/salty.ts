/** Saltier than the window, or less salty. */
import { isSalty } from "../house/adjust.ts";
import { isCyclic } from "../house/cycles.ts";
import { assessDrink } from "../house/drink.ts";
import { familyOf } from "../house/family.ts";
import { putRight } from "./put-right.ts";
import type { Rule } from "./rule.ts";
import { specimen } from "./specimen.ts";
import { findOutside, placeOfWindow, severityOf, showOutside, standard } from "./windows.ts";

const highball = { family: "savoury", method: "build over 110 g cubed ice", glass: "collins" };

export const salty: Rule = {
  code: "salty",
  severity: "information",
  entries: ["drink"],
  docs: {
    title: "Too salty, or not salty enough",
    why: "A pinch more or less of salt is tasted at once where it is meant to be tasted at all. Only families and drinks that state a `salt:` window are looked at.",
    bad: specimen(["50 ml vodka", "120 ml tomato juice", "10 ml lemon juice", "4 g salt"], highball),
    good: specimen(["50 ml vodka", "120 ml tomato juice", "10 ml lemon juice", "1 g salt"], highball),
  },
  *check(house, entry) {
    if (isCyclic(house, entry)) return;
    const assessment = assessDrink(house, entry);
    const family = familyOf(house, assessment.flat);
    const outside = findOutside(assessment.outcome, family.windows.get("salt"));
    if (!outside) return;
    const above = outside.side === "above";
    yield {
      severity: severityOf(entry, [outside]),
      place: placeOfWindow(entry, outside.window),
      what: `This is ${above ? "too salty" : "not salty enough"} for ${standard(assessment, family)}: ${showOutside(outside)}.`,
      ...putRight(
        house,
        assessment,
        family,
        ["salt"],
        isSalty,
        above ? "Take salt out, or what brings it." : "Add salt a pinch at a time.",
      ),
    };
  },
};
