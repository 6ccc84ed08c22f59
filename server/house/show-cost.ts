/** A drink's cost in words. */
import type { Figure } from "../engine/plan.ts";
import { showList, showMoney, showShare } from "./show.ts";

/** What the words are made of; a menu by its name, null for the drink's own price. */
export interface CostWords {
  readonly currency: string | null;
  readonly perServe: Figure;
  readonly pricedPerServe: number;
  readonly without: readonly string[];
  readonly sales: readonly { readonly menu: string | null; readonly share: Figure }[];
}

/** `£2.14 ± 0.03, 21 % of the price without tax`, `at least £1.20, nutmeg not counted`. */
export function showCost({ currency, perServe, pricedPerServe, without, sales }: CostWords): string {
  const known = perServe.value !== null;
  const money = showMoney(known ? perServe : pricedPerServe, currency ?? undefined);
  const shares = sales.filter(({ share }) => share.value !== null);
  const several = shares.length > 1;
  return [
    known ? money : `at least ${money}`,
    ...shares.map(({ menu, share }) => `${showShare(share)} ${several ? `on ${menu ?? "its own price"}` : "of the price without tax"}`),
    without.length > 0 && `${showList(without, 3)} not counted`,
  ]
    .filter(Boolean)
    .join(", ");
}
