/** Names of what is declared: the house's own before the larder's, what it pours most first. */
import { CompletionItemKind } from "vscode-languageserver-types";
import type { Entry } from "../../../grammar/tree.ts";
import { namesOf } from "../../house/declarations.ts";
import { findFieldIn } from "../../house/entry.ts";
import { type NameClass, plain } from "../../house/names.ts";
import type { Declaration } from "../../house/scope.ts";
import { type Pouring, type Usage, type Use, usageOf } from "../../house/usage.ts";
import { writtenName } from "../../house/write.ts";
import { type Asked, near, type Offer } from "./offer.ts";

/** A declared name that may be called here, with how often it is. */
export interface Named extends Use {
  readonly declared: Declaration;
  readonly near: number;
}

/** Every name of these classes that is visible here, each once: not the entry's own, nor what is made from it. */
export function namedFor(asked: Asked, classes: readonly NameClass[]): Named[] {
  const { house, scope, entry } = asked;
  const usage = usageOf(house, scope);
  const by = pouringOf(entry);
  const barred = madeFrom(usage, entry);
  const seen = new Set<string>();
  const found: Named[] = [];
  for (const nameClass of classes) {
    for (const declared of house.declarations(scope, nameClass)) {
      const { entry: other, name, alias } = declared;
      const key = plain(name);
      if (seen.has(key) || barred.has(other)) continue;
      seen.add(key);
      const use = usage.poured(by, alias ? [name] : namesMeaning(asked, declared));
      const from = use.count > 0 ? near.poured : house.isLarder(other) ? near.larder : near.own;
      found.push({ ...use, declared, near: from + (alias && use.count === 0 ? 1 : 0) });
    }
  }
  return found;
}

/** The names that lead to it: the larder's other name for a thing may be the house's own name for another. */
function namesMeaning({ house, scope }: Asked, { entry, nameClass }: Declaration): string[] {
  const names = namesOf(entry);
  if (names.length === 1 || !house.isLarder(entry)) return names;
  return names.filter((name) => house.lookup(scope, nameClass, name)[0]?.entry === entry);
}

/** Names as they stand in a field. */
export function namesFor(asked: Asked, classes: readonly NameClass[]): Offer[] {
  return namedFor(asked, classes).map(({ declared, near, count }) => nameOffer(declared, declared.name, near, count));
}

/** Names as they stand in a pour: in quotation marks where they need them, or where some were typed. */
export function pouredNames(named: readonly Named[], typed: string): Offer[] {
  const opening = /^["“”]/.exec(typed)?.[0];
  return named.map(({ declared, near, count }) => {
    const { name } = declared;
    const written = opening ? `"${name}"` : writtenName(name);
    return { ...nameOffer(declared, written, near, count), ...(opening && { filter: `${opening}${name}` }) };
  });
}

function nameOffer({ entry, nameClass, name }: Declaration, written: string, near: number, used: number): Offer {
  return {
    label: name,
    ...(written !== name && { text: written }),
    kind: CompletionItemKind.Value,
    near: findFieldIn(entry, "status")?.field.value?.text.toLowerCase() === "retired" ? 9 : near,
    used,
    about: { what: nameClass === "house" ? "written" : nameClass, name },
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
  for (const one of found) for (const user of usage.usersOf(namesOf(one))) found.add(user);
  return found;
}
