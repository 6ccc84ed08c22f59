/** An amount as a book prints it: in its systems of units, ounces rounded to what a bar pours. */
import type { Entry, Pour } from "../../../grammar/tree.ts";
import type { House } from "../house.ts";
import { fold } from "../names.ts";
import { prepPours } from "../prep.ts";
import { flatten } from "../riff.ts";
import { showNumber, showVolume, showWeight } from "../show.ts";
import { showPourAmount } from "../show-pour.ts";
import { type BookStyle, measureOf, type System } from "./style.ts";

export type Poured = Pick<Pour, "lead" | "quantity">;

/** The pour of a drink or a prep that a name means; absent where it pours none. */
export function pouredAs(house: House, entry: Entry, name: string): Poured | undefined {
  const scope = house.scopeOf(entry);
  const declared = (["ingredient", "drink"] as const).flatMap((nameClass) => house.find(scope, nameClass, name)?.entry ?? [])[0];
  const means = ({ resolution }: { resolution: { found?: { entry: Entry }; text: string } }) =>
    declared ? resolution.found?.entry === declared : fold(resolution.text) === fold(name);
  if (entry.kind === "drink") return flatten(house, entry).pours.find(({ ingredient }) => means(ingredient));
  return prepPours(house, entry).find(({ ingredient }) => means(ingredient))?.pour;
}

/** The amount of a pour in a system of units; empty where none is stated. */
export function spoken(pour: Poured, style: BookStyle, system: System): string {
  const { quantity } = pour;
  const unit = quantity?.unit?.unit;
  if (!quantity || !unit || quantity.value === undefined || quantity.upTo !== undefined) return showPourAmount(pour);
  if (unit.ml && !unit.bar) {
    const ml = quantity.value * (unit.id === "oz" ? style.ounceMl : unit.ml);
    if (system === "metric") return showVolume(ml, measureOf(style, system));
    const ounces = Math.max(1, Math.round(ml / style.ounceMl / style.ounceStep)) * style.ounceStep;
    return showVolume(ounces * style.ounceMl, measureOf(style, system));
  }
  if (unit.g && !unit.bar) return showWeight(quantity.value * unit.g);
  return unit.bar ? `${showNumber(quantity.value)} ${quantity.unit!.text}` : showPourAmount(pour);
}
