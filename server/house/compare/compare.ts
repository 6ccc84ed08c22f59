/**
 * Two houses beside each other, as drinks and not as lines: what was added, taken out, renamed and changed,
 * what that does, and which drinks and menus moved though nobody touched them.
 */
import type { Entry } from "../../../grammar/tree.ts";
import type { House } from "../house.ts";
import { fold, type NameClass } from "../names.ts";
import { pouredIn } from "../poured.ts";
import { flatten } from "../riff.ts";
import { compareFields, type FieldCompared } from "./fields.ts";
import { type Effects, effectsOf, type Gained, hasEffect } from "./figures.ts";
import { compareMenus, type MenuCompared } from "./menus.ts";
import { type Houses, type Pair, pairsOf } from "./pair.ts";
import { comparePours, type PoursCompared } from "./pours.ts";
import { untouchedIn } from "./touched.ts";
import { saySame, standAlike } from "./written.ts";

/** Moved: what it says is the same, what it comes to is not. Rewritten: nothing but blanks and comments is another. */
export type How = "added" | "removed" | "renamed" | "changed" | "moved" | "rewritten";

export interface DrinkCompared extends Pair {
  readonly how: How;
  readonly name: string;
  /** What it was called, where that is another name. */
  readonly oldName?: string;
  readonly pours?: PoursCompared;
  readonly fields: readonly FieldCompared[];
  /** Absent for what was added or removed. */
  readonly effects?: Effects;
  /** What has to be made for it that had not to be before. */
  readonly preps: Gained<string>;
  /** The changed things that it is made with, and the changed drinks that it is a riff of or pours. */
  readonly because: readonly { readonly kind: Entry["kind"]; readonly name: string }[];
}

/** A stock, a prep, a glass, an ice, a family or a house. */
export interface ThingCompared extends Pair {
  readonly how: "added" | "removed" | "changed";
  readonly name: string;
  readonly kind: Entry["kind"];
  readonly fields: readonly FieldCompared[];
}

export interface Comparison {
  readonly drinks: readonly DrinkCompared[];
  readonly things: readonly ThingCompared[];
  readonly menus: readonly MenuCompared[];
}

const thingKinds = ["house", "stock", "prep", "glass", "ice", "family"] as const;

/** `progress` is told before each drink. */
export function compare(houses: Houses, progress: (done: number, all: number) => void = () => undefined): Comparison {
  const things = thingKinds.flatMap((kind) => pairsOf(houses, kind).flatMap((pair) => thing(pair, kind) ?? []));
  const byKey = new Map(things.map((one) => [keyOf(one.kind, one.name), one]));
  const pairs = pairsOf(houses, "drink");
  const isUntouched = untouchedIn(houses, pairs);
  const changed = new Set(pairs.flatMap(({ before, after }) => (before && after && saySame(before, after) ? [] : [before, after])));
  const drinks = pairs.flatMap((pair, done) => {
    progress(done, pairs.length);
    return isUntouched(pair) ? [] : (drink(houses, pair, byKey, changed) ?? []);
  });
  return { drinks, things, menus: compareMenus(houses) };
}

function thing({ before, after }: Pair, kind: Entry["kind"]): ThingCompared | undefined {
  const name = (after ?? before)!.name!.text;
  if (!before || !after) return { before, after, kind, name, how: after ? "added" : "removed", fields: [] };
  return saySame(before, after) ? undefined : { before, after, kind, name, how: "changed", fields: compareFields(before, after) };
}

