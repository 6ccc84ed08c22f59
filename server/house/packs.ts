/** How a stock or an ice is bought: by which pack, at what price, and how much of it is wasted. */
import type { Entry } from "../../grammar/tree.ts";
import { isOf } from "./currency.ts";
import { type FieldAt, findFieldIn } from "./entry.ts";
import type { House } from "./house.ts";
import { settingsOf, shareIn } from "./settings.ts";
import { stockFacts } from "./stock.ts";
import { isNone, isWrong, readPrice } from "./values.ts";

export type NeedUnit = "ml" | "g" | "piece";

export interface Pack {
  /** In its unit. */
  readonly size: number;
  readonly unit: NeedUnit;
  /** As the price writes it: `700 ml`, `24 x 200 ml`, `1`. */
  readonly text: string;
  readonly price: number;
}

export interface Bought {
  /** Absent where nobody says; `because` then says why. */
  readonly pack?: Pack;
  readonly because?: string;
  /** Share of what is bought that reaches no glass. */
  readonly waste: number;
  /** Water from the tap. */
  readonly free?: true;
}

export function boughtAs(house: House, entry: Entry): Bought {
  return house.recall(entry, "bought", () => {
    const facts = entry.kind === "stock" ? stockFacts(house, entry) : undefined;
    const field = (name: string): FieldAt | undefined => (facts ? facts.field(name) : findFieldIn(entry, name));
    const settings = settingsOf(house, house.scopeOf(entry));
    // The engine counts no waste of ice either.
    const waste = facts ? ((field("waste") ? shareIn(field("waste")) : settings.waste)?.value ?? 0) : 0;
    const at = field("price");
    const name = entry.name?.text ?? "";
    if (!at && facts?.kind === "water") return { waste: 0, free: true };
    if (!at || isNone(at.field)) return { waste, because: `no price of ${name} says in what size it is bought` };
    const read = readPrice(at.field, "26.50 per 700 ml");
    if (isWrong(read)) return { waste, because: `the price of ${name} cannot be read` };
    const { amount, per, currency } = read.value;
    if (!isOf(currency, settings.currency))
      return { waste, because: `the price of ${name} is in ${currency}, and the house's are in ${settings.currency}` };
    const [unit, size] = per?.ml ? (["ml", per.ml] as const) : per?.g ? (["g", per.g] as const) : (["piece", per?.count ?? 0] as const);
    if (!(size > 0)) return { waste, because: `the price of ${name} does not say for how much` };
    return { waste, pack: { size, unit, text: sizeText(at.field.value!.text), price: amount } };
  });
}

/** What stands behind `per`; a bare unit is one of it. */
function sizeText(price: string): string {
  const size = price.replace(/^.*?(?:\bper\b|\/)\s*/u, "").replace(/\s+/g, " ");
  return /^\d/.test(size) ? size : `1 ${size}`;
}
