/** A recipe that the text promises and that is not there. */
import type { Rule } from "../rule.ts";
import { specimen } from "../specimen.ts";
import { chapter, chapterFaults, fenced } from "./chapter.ts";

const spec = fenced(specimen(["50 ml gin", "100 ml soda water"]));

export const missingRecipe: Rule = {
  code: "missing-recipe",
  severity: "error",
  entries: ["text"],
  docs: {
    title: "A recipe that is not there",
    why: "The reader is sent to a drink that the author renamed or never wrote, or a sentence is to say the strength of one. The book cannot be built until it is known which.",
    bad: chapter(`Begin with a :see[Slipp Water].\n\n${spec}`),
    good: chapter(`Begin with a :see[Slip Water].\n\n${spec}`),
  },
  check: (house, entry) => chapterFaults(house, entry, "missing-recipe"),
};
