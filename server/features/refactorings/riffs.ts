/** The riffs of a drink, and what of it they change: a change of the drink must not turn them into others. */
import type { Entry, Pour, Tree } from "../../../grammar/tree.ts";
import { namesOf } from "../../house/declarations.ts";
import { findFieldIn } from "../../house/entry.ts";
import type { House } from "../../house/house.ts";
import { type Ingredient, ingredientOf } from "../../house/ingredient.ts";
import { fold } from "../../house/names.ts";
import { flatten, sameIngredient } from "../../house/riff.ts";
import type { Refusal } from "../rename.ts";

/** The riffs of a drink and theirs in turn, in all texts at hand. Quick: no drink is looked into that is not called one. */
export function riffsOf(house: House, drink: Entry): Entry[] {
  const found = new Set([drink]);
  for (const one of found) {
    const names = namesOf(one).map(fold);
    for (const { tree } of house.documents()) {
      const riffs = riffsIn(tree);
      for (const riff of riffs.size > 0 ? names.flatMap((name) => riffs.get(name) ?? []) : [])
        if (flatten(house, riff).parent?.entry === one) found.add(riff);
    }
  }
  found.delete(drink);
  return [...found];
}

const known = new WeakMap<Tree, ReadonlyMap<string, readonly Entry[]>>();

/** The drinks of a text that have a `from:`, by what that says, folded. */
function riffsIn(tree: Tree): ReadonlyMap<string, readonly Entry[]> {
  const there = known.get(tree);
  if (there) return there;
  const riffs = new Map<string, Entry[]>();
  for (const entry of tree.entries) {
    const from = entry.kind === "drink" && findFieldIn(entry, "from")?.field.value?.text;
    if (from) riffs.set(fold(from), [...(riffs.get(fold(from)) ?? []), entry]);
  }
  known.set(tree, riffs);
  return riffs;
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
