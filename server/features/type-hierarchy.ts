/**
 * Drinks as types: a riff under the drink that it is a riff of, and a drink under the family that it names
 * itself. What is asked for downwards is always what would be answered upwards.
 */
import type { Position, TypeHierarchyItem } from "vscode-languageserver-types";
import type { Entry } from "../../grammar/tree.ts";
import type { SpecDocument } from "../house/document.ts";
import { assessDrink } from "../house/drink.ts";
import type { House } from "../house/house.ts";
import { otherFields, pourChanges } from "../house/riff-changes.ts";
import { showStrengthBriefly } from "../house/show-brief.ts";
import { showChanges } from "../house/show-change.ts";
import { type CalledAt, entryOfItem, itemOf, prepareItem } from "./hierarchy.ts";
import { rangeOf } from "./place.ts";
import { usersOf, usesIn } from "./users.ts";

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
  return usesIn(house, entry).flatMap(({ way, of, places: [place] }) => {
    const at = { uri: house.getDocumentOf(entry).uri, range: rangeOf(house, entry, place) };
    return way === "riff" || way === "family" ? (typeItem(house, of, spelling, at) ?? []) : [];
  });
}

/** The riffs of a drink, or the drinks that name a family; null where the drink or the family is gone. */
export function subtypes(house: House, item: TypeHierarchyItem, spelling = (uri: string) => uri): TypeHierarchyItem[] | null {
  const entry = entryOfItem(house, item);
  if (!entry) return null;
  return usersOf(house, entry, entry.kind === "family" ? "family" : "riff").flatMap(({ by }) => typeItem(house, by, spelling) ?? []);
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
