/**
 * How a drink is poured whose bottle is mixed beforehand: so much of the batch, and what is still poured
 * beside it. Volumes do not add, so the batch is measured as the mixture that it is.
 */
import type { Amount, Figure, Model, PourPlan, PrepModel } from "../engine/plan.ts";
import { assessPrep } from "../engine/prep.ts";
import type { Assessment } from "./drink.ts";
import type { House } from "./house.ts";
import { nearestMeasurable } from "./measurable.ts";
import { has } from "./modifiers.ts";
import type { FlatPour } from "./riff.ts";
import { perServe } from "./serve.ts";
import { settingsOf } from "./settings.ts";

export interface ServiceSpec {
  /** Of the mixed batch in one serve, ml. */
  readonly batchMl: Figure;
  /** The same as the jigger measures it; null where it measures nothing that near. */
  readonly jiggerMl: number | null;
  readonly batched: readonly FlatPour[];
  /** In the order in which they are poured. */
  readonly beside: readonly Beside[];
  /** Water that the method adds beforehand to what is not in the bottle alone, ml in one serve; 0 for none. */
  readonly waterMl: number;
}

export interface Beside {
  readonly pour: FlatPour;
  /** What it was taken as in one serve, where the pour is in parts; otherwise it is read off the pour. */
  readonly part?: Amount;
}

/** So much may what the jigger measures differ from the batch's own volume: it is less than a hand does. */
const near = 0.01;

/** Absent for a drink of which nothing is batched. */
export function serviceSpecOf(house: House, assessment: Assessment): ServiceSpec | undefined {
  const { flat, plan, pours, proportional } = assessment;
  const inBottle = pours.flatMap((pour, index) => (isBatched(pour) && partOf(plan.pours[index]!) ? [index] : []));
  if (inBottle.length === 0) return undefined;
  const batched = inBottle.map((index) => pours[index]!);
  const vessel = plan.pours.flatMap(({ stage }, index) => (stage === "vessel" ? [index] : []));
  const steps = plan.steps.flatMap(({ waterShare }) => (waterShare ? [{ does: {}, waterShare }] : []));
  const isAll = vessel.every((index) => inBottle.includes(index));
  const mixed = assessPrep({ ...mixtureOf(assessment, inBottle), ...(isAll && { steps }) });
  const batchMl = proportional ? noSize : perServe(mixed.figure("volumeMl"), plan.serves);
  return {
    batchMl,
    jiggerMl: onJigger(batchMl, settingsOf(house, house.scopeOf(flat.entry)).jiggerMl),
    batched,
    beside: flat.pours
      .filter((pour) => !batched.includes(pour) && !has(pour.modifiers, "to rim"))
      .map((pour) => besideOf(assessment, pour)),
    waterMl: isAll || steps.length === 0 ? 0 : addedMl(assessment, vessel, steps),
  };
}

export function isBatched({ modifiers }: FlatPour): boolean {
  return has(modifiers, "batched");
}

const noSize: Figure = { value: null, plusMinus: null, because: ["it is written in parts without a size"] };

function partOf({ of, amount }: PourPlan): { of: Model; amount: Amount } | undefined {
  return "ml" in amount || "g" in amount ? { of, amount } : undefined;
}

function mixtureOf({ flat, plan }: Assessment, indexes: readonly number[]): PrepModel {
  return { type: "prep", name: flat.entry.name?.text ?? "", parts: indexes.flatMap((index) => partOf(plan.pours[index]!) ?? []) };
}

/** What the jigger measures of it; null where that is further off than a hand. */
export function onJigger({ value }: Figure, stepMl: number): number | null {
  if (value === null) return null;
  const nearest = nearestMeasurable(value, stepMl);
  return Math.abs(nearest - value) <= near * value ? nearest : null;
}

/** A pour as it is poured for one serve. */
export function besideOf({ pours, plan, proportional }: Assessment, pour: FlatPour): Beside {
  const planned = plan.pours[pours.indexOf(pour)];
  const part = planned && partOf(planned)?.amount;
  const isInParts = pour.quantity?.unit?.unit.dimension === "part";
  return { pour, ...(isInParts && !proportional && part && { part }) };
}

/** Of one serve: what the method's shares of all that is in the vessel come to. */
function addedMl(assessment: Assessment, vessel: readonly number[], steps: NonNullable<PrepModel["steps"]>): number {
  const mixture = mixtureOf(assessment, vessel);
  const [before, after] = [assessPrep(mixture), assessPrep({ ...mixture, steps })].map((one) => one.value("massG"));
  // A millilitre of water is a gram, as near as anybody pours it.
  return before && after ? (after - before) / assessment.plan.serves : 0;
}
