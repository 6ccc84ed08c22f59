/**
 * Drinks as types: a riff under the drink that it is a riff of, and a drink under the family that it names
 * itself. What is asked for downwards is always what would be answered upwards.
 */
import type { Position, TypeHierarchyItem } from "vscode-languageserver-types";
import type { Entry } from "../../grammar/tree.ts";
import type { SpecDocument } from "../house/document.ts";
import { assessDrink } from "../house/drink.ts";
import { findFieldIn } from "../house/entry.ts";
import type { House } from "../house/house.ts";
import { flatten } from "../house/riff.ts";
import { otherFields, pourChanges } from "../house/riff-changes.ts";
import { showStrengthBriefly } from "../house/show-brief.ts";
import { showChanges } from "../house/show-change.ts";
import { type CalledAt, entryOfItem, itemOf, prepareItem } from "./hierarchy.ts";
import { mentionsIn, mentionsOf } from "./mentions.ts";
import { rangeOf } from "./place.ts";
import { usersOf } from "./users.ts";

export function prepareTypeHierarchy(
  house: House,
  document: SpecDocument,
  position: Position,
  spelling = (uri: string) => uri,
): TypeHierarchyItem[] | null {
  return prepareItem(house, document, position, (entry, at) => typeItem(house, entry, spelling, at));
}

/** The drink that a riff is a riff of, then the family that the drink names itself; null where the drink is gone. */
export function supertypes(house: House, item: TypeHierarchyItem, spelling = (uri: string) => uri): TypeHierarchyItem[] | null {
  const entry = entryOfItem(house, item);
  if (!entry) return null;
  if (entry.kind !== "drink") return [];
  const parent = flatten(house, entry).parent?.entry;
  const line = findFieldIn(entry, "family")?.line;
  const family = mentionsIn(house, entry).find(({ place }) => place.line === line);
  const called = family && { uri: house.getDocumentOf(entry).uri, range: rangeOf(house, entry, family.place) };
  return [parent && typeItem(house, parent, spelling), family && typeItem(house, family.found.entry, spelling, called)].flatMap(
    (one) => one ?? [],
  );
}

/** The riffs of a drink, or the drinks that name a family; null where the drink or the family is gone. */
export function subtypes(house: House, item: TypeHierarchyItem, spelling = (uri: string) => uri): TypeHierarchyItem[] | null {
  const entry = entryOfItem(house, item);
  if (!entry) return null;
  return below(house, entry).flatMap((one) => typeItem(house, one, spelling) ?? []);
}

function below(house: House, entry: Entry): Entry[] {
  if (entry.kind === "drink") return usersOf(house, entry, "riff").map(({ by }) => by);
  if (entry.kind !== "family") return [];
  const members = [...mentionsOf(house, entry)].filter(
    ({ entry: by, mention }) => by.kind === "drink" && findFieldIn(by, "family")?.line === mention.place.line,
  );
  return [...new Set(members.map(({ entry: by }) => by))];
}

/** Absent for what is neither a drink nor a family. */
function typeItem(house: House, entry: Entry, spelling: (uri: string) => string, at?: CalledAt): TypeHierarchyItem | undefined {
  if (entry.kind !== "drink" && entry.kind !== "family") return undefined;
  return itemOf(house, entry, { ...(at && { at }), detail: entry.kind === "drink" ? inShort(house, entry) : "family", spelling });
}

/** `21 % vol · 60 ml oloroso sherry for 50 ml aged rum; without egg white`. */
function inShort(house: House, entry: Entry): string {
  const { flat, outcome } = assessDrink(house, entry);
  return [showStrengthBriefly(outcome.figure("strengthPct")), showChanges(pourChanges(house, flat), otherFields(flat))]
    .filter(Boolean)
    .join(" · ");
}
