/** What a pour costs where that is not simply its amount at its ingredient's own price. */
import type { Quantity } from "../../grammar/tree.ts";
import { findUnit } from "../../grammar/units.ts";
import type { Price, Uncertain } from "../engine/plan.ts";
import type { House } from "./house.ts";
import type { Ingredient } from "./ingredient.ts";
import { has } from "./modifiers.ts";
import type { Scope } from "./scope.ts";
import { settingsOf } from "./settings.ts";
import { type StockFacts, stockFacts } from "./stock.ts";
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

/** Lime juice that nobody prices is pressed from limes, and a lime wedge is cut from one: by yield, and by weight. */
function priceOfWhole(house: House, scope: Scope, { name }: StockFacts): Price | undefined {
  const cut = name.lastIndexOf(" ");
  const [whole, form] = [name.slice(0, Math.max(0, cut)), name.slice(cut + 1)];
  const pressed = form.toLowerCase() === "juice";
  if (!whole || !(pressed || findUnit(form)?.dimension === "piece")) return undefined;
  const entry = house.lookup(scope, "ingredient", whole)[0]?.entry;
  if (entry?.kind !== "stock") return undefined;
  const { juice, bulk } = stockFacts(house, entry).prices;
  return pressed ? juice : bulk;
}
