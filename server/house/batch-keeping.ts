/** What a label has to say of a mixed bottle besides its strength: how long it is good for, and who cannot take it. */
import { garnishesOf } from "./garnish.ts";
import type { House } from "./house.ts";
import { type Keeping, shortestKeeping } from "./keeping.ts";
import type { FlatDrink, FlatPour } from "./riff.ts";
import { type Suitability, suitabilityOf } from "./suitability.ts";
import { later } from "./use-by.ts";

export interface BottleUseBy {
  /** `2026-12-12`; absent where nobody states how long anything in it keeps. */
  readonly date?: string;
  /** What goes off first, of what is stated. */
  readonly keeping?: Keeping;
  /** What is in it of which nobody states that. */
  readonly notStated: readonly string[];
}

/** By the shortest keeping that is stated, from the day on which it is made (`2026-11-28`): never worked out from strength or sugar. */
export function useByOfBottle(house: House, inBottle: readonly FlatPour[], made: string): BottleUseBy {
  const stated: Keeping[] = [];
  const notStated: string[] = [];
  for (const { ingredient, alternatives } of inBottle) {
    for (const { resolution } of [ingredient, ...alternatives.map((one) => one.ingredient)]) {
      const found = resolution.found?.entry;
      const keeping = found && shortestKeeping(house, found);
      if (keeping) stated.push(keeping);
      else if (!notStated.includes(resolution.text)) notStated.push(resolution.text);
    }
  }
  const [keeping] = stated.sort((one, other) => one.seconds - other.seconds);
  return keeping ? { date: later(made, keeping.seconds), keeping, notStated } : { notStated };
}

/** Whether it is a day of the calendar, written as year, month and day. */
export function isDay(text: string): boolean {
  return /^\d{4}-\d{2}-\d{2}$/.test(text) && later(text, 0) === text;
}

/**
 * The drink's allergens without what comes only from that which is poured, rimmed or garnished beside the bottle.
 * Whatever is not known to stand beside it stays: a label too many hurts nobody.
 */
export function allergensOf(
  house: House,
  flat: FlatDrink,
  inBottle: readonly FlatPour[],
  beside: readonly FlatPour[],
): Pick<Suitability, "contains" | "notStated"> {
  const inside = callings(inBottle);
  const garnished = garnishesOf(house, house.scopeOf(flat.entry), flat).flatMap(({ name, ingredient }) => [
    name,
    ...(ingredient ? [ingredient.resolution.text, ingredient.resolution.found?.entry.name?.text ?? ""] : []),
  ]);
  const outside = [...callings(beside), ...garnished].filter(Boolean);
  const goes = (name: string) => !means(outside, name) || means(inside, name);
  const { contains, notStated } = suitabilityOf(house, flat.entry);
  return {
    contains: contains.flatMap((one) => {
      const names = one.names.filter(goes);
      return names.length > 0 ? [{ ...one, names }] : [];
    }),
    notStated: notStated.filter(goes),
  };
}

/** All that what is poured may be called. */
function callings(pours: readonly FlatPour[]): string[] {
  return pours
    .flatMap(({ ingredient, alternatives }) => [ingredient, ...alternatives.map((one) => one.ingredient)])
    .flatMap(({ resolution }) => [resolution.text, resolution.found?.entry.name?.text ?? ""])
    .filter(Boolean);
}

/** `clove bitters`, or `white sugar in sugar syrup` of the syrup. */
function means(names: readonly string[], name: string): boolean {
  return names.some((one) => name === one || name.endsWith(` in ${one}`));
}
