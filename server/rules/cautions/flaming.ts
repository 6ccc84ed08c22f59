/** An open flame at the bar. */
import { shaken, specimen } from "../specimen.ts";
import { caution } from "./caution.ts";
import { anyOf, causesOf, mentionsAnywhere } from "./words.ts";

const words = anyOf([
  "flamed",
  "flaming",
  "flamb(?:é|e)(?:ed|es)?",
  "ignite[sd]?",
  "set (?:alight|on fire)",
  "(?:blow)?torch(?:ed)?",
  "(?<=^|[.;] |and |then )flame",
]);

export const flaming = caution({
  code: "flaming",
  severity: "information",
  entries: ["drink", "prep"],
  advice: "Small measures from a small bottle, a wet cloth at hand, nothing carried while it burns; check your local fire code.",
  docs: {
    title: "Open flame",
    why: "Strong spirit flashes back to its bottle, burns on sleeves and hair, and a heated glass breaks. Fire codes say who may do it, where and how, and many places want a permit for it.",
    source:
      "International Fire Code, section on flaming food and beverage preparation (308.6 in the edition of 2009, read; 308.1.8 later, from memory).",
    bad: specimen(["60 ml rum", "22.5 ml lime juice", "15 ml plain syrup"], { ...shaken, garnish: "orange zest, flamed" }),
    good: specimen(["60 ml rum", "22.5 ml lime juice", "15 ml plain syrup"], { ...shaken, garnish: "orange zest, expressed" }),
  },
  *causes(house, entry) {
    const here = [...mentionsAnywhere(house, entry, words)].filter(({ through }) => !through);
    yield* causesOf(here, ({ word }) => `“${word}” means an open flame.`);
  },
});
