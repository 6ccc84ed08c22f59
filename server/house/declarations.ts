/** Which names an entry declares, and the keys that they are looked up by. */
import { labelOf } from "../../grammar/directives.ts";
import type { Entry, TextLine } from "../../grammar/tree.ts";
import { fold, type NameClass } from "./names.ts";
import type { Scope } from "./scope.ts";

const classOfKind: Partial<Record<Entry["kind"], NameClass>> = {
  stock: "ingredient",
  prep: "ingredient",
  drink: "drink",
  menu: "menu",
  family: "family",
  glass: "glass",
  ice: "ice",
  house: "house",
  book: "book",
  text: "printed",
};

/** The class of the names that an entry declares; absent for an entry that declares none. */
export function classOf(entry: Pick<Entry, "kind">): NameClass | undefined {
  return classOfKind[entry.kind];
}

/** What names of a class and a folded text are found under, in a scope and in the memo. `*` stands for every name of the class. */
export function keyOf(nameClass: NameClass, folded: string): string {
  return `${nameClass}|${folded}`;
}

/** The head's name, then the names of its `aka` fields; of a text the names that it prints the specs of. */
export function namesOf(entry: Entry): string[] {
  const names: string[] = [];
  if (entry.name?.text) names.push(entry.name.text);
  for (const { content } of entry.lines) {
    if (content.kind === "text") names.push(...printedBy(content));
    if (content.kind === "field" && content.name.text.toLowerCase() === "aka") names.push(...content.items.map((item) => item.text));
  }
  return names;
}

/** The names whose specs a line of a text prints. */
function printedBy({ directives }: TextLine): string[] {
  return directives.flatMap((one) => (one.block && one.name.text === "spec" && one.label ? [labelOf(one)] : []));
}

/** The keys of an entry's names; none for an entry of no class. */
export function keysOf(entry: Entry): string[] {
  const nameClass = classOfKind[entry.kind];
  return nameClass ? namesOf(entry).map((name) => keyOf(nameClass, fold(name))) : [];
}

/** The keys of a class that are declared in a scope: there may be few menus among ten thousand drinks. */
export function keysIn(scope: Scope, nameClass: NameClass): Set<string> {
  let classes = keysByClass.get(scope);
  if (!classes) {
    classes = new Map();
    keysByClass.set(scope, classes);
  }
  let keys = classes.get(nameClass);
  if (!keys) {
    keys = new Set();
    classes.set(nameClass, keys);
  }
  return keys;
}

const keysByClass = new WeakMap<Scope, Map<NameClass, Set<string>>>();

/** Puts the names of these entries into a scope. */
export function declare(scope: Scope, entries: readonly Entry[]): void {
  for (const entry of entries) {
    const nameClass = classOfKind[entry.kind];
    if (!nameClass) continue;
    if (entry.kind === "book" && entry.name?.text) scope.books = new Set(scope.books).add(entry);
    for (const [index, name] of namesOf(entry).entries()) {
      const key = keyOf(nameClass, fold(name));
      const declaration = { entry, nameClass, name, alias: index > 0 };
      const there = scope.names.get(key);
      if (there) there.push(declaration);
      else {
        scope.names.set(key, [declaration]);
        keysIn(scope, nameClass).add(key);
      }
    }
  }
}

/** Takes the names of these entries out of a scope. */
export function undeclare(scope: Scope, entries: readonly Entry[]): void {
  for (const entry of entries) {
    scope.books?.delete(entry);
    for (const key of keysOf(entry)) {
      const left = scope.names.get(key)?.filter((declaration) => declaration.entry !== entry) ?? [];
      if (left.length > 0) scope.names.set(key, left);
      else {
        scope.names.delete(key);
        keysIn(scope, key.slice(0, key.indexOf("|")) as NameClass).delete(key);
      }
    }
  }
}

/** The keys whose meaning changes when these entries go and those come, with `*` for each class in which a name came or went. */
export function changedKeys(gone: readonly Entry[], fresh: readonly Entry[]): string[] {
  const before = gone.flatMap(keysOf);
  const after = fresh.flatMap(keysOf);
  const keys = [...before, ...after];
  if (before.join("\n") === after.join("\n")) return keys;
  const classes = new Set(keys.map((key) => key.slice(0, key.indexOf("|")) as NameClass));
  return [...keys, ...[...classes].map((nameClass) => keyOf(nameClass, "*"))];
}
