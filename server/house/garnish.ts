/** What goes on a drink and on its rim: the items of `garnish` and `rim` that name a stock or a prep, and how much of it. */
import type { Item, Quantity } from "../../grammar/tree.ts";
import type { Amount, Uncertain } from "../engine/plan.ts";
import { amountOf, type Measuring } from "./amounts.ts";
import type { House } from "./house.ts";
import type { Ingredient } from "./ingredient.ts";
import { pieceOf } from "./piece.ts";
import type { FlatDrink } from "./riff.ts";
import type { Scope } from "./scope.ts";
import { stockFacts } from "./stock.ts";

export interface Garnish {
  readonly field: "garnish" | "rim";
  readonly item: Item;
  /** Without its amount and what qualifies it. */
  readonly name: string;
  readonly quantity?: Quantity;
  /** Absent where nothing of that name is declared. */
  readonly ingredient?: Ingredient;
}

export function garnishesOf(house: House, scope: Scope, flat: FlatDrink): readonly Garnish[] {
  return house.recall(flat.entry, "garnishes", () =>
    (["garnish", "rim"] as const).flatMap((field) =>
      (flat.field(field)?.field.items ?? []).map((item) => ({ field, item, ...garnishIn(house, scope, item) })),
    ),
  );
}

/** `1 lime wedge`, `a lime wedge`, `lime wedge, dehydrated`, `3 cloves`. */
export function garnishIn(house: House, scope: Scope, { parts }: Item): Omit<Garnish, "field" | "item"> {
  const [part] = parts;
  if (!part) return { name: "" };
  const behind = (at: number) => part.text.slice(at - part.start).trim();
  const { quantity } = part;
  const isUnit = quantity?.unit && behind(quantity.unit.end) !== "";
  const { unit: _unit, ...count } = quantity ?? {};
  const counted = quantity && { quantity: isUnit ? quantity : (count as Quantity) };
  const start = quantity ? (isUnit ? quantity.unit!.end : quantity.numeral.end) : part.start;
  const rest = behind(start);
  const texts = [rest, rest.replace(/^(?:an?|the|some|of)\s+/i, "")];
  for (const text of texts) {
    const found = house.find(scope, "ingredient", text);
    if (!found) continue;
    const resolution = { found, text, start: part.end - text.length, end: part.end, modifiers: [] };
    if (found.entry.kind !== "stock") return { name: text, ...counted, ingredient: { resolution, model: house.modelOf(found.entry) } };
    const facts = stockFacts(house, found.entry);
    return { name: text, ...counted, ingredient: { resolution, facts, model: facts.model } };
  }
  return { name: texts[1]!, ...counted };
}

/** A rim takes so much salt or sugar; half of one half of it. Practice, no source. */
const rimG: Uncertain = { value: 2, u: 0.7, why: "what a rim takes, practice" };

/** How much of a named item goes on one drink; without an amount a rim, a pinch of what is grated, or one piece. Absent where nobody knows. */
export function amountOfGarnish({ field, item, ingredient, quantity }: Garnish, measuring: Measuring): Amount | undefined {
  if (!ingredient) return undefined;
  if (quantity) return amountOf(quantity, ingredient, measuring);
  if (field === "rim") return { g: item.parts.some(({ text }) => /^half\b/i.test(text)) ? half(rimG) : rimG };
  if (/\b(?:grated|ground|dusted|shaved)\b/i.test(item.text)) return { g: measuring.settings.bar.pinch! };
  const piece = ingredient.facts && pieceOf(ingredient.facts, undefined, "each");
  return piece && (piece.volume ? { ml: piece.one } : { g: piece.one });
}

function half(of: Uncertain): Uncertain {
  return { ...of, value: of.value / 2, u: of.u / 2 };
}
