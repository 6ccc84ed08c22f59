/**
 * Names of what is declared: the house's own before the larder's, what it pours most first. Thousands may
 * be declared, and this is asked with every key: the names are laid out once until one comes or goes, the
 * letters typed leave few of them, and only of those that are offered is more found out.
 */
import { CompletionItemKind } from "vscode-languageserver-types";
import type { Entry } from "../../../grammar/tree.ts";
import { namesOf } from "../../house/declarations.ts";
import type { House } from "../../house/house.ts";
import { fold, type NameClass, plain } from "../../house/names.ts";
import type { Scope } from "../../house/scope.ts";
import type { Pouring, Usage } from "../../house/usage.ts";
import { writtenName } from "../../house/write.ts";
import { type Asked, isBegun, lettersOf, most, near, type Offer } from "./offer.ts";

/** A declared name, whatever entry it leads to: entries are replaced while one types in them. */
export interface Called {
  readonly name: string;
  readonly nameClass: NameClass;
  readonly alias: boolean;
  readonly larder: boolean;
  /** What sort of entry it leads to. */
  readonly kind: Entry["kind"];
  /** Every name that leads to the same, folded; of another name only that one. */
  readonly calls: readonly string[];
  readonly key: string;
  readonly letters: string;
}

export interface Named {
  readonly called: Called;
  readonly count: number;
  readonly near: number;
}

export interface Names {
  readonly named: readonly Named[];
  /** More letters would bring up others. */
  readonly isLong: boolean;
}

/** How near a name is, where its use alone does not tell; absent where that does. */
export type NearOf = (called: Called) => number | undefined;

/** Names of these classes that the letters typed may mean, each once: not the entry's own, nor what is made from it. */
export function namedFor(asked: Asked, classes: readonly NameClass[], typed: string, nearOf?: NearOf, count?: Count): Names {
  const { house, scope, entry } = asked;
  const usage = asked.usage();
  const by = pouringOf(entry);
  const countOf: Count = count ?? (({ calls }) => usage.count(by, calls));
  const letters = lettersOf(typed);
  const buckets: Named[][] = [];
  let found = 0;
  for (const nameClass of classes) {
    for (const called of namesIn(house, scope, nameClass)) {
      if (letters && !isBegun(letters, called.letters)) continue;
      const times = countOf(called);
      const at = nearOf?.(called) ?? (times > 0 ? near.poured : usualNear(called, classes));
      if (!buckets[at]) buckets[at] = [];
      buckets[at].push({ called, count: times, near: at });
      found++;
    }
  }
  const barred = madeFrom(usage, entry);
  const seen = new Set<string>();
  const named: Named[] = [];
  for (const bucket of buckets) {
    for (const one of bucket?.sort((one, other) => other.count - one.count) ?? []) {
      if (named.length === most) break;
      const { key, nameClass, name } = one.called;
      const other = house.lookup(scope, nameClass, name)[0]?.entry;
      if (seen.has(key) || !other || barred.has(other)) continue;
      seen.add(key);
      named.push(one);
    }
  }
  return { named, isLong: found > most };
}

type Count = (called: Called) => number;

/** Where ingredients are wanted, drinks may stand too. */
function usualNear({ nameClass, alias, larder }: Called, classes: readonly NameClass[]): number {
  if (larder) return alias ? near.last : near.larder;
  return alias || (nameClass === "drink" && classes[0] === "ingredient") ? near.drink : near.own;
}

/** Every name of a class that is visible from a scope, the house's own first, then by the alphabet. */
export function namesIn(house: House, scope: Scope, nameClass: NameClass): readonly Called[] {
  return house.recall(anchorOf(scope, nameClass), "names", () => {
    const found = new Map<string, Called>();
    for (const { entry, name, alias } of house.declarations(scope, nameClass)) {
      const key = plain(name);
      if (found.has(key)) continue;
      const larder = house.isLarder(entry);
      const calls = (alias ? [name] : namesMeaning(house, scope, nameClass, entry, larder)).map(fold);
      found.set(key, { name, nameClass, alias, larder, kind: entry.kind, calls: [...new Set(calls)], key, letters: lettersOf(name) });
    }
    const group = ({ larder, alias }: Called) => (larder ? 2 : 0) + (alias ? 1 : 0);
    return [...found.values()].sort((one, other) => group(one) - group(other) || (one.key < other.key ? -1 : 1));
  });
}

/** The names that lead to it: the larder's other name for a thing may be the house's own name for another. */
function namesMeaning(house: House, scope: Scope, nameClass: NameClass, entry: Entry, larder: boolean): string[] {
  const names = namesOf(entry);
  return larder && names.length > 1 ? names.filter((name) => house.lookup(scope, nameClass, name)[0]?.entry === entry) : names;
}

/** What the names of a class are remembered by: no entry of any text, so that nothing hangs on it in turn. */
const anchors = new WeakMap<Scope, Map<NameClass, Entry>>();

function anchorOf(scope: Scope, nameClass: NameClass): Entry {
  const there = anchors.get(scope) ?? new Map<NameClass, Entry>();
  anchors.set(scope, there);
  const anchor = there.get(nameClass) ?? { kind: "unknown", lines: [] };
  there.set(nameClass, anchor);
  return anchor;
}

/** Names as they stand in a field. */
export function namesFor(asked: Asked, classes: readonly NameClass[], typed: string): { offers: Offer[]; isLong: boolean } {
  const { named, isLong } = namedFor(asked, classes, typed);
  return { offers: named.map((one) => nameOffer(one, one.called.name)), isLong };
}

/** Names as they stand in a pour: in quotation marks where they need them, or where some were typed. */
export function pouredNames(named: readonly Named[], typed: string): Offer[] {
  const opening = /^["“”]/.exec(typed)?.[0];
  return named.map((one) => {
    const { name } = one.called;
    const written = opening ? `"${name}"` : writtenName(name);
    return { ...nameOffer(one, written), ...(opening && { filter: `${opening}${name}` }) };
  });
}

/** As names of their sort are drawn in an outline, too. */
const looks: Readonly<Partial<Record<Entry["kind"], CompletionItemKind>>> = {
  stock: CompletionItemKind.Constant,
  prep: CompletionItemKind.Function,
  drink: CompletionItemKind.Class,
  menu: CompletionItemKind.Module,
  family: CompletionItemKind.Interface,
  glass: CompletionItemKind.Struct,
  ice: CompletionItemKind.Struct,
  book: CompletionItemKind.Module,
};

/** How it looks in the list, and where it comes from. */
export function lookOf({ kind, larder }: Pick<Called, "kind" | "larder">): Pick<Offer, "kind" | "from"> {
  return { kind: looks[kind] ?? CompletionItemKind.Value, from: larder ? "larder" : kind };
}

function nameOffer({ called, count, near }: Named, written: string): Offer {
  const { name, nameClass } = called;
  return {
    label: name,
    ...(written !== name && { text: written }),
    ...lookOf(called),
    near,
    used: count,
    about: { what: nameClass === "house" || nameClass === "printed" ? "written" : nameClass, name },
  };
}

/** The amounts that count are a drink's in a drink and a prep's in a prep. */
export function pouringOf({ kind }: Entry): Pouring {
  return kind === "prep" ? "prep" : "drink";
}

/** An entry and all that is made from it, by the names written: to be made from one of those closes a circle. */
function madeFrom(usage: Usage, entry: Entry): ReadonlySet<Entry> {
  const found = new Set([entry]);
  if (entry.kind !== "drink" && entry.kind !== "prep") return found;
  for (const one of found) for (const user of usage.usersOf(namesOf(one).map(fold))) found.add(user);
  return found;
}
