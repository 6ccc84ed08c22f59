/** Above what is declared, who uses it, how a batched drink is poured, a way to batch one and to compare a menu. What that is gets counted only for a lens that is on the screen, and listed only for one that is clicked. */
import type { CodeLens, Location } from "vscode-languageserver-types";
import type { Entry } from "../../grammar/tree.ts";
import { bookIn } from "../house/book/style.ts";
import { entryAt, type SpecDocument } from "../house/document.ts";
import { assessDrink } from "../house/drink.ts";
import { findFieldIn } from "../house/entry.ts";
import type { House } from "../house/house.ts";
import { flatten } from "../house/riff.ts";
import { isBatched, serviceSpecOf } from "../house/service-spec.ts";
import { settingsOf } from "../house/settings.ts";
import { type Measure, showCount } from "../house/show.ts";
import { besideTexts, showService } from "../house/show-service.ts";
import { rangeOf, rangeOnLine } from "./place.ts";
import { type Use, usersOf } from "./users.ts";

/** What an editor runs to show places beside a lens: of its own, since no request of the protocol does it. */
export const showReferences = "mutchkin.showReferences";
/** What an editor runs to ask how much of a drink is to be mixed ahead, and to show it. */
export const batch = "mutchkin.batch";
/** What an editor runs to ask which revision a menu is to be compared with, and to show what changed. */
export const compare = "mutchkin.compare";

interface Row {
  readonly isOf: (house: House, entry: Entry) => boolean;
  readonly uses: (house: House, entry: Entry) => readonly Use[];
  readonly say: (uses: readonly Use[], house: House, entry: Entry, units: Measure["units"] | undefined) => string;
  /** A command of the client that it is for, and that it runs; it stands nowhere else. */
  readonly runs?: string;
}

const isDrink = (_house: House, { kind }: Entry) => kind === "drink";
const isIngredient = (_house: House, { kind }: Entry) => kind === "stock" || kind === "prep";

/** In the order in which they stand. One row each. */
const rows = {
  menus: {
    isOf: isDrink,
    uses: (house, entry) => usersOf(house, entry, "menu"),
    say: ({ length }) => (length === 0 ? "on no menu" : `on ${showCount(length, "menu")}`),
  },
  riffs: {
    isOf: isDrink,
    uses: (house, entry) => usersOf(house, entry, "riff"),
    say: ({ length }) => (length === 0 ? "no riffs" : showCount(length, "riff")),
  },
  uses: {
    isOf: isIngredient,
    uses: (house, entry) => [...usersOf(house, entry, "poured"), ...usersOf(house, entry, "garnish")],
    say: sayUses,
  },
  chapters: {
    isOf: isRecipeOfBook,
    uses: (house, entry) => usersOf(house, entry, "text"),
    say: (uses, house) => sayChapters(uses, house),
  },
  service: {
    isOf: hasBatch,
    uses: () => [],
    say: (_uses, house, entry, units) => sayService(house, entry, units),
  },
  batch: {
    isOf: isDrink,
    uses: () => [],
    say: () => "batch…",
    runs: batch,
  },
  compare: {
    isOf: (_house, { kind }) => kind === "menu",
    uses: () => [],
    say: () => "compare…",
    runs: compare,
  },
} satisfies Record<string, Row>;

export type LensKind = keyof typeof rows;

/** By what a lens is found again when it is to be counted, and its places when it is clicked. */
export interface LensData {
  readonly uri: string;
  readonly line: number;
  readonly shows: LensKind;
}

/** `canRun`: whether the client has a command. */
export function codeLenses(house: House, document: SpecDocument, canRun: (command: string) => boolean = () => false): CodeLens[] {
  const { entries, starts } = document.tree;
  return entries.flatMap((entry, index) => {
    const { name } = entry;
    const line = starts[index]!;
    if (!name?.text) return [];
    return (Object.keys(rows) as LensKind[]).flatMap((shows): CodeLens[] => {
      const data: LensData = { uri: document.uri, line, shows };
      const { isOf, runs }: Row = rows[shows];
      if (runs && !canRun(runs)) return [];
      return isOf(house, entry) ? [{ range: rangeOnLine(line, name.quoted ?? name), data }] : [];
    });
  });
}

