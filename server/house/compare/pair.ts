/** Which entry of one house is which of the other: by name, by another name, and for drinks by likeness. */
import type { Entry } from "../../../grammar/tree.ts";
import { namesOf } from "../declarations.ts";
import type { House } from "../house.ts";
import { fold } from "../names.ts";
import { flatten } from "../riff.ts";
import { writtenPour } from "./written.ts";

export interface Houses {
  readonly before: House;
  readonly after: House;
}

export interface Pair {
  readonly before?: Entry;
  readonly after?: Entry;
}

/** How alike two drinks of different names have to be to be one that was renamed: practice, no source. */
const alike = 0.7;

/** In the order of the later house, what is gone last. Of entries that share a name the first is meant. */
export function pairsOf({ before, after }: Houses, kind: Entry["kind"]): Pair[] {
  const [gone, here] = [named(before, kind), named(after, kind)];
  const pairs = new Map<Entry, Entry>();
  const take = (key: string, entry: Entry) => {
    const old = gone.get(key);
    if (old) pairs.set(entry, old);
    return old ? gone.delete(key) : false;
  };
  for (const [key, entry] of here) take(key, entry);
  for (const entry of here.values()) if (!pairs.has(entry)) namesOf(entry).some((name) => take(fold(name), entry));
  if (kind === "drink") {
    for (const [old, entry] of renamed(
      before,
      after,
      [...gone.values()],
      [...here.values()].filter((one) => !pairs.has(one)),
    )) {
      pairs.set(entry, old);
      gone.delete(fold(old.name!.text));
    }
  }
  return [
    ...[...here.values()].map((entry) => ({ before: pairs.get(entry), after: entry })),
    ...[...gone.values()].map((entry) => ({ before: entry })),
  ];
}

function named(house: House, kind: Entry["kind"]): Map<string, Entry> {
  const found = new Map<string, Entry>();
  for (const { tree } of house.documents()) {
    for (const entry of tree.entries) {
      const key = entry.kind === kind && entry.name?.text ? fold(entry.name.text) : undefined;
      if (key !== undefined && !found.has(key)) found.set(key, entry);
    }
  }
  return found;
}

/** The likest first; each drink is taken once. */
function renamed(before: House, after: House, gone: readonly Entry[], fresh: readonly Entry[]): [Entry, Entry][] {
  const olds = gone.map((entry) => ({ entry, traits: traitsOf(before, entry) }));
  const news = fresh.map((entry) => ({ entry, traits: traitsOf(after, entry) }));
  const candidates = news
    .flatMap((one) => olds.map((old) => ({ old: old.entry, entry: one.entry, likeness: likenessOf(old.traits, one.traits) })))
    .filter(({ likeness }) => likeness >= alike)
    .sort((one, other) => other.likeness - one.likeness);
  const taken = new Set<Entry>();
  return candidates.flatMap(({ old, entry }): [Entry, Entry][] => {
    if (taken.has(old) || taken.has(entry)) return [];
    taken.add(old).add(entry);
    return [[old, entry]];
  });
}

/** Its pours with their amounts, each worth as much as the next; how it is made and served counts as one. */
function traitsOf(house: House, entry: Entry): ReadonlySet<string> {
  const flat = flatten(house, entry);
  const served = ["method", "glass", "garnish"].map((name) => flat.statedField(name)?.field.value?.text ?? "").join("; ");
  return new Set([...flat.pours.map(writtenPour), served]);
}

/** The share of what either has that both have. */
function likenessOf(one: ReadonlySet<string>, other: ReadonlySet<string>): number {
  const both = [...one].filter((trait) => other.has(trait)).length;
  return both / (one.size + other.size - both);
}
