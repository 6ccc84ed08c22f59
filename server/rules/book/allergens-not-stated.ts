/** A recipe of the book for which the page on allergens would be incomplete. */
import { bookOfChapter, printedBy } from "../../house/book/printed.ts";
import { showList } from "../../house/show.ts";
import { suitabilityOf } from "../../house/suitability.ts";
import { headPlace } from "../places.ts";
import type { Rule } from "../rule.ts";
import { specimen } from "../specimen.ts";
import { chapter, fenced } from "./chapter.ts";

const stock = (fields: string) => `stock harbour cordial\n  kind: syrup\n  sugar: 60 g/100 ml\n${fields}`;
const spec = (fields: string) => fenced(`${stock(fields)}\n${specimen(["50 ml gin", "20 ml harbour cordial", "100 ml soda water"])}`);

export const allergensNotStated: Rule = {
  code: "allergens-not-stated",
  severity: "warning",
  entries: ["text", "drink", "prep"],
  docs: {
    title: "A recipe of which not all allergens are stated",
    why: "A book cannot be asked at the bar. Its table of allergens says “not stated” of whatever nobody states, and one such word makes a reader mistrust the page. Silence is never “free from”.",
    bad: chapter(spec("")),
    good: chapter(spec("  allergens: none\n")),
  },
  *check(house, entry) {
    if (!bookOfChapter(house, entry)) return;
    for (const { recipe, place } of printedBy(house, entry)) {
      const { notStated } = suitabilityOf(house, recipe);
      if (notStated.length === 0) continue;
      yield {
        place: place(headPlace(recipe)),
        what: `Nobody states the allergens of ${showList(notStated)}, so the book's table of allergens has a gap at ${recipe.name!.text}.`,
        todo: "Give each its `allergens:`; `none` is an answer, once the label was read.",
      };
    }
  },
};
