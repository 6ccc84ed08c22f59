/**
 * Which drinks two houses that share most of their entries can differ in. What is one and the same entry in both,
 * and hangs on no name that means something else, need not be computed twice to know that it comes to the same.
 */
import type { Entry } from "../../../grammar/tree.ts";
import { changedKeys } from "../declarations.ts";
import { linesOf } from "../entry.ts";
import type { House } from "../house.ts";
import { menuEntryOf } from "../menu.ts";
import { effectsOf, hasEffect, prepareToCompare } from "./figures.ts";
import type { Houses, Pair } from "./pair.ts";

/** Whether a pair comes to the same for certain. Computes the later house's side of what is shared: that tells what it hangs on. */
export function untouchedIn(houses: Houses, pairs: readonly Pair[]): (pair: Pair) => boolean {
  const shared = pairs.flatMap(({ before, after }) => (after && before === after ? [after] : []));
  for (const entry of shared) prepareToCompare(houses.after, entry);
  const touched = shared.length > 0 ? touchedIn(houses) : undefined;
  return ({ before, after }) => before === after && after !== undefined && touched !== undefined && !touched.has(after);
}

/**
 * Computes, piece by piece, what a comparison will ask for, so that whoever wants one can take turns and stop.
 * The texts may change between two pieces: what is gone by then is passed over, as is what was computed before.
 */
export function* compareAhead(houses: Houses): Generator<{ readonly done: number; readonly all: number }> {
  const { before, after } = houses;
  yield* prepared(after, drinksIn(after));
  const touched = touchedIn(houses);
  yield* prepared(
    before,
    drinksIn(before).filter((entry) => !touched || touched.has(entry) || !after.findDocumentOf(entry)),
  );
}

function* prepared(house: House, drinks: readonly Entry[]): Generator<{ readonly done: number; readonly all: number }> {
  for (const [done, entry] of drinks.entries()) {
    const { computed } = house.memo;
    if (house.findDocumentOf(entry)) prepareToCompare(house, entry);
    if (house.memo.computed !== computed) yield { done, all: drinks.length };
  }
}

/**
 * The drinks that nobody touched and that come to something else, piece by piece as above: whether there are any is
 * asked of each alone, and not through what.
 */
export function* movedAhead({ before, after }: Houses): Generator<Entry | undefined> {
  const touched = touchedIn({ before, after });
  for (const entry of drinksIn(after)) {
    if (touched && !touched.has(entry)) continue;
    if (!after.findDocumentOf(entry) || !before.findDocumentOf(entry)) continue;
    yield hasEffect(effectsOf({ before, after }, entry, entry)) ? entry : undefined;
  }
}

function drinksIn(house: House): Entry[] {
  return [...house.documents()].flatMap(({ tree }) => tree.entries.filter(({ kind, name }) => kind === "drink" && name?.text));
}

/** The entries that may come to something else in the other house; absent where that may be any. */
function touchedIn({ before, after }: Houses): ReadonlySet<Entry> | undefined {
  const [gone, fresh] = [onlyIn(before, after), onlyIn(after, before)];
  const isOf = (kind: Entry["kind"]) => (entry: Entry) => entry.kind === kind;
  // A house's own rules hold for all that is in it, whatever that looks up.
  if ([...gone, ...fresh].some(isOf("house"))) return undefined;
  return new Set([
    ...after.hangingOn(changedKeys(gone, fresh)),
    ...fresh,
    // What a drink is sold for hangs on menus that the drink itself knows nothing of.
    ...gone.filter(isOf("menu")).flatMap((menu) => listedOn(before, menu)),
    ...fresh.filter(isOf("menu")).flatMap((menu) => listedOn(after, menu)),
  ]);
}

function onlyIn(house: House, other: House): Entry[] {
  return [...house.documents()].flatMap(({ uri, tree }) => {
    const there = other.document(uri)?.tree;
    if (there === tree) return [];
    const known = new Set(there?.entries);
    return tree.entries.filter((entry) => !known.has(entry));
  });
}

function listedOn(house: House, menu: Entry): Entry[] {
  const scope = house.scopeOf(menu);
  return [...linesOf(menu, "menu")].flatMap(({ content }) => menuEntryOf(house, scope, content)?.entry ?? []);
}
