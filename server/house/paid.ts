/** What each part of a drink costs, for all serves together. */
import { costOfAmount, liquidOf } from "../engine/composition.ts";
import { costOf } from "../engine/price.ts";
import type { Assessment } from "./drink.ts";

export interface Paid {
  readonly name: string;
  readonly cost: number;
}

/** Pours, garnish, rim and ice, as far as they have a price. What costs nothing is left out. */
export function paidFor({ plan, pours, outcome }: Assessment): Paid[] {
  const poured = plan.pours.map(({ of, amount, price }, index) => {
    const filledUp = "top" in amount || "topToMl" in amount;
    const cost = filledUp
      ? costOf(outcome.poured(index)?.g ?? 0, liquidOf(of), price, undefined)
      : costOfAmount(amount, liquidOf(of), price);
    return { name: pours[index]?.ingredient.resolution.text ?? of.name, cost };
  });
  const beside = (plan.beside ?? []).map(({ of, amount, price }) => ({ name: of.name, cost: costOfAmount(amount, liquidOf(of), price) }));
  return [...poured, ...beside].filter(({ cost }) => cost > 0);
}
