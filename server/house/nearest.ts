/** What was probably meant by a word or a name that is not known: the known ones a slip or two away. */
import { distance } from "fastest-levenshtein";
import type { House } from "./house.ts";
import { type NameClass, unaccented } from "./names.ts";
import type { Scope } from "./scope.ts";

/** The known words nearest to what was written: all that are equally near, at most `most`; none where all are far. */
export function nearestOf(written: string, known: Iterable<string>, most = 3): string[] {
  const wanted = unaccented(written);
  let slips = slipsIn(wanted);
  let found = new Set<string>();
  for (const word of known) {
    if (slips === 0 || Math.abs(word.length - wanted.length) > slips) continue;
    const away = slipsBetween(unaccented(word), wanted);
    if (away === 0 || away > slips) continue;
    if (away < slips) [slips, found] = [away, new Set()];
    found.add(word);
  }
  return [...found].sort().slice(0, most);
}

/** The declared names nearest to what was written. What asks for them depends on every name of the class. */
export function nearestNames(house: House, scope: Scope, nameClass: NameClass, written: string, most = 3): string[] {
  return nearestOf(written, namesFrom(house, scope, nameClass), most);
}

/** `Did you mean “aged rum”?`, or what to do where nothing is near. */
export function askFor(near: readonly string[], otherwise: string): string {
  return near.length > 0 ? `Did you mean ${near.map((name) => `“${name}”`).join(" or ")}?` : otherwise;
}

/** Letters missing, doubled, or wrong; two neighbours that changed places are one slip. */
export function slipsBetween(one: string, other: string): number {
  return isTransposed(one, other) ? 1 : distance(one, other);
}

function isTransposed(one: string, other: string): boolean {
  if (one.length !== other.length) return false;
  let at = 0;
  while (at < one.length && one[at] === other[at]) at++;
  return one[at] === other[at + 1] && one[at + 1] === other[at] && one.slice(at + 2) === other.slice(at + 2) && at + 1 < one.length;
}

function* namesFrom(house: House, scope: Scope, nameClass: NameClass): Generator<string> {
  for (const { name } of house.declarations(scope, nameClass)) yield name;
}

/** How many slips still mean the same word: one in a short word, more in a long one. */
function slipsIn(word: string): number {
  if (word.length < 3) return 0;
  return word.length < 6 ? 1 : word.length < 11 ? 2 : 3;
}
