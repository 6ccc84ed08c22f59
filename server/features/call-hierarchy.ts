/**
 * Drinks and preps as calls of what they pour: upwards who pours it, garnishes with it or lists it, downwards
 * what it is made of. Each answer is one step and the editor asks for the next, so preps that are made of one another never loop here.
 */
import type { CallHierarchyIncomingCall, CallHierarchyItem, CallHierarchyOutgoingCall, Position } from "vscode-languageserver-types";
import type { Entry } from "../../grammar/tree.ts";
import type { Place, SpecDocument } from "../house/document.ts";
import type { House } from "../house/house.ts";
import { pouredIn } from "../house/poured.ts";
import { showPourAmount } from "../house/show-pour.ts";
import { type CalledAt, entryOfItem, itemOf, prepareItem } from "./hierarchy.ts";
import { rangeOf } from "./place.ts";
import { type Use, usersOf, usesIn, type Way } from "./users.ts";

const ways: readonly Way[] = ["poured", "garnish", "menu"];

export function prepareCallHierarchy(
  house: House,
  document: SpecDocument,
  position: Position,
  spelling = (uri: string) => uri,
): CallHierarchyItem[] | null {
  return prepareItem(house, document, position, (entry, at) => callItem(house, entry, entry.kind, spelling, at));
}

/** Who pours it, garnishes with it or lists it, each once, with the places in its text; null where the asked is gone. */
export function incomingCalls(house: House, item: CallHierarchyItem, spelling = (uri: string) => uri): CallHierarchyIncomingCall[] | null {
  const asked = entryOfItem(house, item);
  if (!asked) return null;
  const uses = ways.flatMap((way) => usersOf(house, asked, way));
  return each(uses, "by").flatMap(({ entry, uses, places }) => {
    const from = callItem(house, entry, describe(house, uses, entry.kind), spelling);
    return from ? [{ from, fromRanges: places.map((place) => rangeOf(house, entry, place)) }] : [];
  });
}

/** What it pours, garnishes with or lists, each once, with the places in its own text; null where the asked is gone. */
export function outgoingCalls(house: House, item: CallHierarchyItem, spelling = (uri: string) => uri): CallHierarchyOutgoingCall[] | null {
  const asked = entryOfItem(house, item);
  if (!asked) return null;
  const uses = usesIn(house, asked).filter(({ way }) => ways.includes(way));
  return each(uses, "of").flatMap(({ entry, uses, places }) => {
    const fromRanges = places.map((place) => rangeOf(house, asked, place));
    const at = { uri: house.getDocumentOf(asked).uri, range: fromRanges[0]! };
    const to = callItem(house, entry, describe(house, uses, entry.kind), spelling, at);
    return to ? [{ to, fromRanges }] : [];
  });
}

interface Called {
  readonly entry: Entry;
  readonly uses: readonly Use[];
  readonly places: readonly Place[];
}

/** Who or what is used, each once, in the order of its first use; a place that two ways share is one. */
function each(uses: readonly Use[], side: "by" | "of"): Called[] {
  const entries = new Map<Entry, Use[]>();
  for (const use of uses) entries.set(use[side], [...(entries.get(use[side]) ?? []), use]);
  return [...entries].map(([entry, uses]) => ({ entry, uses, places: [...new Set(uses.flatMap(({ places }) => places))] }));
}

const kinds: ReadonlySet<Entry["kind"]> = new Set(["stock", "prep", "drink", "menu"]);

/** Absent for what nobody pours, garnishes with or lists. */
function callItem(
  house: House,
  entry: Entry,
  detail: string,
  spelling: (uri: string) => string,
  at?: CalledAt,
): CallHierarchyItem | undefined {
  return kinds.has(entry.kind) ? itemOf(house, entry, { ...(at && { at }), detail, spelling }) : undefined;
}

/** `drink · 17.5 ml`, `stock · 2 dashes, garnish`, `prep · or 20 ml`: what it is, and how much of it is used how. */
function describe(house: House, uses: readonly Use[], kind: Entry["kind"]): string {
  const how = uses.flatMap(({ way, by, of }) => (way === "poured" ? amountsIn(house, by, of) : way === "garnish" ? ["garnish"] : []));
  return how.length > 0 ? `${kind} · ${how.join(", ")}` : kind;
}

/** As they are written, with what is inherited; an alternative as one. */
function amountsIn(house: House, by: Entry, of: Entry): string[] {
  return pouredIn(house, by).flatMap(({ entry, place, ingredient, amount }) => {
    const text = ingredient.resolution.found?.entry === of && showPourAmount(amount);
    return text ? `${entry.lines[place.line]?.content.kind === "or" ? "or " : ""}${text}` : [];
  });
}
