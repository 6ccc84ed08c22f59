/** What a line of a menu names: the longest reading that is a declared drink. */
import type { Entry, MenuLine, Name } from "../../grammar/tree.ts";
import type { House } from "../house/house.ts";
import type { Scope } from "../house/scope.ts";

export function menuEntryOf(house: House, scope: Scope, { whole, priced }: MenuLine): { entry: Entry; name: Name } | undefined {
  for (const name of [whole, priced?.name]) {
    const entry = name && house.lookup(scope, "drink", name.text)[0]?.entry;
    if (entry) return { entry, name };
  }
  return undefined;
}