function drink(
  houses: Houses,
  { before, after }: Pair,
  things: ReadonlyMap<string, ThingCompared>,
  changed: ReadonlySet<Entry | undefined>,
): DrinkCompared | undefined {
  const entry = (after ?? before)!;
  const name = entry.name!.text;
  if (!before || !after) {
    const made = madeFor(after ? houses.after : houses.before, entry);
    const preps = after ? { gained: made, lost: [] } : { gained: [], lost: made };
    return { before, after, name, how: after ? "added" : "removed", fields: [], preps, because: [] };
  }
  const isSame = !changed.has(after);
  const [flat, later] = [flatten(houses.before, before), flatten(houses.after, after)];
  const valueIn = (of: Entry, field: string) => (of === before ? flat : later).statedField(field)?.field.value?.text;
  const pours = comparePours(flat, later);
  const fields = compareFields(before, after, valueIn);
  const effects = effectsOf(houses, before, after);
  const isRenamed = fold(before.name!.text) !== fold(name);
  // Of an untouched drink only what it comes to counts: what its parent pours otherwise is told of the parent.
  const differs = hasEffect(effects) || (!isSame && (pours.changes.length > 0 || pours.reordered || fields.length > 0));
  if (!differs && !isRenamed) return standAlike(before, after) ? undefined : rewritten({ before, after }, name);
  const [old, now] = [madeFor(houses.before, before), madeFor(houses.after, after)];
  return {
    before,
    after,
    name,
    ...(isRenamed && { oldName: before.name!.text }),
    how: isRenamed ? "renamed" : isSame ? "moved" : "changed",
    pours,
    fields,
    effects,
    preps: { gained: now.filter((one) => !old.includes(one)), lost: old.filter((one) => !now.includes(one)) },
    because: [...changedDrinks(houses.after, after, changed), ...causesOf(houses, before, after, things)],
  };
}

function rewritten(pair: Pair, name: string): DrinkCompared {
  return { ...pair, name, how: "rewritten", fields: [], preps: { gained: [], lost: [] }, because: [] };
}

const keyOf = (kind: Entry["kind"], name: string) => `${kind === "prep" ? "stock" : kind}|${fold(name)}`;

/** The drinks above it, and in it, that somebody changed. */
function changedDrinks(house: House, entry: Entry, changed: ReadonlySet<Entry | undefined>): { kind: Entry["kind"]; name: string }[] {
  const above: Entry[] = [];
  for (let at = flatten(house, entry).parent; at; at = at.parent) above.push(at.entry);
  const inside = chainOf(house, entry).filter(({ kind }) => kind === "drink");
  return [...above, ...inside].flatMap((one) => (changed.has(one) && one.name ? [{ kind: one.kind, name: one.name.text }] : []));
}

/** The changed things that either drink is made with; the house's own rules where nothing nearer changed. */
function causesOf({ before, after }: Houses, old: Entry, now: Entry, things: ReadonlyMap<string, ThingCompared>): ThingCompared[] {
  const names = new Set([...usedIn(before, old), ...usedIn(after, now)]);
  const near = [...names].flatMap((key) => things.get(key) ?? []);
  const houses = [...things.values()].filter(({ kind }) => kind === "house");
  return near.length > 0 ? [...new Set(near)] : houses;
}

/** Everything that a drink is made with and held against, down to what is bought. */
function usedIn(house: House, entry: Entry): Set<string> {
  const keys = new Set<string>();
  for (const one of [entry, ...chainOf(house, entry)]) for (const made of partsOf(house, one)) keys.add(made);
  const flat = flatten(house, entry);
  for (const kind of ["glass", "ice", "family"] as const) {
    const text = flat.field(kind)?.field.value?.text;
    const found = text && house.lookup(house.scopeOf(entry), kind as NameClass, text.split(",")[0]!.trim())[0];
    if (found) keys.add(keyOf(kind, found.entry.name!.text));
  }
  return keys;
}

function partsOf(house: House, entry: Entry): string[] {
  return pouredIn(house, entry).flatMap(({ ingredient: { resolution } }) => {
    const found = resolution.found?.entry;
    return found?.name ? [keyOf(found.kind, found.name.text)] : [keyOf("stock", resolution.text)];
  });
}

/** The preps and drinks inside an entry, whatever the depth, each once. */
function chainOf(house: House, entry: Entry, seen = new Set<Entry>([entry])): Entry[] {
  for (const { ingredient } of pouredIn(house, entry)) {
    const found = ingredient.resolution.found?.entry;
    if (!found || seen.has(found) || (found.kind !== "prep" && found.kind !== "drink")) continue;
    seen.add(found);
    chainOf(house, found, seen);
  }
  return [...seen].filter((one) => one !== entry);
}

function madeFor(house: House, entry: Entry): string[] {
  return chainOf(house, entry).flatMap((one) => (one.kind === "prep" && one.name ? [one.name.text] : []));
}
