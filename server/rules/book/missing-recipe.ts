/** A recipe that the text promises and that is not there. */
import type { Directive } from "../../../grammar/tree.ts";
import { rowOf } from "../../house/book/directives.ts";
import { meaningOf } from "../../house/book/saying.ts";
import type { Place } from "../../house/document.ts";
import type { House } from "../../house/house.ts";
import { askFor, nearestOf } from "../../house/nearest.ts";
import type { Scope } from "../../house/scope.ts";
import type { Rule } from "../rule.ts";
import { specimen } from "../specimen.ts";
import { chapter, directivesIn, fenced, labelPlace } from "./chapter.ts";

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
  *check(house, entry) {
    const scope = house.scopeOf(entry);
    for (const { line, directive } of directivesIn(house, entry)) {
      const meant = rowOf(directive) && meaningOf(house, scope, directive);
      if (!meant || "row" in meant || meant.at === "name") continue;
      const place = meant.at === "in" ? withinPlace(line, directive) : labelPlace(line, directive);
      const written = entry.lines[line]!.text.slice(place.start, place.end);
      const near = isWritten(directive, meant.at) ? nearestOf(written, recipeNames(house, scope)) : [];
      yield {
        place,
        what: meant.because,
        todo: askFor(near, "Name a drink or a prep that is declared, or write its spec."),
        fixes: () => near.map((other) => ({ title: `Change to “${other}”`, safe: false, edits: [{ entry, ...place, text: other }] })),
      };
    }
  },
};

function withinPlace(line: number, directive: Directive): Place {
  const value = directive.attributes.find(({ name }) => name.text === "in")?.value;
  return value ? { line, start: value.start, end: value.end } : labelPlace(line, directive);
}

/** Whether a name stands there that another could take the place of. */
function isWritten({ name, label }: Directive, at: "label" | "in"): boolean {
  return at === "in" || (name.text !== "pour" && Boolean(label?.text.trim()));
}

function* recipeNames(house: House, scope: Scope): Generator<string> {
  for (const { name } of house.declarations(scope, "drink")) yield name;
  for (const { name, entry } of house.declarations(scope, "ingredient")) if (entry.kind === "prep") yield name;
}
