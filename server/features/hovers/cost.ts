/** What a serve costs, and what share of its price that is. */
import type { Entry } from "../../../grammar/tree.ts";
import type { House } from "../../house/house.ts";
import { costOfDrink } from "../../house/sales.ts";
import { showShare } from "../../house/show.ts";
import { showCost } from "../../house/show-cost.ts";
import { asText } from "../markdown.ts";

/** A row of a drink's table, its share of each price beside the house's target. Absent where nothing has a price. */
export function costRow(house: House, entry: Entry): readonly [label: string, value: string, window: string] | undefined {
  const cost = costOfDrink(house, entry);
  if (!cost) return undefined;
  const { target, currency = null } = cost;
  const sales = cost.sales.map(({ menu, share }) => ({ menu: menu?.name?.text ?? null, share }));
  const shares = sales.flatMap(({ share }) => share.value ?? []);
  const over = target !== undefined && shares.some((share) => share > target);
  const aim = target !== undefined && shares.length > 0 ? `${over ? "above" : "within"} ${showShare(target)}` : "";
  return ["cost", asText(showCost({ ...cost, currency, sales })), over ? `**${aim}**` : aim];
}
