/** A value that the text is to say and that nobody knows, and attributes that a directive does not take. */
import type { Rule } from "../rule.ts";
import { specimen } from "../specimen.ts";
import { chapter, chapterFaults, fenced } from "./chapter.ts";

const spec = fenced(specimen(["50 ml gin", "100 ml soda water"]));

export const unsayableValue: Rule = {
  code: "unsayable-value",
  severity: "error",
  entries: ["text"],
  docs: {
    title: "A value that cannot be said",
    why: "A sentence with a hole in it is worse than none, and a number that nobody knows is never made up. An attribute that is not taken changes nothing, whatever the author meant by it.",
    bad: chapter(`It wants :pour[lemon juice]{in="Slip Water"} of lemon juice.\n\n${spec}`),
    good: chapter(`It wants :pour[soda water]{in="Slip Water"} of soda water.\n\n${spec}`),
  },
  check: (house, entry) => chapterFaults(house, entry, "unsayable-value"),
};
