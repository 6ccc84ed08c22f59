/** A recipe that exists and that the book leads to, but that no chapter gives. */
import type { Entry } from "../../../grammar/tree.ts";
import { leadingNowhere } from "../../house/book/faults.ts";
import { bookOfChapter, isPrinted, printedBy } from "../../house/book/printed.ts";
import type { House } from "../../house/house.ts";
import { pouredIn } from "../../house/poured.ts";
import { headPlace } from "../places.ts";
import type { Found, Rule } from "../rule.ts";
import { specimen } from "../specimen.ts";
import { chapter, fenced } from "./chapter.ts";

const spec = fenced(specimen(["50 ml gin", "20 ml harbour syrup", "100 ml soda water"]));
const syrup = "prep harbour syrup\n  parts by: weight\n  1 part white sugar\n  1 part water\n";
const book = (given: string) => `=== preps.drink\n${syrup}${chapter(given + spec)}`;

export const unprintedRecipe: Rule = {
  code: "unprinted-recipe",
  severity: "warning",
  entries: ["text", "drink", "prep"],
  docs: {
    title: "A recipe that no chapter prints",
    why: "A reader who is sent to a drink has to find it, and what is made in this house, a syrup that a recipe pours, is sold nowhere. A drink that no chapter prints is not in the book. What the printed recipes pour is put behind the last chapter by the build, where nobody meant it to stand; so much is only for information. A recipe is printed by its spec in a chapter, or by `::spec[…]`.",
    bad: book(""),
    good: book("::spec[harbour syrup]\n\n"),
  },
  *check(house, entry) {
    if (!bookOfChapter(house, entry)) return;
    const scope = house.scopeOf(entry);
    for (const { recipe, ...fault } of leadingNowhere(house, entry, (one) => isPrinted(house, scope, one))) {
      const what = `No chapter prints “${recipe.name!.text}”, so this leads to the end of the book, or nowhere.`;
      // The build puts a prep that a recipe pours behind the last chapter.
      yield recipe.kind === "prep" ? { ...fault, severity: "information", what } : fault;
    }
    yield* pouredUnprinted(house, entry);
  },
};

function* pouredUnprinted(house: House, entry: Entry): Generator<Found> {
  const scope = house.scopeOf(entry);
  for (const { recipe, here, place } of printedBy(house, entry)) {
    const told = new Set<Entry>();
    for (const { entry: writtenIn, place: written, ingredient } of pouredIn(house, recipe)) {
      const part = ingredient.resolution.found?.entry;
      if (!part || part.kind === "stock" || part === recipe || told.has(part) || house.isLarder(part)) continue;
      told.add(part);
      if (isPrinted(house, scope, part)) continue;
      const own = here && writtenIn === entry;
      yield {
        place: own ? written : place(headPlace(entry)),
        severity: "information",
        what: `${own ? "This" : recipe.name!.text} pours “${part.name!.text}”, which no chapter prints: its recipe ends up behind the last one.`,
        todo: `Print it where it belongs with \`::spec[${part.name!.text}]\`, or put its spec in a chapter.`,
      };
    }
  }
}
