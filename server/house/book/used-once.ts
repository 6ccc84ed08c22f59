/**
 * The bottles that a reader has to buy for a single recipe. A look over the whole book: as a finding it would have to be
 * looked for again in every chapter with every key that is typed in one.
 */
import type { StockKind } from "../../../grammar/fields.ts";
import type { Entry } from "../../../grammar/tree.ts";
import type { House } from "../house.ts";
import { poursOf } from "./pours.ts";

export interface UsedOnce {
  /** As the recipe calls it. */
  readonly name: string;
  readonly recipe: Entry;
}

/** What is bought by the bottle and stays on the shelf with the rest of it in. */
const bottled: ReadonlySet<StockKind | undefined> = new Set([
  "spirit",
  "liqueur",
  "bitters",
  "fortified wine",
  "vermouth",
  "bitter aperitif",
]);

/** The bottles that only one of these recipes calls for, in their order; what may be taken instead is none of them. */
export function usedOnce(house: House, recipes: readonly Entry[]): UsedOnce[] {
  const users = new Map<Entry, UsedOnce & { count: number }>();
  for (const recipe of recipes) {
    const called = new Map(
      poursOf(house, recipe).flatMap(({ ingredient: { resolution, facts } }) =>
        facts && bottled.has(facts.kind) ? [[resolution.found!.entry, resolution.text]] : [],
      ),
    );
    for (const [stock, name] of called) {
      const there = users.get(stock);
      if (there) there.count++;
      else users.set(stock, { name, recipe, count: 1 });
    }
  }
  return [...users.values()].filter(({ count }) => count === 1).map(({ name, recipe }) => ({ name, recipe }));
}
