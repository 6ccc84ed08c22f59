/** More or less water than the family, or the drink itself, asks for. */
import { isCyclic } from "../house/cycles.ts";
import { assessDrink } from "../house/drink.ts";
import { familyOf } from "../house/family.ts";
import type { Rule } from "./rule.ts";
import { shaken, specimen } from "./specimen.ts";
import { findOutside, placeOfWindow, severityOf, showOutside, standard } from "./windows.ts";

const stirred = (method: string) =>
  specimen(["60 ml gin", "10 ml dry vermouth"], { ...shaken, method: `${method}; strain`, dilution: "20 to 35 %" });

export const dilutionOutside: Rule = {
  code: "dilution-outside",
  severity: "information",
  entries: ["drink"],
  docs: {
    title: "More or less water than asked for",
    why: "Water is the ingredient that nobody pours: the same spec stirred twice as long is another drink. The built-in families ask for no dilution of their own, for their strength says as much; a house's family or a drink may, with `dilution:`. A little outside is information, far outside a warning, and nothing is said where the difference is smaller than twice the uncertainty.",
    bad: stirred("stir 90 s"),
    good: stirred("stir 20 s"),
  },
  *check(house, entry) {
    if (isCyclic(house, entry)) return;
    const assessment = assessDrink(house, entry);
    const family = familyOf(house, assessment.flat);
    const outside = findOutside(assessment.outcome, family.windows.get("dilution"));
    if (!outside || assessment.pours.length === 0) return;
    const above = outside.side === "above";
    yield {
      severity: severityOf(entry, [outside]),
      place: placeOfWindow(entry, outside.window),
      what: `This is ${above ? "more" : "less"} diluted than ${standard(assessment, family)}: ${showOutside(outside)}.`,
      todo: above
        ? "Give it less time on the ice, begin colder, or add less water."
        : "Give it more time on the ice, begin warmer, or add water, as with `pre-dilute 25 %`.",
    };
  },
};
