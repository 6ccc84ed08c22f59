/**
 * What a house pours and writes, counted from its texts as they stand: how many entries call for each
 * thing and in which amounts, which words stand in a field, which units are used. Kept for each scope,
 * and brought up to date entry by entry, so that asking after a keystroke costs what the key changed.
 */
import type { Entry } from "../../grammar/tree.ts";
import type { SpecDocument } from "./document.ts";
import type { House } from "./house.ts";
import type { Scope } from "./scope.ts";
import { fromKey, writtenIn } from "./written.ts";

/** The entries that pour. */
export type Pouring = "drink" | "prep";

/** How a thing is poured. */
export interface Use {
  /** So many entries pour it. */
  readonly count: number;
  /** The amount that most of them pour, as written: `22.5 ml`, `2 dashes`, `top`; absent where none states one. */
  readonly amount?: string;
}

/** Names are given folded. */
export interface Usage {
  /** How many entries of this kind pour what goes by these names. */
  count(by: Pouring, names: readonly string[]): number;
  /** How they pour it. */
  poured(by: Pouring, names: readonly string[]): Use;
  /** How many amounts of it start with this word: `top`. */
  led(by: Pouring, names: readonly string[], lead: string): number;
  /** The entries that pour, or are riffs of, what goes by these names. */
  usersOf(names: readonly string[]): ReadonlySet<Entry>;
  /** What stands in a field of such entries (see `writtenFields` in `written.ts`), the most frequent first; `fields` for the fields themselves. */
  words(kind: Entry["kind"], field: string): readonly (readonly [text: string, count: number])[];
  /** How many pours are measured in a unit. */
  unit(id: string): number;
  /** Every name that is poured, as it is first written, with what pours it. */
  names(): Iterable<{ readonly name: string; readonly entries: Readonly<Record<Pouring, ReadonlySet<Entry>>> }>;
}

/** What entries of a scope and of the houses above it pour and write. */
export function usageOf(house: House, scope: Scope): Usage {
  let counts = known.get(scope);
  if (!counts) {
    counts = new Counts(scope);
    known.set(scope, counts);
  }
  counts.update(house);
  return counts;
}

/** Scopes are made anew when a `house` comes or goes, and their counts with them. */
const known = new WeakMap<Scope, Counts>();

interface Poured {
  readonly name: string;
  readonly entries: Record<Pouring, Set<Entry>>;
  readonly amounts: Record<Pouring, Map<string, number>>;
}

class Counts implements Usage {
  private readonly scopes = new Set<Scope>();
  private readonly seen = new Map<string, SpecDocument>();
  private readonly byName = new Map<string, Poured>();
  private readonly byField = new Map<string, Map<string, number>>();
  private readonly byUnit = new Map<string, number>();

  constructor(scope: Scope) {
    for (let at: Scope | undefined = scope; at; at = at.parent) this.scopes.add(at);
  }

  update(house: House): void {
    let texts = 0;
    for (const document of house.documents()) {
      texts++;
      const before = this.seen.get(document.uri);
      if (before !== document) this.take(house, before, document);
    }
    if (texts === this.seen.size) return;
    for (const [uri, document] of this.seen) if (!house.document(uri)) this.take(house, document, undefined);
  }

  count(by: Pouring, names: readonly string[]): number {
    let count = 0;
    for (const name of names) count += this.byName.get(name)?.entries[by].size ?? 0;
    return count;
  }

  poured(by: Pouring, names: readonly string[]): Use {
    let [common, most]: [string[], number] = [[], 0];
    for (const { amounts } of this.called(names)) {
      for (const [text, times] of amounts[by]) {
        if (times > most) [common, most] = [[text], times];
        else if (times === most) common.push(text);
      }
    }
    // Of several that are as common, the one in the middle: neither the smallest nor the largest speaks for all.
    const amount = common.sort((one, other) => Number.parseFloat(one) - Number.parseFloat(other) || (one < other ? -1 : 1))[
      common.length >> 1
    ];
    return { count: this.count(by, names), ...(amount && { amount }) };
  }

  led(by: Pouring, names: readonly string[], lead: string): number {
    let count = 0;
    for (const { amounts } of this.called(names)) {
      for (const [text, times] of amounts[by]) if (text === lead || text.startsWith(`${lead} `)) count += times;
    }
    return count;
  }

  usersOf(names: readonly string[]): ReadonlySet<Entry> {
    return new Set([...this.called(names), ...this.called(names, fromKey)].flatMap(({ entries }) => [...entries.drink, ...entries.prep]));
  }

  words(kind: Entry["kind"], field: string): readonly (readonly [string, number])[] {
    return [...(this.byField.get(`${kind} ${field}`) ?? [])].sort(([one, many], [other, more]) => more - many || (one < other ? -1 : 1));
  }

  unit(id: string): number {
    return this.byUnit.get(id) ?? 0;
  }

  *names(): Generator<Poured> {
    for (const [key, poured] of this.byName) if (!key.startsWith(fromKey)) yield poured;
  }

  private called(names: readonly string[], before = ""): Poured[] {
    return names.flatMap((name) => this.byName.get(before + name) ?? []);
  }

  /** Entries that an edit left alone are the same objects before and after it, and stay counted. */
  private take(house: House, before: SpecDocument | undefined, after: SpecDocument | undefined): void {
    if (after) this.seen.set(after.uri, after);
    else if (before) this.seen.delete(before.uri);
    const document = after ?? before;
    if (!document || !this.scopes.has(house.scopeOf(document))) return;
    const now = after?.tree.entries ?? [];
    const then = before?.tree.entries ?? [];
    const [kept, there] = [new Set(now), new Set(then)];
    for (const entry of then) if (!kept.has(entry)) this.tally(entry, -1);
    for (const entry of now) if (!there.has(entry)) this.tally(entry, 1);
  }

  private tally(entry: Entry, by: 1 | -1): void {
    const { pours, words, units } = writtenIn(entry);
    const kind = entry.kind === "prep" ? "prep" : "drink";
    for (const { key, name, amount } of pours) {
      const there = this.byName.get(key) ?? {
        name,
        entries: { drink: new Set(), prep: new Set() },
        amounts: { drink: new Map(), prep: new Map() },
      };
      if (by > 0) there.entries[kind].add(entry);
      else there.entries[kind].delete(entry);
      if (amount) add(there.amounts[kind], amount, by);
      if (there.entries.drink.size + there.entries.prep.size > 0) this.byName.set(key, there);
      else this.byName.delete(key);
    }
    for (const { field, text } of words) {
      const key = `${entry.kind} ${field}`;
      const there = this.byField.get(key) ?? new Map<string, number>();
      this.byField.set(key, add(there, text, by));
    }
    for (const unit of units) add(this.byUnit, unit, by);
  }
}

function add(counts: Map<string, number>, text: string, by: number): Map<string, number> {
  const count = (counts.get(text) ?? 0) + by;
  if (count > 0) counts.set(text, count);
  else counts.delete(text);
  return counts;
}
