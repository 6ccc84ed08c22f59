/** Two states of some specs beside each other: the comparison of `server/house/compare/`, as data and in order. */
import type { Entry } from "../../grammar/tree.ts";
import type { Arrival } from "../house/compare/arrival.ts";
import { compare, type DrinkCompared, type ThingCompared } from "../house/compare/compare.ts";
import type { FieldCompared } from "../house/compare/fields.ts";
import { compared, type Effects } from "../house/compare/figures.ts";
import type { Houses } from "../house/compare/pair.ts";
import { linesOf } from "../house/entry.ts";
import type { House } from "../house/house.ts";
import { menuEntryOf } from "../house/menu.ts";
import { showPourChanges } from "../house/show-change.ts";
import type { DiffArrival, DiffDrink, DiffEffects, DiffReport, DiffThing } from "./diff-schema.ts";
import { effectLines, hurtLines } from "./diff-words.ts";

export interface Diffing {
  readonly before: string;
  readonly after: string;
  /** How a text is named to the reader. */
  pathOf(uri: string): string;
  /** Whether a text was asked for; the others give names their meaning. */
  wanted(uri: string): boolean;
  /** Nothing is told of what moved in the other texts. */
  readonly alone?: boolean;
  progress?(done: number, all: number): void;
}

export function diff(houses: Houses, diffing: Diffing): DiffReport {
  const isWanted = ({ before, after }: { before?: Entry; after?: Entry }) =>
    [before && houses.before.findDocumentOf(before), after && houses.after.findDocumentOf(after)].some(
      (document) => document && diffing.wanted(document.uri),
    );
  const comparison = compare(houses, diffing.progress, diffing.alone ? isWanted : undefined);
  const on = { before: menusOf(houses.before), after: menusOf(houses.after) };
  const drinks = comparison.drinks.filter(isWanted).map((one) => drinkReport(houses, one, diffing, on));
  const reports = new Map(comparison.drinks.filter(isWanted).map((one, index) => [one, drinks[index]!]));
  const things = comparison.things.filter(isWanted).map((one) => thingReport(houses, one, reports, diffing));
  const count = (how: DiffDrink["how"]) => drinks.filter((one) => one.how === how).length;
  return {
    before: diffing.before,
    after: diffing.after,
    drinks: drinks.sort((one, other) => rankOf(one) - rankOf(other)),
    things: things.sort((one, other) => one.rank - other.rank).map(({ rank: _, ...thing }) => thing),
    menus: comparison.menus.filter(isWanted).map(({ before: _before, after: _after, currency, rangeBefore, rangeAfter, ...menu }) => ({
      ...menu,
      currency: currency ?? null,
      added: [...menu.added],
      removed: [...menu.removed],
      renamed: [...menu.renamed],
      prices: [...menu.prices],
      rangeBefore: rangeBefore ? [...rangeBefore] : null,
      rangeAfter: rangeAfter ? [...rangeAfter] : null,
    })),
    broken: [...broken(houses.before, "before", diffing), ...broken(houses.after, "after", diffing)],
    summary: {
      added: count("added"),
      removed: count("removed"),
      renamed: count("renamed"),
      changed: count("changed"),
      moved: count("moved"),
      rewritten: count("rewritten"),
    },
  };
}

/** What a guest could be hurt by, then money, then taste, then the rest. */
function rankOf({ effects, arrival, how }: DiffDrink): number {
  if (how === "rewritten") return 5;
  if (arrival && arrival.contains.length + arrival.notStated.length > 0) return 0;
  if (how === "added" || how === "removed") return 3;
  if (effects && effects.allergens.gained.length + effects.allergens.lost.length + effects.notStated.gained.length > 0) return 0;
  if (effects?.cost || (effects && effects.out.gained.length + effects.out.lost.length > 0)) return 1;
  return effects && effects.figures.length > 0 ? 2 : 4;
}

function drinkReport(
  { before, after }: Houses,
  { name, oldName, how, pours, fields, effects, arrival, preps, because, ...pair }: DrinkCompared,
  diffing: Diffing,
  on: { before: ReadonlyMap<Entry, string[]>; after: ReadonlyMap<Entry, string[]> },
): DiffDrink {
  const menus = pair.after ? on.after.get(pair.after) : on.before.get(pair.before!);
  return {
    name,
    oldName: oldName ?? null,
    how,
    before: pair.before ? placeOf(before, pair.before, diffing) : null,
    after: pair.after ? placeOf(after, pair.after, diffing) : null,
    menus: menus ?? [],
    pours: pours ? showPourChanges(pours.changes) : "",
    reordered: pours?.reordered ?? false,
    fields: fields.map(fieldReport),
    effects: effects ? effectsReport(effects) : null,
    arrival: arrival ? arrivalReport(arrival) : null,
    preps: { gained: [...preps.gained], lost: [...preps.lost] },
    because: because.map((one) => `${one.kind} ${one.name}`),
  };
}

