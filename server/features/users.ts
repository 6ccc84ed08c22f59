/** Who uses what is declared: the menus that a drink is on, its riffs, a family's drinks, what a stock or a prep is poured in and garnishes, the text that tells of it. */
import type { Entry } from "../../grammar/tree.ts";
import type { Place, SpecDocument } from "../house/document.ts";
import { findFieldIn } from "../house/entry.ts";
import { garnishesOf } from "../house/garnish.ts";
import type { House } from "../house/house.ts";
import { pouredIn } from "../house/poured.ts";
import { flatten } from "../house/riff.ts";
import type { Scope } from "../house/scope.ts";
import { mentionsIn, ownNames } from "./mentions.ts";

export type Way = "menu" | "riff" | "family" | "poured" | "garnish" | "text";

/** What an entry uses, and the places in it where that is written: for what a riff inherits, its name. */
export interface Use {
  readonly way: Way;
  readonly of: Entry;
  readonly by: Entry;
  readonly places: readonly [Place, ...Place[]];
}

/**
 * Who uses an entry so, in all texts at hand: drinks with what they inherit, and preps; alternatives too.
 * The first question after a change goes through all entries; what they use is computed only where it may have changed.
 */
export function usersOf(house: House, entry: Entry, way: Way): readonly Use[] {
  return [...(indexOf(house).of(house, entry)?.[way] ?? [])];
}

/** Whether nothing has changed since who uses what was last asked. */
export function areUsersKnown(house: House): boolean {
  return indexOf(house).isCurrent(house);
}

const indexes = new WeakMap<House, Index>();

function indexOf(house: House): Index {
  let index = indexes.get(house);
  if (!index) {
    index = new Index();
    indexes.set(house, index);
  }
  return index;
}

/** Uses by what is used. It remembers nothing that the house does not: it only turns round what is recalled of each entry. */
class Index {
  private readonly uses = new Map<Entry, Record<Way, Set<Use>>>();
  private readonly known = new Map<Entry, readonly Use[]>();
  /** As they were then. A text that changed is another object; names change their meaning with a text or with the scopes. */
  private documents: readonly SpecDocument[] = [];
  private scope: Scope | undefined;

  of(house: House, entry: Entry): Readonly<Record<Way, ReadonlySet<Use>>> | undefined {
    if (!this.isCurrent(house)) this.update(house);
    return this.uses.get(entry);
  }

  isCurrent(house: House): boolean {
    let at = 0;
    for (const document of house.documents()) if (document !== this.documents[at++]) return false;
    const [first] = this.documents;
    return at === this.documents.length && (!first || house.scopeOf(first) === this.scope);
  }

  private update(house: House): void {
    this.documents = [...house.documents()];
    this.scope = this.documents[0] && house.scopeOf(this.documents[0]);
    let count = 0;
    for (const { tree } of this.documents) {
      for (const entry of tree.entries) {
        if (entry.kind !== "menu" && entry.kind !== "drink" && entry.kind !== "prep" && entry.kind !== "text") continue;
        count++;
        const now = usesIn(house, entry);
        if (this.known.get(entry) === now) continue;
        this.remove(entry);
        this.add(entry, now);
      }
    }
    if (this.known.size > count) for (const entry of [...this.known.keys()]) if (!house.findDocumentOf(entry)) this.remove(entry);
  }

  private add(entry: Entry, uses: readonly Use[]): void {
    this.known.set(entry, uses);
    for (const use of uses) {
      let there = this.uses.get(use.of);
      if (!there) {
        there = { menu: new Set(), riff: new Set(), family: new Set(), poured: new Set(), garnish: new Set(), text: new Set() };
        this.uses.set(use.of, there);
      }
      there[use.way].add(use);
    }
  }

  private remove(entry: Entry): void {
    for (const use of this.known.get(entry) ?? []) {
      const there = this.uses.get(use.of);
      there?.[use.way].delete(use);
      if (there && Object.values(there).every(({ size }) => size === 0)) this.uses.delete(use.of);
    }
    this.known.delete(entry);
  }
}

/** What a menu, a drink, a prep or a text uses, each once in a way, however often it does. */
export function usesIn(house: House, entry: Entry): readonly Use[] {
  return house.recall(entry, "used in it", () => {
    const uses = new Map<string, Map<Entry, Use>>();
    const note = (way: Way, of: Entry | undefined, place: Place) => {
      const there = uses.get(way) ?? new Map<Entry, Use>();
      uses.set(way, there);
      if (!of || of === entry) return;
      const places = there.get(of)?.places;
      if (!places?.includes(place)) there.set(of, { way, of, by: entry, places: places ? [...places, place] : [place] });
    };
    const head = ownNames(entry)[0]?.place ?? { line: 0, start: 0, end: 0 };
    if (entry.kind === "menu") for (const { found, place } of mentionsIn(house, entry)) note("menu", found.entry, place);
    else if (entry.kind === "text") for (const { found, place } of mentionsIn(house, entry)) note("text", found.entry, place);
    else if (entry.kind === "drink" || entry.kind === "prep") {
      for (const { entry: at, place, ingredient } of pouredIn(house, entry))
        note("poured", ingredient.resolution.found?.entry, at === entry ? place : head);
    }
    if (entry.kind === "drink") {
      const flat = flatten(house, entry);
      note("riff", flat.parent?.entry, head);
      // A riff's family is its parent's unless it names one itself.
      const family = mentionsIn(house, entry).find(({ place }) => place.line === findFieldIn(entry, "family")?.line);
      if (family) note("family", family.found.entry, family.place);
      for (const { field, ingredient } of garnishesOf(house, house.scopeOf(entry), flat)) {
        const { found, start, end } = ingredient?.resolution ?? {};
        const at = flat.field(field);
        note("garnish", found?.entry, at?.entry === entry ? { line: at.line, start: start!, end: end! } : head);
      }
    }
    return [...uses.values()].flatMap((there) => [...there.values()]);
  });
}
