/** What is kept or poured in the cold: how much of it is ice there, and whether it was meant to pour. */

import { type InTheCold, mostIceThatPours } from "../engine/cold.ts";
import { liquidOf } from "../engine/composition.ts";
import { at, sugarOf } from "../engine/liquid.ts";
import type { Model, PrepPart } from "../engine/plan.ts";
import type { Assessment } from "./drink.ts";

/** Ice enough to hold it in the bottle, by more than twice the uncertainty. */
export function isSolid({ iceShare: { value, plusMinus } }: InTheCold): boolean {
  return value !== null && value - mostIceThatPours > 2 * plusMinus!;
}

/**
 * What holds alcohol or is a syrup goes into the freezer to be poured from it; a juice, a fruit or a puree
 * goes there to be hard. From so much of either by weight: practice, no source.
 */
export function isMeantToPour(model: Model): boolean {
  const { perGram } = liquidOf(model);
  const solid = model.type === "stock" && model.solid;
  return !solid && (perGram[at.ethanol]! > 0.01 || sugarOf(perGram) > 0.25);
}

/** What a drink is before it is served, with the water that its method adds: what is batched and put in the cold. */
export function batchOfDrink({ plan, outcome }: Assessment): Model | undefined {
  const water = outcome.figure("waterMl");
  if (water.value === null) return undefined;
  const parts = plan.pours.flatMap(({ of, amount, stage }): PrepPart[] =>
    stage === "vessel" && ("ml" in amount || "g" in amount) ? [{ of, amount }] : [],
  );
  const added: PrepPart = { of: pureWater, amount: { ml: { value: water.value, u: water.plusMinus!, why: "the water that is added" } } };
  return parts.length > 0 ? { type: "prep", name: plan.pours[0]!.of.name, parts: [...parts, added] } : undefined;
}

const none = { amount: { value: 0, u: 0, why: "water" }, per: "100 ml" } as const;
/** As it comes from the tap, to the engine. */
export const pureWater: Model = {
  type: "stock",
  name: "water",
  solid: false,
  abvPct: none.amount,
  sugars: [],
  acids: [],
  salt: none,
  solids: none,
  caffeineMg: none,
};
