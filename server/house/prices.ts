/** What a bought ingredient costs, by each way in which it is poured. */
import type { StockKind } from "../../grammar/fields.ts";
import type { Entry } from "../../grammar/tree.ts";
import type { Known, Price, Uncertain } from "../engine/plan.ts";
import { isOf } from "./currency.ts";
import type { FieldAt } from "./entry.ts";
import type { House } from "./house.ts";
import { pieceOf } from "./piece.ts";
import { settingsOf, shareIn } from "./settings.ts";
import { isNone, isWrong, readPrice, times } from "./values.ts";

export interface Prices {
  /** By weight or by volume; of what is bought by the piece, by what a piece weighs. Absent where nobody states a price. */
  readonly bulk?: Price;
  /** For one piece, where it is bought by the piece. */
  readonly piece?: Price;
  /** For a millilitre of its juice, where it says how much a piece yields. */
  readonly juice?: Price;
}

/** Of a stock, from its `price:`, with what is wasted of it counted. */
export function pricesOf(
  house: House,
  entry: Entry,
  name: string,
  kind: StockKind | undefined,
  field: (name: string) => FieldAt | undefined,
): Prices {
  const at = field("price");
  // Water comes from the tap, unless the house says what it pays for it.
  if (!at) return kind === "water" ? { bulk: { amount: certain(0, "water from the tap"), per: "g" } } : {};
  const read = isNone(at.field) ? undefined : readPrice(at.field, "26.50 per 700 ml");
  if (!read || isWrong(read)) return {};
  const settings = settingsOf(house, house.scopeOf(entry));
  const waste = field("waste") ? shareIn(field("waste")) : settings.waste;
  const price = (amount: Known, per: Price["per"]): Price => ({ amount, per, ...(waste && { waste }) });
  const unknown = (because: string): Price => price({ because }, "all");

  const { amount, per = {}, currency } = read.value;
  if (!isOf(currency, settings.currency)) {
    return { bulk: unknown(`the price of ${name} is in ${currency}, and the house's prices are in ${settings.currency}`) };
  }
  const { ml = 0, g = 0, count = 0 } = per;
  const why = `what ${name} costs`;
  if (ml > 0) return { bulk: price(certain(amount / ml, why), "ml") };
  if (!(g > 0 || count > 0)) return { bulk: unknown(`the price of ${name} does not say for how much`) };

  const whole = pieceOf({ name, field }, undefined, "each");
  const juiced = pieceOf({ name, field }, "juiced", "yield");
  const one = count > 0 ? certain(amount / count, why) : whole && !whole.volume ? times(whole.one, amount / g) : undefined;
  const juice = one && juiced?.volume && price(over(one, juiced.one), "ml");
  if (g > 0) return { bulk: price(certain(amount / g, why), "g"), ...(juice && { juice }) };
  return {
    bulk: whole
      ? price(over(one!, whole.one), whole.volume ? "ml" : "g")
      : unknown(`${name} is bought by the piece, and what a piece weighs is not given`),
    piece: price(one!, "all"),
    ...(juice && { juice }),
  };
}

/** What is paid is certain. */
function certain(value: number, why: string): Uncertain {
  return { value, u: 0, why };
}

function over(one: Uncertain, other: Uncertain): Uncertain {
  const value = one.value / other.value;
  return { value, u: Math.hypot(one.u / other.value, (value * other.u) / other.value), why: `${one.why}, and ${other.why}` };
}
