/** The pours that an entry itself writes, in whatever line they stand. */
import type { Entry, Name, Pour } from "../../grammar/tree.ts";
import { pourOn } from "../house/entry.ts";
import type { House } from "../house/house.ts";
import { type Ingredient, ingredientOf } from "../house/ingredient.ts";

export interface WrittenPour {
  readonly line: number;
  readonly pour: Pour;
  readonly name: Name;
}

export interface NamedPour extends WrittenPour {
  readonly ingredient: Ingredient;
}

const written = new WeakMap<Entry, readonly WrittenPour[]>();

/** Pours, alternatives, and what a swap puts in: everything that goes into the drink by this entry's own lines. */
export function poursWritten(entry: Entry): readonly WrittenPour[] {
  let pours = written.get(entry);
  if (!pours) {
    pours = entry.lines.flatMap(({ content }, line) => {
      const pour = pourOn(content);
      return pour?.name ? [{ line, pour, name: pour.name }] : [];
    });
    written.set(entry, pours);
  }
  return pours;
}

/** The same with what each name means. */
export function poursNamed(house: House, entry: Entry): readonly NamedPour[] {
  return house.recall(entry, "poursNamed", () => {
    const scope = house.scopeOf(entry);
    return poursWritten(entry).map((one) => ({ ...one, ingredient: ingredientOf(house, scope, one.name) }));
  });
}