/**
 * The lens with its words. A click shows the places where the client can run `showReferences`; elsewhere it is
 * words alone, as where there are no places, and empty where the text has changed since. `units` is the
 * editor's own wish for amounts.
 */
export function resolveCodeLens(house: House, lens: CodeLens, canShow: boolean, units?: Measure["units"]): CodeLens {
  const data = lens.data as LensData;
  const entry = entryOf(house, data);
  const { uses, say, runs }: Row = rows[data.shows];
  const found = entry ? uses(house, entry) : [];
  const command = runs ?? (canShow && found.length > 0 ? showReferences : "");
  return { ...lens, command: { title: entry ? say(found, house, entry, units) : "", command, ...(command && { arguments: [data] }) } };
}

/** The places behind a lens, by its data. `spelling`: how the editor spells a URI. */
export function placesOfLens(house: House, data: LensData, spelling = (uri: string) => uri): Location[] {
  const entry = entryOf(house, data);
  const found = entry ? rows[data.shows].uses(house, entry) : [];
  return found.map(({ by, places: [first] }) => ({ uri: spelling(house.getDocumentOf(by).uri), range: rangeOf(house, by, first) }));
}

function entryOf(house: House, { uri, line, shows }: LensData): Entry | undefined {
  const document = house.document(uri);
  const found = document && entryAt(document, line);
  return found?.line === 0 && rows[shows].isOf(house, found.entry) ? found.entry : undefined;
}

/** A recipe of a book may stand in a chapter or beside it. */
function isRecipeOfBook(house: House, entry: Entry): boolean {
  return (entry.kind === "drink" || entry.kind === "prep") && bookIn(house, house.scopeOf(entry)) !== undefined;
}

/** `told of in 3 chapters`. */
function sayChapters(uses: readonly Use[], house: House): string {
  const chapters = new Set(uses.map(({ by }) => house.getDocumentOf(by)));
  return chapters.size === 0 ? "told of nowhere else" : `told of in ${showCount(chapters.size, "chapter")}`;
}

/** `poured in 7 drinks, 2 preps · garnishes 1 drink`. */
function sayUses(uses: readonly Use[]): string {
  const count = (way: Use["way"], kind: Entry["kind"]) => uses.filter((use) => use.way === way && use.by.kind === kind).length;
  const [drinks, preps, garnished] = [count("poured", "drink"), count("poured", "prep"), count("garnish", "drink")];
  const makers = [drinks > 0 && showCount(drinks, "drink"), preps > 0 && showCount(preps, "prep")].filter(Boolean);
  const said = [makers.length > 0 && `poured in ${makers.join(", ")}`, garnished > 0 && `garnishes ${showCount(garnished, "drink")}`];
  return said.filter(Boolean).join(" · ") || "used nowhere";
}

/** Asked for every drink of a text: most say themselves, without a look at what they are made of, that they have none. */
function hasBatch(house: House, entry: Entry): boolean {
  if (entry.kind !== "drink") return false;
  const mayHave = entry.lines.some(({ text }) => /batched/i.test(text)) || findFieldIn(entry, "from") !== undefined;
  return mayHave && flatten(house, entry).pours.some(isBatched);
}

/** `service: 75 ml batch + 25 ml lemon juice`. */
function sayService(house: House, entry: Entry, units: Measure["units"] | undefined): string {
  const assessment = assessDrink(house, entry);
  const service = serviceSpecOf(house, assessment);
  const settings = settingsOf(house, house.scopeOf(entry));
  const measure = { units: units ?? settings.units, ounceMl: settings.ounceMl };
  return service ? `service: ${showService({ ...service, beside: besideTexts(service, assessment.plan.serves, measure) }, measure)}` : "";
}
