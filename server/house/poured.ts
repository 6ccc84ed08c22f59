/** Everything that an entry calls for as an ingredient, alternatives too. */
import type { Entry, Name } from "../../grammar/tree.ts";
import type { Place } from "./document.ts";
import type { House } from "./house.ts";
import { type Ingredient, ingredientOf } from "./ingredient.ts";
import { flatten } from "./riff.ts";

export interface Poured {
  /** Where the line stands: a riff's inherited pours stand in its parent. */
  readonly entry: Entry;
  /** The name on that line. */
  readonly place: Place;
  readonly name: Name;
  readonly ingredient: Ingredient;
}

/** The pours of a drink with what it inherits, or of a prep, each followed by its alternatives. */
export function pouredIn(house: House, entry: Entry): readonly Poured[] {
  return house.recall(entry, "poured", () => {
    if (entry.kind === "drink") {
      return flatten(house, entry)
        .pours.flatMap((pour) => [pour, ...pour.alternatives])
        .map((pour) => poured(pour.entry, pour.line, pour.name, pour.ingredient));
    }
    const scope = house.scopeOf(entry);
    return entry.lines.flatMap(({ content }, line): Poured[] => {
      const name = content.kind === "pour" || content.kind === "or" ? content.pour?.name : undefined;
      return name ? [poured(entry, line, name, ingredientOf(house, scope, name))] : [];
    });
  });
}

function poured(entry: Entry, line: number, name: Name, ingredient: Ingredient): Poured {
  const { start, end } = ingredient.resolution;
  return { entry, place: { line, start, end }, name, ingredient };
}
