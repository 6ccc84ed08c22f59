/** The cautions that hold for some drinks and preps, the gravest first, each with the names that it holds for. */
import type { Entry } from "../../grammar/tree.ts";
import type { House } from "../house/house.ts";
import { cautions, cautionsOf, lineOf } from "../rules/cautions/all.ts";

export function cautionsIn(house: House, entries: readonly Entry[]): ReadonlyMap<string, readonly string[]> {
  const found = new Map<string, string[]>();
  for (const caution of cautions) {
    const line = lineOf(caution);
    const names = entries.flatMap((entry) => (entry.name && cautionsOf(house, entry).includes(line) ? [entry.name.text] : []));
    if (names.length > 0) found.set(line, names);
  }
  return found;
}
