/**
 * A comparison as rows that lead to their places, for an editor: what belongs to one menu first, where one was asked
 * about. The words are those of `mutchkin diff`.
 */
import type { Entry } from "../../grammar/tree.ts";
import type { Houses } from "../house/compare/pair.ts";
import { findFieldIn, pourOn } from "../house/entry.ts";
import type { House } from "../house/house.ts";
import { findPriced } from "../house/menu.ts";
import { fold } from "../house/names.ts";
import { capital, showCount } from "../house/show.ts";
import { brokenLine, drinkLines, groupsOf, headings, menuLines, rewrittenLine, summaryOf, titleOf } from "./diff-lines.ts";
import type { DiffDrink, DiffReport, DiffThing } from "./diff-schema.ts";
import { changeLines, effectLines, fieldLine } from "./diff-words.ts";

/** A line of a text, the first one being 0, as it stands now or as it stood then. */
export interface RowPlace {
  readonly uri: string;
  readonly line: number;
  readonly side: "now" | "then";
}

export interface Row {
  readonly text: string;
  /** What a guest could be hurt by, what else is otherwise, and through what. */
  readonly kind: "hurt" | "said" | "through";
  readonly place?: RowPlace;
}

export interface RowGroup {
  readonly title: string;
  /** Where it stands now, else where it stood. */
  readonly place?: RowPlace;
  /** Where it stood, for what is there on both sides. */
  readonly was?: RowPlace;
  readonly rows: readonly Row[];
}

export interface RowSection {
  readonly heading: string;
  readonly groups: readonly RowGroup[];
  /** What has no group: that there is nothing, or what needs no more than its name. */
  readonly note?: string;
}

export interface DiffRows {
  readonly title: string;
  readonly summary: string;
  /** What could not be read, and so was not compared. */
  readonly broken: readonly Row[];
  readonly sections: readonly RowSection[];
}

interface Told {
  readonly houses: Houses;
  readonly report: DiffReport;
}
type At = DiffDrink["after"];

/** Of a report whose files are URIs. `menu`: as it stands now. */
export function diffRows(told: Told, fileName: (uri: string) => string, menu?: Entry): DiffRows {
  const { report } = told;
  const name = menu?.name?.text;
  return {
    title: `${name ?? "Drinks"}: ${report.before} → ${report.after}`,
    summary: `${capital(summaryOf(report))}.`,
    broken: report.broken.map((one) => ({
      text: `${capital(brokenLine({ ...one, file: fileName(one.file) }))}.`,
      kind: "said",
      place: { uri: one.file, line: one.lines[0]! - 1, side: one.side === "after" ? "now" : "then" },
    })),
    sections: name === undefined ? sectionsOf(told, report, "Nothing differs.") : menuFirst(told, name),
  };
}

function sectionsOf(told: Told, { drinks, things, menus }: Pick<DiffReport, "drinks" | "things" | "menus">, none: string): RowSection[] {
  const { told: changed, moved, rewritten } = groupsOf({ ...told.report, drinks });
  const sections: RowSection[] = [
    { heading: "Changed", groups: changed.map((one) => drinkGroup(told, one)) },
    { heading: headings.moved, groups: moved.map((one) => drinkGroup(told, one)) },
    { heading: headings.things, groups: things.map((one) => thingGroup(told, one)) },
    { heading: headings.menus, groups: menus.map((one) => menuGroup(told, one)) },
    { heading: "Only rewritten", groups: [], ...(rewritten.length > 0 && { note: rewrittenLine(rewritten) }) },
  ];
  const found = sections.filter(({ groups, note }) => groups.length > 0 || note);
  return found.length > 0 ? found : [{ heading: "Changed", groups: [], note: none }];
}

/** The menu's prices and drinks, then the rest of the house: what can hurt a guest there is told as openly. */
function menuFirst(told: Told, name: string): RowSection[] {
  const { drinks, things, menus } = told.report;
  const [own, others] = parted(menus, (one) => one.name === name);
  const left = new Set(own.flatMap(({ removed }) => removed));
  const [on, off] = parted(drinks, (one) => one.menus.includes(name) || left.has(one.name) || left.has(one.oldName ?? ""));
  const [behind, beside] = parted(things, (one) => one.menus.includes(name));
  const none = own.length > 0 ? "No drink on it differs." : "Nothing on it differs.";
  const isMore = off.length + beside.length + others.length > 0;
  return [
    ...(own.length > 0 ? [{ heading: name, groups: own.map((one) => menuGroup(told, one)) }] : []),
    ...headed(`On ${name}`, sectionsOf(told, { drinks: on, things: behind, menus: [] }, none)),
    ...(isMore ? headed("Elsewhere", sectionsOf(told, { drinks: off, things: beside, menus: others }, "")) : []),
  ];
}

const headed = (where: string, sections: readonly RowSection[]) =>
  sections.map((section) => ({ ...section, heading: `${where}: ${section.heading[0]!.toLowerCase()}${section.heading.slice(1)}` }));

function parted<T>(all: readonly T[], isIn: (one: T) => boolean): [T[], T[]] {
  return [all.filter(isIn), all.filter((one) => !isIn(one))];
}

// Groups

