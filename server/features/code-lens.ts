/** Above what is declared, who uses it. What that is gets counted only for a lens that is on the screen, and listed only for one that is clicked. */
import type { CodeLens, Location } from "vscode-languageserver-types";
import type { Entry } from "../../grammar/tree.ts";
import { entryAt, type SpecDocument } from "../house/document.ts";
import type { House } from "../house/house.ts";
import { showCount } from "../house/show.ts";
import { rangeOf, rangeOnLine } from "./place.ts";
import { type Use, usersOf } from "./users.ts";

/** What an editor runs to show places beside a lens: of its own, since no request of the protocol does it. */
export const showReferences = "mutchkin.showReferences";

interface Row {
  readonly of: readonly Entry["kind"][];
  readonly uses: (house: House, entry: Entry) => readonly Use[];
  readonly say: (uses: readonly Use[]) => string;
}

/** In the order in which they stand. One row each. */
const rows = {
  menus: {
    of: ["drink"],
    uses: (house, entry) => usersOf(house, entry, "menu"),
    say: ({ length }) => (length === 0 ? "on no menu" : `on ${showCount(length, "menu")}`),
  },
  riffs: {
    of: ["drink"],
    uses: (house, entry) => usersOf(house, entry, "riff"),
    say: ({ length }) => (length === 0 ? "no riffs" : showCount(length, "riff")),
  },
  uses: {
    of: ["stock", "prep"],
    uses: (house, entry) => [...usersOf(house, entry, "poured"), ...usersOf(house, entry, "garnish")],
    say: sayUses,
  },
} satisfies Record<string, Row>;

export type LensKind = keyof typeof rows;

/** By what a lens is found again when it is to be counted, and its places when it is clicked. */
export interface LensData {
  readonly uri: string;
  readonly line: number;
  readonly shows: LensKind;
}

export function codeLenses(document: SpecDocument): CodeLens[] {
  const { entries, starts } = document.tree;
  return entries.flatMap((entry, index) => {
    const { name } = entry;
    const line = starts[index]!;
    if (!name?.text) return [];
    return (Object.keys(rows) as LensKind[]).flatMap((shows): CodeLens[] => {
      const data: LensData = { uri: document.uri, line, shows };
      return isOf(rows[shows], entry) ? [{ range: rangeOnLine(line, name.quoted ?? name), data }] : [];
    });
  });
}

/**
 * The lens with its words. A click shows the places where the client can run `showReferences`; elsewhere it is
 * words alone, as where there are no places, and empty where the text has changed since.
 */
export function resolveCodeLens(house: House, lens: CodeLens, canShow: boolean): CodeLens {
  const data = lens.data as LensData;
  const entry = entryOf(house, data);
  const { uses, say } = rows[data.shows];
  const found = entry ? uses(house, entry) : [];
  const command = canShow && found.length > 0 ? showReferences : "";
  return { ...lens, command: { title: entry ? say(found) : "", command, ...(command && { arguments: [data] }) } };
}

/** The places behind a lens, by its data. `spelling`: how the editor spells a URI. */
export function placesOfLens(house: House, data: LensData, spelling = (uri: string) => uri): Location[] {
  const entry = entryOf(house, data);
  const found = entry ? rows[data.shows].uses(house, entry) : [];
  return found.map(({ by, place }) => ({ uri: spelling(house.getDocumentOf(by).uri), range: rangeOf(house, by, place) }));
}

function entryOf(house: House, { uri, line, shows }: LensData): Entry | undefined {
  const document = house.document(uri);
  const found = document && entryAt(document, line);
  return found?.line === 0 && isOf(rows[shows], found.entry) ? found.entry : undefined;
}

function isOf({ of }: Row, { kind }: Entry): boolean {
  return of.includes(kind);
}

/** `poured in 7 drinks, 2 preps · garnishes 1 drink`. */
function sayUses(uses: readonly Use[]): string {
  const count = (way: Use["way"], kind: Entry["kind"]) => uses.filter((use) => use.way === way && use.by.kind === kind).length;
  const [drinks, preps, garnished] = [count("poured", "drink"), count("poured", "prep"), count("garnish", "drink")];
  const makers = [drinks > 0 && showCount(drinks, "drink"), preps > 0 && showCount(preps, "prep")].filter(Boolean);
  const said = [makers.length > 0 && `poured in ${makers.join(", ")}`, garnished > 0 && `garnishes ${showCount(garnished, "drink")}`];
  return said.filter(Boolean).join(" · ") || "used nowhere";
}
