/** What was probably meant by a word or a name that is not known: the known ones a slip or two away. */
import { distance } from "fastest-levenshtein";
import type { House } from "./house.ts";
import { type NameClass, unaccented } from "./names.ts";
import type { Scope } from "./scope.ts";

/** The known words nearest to what was written, the nearest first, at most `most`; none where all are far. */
export function nearestOf(written: string, known: Iterable<string>, most = 3): string[] {
  const wanted = unaccented(written);
  const slips = slipsIn(wanted);
  if (slips === 0) return [];
  const found = new Map<string, number>();
  for (const word of known) {
    if (Math.abs(word.length - wanted.length) > slips || found.has(word)) continue;
    const away = distance(unaccented(word), wanted);
    if (away > 0 && away <= slips) found.set(word, away);
  }
  const sorted = [...found].sort(([one, near], [other, far]) => near - far || (one < other ? -1 : 1));
  return sorted.slice(0, most).map(([word]) => word);
}

/** The declared names nearest to what was written. What asks for them depends on every name of the class. */
export function nearestNames(house: House, scope: Scope, nameClass: NameClass, written: string, most = 3): string[] {
  return nearestOf(written, namesFrom(house, scope, nameClass), most);
}

/** `Did you mean “aged rum”?`, or what to do where nothing is near. */
export function askFor(near: readonly string[], otherwise: string): string {
  return near.length > 0 ? `Did you mean ${near.map((name) => `“${name}”`).join(" or ")}?` : otherwise;
}

function* namesFrom(house: House, scope: Scope, nameClass: NameClass): Generator<string> {
  for (const { name } of house.declarations(scope, nameClass)) yield name;
}

/** How many slips still mean the same word: one in a short word, more in a long one. */
function slipsIn(word: string): number {
  if (word.length < 3) return 0;
  return word.length < 6 ? 1 : word.length < 11 ? 2 : 3;
}
