/** A drink that is another one in the units it is printed in. */
import { bookOfChapter, printedBy } from "../../house/book/printed.ts";
import { roundingOf } from "../../house/book/rounding.ts";
import { styleOf } from "../../house/book/style.ts";
import { headPlace, placeOf } from "../places.ts";
import type { Rule } from "../rule.ts";
import { shaken, specimen } from "../specimen.ts";
import { chapter, fenced } from "./chapter.ts";

const spec = (lemon: string) => fenced(specimen(["60 ml gin", `${lemon} lemon juice`, "20 ml sugar syrup"], shaken));

export const roundedOff: Rule = {
  code: "rounded-off",
  severity: "warning",
  entries: ["text", "drink"],
  docs: {
    title: "A drink that rounding makes another",
    why: "The reader with an ounce jigger is to have the same drink. Ounces are rounded to what a bar can measure, `ounce step:` of the `book`; where all pours lean the same way nothing is lost, but an acid that is rounded up beside a sweet that is rounded down is another sour. A pouring ounce in the house, such as `ounce: 30 ml`, keeps every ratio. What is printed is held against the drink's windows, or where it has none against its own ratio, strength, sweetness and acid.",
    source: "practice, no source, for how far off is another drink.",
    bad: chapter(spec("25 ml")),
    good: chapter(spec("20 ml")),
  },
  *check(house, entry) {
    if (!bookOfChapter(house, entry)) return;
    const style = styleOf(house, house.scopeOf(entry));
    for (const { recipe, place, here } of printedBy(house, entry)) {
      const found = roundingOf(house, recipe, style);
      if ("fine" in found) continue;
      const { pour } = found.flip ?? {};
      const own = here && pour?.quantity && pour.entry === entry ? placeOf(pour.line, pour.quantity) : undefined;
      yield { place: own ?? place(headPlace(recipe)), what: found.message, todo: found.todo };
    }
  },
};
