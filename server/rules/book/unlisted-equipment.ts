/** A glass or a tool that a recipe needs and that the book does not tell the reader to have. */
import type { Entry } from "../../../grammar/tree.ts";
import { bookOfChapter, printedBy } from "../../house/book/printed.ts";
import { styleOf } from "../../house/book/style.ts";
import { toolsFor } from "../../house/book/tools.ts";
import type { FieldAt } from "../../house/entry.ts";
import type { House } from "../../house/house.ts";
import { stepsOf } from "../../house/method.ts";
import { fold } from "../../house/names.ts";
import { flatten } from "../../house/riff.ts";
import { headPlace, placeOf } from "../places.ts";
import type { Rule } from "../rule.ts";
import { shaken, specimen } from "../specimen.ts";
import { chapter, fenced } from "./chapter.ts";

const spec = fenced(specimen(["50 ml gin", "20 ml lemon juice", "20 ml sugar syrup"], shaken));

export const unlistedEquipment: Rule = {
  code: "unlisted-equipment",
  severity: "information",
  entries: ["text", "drink"],
  docs: {
    title: "A glass or a tool that the book does not list",
    why: "The page on equipment tells the reader what to buy; a recipe that then asks for one thing more is not made that evening. Where the `book` lists `glassware:`, each glass has to be there, where it lists `tools:`, what each step of a method is done with.",
    source: "practice, no source, for which step wants which tool.",
    bad: chapter(spec, ["tools: shaker"]),
    good: chapter(spec, ["tools: shaker; fine strainer"]),
  },
  *check(house, entry) {
    if (!bookOfChapter(house, entry)) return;
    const { glassware, tools } = styleOf(house, house.scopeOf(entry));
    if (glassware.length + tools.length === 0) return;
    for (const { recipe, place, here } of printedBy(house, entry)) {
      if (recipe.kind !== "drink") continue;
      const flat = flatten(house, recipe);
      const at = (field: FieldAt, span: { start: number; end: number }) =>
        here && field.entry === entry ? placeOf(field.line, span) : place(headPlace(recipe));
      const glass = flat.field("glass");
      const named = glass?.field.items[0]?.parts[0];
      if (glass && named && glassware.length > 0 && !isListed(glassware, glassNames(house, recipe, named.text))) {
        yield {
          place: at(glass, named),
          what: `${recipe.name!.text} is served in the ${named.text}, which the book's \`glassware:\` does not list.`,
          todo: "List it, or serve the drink in one that is.",
        };
      }
      const method = flat.field("method");
      const told = new Set<string>();
      for (const { item, technique } of method && tools.length > 0 ? stepsOf(house, method) : []) {
        const needed = technique && toolsFor(technique.id);
        if (!needed || told.has(needed[0]) || isListed(tools, needed)) continue;
        told.add(needed[0]);
        yield {
          place: at(method!, item),
          what: `${recipe.name!.text} needs a ${needed[0]} (${item.text}), which the book's \`tools:\` does not list.`,
          todo: "List it, or make the drink without.",
        };
      }
    }
  },
};

function glassNames(house: House, recipe: Entry, name: string): string[] {
  return [name, ...(house.find(house.scopeOf(recipe), "glass", name)?.entry.name?.text ?? [])].filter((one) => one.length > 1);
}

/** Whether a list has one of these, by itself or as a sort of it: a Boston shaker is a shaker. */
function isListed(list: readonly string[], names: readonly string[]): boolean {
  const folded = names.map(fold);
  return list.map(fold).some((one) => folded.some((name) => one === name || one.endsWith(` ${name}`)));
}
