/**
 * What a house pours and writes, counted from its texts as they stand: how many entries call for each
 * thing and in which amounts, which words stand in a field, which units are used. Kept for each scope,
 * and brought up to date entry by entry, so that asking after a keystroke costs what the key changed.
 */
import type { Entry, Item, Pour, Quantity } from "../../grammar/tree.ts";
import type { SpecDocument } from "./document.ts";
import { pourOn } from "./entry.ts";
import type { House } from "./house.ts";
import { unitText } from "./measurable.ts";
import { fold } from "./names.ts";
import { candidates, type Scope, unquoted } from "./scope.ts";

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
  /** What stands in a field of such entries (see `writtenFields`), the most frequent first; `fields` for the fields themselves. */
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

/** What a riff is of is found apart from what it pours. */
const fromKey = "from|";

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
    let [amount, most]: [string | undefined, number] = [undefined, 0];
    for (const { amounts } of this.called(names)) {
      for (const [text, times] of amounts[by]) {
        if (times > most || (times === most && amount !== undefined && text < amount)) [amount, most] = [text, times];
      }
    }
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

// What one entry says

interface Written {
  readonly pours: readonly { readonly key: string; readonly name: string; readonly amount: string }[];
  readonly words: readonly { readonly field: string; readonly text: string }[];
  readonly units: readonly string[];
}

const remembered = new WeakMap<Entry, Written>();

function writtenIn(entry: Entry): Written {
  let written = remembered.get(entry);
  if (!written) {
    written = readEntry(entry);
    remembered.set(entry, written);
  }
  return written;
}

/** The fields whose texts are counted: under which word, and what of them. One row each. */
const writtenFields: Readonly<Record<string, Readonly<Record<string, "value" | "items" | "qualifiers" | "parts" | "per">>>> = {
  season: { season: "value" },
  credit: { credit: "value" },
  origin: { origin: "value" },
  keeps: { keeps: "items" },
  method: { method: "items" },
  garnish: { garnish: "items", "garnish,": "qualifiers" },
  rim: { rim: "items", "rim,": "qualifiers" },
  tags: { tags: "parts" },
  price: { "price per": "per" },
};

function readEntry(entry: Entry): Written {
  const pours: Written["pours"][number][] = [];
  const words: Written["words"][number][] = [];
  const units: string[] = [];
  const pouring = entry.kind === "drink" || entry.kind === "prep";
  for (const { content, problem } of entry.lines) {
    if (content.kind === "section" && content.title) words.push({ field: "section", text: content.title.text });
    else if (content.kind === "field") {
      const field = content.name.text.toLowerCase();
      words.push({ field: "fields", text: field });
      if (field === "from" && content.value && pouring)
        pours.push({ key: fromKey + fold(content.value.text), name: content.value.text, amount: "" });
      for (const [as, what] of Object.entries(writtenFields[field] ?? {})) {
        for (const text of textsOf(what, content.items, content.value?.text)) words.push({ field: as, text });
      }
    } else if (pouring) {
      const pour = pourOn(content);
      if (!pour?.name) continue;
      const unit = pour.quantity?.unit?.unit.id;
      if (unit) units.push(unit);
      const amount = problem ? "" : amountOf(pour);
      const names = pour.name.quoted ? [unquoted(pour.name)] : [...candidates(pour.name)].map(({ text }) => text);
      for (const name of names) pours.push({ key: fold(name), name, amount });
    }
  }
  return { pours, words, units };
}

function textsOf(what: "value" | "items" | "qualifiers" | "parts" | "per", items: readonly Item[], value = ""): string[] {
  if (value.toLowerCase() === "none") return [];
  if (what === "value") return value ? [value] : [];
  if (what === "items") return items.map(({ text }) => text);
  if (what === "per") return /\bper\s.+$/i.exec(value)?.slice(0, 1) ?? [];
  return items.flatMap(({ parts }) => (what === "parts" ? parts : parts.slice(1)).map(({ text }) => text));
}

function amountOf({ lead, quantity, turned }: Pour): string {
  if (turned) return quantity ? quantityText(quantity) : "";
  return [lead?.text.toLowerCase(), quantity && quantityText(quantity)].filter(Boolean).join(" ");
}

/** An amount as it is written, in one spelling: empty where it cannot be computed. */
export function quantityText({ about, numeral, unit, value }: Quantity): string {
  if (value === undefined) return "";
  const amount = unit ? ` ${unitText(unit.unit, unit.text, value)}` : "";
  return `${about ? `${about.text} ` : ""}${numeral.text}${amount}`;
}
