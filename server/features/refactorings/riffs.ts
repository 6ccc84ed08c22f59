/** The riffs of a drink, and what of it they change: a change of the drink must not turn them into others. */
import type { Entry, Pour } from "../../../grammar/tree.ts";
import { findFieldIn } from "../../house/entry.ts";
import type { House } from "../../house/house.ts";
import { type Ingredient, ingredientOf } from "../../house/ingredient.ts";
import { type FlatDrink, flatten, sameIngredient } from "../../house/riff.ts";
import type { Refusal } from "../rename.ts";

/** The riffs of a drink and theirs in turn, in all texts at hand. */
export function riffsOf(house: House, drink: Entry): Entry[] {
  return [...house.documents()].flatMap(({ tree }) =>
    tree.entries.filter((entry) => entry.kind === "drink" && findFieldIn(entry, "from") && descends(flatten(house, entry), drink)),
  );
}

function descends({ parent }: FlatDrink, drink: Entry): boolean {
  return parent !== undefined && (parent.entry === drink || descends(parent, drink));
}

/** Why these may not come or go as pours of the drink: a riff names one of them on a line of its own. Absent where none does. */
export function namedByRiff(house: House, drink: Entry, ingredients: readonly Ingredient[]): Refusal | undefined {
  for (const riff of riffsOf(house, drink)) {
    const scope = house.scopeOf(riff);
    for (const { name } of riff.lines.flatMap(({ content }) => changesOn(content))) {
      const meant = name && ingredientOf(house, scope, name);
      if (!meant || !ingredients.some((one) => sameIngredient({ ingredient: one }, meant))) continue;
      return {
        because: `“${riff.name?.text}” is a riff of this drink and names ${meant.resolution.text} on a line of its own, which would mean something else then. Flatten it into a drink of its own first.`,
      };
    }
  }
  return undefined;
}

/** What a line of a riff pours, takes out or puts in. */
function changesOn(content: Entry["lines"][number]["content"]): Pour[] {
  if (content.kind === "pour") return [content.pour];
  if (content.kind === "swap") return content.readings.flatMap((reading) => [reading.out, reading.in]);
  return content.kind === "without" && content.pour ? [content.pour] : [];
}
