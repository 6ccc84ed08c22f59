/** A recipe of the book without something that the book's style demands of all. */
import type { Entry } from "../../../grammar/tree.ts";
import { bookOfChapter, printedBy } from "../../house/book/printed.ts";
import { styleOf } from "../../house/book/style.ts";
import { findFieldIn } from "../../house/entry.ts";
import type { House } from "../../house/house.ts";
import { isSizeless } from "../../house/prep.ts";
import { proseOf } from "../../house/prose.ts";
import { flatten } from "../../house/riff.ts";
import { showList } from "../../house/show.ts";
import { headPlace } from "../places.ts";
import type { Rule } from "../rule.ts";
import { specimen } from "../specimen.ts";
import { chapter, fenced } from "./chapter.ts";

const pours = ["50 ml gin", "100 ml soda water"];
const fields = ["recipes have: headnote, glass"];

export const recipeLacks: Rule = {
  code: "recipe-lacks",
  severity: "warning",
  entries: ["text", "drink", "prep"],
  docs: {
    title: "A recipe lacks what the book demands of each",
    why: "A publisher takes a manuscript in which every recipe has the same parts; the one without a headnote or a credit comes back. `recipes have:` of the `book` says what none may lack. Of a prep a headnote, a yield, a credit and a method are asked; `none` is an answer.",
    bad: chapter(fenced(specimen(pours)), fields),
    good: chapter(fenced(specimen(pours, { headnote: "Made on the slip, in any weather." })), fields),
  },
  *check(house, entry) {
    if (!bookOfChapter(house, entry)) return;
    const { required } = styleOf(house, house.scopeOf(entry));
    if (required.length === 0) return;
    for (const { recipe, place } of printedBy(house, entry)) {
      const lacking = required.filter((part) => parts[part]?.(house, recipe) === false);
      if (lacking.length === 0) continue;
      const fields = lacking.flatMap((part) => (recipe === entry ? (fieldFor[part] ?? part) : []));
      yield {
        place: place(headPlace(recipe)),
        what: `${recipe.name!.text} has no ${showList(lacking)}, which every recipe of the book is to have.`,
        todo: `Add ${showList(lacking.map((part) => `\`${fieldFor[part] ?? part}:\``))}, or take it out of \`recipes have:\`.`,
        fixes: () =>
          fields
            .filter((field) => answerable.has(field) && lacking.length === 1)
            .map((field) => {
              const end = recipe.lines[0]!.text.length;
              return {
                title: `Add “${field}: none”`,
                safe: false,
                edits: [{ entry: recipe, line: 0, start: end, end, text: `\n  ${field}: none` }],
              };
            }),
      };
    }
  },
};

/** The field that says a part, where it goes by another name. */
const fieldFor: Readonly<Record<string, string>> = { yield: "serves" };
/** Where `none` is an answer that a reader can do something with. */
const answerable: ReadonlySet<string> = new Set(["glass", "garnish"]);

type Has = (house: House, recipe: Entry) => boolean;

/** Whether a recipe has a part; of what is not asked of it, it does. One row for each word of `recipes have:`. */
const parts: Readonly<Record<string, Has>> = {
  headnote: (_, recipe) => proseOf(recipe, "headnote") !== "",
  glass: ofDrinks("glass"),
  garnish: ofDrinks("garnish"),
  family: ofDrinks("family"),
  credit: (_, recipe) => findFieldIn(recipe, "credit")?.field.value !== undefined,
  method: (house, recipe) =>
    (recipe.kind === "drink" ? flatten(house, recipe).statedField("method") : findFieldIn(recipe, "method")) !== undefined ||
    proseOf(recipe, "steps") !== "",
  // A drink is for one where it does not say; a prep says how much of it there is, or its pours do.
  yield: (house, recipe) => recipe.kind === "drink" || !isSizeless(house, recipe),
};

function ofDrinks(field: string): Has {
  return (house, recipe) => recipe.kind !== "drink" || flatten(house, recipe).statedField(field)?.field.value !== undefined;
}
