/**
 * Two houses beside each other, as drinks and not as lines: what was added, taken out, renamed and changed,
 * what that does, and which drinks and menus moved though nobody touched them.
 */
import type { Entry } from "../../../grammar/tree.ts";
import type { House } from "../house.ts";
import { fold } from "../names.ts";
import { flatten } from "../riff.ts";
import { type Arrival, arrivalOf } from "./arrival.ts";
import { byEntry, causesOf, chainOf } from "./causes.ts";
import { compareFields, type FieldCompared } from "./fields.ts";
import { type Effects, effectsOf, type Gained, hasEffect } from "./figures.ts";
import { compareMenus, type MenuCompared, repricedOn } from "./menus.ts";
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
  /** What an added one brings. */
  readonly arrival?: Arrival;
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
  /** Of a prep whose pours are others. */
  readonly pours?: PoursCompared;
}

export interface Comparison {
  readonly drinks: readonly DrinkCompared[];
  readonly things: readonly ThingCompared[];
  readonly menus: readonly MenuCompared[];
}

const thingKinds = ["house", "stock", "prep", "glass", "ice", "family"] as const;

/** `progress` is told before each drink. Drinks that are not `asked` for are left out. */
export function compare(
  houses: Houses,
  progress: (done: number, all: number) => void = () => undefined,
  asked: (pair: Pair) => boolean = () => true,
): Comparison {
  const things = thingKinds.flatMap((kind) => pairsOf(houses, kind).flatMap((pair) => thing(houses, pair, kind) ?? []));
  const changedThings = byEntry(things);
  const pairs = pairsOf(houses, "drink");
  const isUntouched = untouchedIn(houses, pairs.filter(asked));
  const changed = new Set(pairs.flatMap(({ before, after }) => (before && after && saySame(before, after) ? [] : [before, after])));
  const drinks = pairs.flatMap((pair, done) => {
    progress(done, pairs.length);
    return isUntouched(pair) || !asked(pair) ? [] : (drink(houses, pair, changedThings, changed) ?? []);
  });
  return { drinks, things, menus: compareMenus(houses, pairs) };
}

function thing(houses: Houses, { before, after }: Pair, kind: Entry["kind"]): ThingCompared | undefined {
  const name = (after ?? before)!.name!.text;
  if (!before || !after) return { before, after, kind, name, how: after ? "added" : "removed", fields: [] };
  if (saySame(before, after)) return undefined;
  const pours = kind === "prep" ? comparePours(flatten(houses.before, before), flatten(houses.after, after)) : undefined;
  const isPoured = pours && (pours.changes.length > 0 || pours.reordered);
  return { before, after, kind, name, how: "changed", fields: compareFields(before, after), ...(isPoured && { pours }) };
}

function drink(
  houses: Houses,
  { before, after }: Pair,
  things: ReadonlyMap<Entry, ThingCompared>,
  changed: ReadonlySet<Entry | undefined>,
): DrinkCompared | undefined {
  const entry = (after ?? before)!;
  const name = entry.name!.text;
  if (!before || !after) {
    const made = madeFor(after ? houses.after : houses.before, entry);
    const preps = after ? { gained: made, lost: [] } : { gained: [], lost: made };
    const arrival = after && arrivalOf(houses.after, after);
    return { before, after, name, how: after ? "added" : "removed", fields: [], ...(arrival && { arrival }), preps, because: [] };
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
    because: [
      ...changedDrinks(houses.after, after, changed),
      ...causesOf(houses, before, after, things),
      ...(effects.cost ? repricedOn(houses, before, after) : []),
    ],
  };
}

function rewritten(pair: Pair, name: string): DrinkCompared {
  return { ...pair, name, how: "rewritten", fields: [], preps: { gained: [], lost: [] }, because: [] };
}

/** The drinks above it, and in it, that somebody changed. */
function changedDrinks(house: House, entry: Entry, changed: ReadonlySet<Entry | undefined>): { kind: Entry["kind"]; name: string }[] {
  const above: Entry[] = [];
  for (let at = flatten(house, entry).parent; at; at = at.parent) above.push(at.entry);
  const inside = [...chainOf(house, entry)].filter(({ kind }) => kind === "drink");
  return [...above, ...inside].flatMap((one) => (changed.has(one) && one.name ? [{ kind: one.kind, name: one.name.text }] : []));
}

function madeFor(house: House, entry: Entry): string[] {
  return [...chainOf(house, entry)].flatMap((one) => (one.kind === "prep" && one.name ? [one.name.text] : []));
}
