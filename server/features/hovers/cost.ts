/** What a serve costs, and what share of its price that is. */
import type { Entry } from "../../../grammar/tree.ts";
import { assessDrink } from "../../house/drink.ts";
import type { House } from "../../house/house.ts";
import { costShare, hasCost, salesOf } from "../../house/sales.ts";
import { settingsOf } from "../../house/settings.ts";
import { showList, showMoney, showShare } from "../../house/show.ts";
import { asText } from "../markdown.ts";

/** A row of a drink's table: the cost with its share of each price, and the house's target. Absent where nothing has a price. */
export function costRow(house: House, entry: Entry): readonly [label: string, value: string, window: string] | undefined {
  const assessment = assessDrink(house, entry);
  if (!hasCost(assessment)) return undefined;
  const { outcome, unpriced } = assessment;
  const { currency, targetCost } = settingsOf(house, house.scopeOf(entry));
  const cost = outcome.figure("costPerServe");
  const least = cost.value === null;
  const money = least ? `at least ${showMoney(outcome.value("pricedPerServe")!, currency)}` : showMoney(cost, currency);
  const without = unpriced.length > 0 ? `without ${showList(unpriced, 3)}` : "";
  const sales = salesOf(house, entry).map(({ menu, net }) => ({ menu, share: costShare(assessment, net) }));
  const known = sales.filter(({ share }) => share.value !== null);
  const shares = known.map(({ menu, share }) => {
    const where = known.length > 1 ? (menu ? ` on ${menu.name?.text ?? "the menu"}` : " of its own price") : " of the price without tax";
    return `${showShare(share)}${where}`;
  });
  const over = targetCost !== undefined && known.some(({ share }) => share.value! > targetCost);
  const target = targetCost !== undefined && known.length > 0 ? `${over ? "above" : "inside"} ${showShare(targetCost)}` : "";
  return ["cost", asText([money, ...shares, without].filter(Boolean).join(", ")), over ? `**${target}**` : target];
}
