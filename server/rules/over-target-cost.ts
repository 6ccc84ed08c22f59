/** Ingredients that take more of the price than the house means them to. */
import type { Entry, Span } from "../../grammar/tree.ts";
import { isOf } from "../house/currency.ts";
import { isCyclic } from "../house/cycles.ts";
import type { Place } from "../house/document.ts";
import { assessDrink } from "../house/drink.ts";
import { findFieldIn, linesOf } from "../house/entry.ts";
import type { House } from "../house/house.ts";
import { menuEntryOf, menuPriceOf } from "../house/menu.ts";
import { costShare, netOf, ownSale } from "../house/sales.ts";
import { type Settings, settingsOf } from "../house/settings.ts";
import { showMoney, showShare } from "../house/show.ts";
import { placeOf, valuePlace } from "./places.ts";
import type { Rule } from "./rule.ts";
import { specimen } from "./specimen.ts";

const slip =
  "house The Slip\n  currency: GBP\n  tax: 20 %\n  prices: with tax\n  target cost: 20 %\n\nstock harbour gin\n  kind: spirit\n  abv: 40 %\n  price: 28.00 per 700 ml\n\n";

interface Priced {
  readonly drink: Entry;
  readonly price: number;
  readonly place: Place;
}

export const overTargetCost: Rule = {
  code: "over-target-cost",
  severity: "information",
  entries: ["drink", "menu"],
  docs: {
    title: "Dearer than the house means it to be",
    why: "The house's `target cost` is the share of the price, less its tax, that the ingredients may take. Their cost counts waste, garnish and what is strained out; where one of them has no price, what is known of it may be too much already. A house without a target, or without prices, hears nothing.",
    bad: `${slip}${specimen(["60 ml harbour gin", "10 ml water"])}\nmenu Card\n  - Slip Water 8.00\n`,
    good: `${slip}${specimen(["60 ml harbour gin", "10 ml water"])}\nmenu Card\n  - Slip Water 14.50\n`,
  },
  *check(house, entry) {
    const settings = settingsOf(house, house.scopeOf(entry));
    const target = settings.targetCost;
    if (target === undefined) return;
    for (const { drink, price, place } of entry.kind === "menu" ? listed(house, entry, settings) : own(entry, settings)) {
      const net = netOf(price, settings);
      if (net === null || !(net > 0) || isCyclic(house, drink)) continue;
      const assessment = assessDrink(house, drink);
      const { outcome, plan, proportional } = assessment;
      const known = outcome.value("pricedPerServe")! * plan.serves;
      if (proportional || known / net <= target) continue;
      const whole = costShare(assessment, net);
      if (whole.value !== null && whole.value - target <= 2 * whole.plusMinus!) continue;
      const least = whole.value === null ? "at least " : "";
      const enough = Math.ceil((100 * known * price) / net / target) / 100;
      yield {
        place,
        what: `The ingredients take ${least}${showShare(known / net)} of the ${showMoney(net, settings.currency)} that ${nameOf(drink)} brings without tax, and the house means them to take ${showShare(target)}.`,
        todo: `A price of ${showMoney(enough, settings.currency)} would do, or less of what is dear.`,
      };
    }
  },
};

function own(drink: Entry, settings: Settings): Priced[] {
  const sale = ownSale(drink, settings);
  return sale ? [{ drink, price: sale.price, place: valuePlace(findFieldIn(drink, "price")!) }] : [];
}

/** The lines of a menu that put a price in the house's currency to a drink. */
function listed(house: House, menu: Entry, { currency }: Settings): Priced[] {
  const scope = house.scopeOf(menu);
  return [...linesOf(menu, "menu")].flatMap(({ line, content }): Priced[] => {
    const found = menuEntryOf(house, scope, content);
    const price = menuPriceOf(content);
    if (!found || !price || found.name === content.whole || !isOf(price.currency?.text, currency)) return [];
    return [{ drink: found.entry, price: price.amount, place: placeOf(line, price as Span) }];
  });
}

function nameOf(drink: Entry): string {
  return drink.name?.text ?? "it";
}
