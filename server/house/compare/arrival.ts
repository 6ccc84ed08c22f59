/** What comes with a drink that was not there before: what a guest could be hurt by, what it is poured from, what it comes to. */
import type { Entry } from "../../../grammar/tree.ts";
import type { Figure } from "../../engine/plan.ts";
import { assessDrink } from "../drink.ts";
import type { House } from "../house.ts";
import { flatten } from "../riff.ts";
import { costOfDrink } from "../sales.ts";
import { showPour } from "../show-pour.ts";
import { suitabilityOf } from "../suitability.ts";

export interface Arrival {
  readonly contains: readonly string[];
  readonly notStated: readonly string[];
  /** As written, in order. */
  readonly pours: readonly string[];
  readonly strength: Figure;
  /** Absent where nothing that goes into it has a price. */
  readonly cost?: { readonly currency?: string; readonly perServe: Figure; readonly share?: Figure };
}

export function arrivalOf(house: House, entry: Entry): Arrival {
  const { contains, notStated } = suitabilityOf(house, entry);
  const cost = costOfDrink(house, entry);
  const share = cost?.sales[0]?.share;
  return {
    contains: contains.map(({ allergen }) => allergen),
    notStated,
    pours: flatten(house, entry).pours.map((pour) => showPour(pour, pour.ingredient)),
    strength: assessDrink(house, entry).outcome.figure("strengthPct"),
    ...(cost && { cost: { ...(cost.currency && { currency: cost.currency }), perServe: cost.perServe, ...(share && { share }) } }),
  };
}
