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
import { capital, showCount, showList } from "../house/show.ts";
import { drinkLines, groupsOf, headings, menuLines, rewrittenLine, summaryOf, titleOf } from "./diff-lines.ts";
import type { DiffDrink, DiffReport, DiffThing } from "./diff-schema.ts";
import { fieldLine } from "./diff-words.ts";

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

type Named = (kind: Entry["kind"], name: string) => Entry | undefined;
interface Told {
  readonly houses: Houses;
  readonly report: DiffReport;
  readonly named: Readonly<Record<keyof Houses, Named>>;
}
type At = DiffDrink["after"];

/** Of a report whose files are URIs. `menu`: as it stands now. */
export function diffRows(houses: Houses, report: DiffReport, fileName: (uri: string) => string, menu?: Entry): DiffRows {
  const told: Told = { houses, report, named: { before: firstNamed(houses.before), after: firstNamed(houses.after) } };
  const name = menu?.name?.text;
  return {
    title: `${name ?? "Drinks"}: ${report.before} → ${report.after}`,
    summary: `${capital(summaryOf(report))}.`,
    broken: report.broken.flatMap((one) => brokenRow(told, one, fileName) ?? []),
    sections: name === undefined ? sectionsOf(told, report, "Nothing differs.") : menuFirst(told, name),
  };
}

/** A line that did not read then and is the same now hides no change. */
function brokenRow(
  { houses }: Told,
  { file, side, lines }: DiffReport["broken"][number],
  fileName: (uri: string) => string,
): Row | undefined {
  if (houses.before.document(file)?.tree === houses.after.document(file)?.tree) return undefined;
  const which = `${lines.length === 1 ? "line" : "lines"} ${showList(lines.map(String))}`;
  const text = `${fileName(file)}${side === "before" ? ", as it was" : ""}: ${which} could not be read, and so not compared.`;
  return row(text, { uri: file, line: lines[0]! - 1, side: side === "after" ? "now" : "then" });
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
  // That they are on it need not be said of each.
  const its = on.map((one) => ({ ...one, menus: one.menus.filter((menu) => menu !== name) }));
  return [
    ...(own.length > 0 ? [{ heading: "The menu", groups: own.map((one) => menuGroup(told, one)) }] : []),
    ...headed("Its drinks", sectionsOf(told, { drinks: its, things: behind, menus: [] }, none)),
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
  const { hurt, said } = drinkLines(drink);
  const [then, now] = [entryAt(told.houses.before, drink.before), entryAt(told.houses.after, drink.after)];
  const pour = then && now && drink.pours ? newPourIn(now, then) : undefined;
  const places = new Map<string, RowPlace | undefined>([
    [drink.pours, lineOf(drink.after, pour)],
    ...drink.fields.map((field) => [fieldLine(field), fieldPlace(drink.after, now, field.field)] as const),
  ]);
  return {
    title: titleOf(drink),
    ...placesOf(drink),
    rows: [
      ...hurt.map((text) => row(capital(text), undefined, "hurt")),
      ...said.map((text) => row(text, places.get(text))),
      ...drink.because.map((cause) => row(`through ${cause}`, placeOfCause(told, cause), "through")),
    ],
  };
}

function thingGroup(told: Told, thing: DiffThing): RowGroup {
  const [then, now] = [entryAt(told.houses.before, thing.before), entryAt(told.houses.after, thing.after)];
  const { kind, name, how, pours, fields, moved, also, menus } = thing;
  const pour = then && now && pours ? newPourIn(now, then) : undefined;
  const placeOfDrink = (drink: string) => placeOfNamed(told, "drink", drink);
  return {
    title: `${kind} ${name}, ${how}${moved.length > 0 ? ` (moves ${showCount(moved.length, "drink")})` : ""}`,
    ...placesOf(thing),
    rows: [
      ...(pours ? [row(pours, lineOf(thing.after, pour))] : []),
      ...fields.map((field) => row(fieldLine(field), fieldPlace(thing.after, now, field.field))),
      // What that comes to is told of each drink itself.
      ...moved.map(({ drink }) => row(`moves ${drink}`, placeOfDrink(drink))),
      ...also.map((drink) => row(`is in ${drink}, which was changed itself`, placeOfDrink(drink))),
      ...menus.map((menu) => row(`on ${menu}`, placeOfNamed(told, "menu", menu), "through")),
    ],
  };
}

function menuGroup(told: Told, menu: DiffReport["menus"][number]): RowGroup {
  const { houses, named } = told;
  const [then, now] = [named.before("menu", menu.name), named.after("menu", menu.name)];
  const nothing = { ...menu, added: [], removed: [], renamed: [], prices: [], rangeBefore: null, rangeAfter: null };
  const rows = (part: Partial<typeof menu>, place?: RowPlace) => menuLines({ ...nothing, ...part }).map((text) => row(text, place));
  return {
    title: `${menu.name}, ${menu.how}`,
    ...placesOf({ before: atHead(houses.before, then), after: atHead(houses.after, now) }),
    rows: [
      ...menu.added.flatMap((drink) => rows({ added: [drink] }, placeOfNamed(told, "drink", drink))),
      ...menu.removed.flatMap((drink) => rows({ removed: [drink] }, placeOfNamed(told, "drink", drink))),
      ...menu.renamed.flatMap((one) => rows({ renamed: [one] }, placeOfNamed(told, "drink", one.after))),
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
function placeOfCause(told: Told, cause: string): RowPlace | undefined {
  const { report } = told;
  const found =
    report.things.find(({ kind, name }) => `${kind} ${name}` === cause) ?? report.drinks.find(({ name }) => `drink ${name}` === cause);
  const [, menu] = /^menu (.*)$/s.exec(cause) ?? [];
  return found ? placesOf(found).place : menu === undefined ? undefined : placeOfNamed(told, "menu", menu);
}

function placeOfNamed({ houses, named }: Told, kind: Entry["kind"], name: string): RowPlace | undefined {
  const now = atHead(houses.after, named.after(kind, name));
  return placed(now, "now") ?? placed(atHead(houses.before, named.before(kind, name)), "then");
}

function entryAt(house: House, at: At): Entry | undefined {
  const tree = at ? house.document(at.file)?.tree : undefined;
  return tree?.entries[tree.starts.indexOf(at!.line - 1)];
}

function atHead(house: House, entry: Entry | undefined): At {
  return entry ? { file: house.getDocumentOf(entry).uri, line: house.getLineOf(entry) + 1 } : null;
}

/** Finds the first of its name; a house is looked through once, and only if it is asked for. */
function firstNamed(house: House): Named {
  let found: Map<string, Entry> | undefined;
  return (kind, name) => {
    if (!found) {
      found = new Map();
      for (const { tree } of house.documents()) {
        for (const entry of tree.entries) {
          const key = entry.name?.text ? `${entry.kind} ${fold(entry.name.text)}` : "";
          if (key && !found.has(key)) found.set(key, entry);
        }
      }
    }
    return found.get(`${kind} ${fold(name)}`);
  };
}
