/** Everything that an entry calls for as an ingredient, alternatives too. */
import type { Entry, Name, Pour } from "../../grammar/tree.ts";
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
  /** What stands before the name; an alternative without an amount has that of the pour it is for. */
  readonly amount: Pick<Pour, "lead" | "quantity">;
}

/** The pours of a drink with what it inherits, or of a prep, each followed by its alternatives. */
export function pouredIn(house: House, entry: Entry): readonly Poured[] {
  return house.recall(entry, "poured", () => {
    if (entry.kind === "drink") {
      return flatten(house, entry)
        .pours.flatMap((pour) => [pour, ...pour.alternatives])
        .map((pour) => poured(pour.entry, pour.line, pour.name, pour.ingredient, pour));
    }
    const scope = house.scopeOf(entry);
    return entry.lines.flatMap(({ content }, line): Poured[] => {
      const pour = content.kind === "pour" || content.kind === "or" ? content.pour : undefined;
      return pour?.name ? [poured(entry, line, pour.name, ingredientOf(house, scope, pour.name), pour)] : [];
    });
  });
}

function poured(entry: Entry, line: number, name: Name, ingredient: Ingredient, { lead, quantity }: Poured["amount"]): Poured {
  const { start, end } = ingredient.resolution;
  return { entry, place: { line, start, end }, name, ingredient, amount: { ...(lead && { lead }), ...(quantity && { quantity }) } };
}
