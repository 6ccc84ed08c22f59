/** The start of a line: what opens an entry, and in a body its fields that are not there yet, its words, its pours. */

import { CompletionItemKind } from "vscode-languageserver-types";
import { type EntryKind, entryKinds, fieldsOf, stockKinds } from "../../../grammar/fields.ts";
import { isOwnKind } from "../../../grammar/tree.ts";
import { classOf } from "../../house/declarations.ts";
import { findFieldIn } from "../../house/entry.ts";
import { fold, type NameClass } from "../../house/names.ts";
import { writtenName } from "../../house/write.ts";
import { menuLines } from "./menu.ts";
import { namesIn } from "./names.ts";
import { type Asked, blank, type Group, inOrder, lineEnd, near, type Offer } from "./offer.ts";
import { wholePours } from "./whole-pours.ts";

/** The words that open an entry. */
export function entryWordsAt({ before, behind }: Asked): Group {
  // In front of what is indented the line is no head.
  if (before === "" && /^\s+\S/.test(behind)) return { start: 0, until: blank, offers: [] };
  const offers = entryKinds.map((kind): Offer => {
    return { label: kind, text: `${kind} `, kind: CompletionItemKind.Class, near: near.usual, about: { what: "entry word", name: kind } };
  });
  return { start: 0, until: blank, offers: inOrder(offers) };
}

/** What a head may declare: what is poured and declared nowhere; for what the larder knows, the house's own of the same name. */
export function headNames(asked: Asked, kind: EntryKind, start: number): Group {
  const { house, scope, entry } = asked;
  const nameClass = classOf(entry);
  const offers = new Map<string, Offer>();
  const add = (name: string, nearness: number, used = 0) => {
    const key = fold(name);
    const label = writtenName(name);
    const about = { what: nearness === near.larder ? (nameClass as NameClass as "glass") : "written", name, of: "poured" } as const;
    if (!offers.has(key)) offers.set(key, { label, kind: CompletionItemKind.Value, near: nearness, used, about });
  };
  if (kind === "stock" || kind === "prep") {
    for (const { name, entries } of asked.usage().names()) {
      const known = ["ingredient", "drink"].some((one) => house.lookup(scope, one as NameClass, name).length > 0);
      if (!known && !name.includes(",")) add(name, near.poured, entries.drink.size + entries.prep.size);
    }
  }
  if (kind !== "prep" && nameClass && nameClass !== "house") {
    for (const { name, alias, larder } of namesIn(house, scope, nameClass)) {
      // A kind's own name stands for whatever is of that kind.
      if (larder && !alias && !stockKinds.some((one) => one === name)) add(name, near.larder);
    }
  }
  return { start, until: lineEnd, offers: [...offers.values()] };
}

/** The start of a body line, or the words that begin it. */
export function bodyStart(asked: Asked, start: number): Group[] {
  const { entry, behind, before } = asked;
  if (!isOwnKind(entry.kind)) return [];
  const fields = fieldGroup(asked, entry.kind, start);
  // In front of a colon there is a field's name and nothing else.
  if (/^[\p{L} '-]*:/u.test(behind)) return [fields];
  const words: Group = { start, until: blank, offers: bodyWords(entry.kind) };
  const groups = [fields, words];
  if (entry.kind === "drink" || entry.kind === "prep") groups.push(wholePours(asked, start));
  if (entry.kind === "menu") groups.push(menuLines(asked, start, "- "));
  // A second word is a field's, or part of a name.
  return /\s/.test(before.slice(start).trim()) ? groups.filter((group) => group !== words) : groups;
}

/** What every drink and prep wants, whether the house has one yet or not. */
const usualFields: ReadonlySet<string> = new Set(["family", "glass", "method", "garnish", "from", "keeps", "parts by", "steps"]);

/** The table's fields that the entry has not; one that is on this very line counts as not there. */
function fieldGroup({ usage, entry, line }: Asked, kind: EntryKind, start: number): Group {
  const written = new Map(usage().words(kind, "fields"));
  // Where the house writes neither, what only this kind of entry takes says most about it.
  const fields = fieldsOf(kind)
    .filter(({ name, repeats }) => repeats || (findFieldIn(entry, name)?.line ?? line) === line)
    .sort((one, other) => (written.get(other.name) ?? 0) - (written.get(one.name) ?? 0) || one.entries.length - other.entries.length);
  const pours = kind === "drink" || kind === "prep";
  const offers = fields.map(({ name }): Offer => {
    // A pour is begun more often than a field that no drink of the house has: `sug` is sugar syrup, not the window of it.
    const nearness = pours && !written.has(name) && !usualFields.has(name) ? near.own : near.field;
    return { label: name, text: `${name}: `, kind: CompletionItemKind.Field, near: nearness, about: { what: "field", name, of: kind } };
  });
  return { start, until: /:|$/, offers: inOrder(offers) };
}

const bodyWordsOf: Partial<Record<EntryKind, readonly string[]>> = {
  drink: ["or", "swap", "without", "top", "rinse"],
  prep: ["or", "to"],
  menu: ["section", "-"],
};

function bodyWords(kind: EntryKind): Offer[] {
  return (bodyWordsOf[kind] ?? []).map((word): Offer => {
    return { label: word, text: `${word} `, kind: CompletionItemKind.Keyword, near: near.word, about: { what: "word", name: word } };
  });
}
