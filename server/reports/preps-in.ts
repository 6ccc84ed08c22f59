/** The preps that a drink is made with, through riffs, drinks poured in it and preps poured in preps. */
import type { Entry } from "../../grammar/tree.ts";
import { linesOf } from "../house/entry.ts";
import type { House } from "../house/house.ts";
import { ingredientOf } from "../house/ingredient.ts";
import { flatten } from "../house/riff.ts";

/** Each once, in the order in which the pours call for them. Preps of the built-in larder are left out. */
export function prepsIn(house: House, drink: Entry): Entry[] {
  const seen = new Set<Entry>();
  const visit = (entry: Entry) => {
    if (seen.has(entry) || house.isLarder(entry)) return;
    seen.add(entry);
    for (const poured of pouredIn(house, entry)) visit(poured);
  };
  visit(drink);
  return [...seen].filter((entry) => entry.kind === "prep");
}

function pouredIn(house: House, entry: Entry): Entry[] {
  if (entry.kind === "drink") return flatten(house, entry).pours.flatMap(({ ingredient }) => ingredient.resolution.found?.entry ?? []);
  if (entry.kind !== "prep") return [];
  const scope = house.scopeOf(entry);
  return [...linesOf(entry, "pour")].flatMap(
    ({ content }) => (content.pour.name && ingredientOf(house, scope, content.pour.name).resolution.found?.entry) || [],
  );
}