function drinkGroup(told: Told, drink: DiffDrink): RowGroup {
  const { hurt } = drinkLines(drink);
  const [then, now] = [entryAt(told.houses.before, drink.before), entryAt(told.houses.after, drink.after)];
  const { fields, effects, how, because } = drink;
  const pour = then && now ? newPourIn(now, then) : undefined;
  const written: Row[] = [
    ...changeLines({ ...drink, fields: [] }).map((text) => row(text, lineOf(drink.after, pour))),
    ...fields.map((field) => row(fieldLine(field), fieldPlace(drink.after, now, field.field))),
  ];
  return {
    title: titleOf(drink),
    ...placesOf(drink),
    rows: [
      ...hurt.map((text) => row(capital(text), undefined, "hurt")),
      ...(how === "moved" ? [] : written),
      ...(effects ? effectLines(effects).map((text) => row(text)) : []),
      ...because.map((cause) => row(`through ${cause}`, placeOfCause(told, cause), "through")),
    ],
  };
}

function thingGroup(told: Told, thing: DiffThing): RowGroup {
  const now = entryAt(told.houses.after, thing.after);
  const { kind, name, how, fields, moved, menus } = thing;
  return {
    title: `${kind} ${name}, ${how}${moved.length > 0 ? ` (moves ${showCount(moved.length, "drink")})` : ""}`,
    ...placesOf(thing),
    rows: [
      ...fields.map((field) => row(fieldLine(field), fieldPlace(thing.after, now, field.field))),
      ...moved.map(({ drink, what }) => row(`${drink}: ${what}`, placeOfNamed(told, "drink", drink))),
      ...menus.map((menu) => row(`on ${menu}`, placeOfNamed(told, "menu", menu), "through")),
    ],
  };
}

function menuGroup(told: Told, menu: DiffReport["menus"][number]): RowGroup {
  const { houses } = told;
  const [then, now] = [find(houses.before, "menu", menu.name), find(houses.after, "menu", menu.name)];
  const nothing = { ...menu, added: [], removed: [], prices: [], rangeBefore: null, rangeAfter: null };
  const rows = (part: Partial<typeof menu>, place?: RowPlace) => menuLines({ ...nothing, ...part }).map((text) => row(text, place));
  return {
    title: `${menu.name}, ${menu.how}`,
    ...placesOf({ before: atHead(houses.before, then), after: atHead(houses.after, now) }),
    rows: [
      ...menu.added.flatMap((drink) => rows({ added: [drink] }, placeOfNamed(told, "drink", drink))),
      ...menu.removed.flatMap((drink) => rows({ removed: [drink] }, placeOfNamed(told, "drink", drink))),
      ...menu.prices.flatMap((price) => {
        const line = now && findPriced(now, price.drink)?.line;
        return rows({ prices: [price] }, lineOf(atHead(houses.after, now), line));
      }),
      ...rows({ rangeBefore: menu.rangeBefore, rangeAfter: menu.rangeAfter }),
    ],
  };
}

function row(text: string, place?: RowPlace, kind: Row["kind"] = "said"): Row {
  return { text, kind, ...(place && { place }) };
}

// Places

function placesOf({ before, after }: Pick<DiffDrink, "before" | "after">): Pick<RowGroup, "place" | "was"> {
  const [then, now] = [placed(before, "then"), placed(after, "now")];
  const place = now ?? then;
  return { ...(place && { place }), ...(now && then && { was: then }) };
}

function placed(at: At, side: RowPlace["side"]): RowPlace | undefined {
  return at ? { uri: at.file, line: at.line - 1, side } : undefined;
}

/** A line of what starts there, counted from its head. */
function lineOf(at: At, line: number | undefined): RowPlace | undefined {
  return at && line !== undefined ? { uri: at.file, line: at.line - 1 + line, side: "now" } : undefined;
}

function fieldPlace(at: At, entry: Entry | undefined, field: string): RowPlace | undefined {
  return lineOf(at, entry && findFieldIn(entry, field)?.line);
}

/** The first line that pours something and does not stand in the earlier entry. */
function newPourIn(now: Entry, then: Entry): number | undefined {
  const old = new Set(then.lines.map(({ text }) => text.trim()));
  const line = now.lines.findIndex(({ content, text }) => pourOn(content) && !old.has(text.trim()));
  return line < 0 ? undefined : line;
}

/** Of `prep plain syrup` or `drink Slip`, as a drink tells through what it moved. */
function placeOfCause({ report }: Told, cause: string): RowPlace | undefined {
  const found =
    report.things.find(({ kind, name }) => `${kind} ${name}` === cause) ?? report.drinks.find(({ name }) => `drink ${name}` === cause);
  return found && placesOf(found).place;
}

function placeOfNamed({ houses }: Told, kind: Entry["kind"], name: string): RowPlace | undefined {
  const now = atHead(houses.after, find(houses.after, kind, name));
  return placed(now, "now") ?? placed(atHead(houses.before, find(houses.before, kind, name)), "then");
}

function entryAt(house: House, at: At): Entry | undefined {
  const tree = at ? house.document(at.file)?.tree : undefined;
  return tree?.entries[tree.starts.indexOf(at!.line - 1)];
}

function atHead(house: House, entry: Entry | undefined): At {
  return entry ? { file: house.getDocumentOf(entry).uri, line: house.getLineOf(entry) + 1 } : null;
}

/** The first of its name, as a comparison takes it. */
function find(house: House, kind: Entry["kind"], name: string): Entry | undefined {
  const key = fold(name);
  for (const { tree } of house.documents()) {
    const found = tree.entries.find((entry) => entry.kind === kind && entry.name && fold(entry.name.text) === key);
    if (found) return found;
  }
  return undefined;
}
