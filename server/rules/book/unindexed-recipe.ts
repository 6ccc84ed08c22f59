/** A recipe that an index of the book cannot hold. */

import { bookOfChapter, printedBy } from "../../house/book/printed.ts";
import { type IndexKind, styleOf } from "../../house/book/style.ts";
import { assessDrink } from "../../house/drink.ts";
import { findFieldIn } from "../../house/entry.ts";
import { flatten } from "../../house/riff.ts";
import { showList } from "../../house/show.ts";
import { headPlace } from "../places.ts";
import type { Rule } from "../rule.ts";
import { shaken, specimen } from "../specimen.ts";
import { chapter, fenced } from "./chapter.ts";

const pours = ["60 ml gin", "22.5 ml lemon juice", "22.5 ml sugar syrup"];

export const unindexedRecipe: Rule = {
  code: "unindexed-recipe",
  severity: "information",
  entries: ["text", "drink"],
  docs: {
    title: "A recipe that an index leaves out",
    why: "A reader who looks for what to do with a bottle goes to the index, and a drink that states no family, or whose strength nobody knows, is in none that goes by it. Only the indexes that `indexes:` of the `book` names are looked at. That a drink without a spirit is not in the index by spirit is as it should be.",
    bad: chapter(fenced(specimen(pours, shaken)), ["indexes: family"]),
    good: chapter(fenced(specimen(pours, { ...shaken, family: "sour" })), ["indexes: family"]),
  },
  *check(house, entry) {
    const book = bookOfChapter(house, entry);
    if (!book || !findFieldIn(book, "indexes")) return;
    const style = styleOf(house, house.scopeOf(entry));
    for (const { recipe, place } of printedBy(house, entry)) {
      if (recipe.kind !== "drink") continue;
      const known: Partial<Record<IndexKind, boolean>> = {
        family: flatten(house, recipe).field("family") !== undefined,
        strength: assessDrink(house, recipe).outcome.value("strengthPct") !== null,
      };
      const left = style.indexes.filter((kind) => known[kind] === false);
      if (left.length === 0) continue;
      yield {
        place: place(headPlace(recipe)),
        what: `The ${showList(left)} of ${recipe.name!.text} is not known, so the index by ${showList(left)} leaves it out.`,
        todo: left.includes("family") ? "Give it its `family:`, or leave it out knowingly." : "State what is missing in what it pours.",
      };
    }
  },
};
