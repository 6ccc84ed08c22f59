/** What each drink of some menus costs and brings in, and what other prices would change. */
import type { Entry } from "../../grammar/tree.ts";
import { type CostedDrink, costedOn, type Moved, movedBetween, standingOf, summaryOf } from "../house/costing.ts";
import type { House } from "../house/house.ts";
import { settingsOf } from "../house/settings.ts";
import { type NotSupposed, type Supposed, supposePrice } from "../house/supposed-price.ts";
import { figureReport, rounded } from "./assess.ts";
import type { CostedReport, CostReport, MenuCost } from "./cost-schema.ts";

export interface Costing {
  /** Changed prices, such as `aged rum +10 %`. */
  readonly ifs: readonly string[];
  pathOf(uri: string): string;
}

/** Menus in the order given, or the first supposition that says nothing. */
export function costReport(house: House, menus: readonly Entry[], { ifs, pathOf }: Costing): CostReport | NotSupposed {
  const costed: MenuCost[] = [];
  for (const menu of menus) {
    const supposed = supposing(house, menu, ifs);
    if ("problem" in supposed) return supposed;
    costed.push(menuCost(house, menu, supposed, pathOf));
  }
  return { menus: costed };
}

/** Each supposition in the house that the one before it made. */
function supposing(house: House, menu: Entry, ifs: readonly string[]): readonly Supposed[] | NotSupposed {
  const all: Supposed[] = [];
  for (const text of ifs) {
    const from = all.at(-1)?.house ?? house;
    const one = supposePrice(from, from.scopeOf(sameEntry(house, menu, from)), text);
    if ("problem" in one) return one;
    all.push(one);
  }
  return all;
}

/** Prices are changed within their lines, so a menu keeps its place. */
function sameEntry(house: House, entry: Entry, other: House): Entry {
  return other.document(house.getDocumentOf(entry).uri)!.tree.entries[house.getIndexOf(entry)]!;
}

function menuCost(house: House, menu: Entry, supposed: readonly Supposed[], pathOf: Costing["pathOf"]): MenuCost {
  const { currency, targetCost, tax } = settingsOf(house, house.scopeOf(menu));
  const drinks = costedOn(house, menu);
  const after = supposed.at(-1)?.house;
  const moved = after ? movedBetween(drinks, costedOn(after, sameEntry(house, menu, after)), targetCost) : [];
  const start = house.getLineOf(menu);
  const { shares, ...counts } = summaryOf(drinks);
  return {
    menu: menu.name?.text ?? "",
    file: pathOf(house.getDocumentOf(menu).uri),
    line: start + 1,
    currency: currency ?? null,
    taxRate: tax ?? null,
    target: targetCost ?? null,
    supposed: supposed.map(({ stock, before = null, after: then }) => ({ stock, before, after: then })),
    drinks: drinks.map((drink) =>
      costedReport(
        drink,
        start,
        targetCost,
        moved.find(({ before }) => before === drink),
      ),
    ),
    summary: {
      ...counts,
      over: drinks.filter((drink) => standingOf(drink, targetCost)?.over).length,
      shares: shares && { low: rounded(shares.low), median: rounded(shares.median), high: rounded(shares.high) },
      moved: moved.length,
    },
  };
}

function costedReport(drink: CostedDrink, start: number, target: number | undefined, moved: Moved | undefined): CostedReport {
  const { section = null, name, line, serves, price, tax, net, known, without, because, others } = drink;
  const standing = standingOf(drink, target);
  return {
    section,
    name,
    line: start + line + 1,
    serves,
    price,
    tax: tax === null ? null : rounded(tax),
    net: net === null ? null : rounded(net),
    ...figuresOf(drink),
    known: rounded(known),
    without: [...without],
    over: standing?.over ?? null,
    near: standing?.near ?? null,
    because: [...because],
    others: [...others],
    supposed: moved ? { ...figuresOf(moved.after), known: rounded(moved.after.known), crosses: moved.crosses ?? null } : null,
  };
}

function figuresOf({ cost, share, margin }: CostedDrink) {
  return { cost: figureReport(cost, false), share: figureReport(share, false), margin: figureReport(margin, false) };
}
