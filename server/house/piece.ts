/** What one piece of a stock weighs, holds or gives, as its `each:` or `yield:` says. */
import type { Uncertain } from "../engine/plan.ts";
import type { StockFacts } from "./stock.ts";
import { spreadOf, times } from "./values.ts";

export interface Piece {
  readonly one: Uncertain;
  /** It is in ml, not in g. */
  readonly volume: boolean;
}

/** The item for a form (`wedge`, `juiced`); for a bare count the item without a form, else the only item. */
export function pieceOf(
  { name, field }: Pick<StockFacts, "name" | "field">,
  form: string | undefined,
  from: "each" | "yield",
): Piece | undefined {
  const items = field(from)?.field.items ?? [];
  const formOf = (text: string) =>
    text
      .replace(/[\d.].*$/u, "")
      .replace(/\babout\b/, "")
      .trim()
      .toLowerCase();
  const chosen =
    items.find((item) => formOf(item.text) === (form ?? "")) ?? (form === undefined && items.length === 1 ? items[0] : undefined);
  const quantity = chosen?.parts[0]?.quantities[0];
  const unit = quantity?.unit?.unit;
  const size = unit?.ml ?? unit?.g;
  const spread = quantity && spreadOf(quantity, (value) => 0.15 * value, `one ${name} as stated`);
  if (!size || !spread) return undefined;
  return { one: times(spread, size), volume: unit?.ml !== undefined };
}
