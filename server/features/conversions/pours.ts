/** The amounts that an entry writes, with what they are amounts of. */
import type { Entry, Pour, Quantity } from "../../../grammar/tree.ts";
import { pourOn } from "../../house/entry.ts";
import type { Edit } from "../../house/finding.ts";
import type { House } from "../../house/house.ts";
import { type Ingredient, ingredientOf } from "../../house/ingredient.ts";

export interface WrittenAmount {
  readonly line: number;
  readonly pour: Pour;
  readonly quantity: Quantity;
  readonly ingredient: Ingredient;
}

/**
 * Pours, alternatives, and what a swap puts in. Not what a swap or a `without` takes out: its quantity
 * only tells two pours of the parent apart.
 */
export function amountsIn(house: House, entry: Entry): WrittenAmount[] {
  return entry.lines.flatMap((_, line) => amountAt(house, entry, line) ?? []);
}

/** What a swap or a `without` takes out, where its amount tells it apart. */
export function amountsOut(house: House, entry: Entry): WrittenAmount[] {
  return entry.lines.flatMap(({ content }, line) => {
    const pour = content.kind === "swap" ? content.readings[0]?.out : content.kind === "without" ? content.pour : undefined;
    return amountOn(house, entry, line, pour) ?? [];
  });
}

/** The amount on a line; absent where it has none, or none with a name. */
export function amountAt(house: House, entry: Entry, line: number): WrittenAmount | undefined {
  return amountOn(house, entry, line, pourOn(entry.lines[line]?.content));
}

function amountOn(house: House, entry: Entry, line: number, pour: Pour | undefined): WrittenAmount | undefined {
  if (!pour?.name || !pour.quantity) return undefined;
  return { line, pour, quantity: pour.quantity, ingredient: ingredientOf(house, house.scopeOf(entry), pour.name) };
}

/** Whether the amount may turn from a volume to a weight or back: what fills up or coats is meant as it is measured. */
export function mayBeWeighed({ pour }: WrittenAmount): boolean {
  return pour.lead === undefined || pour.lead.lead === "some";
}

/** Writes another amount where one stands; `about` before it stays. */
export function amountEdit(entry: Entry, { line, quantity }: Pick<WrittenAmount, "line" | "quantity">, text: string): Edit {
  return { entry, line, start: quantity.numeral.start, end: quantity.unit?.end ?? quantity.numeral.end, text };
}
