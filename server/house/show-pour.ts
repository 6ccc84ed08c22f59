/** A pour in words. */
import type { Pour, Quantity } from "../../grammar/tree.ts";
import type { Ingredient } from "./ingredient.ts";

/** As it is written, without what stands behind the name: `60 ml oloroso sherry`, `top soda water`. */
export function showPour(pour: Pick<Pour, "lead" | "quantity">, { resolution }: Pick<Ingredient, "resolution">): string {
  return [showPourAmount(pour), resolution.text].filter(Boolean).join(" ");
}

/** Of that what stands before the name: `60 ml`, `top to 180 ml`. Empty where nothing does. */
export function showPourAmount({ lead, quantity }: Pick<Pour, "lead" | "quantity">): string {
  return [lead?.text, quantity && showQuantity(quantity)].filter(Boolean).join(" ");
}

/** As it is written: `about 3 g`, `1 1/2 oz`, `2`. */
export function showQuantity({ about, numeral, unit }: Quantity): string {
  return `${about ? "about " : ""}${numeral.text}${unit ? ` ${unit.text}` : ""}`;
}
