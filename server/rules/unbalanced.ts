/** Sweet against sour, held against the family: one finding, and the nearest amount that puts it right. */
import { isTasted } from "../house/adjust.ts";
import { isCyclic } from "../house/cycles.ts";
import { type Assessment, assessDrink } from "../house/drink.ts";
import { type Family, familyOf, type WindowField } from "../house/family.ts";
import { putRight } from "./put-right.ts";
import type { Rule } from "./rule.ts";
import { findOutside, type Outside, placeOfWindow, severityOf, showOutside, standard } from "./windows.ts";

const tasted = ["ratio", "sugar", "acid"] as const satisfies readonly WindowField[];

export const unbalanced: Rule = {
  code: "unbalanced",
  severity: "information",
  entries: ["drink"],
  docs: {
    title: "Too sweet or too sour",
    why: "Sugar and acid hide each other, so neither can be judged alone: what is weighed is the finished drink, with the water that the ice brings. The family's windows are common practice, not law; a house writes a family of its own, a drink its own `ratio:`, `sugar:` or `acid:`. A little outside is information, far outside a warning, and nothing is said where the difference is smaller than twice the uncertainty.",
    bad: "drink Slip Water\n  family: sour\n  glass: double rocks\n  method: shake 12 s; fine strain\n  garnish: none\n  60 ml rum\n  22.5 ml lime juice\n  45 ml plain syrup\n",
    good: "drink Slip Water\n  family: sour\n  glass: double rocks\n  method: shake 12 s; fine strain\n  garnish: none\n  60 ml rum\n  22.5 ml lime juice\n  22.5 ml plain syrup\n",
  },
  *check(house, entry) {
    if (isCyclic(house, entry)) return;
    const assessment = assessDrink(house, entry);
    const family = familyOf(house, assessment.flat);
    if (isUnfinished(assessment, family)) return;
    const outsides = tasted.map((field) => findOutside(assessment.outcome, family.windows.get(field))).filter((one) => one !== undefined);
    if (outsides.length === 0) return;
    yield {
      severity: severityOf(entry, outsides),
      place: placeOfWindow(entry, outsides[0]!.window),
      what: `This is ${verdict(outsides)} for ${standard(assessment, family)}: ${factsOf(outsides).map(showOutside).join("; ")}.`,
      ...putRight(house, assessment, family, tasted, isTasted, "Change the sweet or the sour, or the window that it is held against."),
    };
  },
};

/** Nothing sweet and nothing sour is poured yet into what is to be both. */
function isUnfinished({ outcome }: Assessment, { windows }: Family): boolean {
  return windows.has("ratio") && (outcome.value("sweetnessGPer100Ml") ?? 1) < 0.5 && (outcome.value("acidGPer100Ml") ?? 1) < 0.15;
}

/** Which way the drink leans; a ratio out of its window is laid on the side that is out of its own. */
function verdict(outsides: readonly Outside[]): string {
  const side = (field: WindowField) => outsides.find(({ window }) => window.field === field)?.side;
  const [ratio, sugar, acid] = tasted.map(side);
  if (sugar && sugar === acid) return sugar === "above" ? "both too sweet and too sour" : "both too dry and too flat";
  if (ratio === "above") return acid === "below" && !sugar ? "not sour enough" : "too sweet";
  if (ratio === "below") return "too sour";
  if (sugar) return sugar === "above" ? "too sweet" : "not sweet enough";
  return acid === "above" ? "too sour" : "not sour enough";
}

/** Two figures say it; a third only repeats it. */
function factsOf(outsides: readonly Outside[]): readonly Outside[] {
  return outsides.slice(0, 2);
}
