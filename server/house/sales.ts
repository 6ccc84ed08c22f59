/** What a drink costs, what it is sold for, and the share of that which its ingredients take. */
import type { Entry } from "../../grammar/tree.ts";
import type { Figure } from "../engine/plan.ts";
import { isOf } from "./currency.ts";
import { namesOf } from "./declarations.ts";
import { type Assessment, assessDrink } from "./drink.ts";
import { findFieldIn } from "./entry.ts";
import type { House } from "./house.ts";
import { findPriced, menuEntryOf } from "./menu.ts";
import { type Settings, settingsOf } from "./settings.ts";
import { isWrong, readPrice } from "./values.ts";

export interface Cost {
  /** Absent where the house names none. */
  readonly currency: string | undefined;
  readonly perServe: Figure;
  /** What of it has a price; known even where the whole is not. */
  readonly pricedPerServe: number;
  /** Garnish, rim and leaves of no known price: the cost is without them. */
  readonly without: readonly string[];
  readonly sales: readonly (Sale & { readonly share: Figure })[];
  /** The share that the house means it to take. */
  readonly target: number | undefined;
}

export interface Sale {
  /** Absent where the drink states its price itself. */
  readonly menu?: Entry;
  /** As the guest reads it, for all that the drink's pours make. */
  readonly price: number;
  /** What of it is the house's; null where the house's prices hold a tax that it does not state. */
  readonly net: number | null;
}

/** Of one drink; absent where nothing that goes into it has a price, and for parts without a size. Asks `salesOf`. */
export function costOfDrink(house: House, entry: Entry): Cost | undefined {
  const assessment = assessDrink(house, entry);
  const { outcome, unpriced, proportional } = assessment;
  const pricedPerServe = outcome.value("pricedPerServe")!;
  if (proportional || !(pricedPerServe > 0)) return undefined;
  const { currency, targetCost } = settingsOf(house, house.scopeOf(entry));
  return {
    currency,
    perServe: outcome.figure("costPerServe"),
    pricedPerServe,
    without: unpriced,
    sales: salesOf(house, entry).map((sale) => ({ ...sale, share: costShare(assessment, sale.net) })),
    target: targetCost,
  };
}

/**
 * Its own price, and that of each menu that it can be found on. It looks at menus that the drink does not
 * depend on: never ask for it inside what is remembered of a drink.
 */
export function salesOf(house: House, entry: Entry): Sale[] {
  const own = ownSale(entry, settingsOf(house, house.scopeOf(entry)));
  const sales = own ? [own] : [];
  for (const { entry: menu, alias } of house.declarations(house.scopeOf(entry), "menu")) {
    if (alias) continue;
    const scope = house.scopeOf(menu);
    const settings = settingsOf(house, scope);
    for (const name of namesOf(entry)) {
      const found = findPriced(menu, name);
      if (!found || menuEntryOf(house, scope, found.content)?.entry !== entry || !isOf(found.price.currency?.text, settings.currency))
        continue;
      sales.push({ menu, price: found.price.amount, net: netOf(found.price.amount, settings) });
      break;
    }
  }
  return sales;
}

/** The drink's own `price:`. */
export function ownSale(entry: Entry, settings: Settings): Sale | undefined {
  const at = findFieldIn(entry, "price");
  const read = at && readPrice(at.field, "12.50");
  if (!read || isWrong(read) || !isOf(read.value.currency, settings.currency)) return undefined;
  return { price: read.value.amount, net: netOf(read.value.amount, settings) };
}

/** A price less its tax. A house that states a tax and not whether its prices hold it has them with it. */
export function netOf(price: number, { tax, pricesWithTax }: Settings): number | null {
  if (!(pricesWithTax ?? tax !== undefined)) return price;
  return tax === undefined ? null : price / (1 + tax);
}

/** The share of the net price that all serves together cost; unknown where the cost is, or the net price. */
export function costShare({ outcome, plan, proportional }: Assessment, net: number | null): Figure {
  const cost = outcome.figure("costPerServe");
  if (cost.value === null) return cost;
  if (proportional) return unknown("its parts have no size");
  if (net === null) return unknown("the house's prices hold a tax that it does not state");
  if (!(net > 0)) return unknown("it is sold for nothing");
  const scale = plan.serves / net;
  return { value: cost.value * scale, plusMinus: cost.plusMinus! * scale };
}

function unknown(because: string): Figure {
  return { value: null, plusMinus: null, because: [because] };
}