function arrivalReport({ contains, notStated, pours, strength, cost }: Arrival): DiffArrival {
  return {
    contains: [...contains],
    notStated: [...notStated],
    pours: [...pours],
    strengthPct: { value: strength.value, plusMinus: strength.plusMinus },
    cost: cost ? { currency: cost.currency ?? null, perServe: cost.perServe.value, share: cost.share?.value ?? null } : null,
  };
}

function effectsReport({ allergens, notStated, diets, cost, figures, out }: Effects): DiffEffects {
  const both = ({ gained, lost }: Effects["out"]) => ({ gained: [...gained], lost: [...lost] });
  return {
    allergens: both(allergens),
    notStated: both(notStated),
    diets: both(diets),
    cost: cost
      ? {
          currency: cost.currency ?? null,
          before: cost.before.value,
          after: cost.after.value,
          shareBefore: cost.shareBefore,
          shareAfter: cost.shareAfter,
        }
      : null,
    figures: figures.map(({ figure, before, after, window }) => {
      const { label, unit } = compared.find((row) => row.figure === figure)!;
      const known = ({ value, plusMinus }: typeof before) => ({ value, plusMinus });
      return { figure, label, unit, before: known(before), after: known(after), window: window ?? null };
    }),
    out: both(out),
  };
}

function thingReport(
  { before, after }: Houses,
  thing: ThingCompared,
  reports: ReadonlyMap<DrinkCompared, DiffDrink>,
  diffing: Diffing,
): DiffThing & { rank: number } {
  const { kind, name, how, fields, pours, ...pair } = thing;
  const touched = [...reports].flatMap(([{ because }, report]) => (because.includes(thing) ? [report] : []));
  const moved = touched.filter((one) => one.how === "moved");
  return {
    rank: Math.min(...touched.map(rankOf), 5),
    kind: kind as DiffThing["kind"],
    name,
    how,
    before: pair.before ? placeOf(before, pair.before, diffing) : null,
    after: pair.after ? placeOf(after, pair.after, diffing) : null,
    fields: fields.map(fieldReport),
    pours: pours ? [showPourChanges(pours.changes), pours.reordered && "pours in another order"].filter(Boolean).join("; ") : "",
    moved: moved.map(({ name: drink, effects, because }) => ({
      drink,
      what: [...hurtLines(effects!), ...effectLines(effects!)].join("; "),
      with: because.filter((one) => one !== `${kind} ${name}`),
    })),
    also: touched.flatMap((one) => (one.how === "moved" ? [] : [one.name])),
    menus: [...new Set(moved.flatMap(({ menus }) => menus))],
  };
}

function fieldReport({ name, before, after }: FieldCompared): DiffDrink["fields"][number] {
  return { field: name, before: before ?? null, after: after ?? null };
}

function placeOf(house: House, entry: Entry, { pathOf }: Diffing): NonNullable<DiffDrink["before"]> {
  return { file: pathOf(house.getDocumentOf(entry).uri), line: house.getLineOf(entry) + 1 };
}

/** The names of the menus that each drink is on. */
function menusOf(house: House): ReadonlyMap<Entry, string[]> {
  const found = new Map<Entry, string[]>();
  for (const { tree } of house.documents()) {
    for (const menu of tree.entries.filter(({ kind, name }) => kind === "menu" && name)) {
      for (const { content } of linesOf(menu, "menu")) {
        const drink = menuEntryOf(house, house.scopeOf(menu), content)?.entry;
        if (drink) found.set(drink, [...new Set([...(found.get(drink) ?? []), menu.name!.text])]);
      }
    }
  }
  return found;
}

function broken(house: House, side: "before" | "after", { pathOf, wanted }: Diffing): DiffReport["broken"] {
  return [...house.documents()].flatMap(({ uri, tree }) => {
    if (!wanted(uri)) return [];
    const lines = tree.entries.flatMap((entry, index) =>
      entry.lines.flatMap(({ content }, line) => (isBroken(entry, content, line) ? [tree.starts[index]! + line + 1] : [])),
    );
    return lines.length > 0 ? [{ side, file: pathOf(uri), lines }] : [];
  });
}

/** A line that says nothing to anybody, and the head of an entry of which nobody knows what it is. */
function isBroken(entry: Entry, content: Entry["lines"][number]["content"], line: number): boolean {
  return content.kind === "unread" || (content.kind === "pour" && !content.pour.name) || (entry.kind === "unknown" && line === 0);
}
