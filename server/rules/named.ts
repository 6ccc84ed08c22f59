/** What a field names, and whether it is declared. */
import type { Entry } from "../../grammar/tree.ts";
import type { Place } from "../house/document.ts";
import type { FieldAt } from "../house/entry.ts";
import type { House } from "../house/house.ts";
import type { NameClass } from "../house/names.ts";
import { isNone } from "../house/values.ts";
import { placeOf } from "./places.ts";

export interface Named {
  readonly text: string;
  readonly place: Place;
  readonly known: boolean;
}

/** The name in a field, its whole value or what stands before the first comma; absent for an empty field and for `none`. */
export function namedIn(house: House, entry: Entry, at: FieldAt | undefined, nameClass: NameClass): Named | undefined {
  const whole = at?.field.value;
  if (!at || !whole || isNone(at.field)) return undefined;
  const scope = house.scopeOf(entry);
  const words = house.lookup(scope, nameClass, whole.text).length > 0 ? whole : (at.field.items[0]?.parts[0] ?? whole);
  return { text: words.text, place: placeOf(at.line, words), known: house.lookup(scope, nameClass, words.text).length > 0 };
}
