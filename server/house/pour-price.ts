/** What a pour costs where that is not simply its amount at its ingredient's own price. */
import type { Quantity } from "../../grammar/tree.ts";
import type { Price, Uncertain } from "../engine/plan.ts";
import { isKnown } from "../engine/uncertainty.ts";
import { type Cut, cutFrom, isPeel, peelsOfOne } from "./cut-fruit.ts";
import type { House } from "./house.ts";
import type { Ingredient } from "./ingredient.ts";
import { has } from "./modifiers.ts";
import { pieceOf } from "./piece.ts";
import type { Scope } from "./scope.ts";
import { settingsOf } from "./settings.ts";
import type { StockFacts } from "./stock.ts";
import { spreadOf, times } from "./values.ts";

/** Absent where the ingredient's own price holds, or nobody knows any. */
export function priceOfPour(house: House, scope: Scope, ingredient: Ingredient, quantity: Quantity | undefined): Price | undefined {
  const { resolution, facts } = ingredient;
  const entry = resolution.found?.entry;
  if (!entry) return undefined;
  const [here, there] = [settingsOf(house, scope).currency, settingsOf(house, house.scopeOf(entry)).currency];
  if (!house.isLarder(entry) && here !== there) {
    return { amount: { because: `what ${resolution.text} costs is counted in ${there ?? "no currency"}` }, per: "all" };
  }
  if (!facts) return undefined;
  const { piece, juice } = facts.prices;
  const count = quantity && !quantity.unit ? spreadOf(quantity, () => 0, "") : undefined;
  if (piece && count) return { ...piece, amount: times(piece.amount as Uncertain, count.value) };
  if (has(resolution.modifiers, "juiced")) return juice;
  return facts.prices.bulk ? undefined : priceOfWhole(house, scope, facts);
}

/** Juice that nobody prices by its yield, what is cut of a fruit by weight, and a peel as its share of a fruit. */
function priceOfWhole(house: House, scope: Scope, of: StockFacts): Price | undefined {
  const cut = cutFrom(house, scope, of);
  if (!cut) return undefined;
  const { juice, bulk } = cut.fruit.prices;
  if (cut.form === "juice") return juice;
  return isPeel(cut) ? priceOfPeel(cut, of) : bulk;
}

/** By the weight of the peel, whose spread is that of how many a fruit gives. */
function priceOfPeel({ fruit }: Cut, of: StockFacts): Price | undefined {
  const { piece, bulk } = fruit.prices;
  const [whole, peel] = [pieceOf(fruit, undefined, "each"), pieceOf(of, undefined, "each")];
  const priced = piece ?? bulk;
  if (!priced || !isKnown(priced.amount) || !peel) return bulk;
  if (!piece && (!whole || whole.volume !== (bulk!.per === "ml"))) return bulk;
  const one = piece ? priced.amount : times(whole!.one, priced.amount.value);
  const amount = times(one, 1 / (peelsOfOne * peel.one.value));
  return { ...priced, amount, per: peel.volume ? "ml" : "g" };
}
