/** Everywhere that something declared is called by one of its names. */
import { type DocumentHighlight, DocumentHighlightKind, type Location, type Position } from "vscode-languageserver-types";
import type { Entry } from "../../grammar/tree.ts";
import type { SpecDocument } from "../house/document.ts";
import type { House } from "../house/house.ts";
import { type Mention, meantAt, mentionsIn, mentionsOf, ownNames } from "./mentions.ts";
import { cursorAt, rangeOf } from "./place.ts";
import { usersOf, type Way } from "./users.ts";

/** In every text at hand, the declaration's own names last if they are wanted. `spelling`: how the editor spells a URI. */
export function references(
  house: House,
  document: SpecDocument,
  position: Position,
  withDeclaration: boolean,
  spelling = (uri: string) => uri,
): Location[] {
  const meant = meantIn(house, document, position);
  if (!meant) return [];
  const { entry } = meant.found;
  const found = [...mentionsOf(house, entry)];
  if (withDeclaration && !house.isLarder(entry)) found.push(...ownNames(entry).map((mention) => ({ entry, mention })));
  return found.map(({ entry: at, mention }) => ({
    uri: spelling(house.getDocumentOf(at).uri),
    range: rangeOf(house, at, mention.place),
  }));
}

/** What counts as made with an entry, by its kind; of any other kind the drinks and preps that name it. */
const makes: Partial<Record<Entry["kind"], readonly Way[]>> = {
  drink: ["riff"],
  family: ["family"],
  stock: ["poured", "garnish"],
  prep: ["poured", "garnish"],
};

/** What is made with it: the riffs of a drink, the drinks of a family, what a stock or a prep is poured in; the menus are no such thing. */
export function implementations(house: House, document: SpecDocument, position: Position, spelling = (uri: string) => uri): Location[] {
  const meant = meantIn(house, document, position);
  if (!meant) return [];
  return [...makersOf(house, meant.found.entry)].flatMap((entry) => {
    const [head] = ownNames(entry);
    return head ? [{ uri: spelling(house.getDocumentOf(entry).uri), range: rangeOf(house, entry, head.place) }] : [];
  });
}

function makersOf(house: House, of: Entry): ReadonlySet<Entry> {
  const ways = makes[of.kind];
  if (ways) return new Set(ways.flatMap((way) => usersOf(house, of, way)).map(({ by }) => by));
  return new Set([...mentionsOf(house, of)].map(({ entry }) => entry).filter(({ kind }) => kind === "drink" || kind === "prep"));
}

/** The same within one file: what is written declares (`Write`), what is called uses (`Read`). */
export function documentHighlights(house: House, document: SpecDocument, position: Position): DocumentHighlight[] {
  const meant = meantIn(house, document, position);
  if (!meant) return [];
  return document.tree.entries.flatMap((entry) => {
    const highlight = (mentions: readonly Mention[], kind: DocumentHighlightKind) =>
      mentions.filter(({ found }) => found.entry === meant.found.entry).map(({ place }) => ({ range: rangeOf(house, entry, place), kind }));
    return [...highlight(ownNames(entry), DocumentHighlightKind.Write), ...highlight(mentionsIn(house, entry), DocumentHighlightKind.Read)];
  });
}

function meantIn(house: House, document: SpecDocument, position: Position): Mention | undefined {
  const cursor = cursorAt(document, position);
  return cursor && meantAt(house, cursor);
}
