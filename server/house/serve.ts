/** What one serve of a drink brings whoever drinks it. */
import type { Figure } from "../engine/plan.ts";
import { type StandardDrink, standardDrinkOf } from "../engine/standard-drinks.ts";
import type { Assessment } from "./drink.ts";
import type { House } from "./house.ts";
import { settingsOf } from "./settings.ts";

export interface Serve {
  readonly ethanolG: Figure;
  readonly energyKJ: Figure;
  readonly energyKcal: Figure;
  readonly caffeineMg: Figure;
  /** What the house's country counts in, and how many of them a serve is. */
  readonly counted: StandardDrink;
  readonly standardDrinks: Figure;
}

export function serveOf(house: House, { flat, outcome, plan }: Assessment): Serve {
  const counted = standardDrinkOf(settingsOf(house, house.scopeOf(flat.entry)).country);
  const ethanol = outcome.figure("ethanolG");
  return {
    ethanolG: perServe(ethanol, plan.serves),
    energyKJ: perServe(outcome.figure("energyKJ"), plan.serves),
    energyKcal: perServe(outcome.figure("energyKcal"), plan.serves),
    caffeineMg: perServe(outcome.figure("caffeineMg"), plan.serves),
    counted,
    standardDrinks: perServe(ethanol, plan.serves * counted.grams),
  };
}

/** A figure for all serves together, shared out. */
export function perServe({ value, plusMinus, because }: Figure, serves: number): Figure {
  return {
    value: value === null ? null : value / serves,
    plusMinus: plusMinus === null ? null : plusMinus / serves,
    ...(because && { because }),
  };
}
