/** Which entry of one house is which of the other: by name, by another name, and for drinks by likeness. */
import type { Entry } from "../../../grammar/tree.ts";
import { namesOf } from "../declarations.ts";
import type { SpecDocument } from "../document.ts";
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

/** In the order of the later house, what is gone last. Two houses may both have a gin: a name is looked for in its own file first. */
export function pairsOf({ before, after }: Houses, kind: Entry["kind"]): Pair[] {
  // What stands in a text that is one and the same on both sides is found there at once.
  const isSame = ({ uri, tree }: SpecDocument) => before.document(uri)?.tree === tree && after.document(uri)?.tree === tree;
  const [old, here] = [named(before, kind, isSame), named(after, kind, isSame)];
  const pairs = new Map<Entry, Entry>();
  const taken = new Set<Entry>();
  const pair = (was: Entry, entry: Entry) => {
    pairs.set(entry, was);
    taken.add(was);
  };
  const pairBy = (oldKey: (one: Named) => string, keys: (one: Named) => readonly string[]) => {
    const left = new Map<string, Entry[]>();
    for (const one of old) if (!taken.has(one.entry)) left.set(oldKey(one), [...(left.get(oldKey(one)) ?? []), one.entry]);
    for (const one of here) {
      const was = pairs.has(one.entry) ? undefined : keys(one).flatMap((key) => left.get(key)?.shift() ?? [])[0];
      if (was && !taken.has(was)) pair(was, one.entry);
    }
  };
  pairBy(
    ({ key, uri }) => `${uri} ${key}`,
    ({ key, uri }) => [`${uri} ${key}`],
  );
  pairBy(
    ({ key }) => key,
    ({ key }) => [key],
  );
  pairBy(
    ({ key }) => key,
    ({ entry }) => namesOf(entry).map(fold),
  );
  const gone = () => old.flatMap(({ entry }) => (taken.has(entry) ? [] : [entry]));
  if (kind === "drink") {
    const fresh = here.flatMap(({ entry }) => (pairs.has(entry) ? [] : [entry]));
    for (const [was, entry] of renamed(before, after, gone(), fresh)) pair(was, entry);
  }
  // Thousands of texts are gone through here for each kind: no list is made of each.
  const both: Pair[] = [];
  for (const document of after.documents()) {
    const same = isSame(document);
    for (const entry of document.tree.entries) {
      if (entry.kind === kind && entry.name?.text) both.push({ before: same ? entry : pairs.get(entry), after: entry });
    }
  }
  return [...both, ...gone().map((entry) => ({ before: entry }))];
}

interface Named {
  readonly key: string;
  readonly uri: string;
  readonly entry: Entry;
}

function named(house: House, kind: Entry["kind"], isPaired: (document: SpecDocument) => boolean): Named[] {
  const found: Named[] = [];
  for (const document of house.documents()) {
    if (isPaired(document)) continue;
    for (const entry of document.tree.entries) {
      if (entry.kind === kind && entry.name?.text) found.push({ key: fold(entry.name.text), uri: document.uri, entry });
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
