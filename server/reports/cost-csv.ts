/** A menu's costs as CSV: a line for each drink, unrounded but for the sixth digit. */
import type { CostReport } from "./cost-schema.ts";
import { reasonsOf } from "./cost-text.ts";
import { csvText } from "./csv.ts";

const head = [
  "menu",
  "section",
  "drink",
  "serves",
  "currency",
  "price",
  "tax",
  "net",
  "cost",
  "cost plus-minus",
  "known cost",
  "share",
  "share plus-minus",
  "margin",
  "over target",
];
const supposedHead = ["cost then", "share then", "margin then", "crosses target"];

export function costCsv({ menus }: CostReport): string {
  const supposing = menus.some(({ supposed }) => supposed.length > 0);
  const rows = menus.flatMap(({ menu, currency, drinks }) =>
    drinks.map((drink) => {
      const then = drink.supposed ?? { ...drink, crosses: null };
      return [
        menu,
        drink.section,
        drink.name,
        drink.serves,
        currency,
        drink.price,
        drink.tax,
        drink.net,
        drink.cost.value,
        drink.cost.plusMinus,
        drink.known,
        drink.share.value,
        drink.share.plusMinus,
        drink.margin.value,
        drink.over === null ? null : drink.over ? "yes" : "no",
        ...(supposing ? [then.cost.value, then.share.value, then.margin.value, then.crosses] : []),
        reasonsOf(drink).join("; "),
      ];
    }),
  );
  return csvText([...head, ...(supposing ? supposedHead : []), "why unknown"], rows);
}
