/** Amounts without a unit that are hardly meant as counts: a sheet whose head says “ml” has none in its cells. */
import { read } from "../../grammar/read.ts";
import type { Pour } from "../../grammar/tree.ts";
import { pourOn } from "../house/entry.ts";
import { House } from "../house/house.ts";
import { ingredientOf } from "../house/ingredient.ts";
import { showPour } from "../house/show-pour.ts";
import { readLarder } from "../larder/larder.ts";
import type { Misread } from "./import-schema.ts";

/** More than a dozen of what nobody knows is rather an amount: practice, no source. */
const most = 12;

/** Of an imported text. What the larder knows in pieces, such as an egg, is counted. */
export function uncounted(text: string): Misread[] {
  const house = new House({ larder: readLarder() });
  const document = { uri: "file:///imported.drink", version: null, tree: read(text) };
  house.setDocument(document);
  return document.tree.entries.flatMap((entry) => {
    if (entry.kind !== "drink" && entry.kind !== "prep") return [];
    const scope = house.scopeOf(entry);
    return entry.lines.flatMap(({ content }): Misread[] => {
      const pour = pourOn(content);
      if (!pour?.name || !isBare(pour)) return [];
      const ingredient = ingredientOf(house, scope, pour.name);
      const { facts, resolution } = ingredient;
      const isCounted = resolution.found ? facts?.field("each") || facts?.field("yield") : pour.quantity!.value! <= most;
      if (isCounted) return [];
      const where = `${entry.kind} “${entry.name?.text ?? ""}”`;
      return [{ where, text: showPour(pour, ingredient), why: "It has no unit, so it reads as a count.", done }];
    });
  });
}

const done = "It is written all the same: put its unit behind the number.";

function isBare({ quantity }: Pour): boolean {
  return quantity?.value !== undefined && quantity.unit === undefined;
}
