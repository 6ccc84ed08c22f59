/** Items of the hierarchies: entries as an editor's tree shows them, and found again when it opens one. */
import type { Position, Range, SymbolKind } from "vscode-languageserver-types";
import type { Entry } from "../../grammar/tree.ts";
import { classOf } from "../house/declarations.ts";
import type { SpecDocument } from "../house/document.ts";
import type { House } from "../house/house.ts";
import { meantAt, ownNames } from "./mentions.ts";
import { cursorAt, rangeOf, rangeOfEntry } from "./place.ts";
import { symbolKinds } from "./symbols.ts";

/** What both hierarchies of the protocol call an item. */
export interface HierarchyItem {
  readonly name: string;
  readonly kind: SymbolKind;
  readonly detail?: string;
  readonly uri: string;
  readonly range: Range;
  readonly selectionRange: Range;
  readonly data?: unknown;
}

/** By what an item is found again: its name, since lines move; of equal names the one that stands nearest to where it stood. */
interface ItemData {
  readonly uri: string;
  readonly line: number;
  readonly kind: Entry["kind"];
  readonly name: string;
}

/** A place in a text where an entry is called, for one that stands in no file. */
export interface CalledAt {
  readonly uri: string;
  readonly range: Range;
}

/** What the cursor means, by any of its names; null where that is nothing, or nothing that the hierarchy holds. */
export function prepareItem(
  house: House,
  document: SpecDocument,
  position: Position,
  itemFor: (entry: Entry, at: CalledAt) => HierarchyItem | undefined,
): HierarchyItem[] | null {
  const cursor = cursorAt(document, position);
  const meant = cursor && meantAt(house, cursor);
  const item = meant && itemFor(meant.found.entry, { uri: document.uri, range: rangeOf(house, cursor.entry, meant.place) });
  return item ? [item] : null;
}

/** The larder is in no file: what only it declares stands where it is called. Absent for an entry without a name. */
export function itemOf(
  house: House,
  entry: Entry,
  { at, detail, spelling }: { readonly at?: CalledAt; readonly detail: string; readonly spelling: (uri: string) => string },
): HierarchyItem | undefined {
  const [head] = ownNames(entry);
  if (!head || !entry.name?.text || entry.kind === "preamble" || entry.kind === "text") return undefined;
  const shown = { name: head.text, kind: symbolKinds[entry.kind] };
  const found = { kind: entry.kind, name: head.text };
  if (house.isLarder(entry)) {
    if (!at) return undefined;
    const data: ItemData = { ...found, uri: at.uri, line: at.range.start.line };
    return { ...shown, detail: `${detail} · from the larder`, uri: spelling(at.uri), range: at.range, selectionRange: at.range, data };
  }
  const { uri } = house.getDocumentOf(entry);
  const line = house.getLineOf(entry);
  const data: ItemData = { ...found, uri, line };
  return {
    ...shown,
    detail,
    uri: spelling(uri),
    range: rangeOfEntry(entry, line),
    selectionRange: rangeOf(house, entry, head.place),
    data,
  };
}

/** The entry that an item stands for; absent where the text has it no more. */
export function entryOfItem(house: House, { data }: HierarchyItem): Entry | undefined {
  if (!data) return undefined;
  const { uri, line, kind, name } = data as ItemData;
  const document = house.document(uri);
  if (!document) return undefined;
  const { entries, starts } = document.tree;
  const named = entries.flatMap((entry, index) =>
    entry.kind === kind && entry.name?.text === name ? [{ entry, away: Math.abs(starts[index]! - line) }] : [],
  );
  return named.sort((one, other) => one.away - other.away)[0]?.entry ?? inLarder(house, document, kind, name);
}

function inLarder(house: House, document: SpecDocument, kind: Entry["kind"], name: string): Entry | undefined {
  const nameClass = classOf({ kind });
  const found = nameClass && house.lookup(house.scopeOf(document), nameClass, name)[0]?.entry;
  return found && house.isLarder(found) && found.kind === kind ? found : undefined;
}
