/**
 * A drink mixed ahead in bottles: every pour times the serves and rounded to what the bar measures, the water that
 * its ice would have given, what is left for the glass and why, and what all of it comes to.
 */

import type { Entry } from "../../grammar/tree.ts";
import { type InTheCold, inTheCold } from "../engine/cold.ts";
import { liquidOf } from "../engine/composition.ts";
import type { Amount, Figure, Model, PrepFigureName, PrepModel, PrepPart } from "../engine/plan.ts";
import { assessPrep } from "../engine/prep.ts";
import { whyApart } from "./batch-apart.ts";
import { allergensOf, type BottleUseBy, isDay, useByOfBottle } from "./batch-keeping.ts";
import { asMeasured, type Measured, measureG, measureMl } from "./batch-measure.ts";
import { type Water, waterOf } from "./batch-water.ts";
import { type Assessment, assessDrink } from "./drink.ts";
import { pureWater } from "./frozen.ts";
import type { House } from "./house.ts";
import type { FlatPour } from "./riff.ts";
import { perServe } from "./serve.ts";
import { type Beside, besideOf, isBatched, onJigger } from "./service-spec.ts";
import { type Settings, settingsOf } from "./settings.ts";
import { showNumber, showVolume } from "./show.ts";
import type { Suitability } from "./suitability.ts";

/** How much is made: so many serves, so much in the bottles, or as many whole serves as one bottle holds. */
export type BatchSize = { readonly serves: number } | { readonly ml: number } | { readonly fill: true };

export interface BatchOptions {
  /** The day on which it is made, `2026-11-28`. */
  readonly made: string;
  /** Absent: the house's `bottle:`. */
  readonly bottleMl?: number;
  /** With the water of the ice or without; absent: as the drink wants it. */
  readonly water?: boolean;
}

export interface BatchPour {
  readonly pour: FlatPour;
  /** Exactly so much, in `unit`. */
  readonly exact: number;
  readonly unit: "ml" | "g";
  readonly measured: Measured;
  /** What is measured by volume, by weight; absent where its density is unknown and where it is weighed anyway. */
  readonly weighed?: Measured;
  /** Marked for the bottle, though what is like it is left out of one. */
  readonly doubt?: string;
}

export interface Apart {
  /** Absent for the garnish. */
  readonly beside?: Beside;
  readonly name: string;
  readonly why: string;
}

/** The drink's own figure, and that of the drink from this batch. */
export interface Compared {
  readonly figure: (typeof compared)[number];
  readonly own: number;
  readonly batch: number;
}
export const compared = ["strengthPct", "sugarGPer100Ml", "acidGPer100Ml"] as const satisfies readonly PrepFigureName[];

export interface Batch {
  readonly assessment: Assessment;
  readonly settings: Settings;
  readonly made: string;
  readonly serves: number;
  readonly pours: readonly BatchPour[];
  readonly water: Water;
  readonly apart: readonly Apart[];
  readonly volumeMl: Figure;
  readonly strengthPct: Figure;
  /** What one serve takes of it, and what the jigger measures of that. */
  readonly serveMl: Figure;
  readonly jiggerMl: number | null;
  readonly bottles: { readonly sizeMl: number; readonly headspace: number; readonly count: number | null };
  readonly cold: InTheCold;
  readonly served: readonly Compared[];
  readonly useBy: BottleUseBy;
  readonly allergens: Pick<Suitability, "contains" | "notStated">;
}

/** Why no batch can be made, in plain words. */
export interface NoBatch {
  readonly problem: string;
}

/** Left empty at the neck, so that it can be turned over, and warms up without harm: practice, no source. */
export const headspace = 0.03;
export const mostServes = 10_000;

export function batchOf(house: House, entry: Entry, size: BatchSize, options: BatchOptions): Batch | NoBatch {
  if (!isDay(options.made)) return { problem: `“${options.made}” is no day. Write it as year, month and day, such as 2026-11-28.` };
  const assessment = assessDrink(house, entry);
  const name = entry.name?.text || "This";
  const sorted = sortPours(house, assessment);
  if (sorted.inBottle.length === 0) return { problem: `Nothing of ${name} stands in a bottle: ${whyNothing(sorted.apart)}.` };
  if (assessment.proportional) return { problem: `${name} is in parts without a size; give it a \`total:\` or a \`part:\` first.` };
  const settings = settingsOf(house, house.scopeOf(entry));
  const making: Making = { house, assessment, settings, sorted, options };
  const sizeMl = options.bottleMl ?? settings.bottleMl;
  if ("serves" in size) return size.serves > mostServes ? tooMany : made(making, size.serves, sizeMl);
  const one = exactServe(making);
  if (one.value === null) return { problem: `How much one serve of ${name} comes to is unknown: ${one.because?.join("; ")}.` };
  if ("ml" in size) return size.ml / one.value > mostServes ? tooMany : made(making, size.ml / one.value, sizeMl);
  const room = sizeMl * (1 - headspace);
  const most = Math.floor(room / one.value + 1e-9);
  if (most > mostServes) return tooMany;
  // What rounding adds may not fit any more.
  for (const serves of [most, most - 1]) {
    const batch = serves > 0 ? made(making, serves, sizeMl) : undefined;
    if (batch && batch.volumeMl.value! <= room) return batch;
  }
  const shown = [sizeMl, one.value].map((ml) => showVolume(ml, settings));
  return { problem: `A bottle of ${shown[0]} does not hold one serve of ${shown[1]} with room at its neck. Take a larger one.` };
}
const tooMany: NoBatch = { problem: `That is more than a bar pours: ask for up to ${showNumber(mostServes)} serves.` };

interface Making {
  readonly house: House;
  readonly assessment: Assessment;
  readonly settings: Settings;
  readonly sorted: Sorted;
  readonly options: BatchOptions;
}

interface InBottle {
  readonly pour: FlatPour;
  readonly of: Model;
  readonly unit: "ml" | "g";
  /** In one serve. */
  readonly amount: number;
  readonly doubt?: string;
}

interface Sorted {
  readonly inBottle: readonly InBottle[];
  readonly apart: readonly Apart[];
  /** The pours among them. */
  readonly beside: readonly FlatPour[];
  readonly marked: boolean;
  /** All that meets the ice is in the bottle. */
  readonly isAll: boolean;
}

function sortPours(house: House, assessment: Assessment): Sorted {
  const { flat, pours, plan } = assessment;
  const marked = flat.pours.some(isBatched);
  const inBottle: InBottle[] = [];
  const apart: Apart[] = [];
  const beside: FlatPour[] = [];
  for (const pour of flat.pours) {
    const planned = plan.pours[pours.indexOf(pour)];
    const amount = planned && knownAmount(planned.amount);
    const against = whyApart(house, pour);
    const unmarked = marked && !isBatched(pour) ? "not marked `batched`" : undefined;
    const unknown = planned && amount ? undefined : "how much of it is not known";
    const why = marked ? (unmarked && (against ?? unmarked)) || unknown : (against ?? unknown);
    if (why) {
      beside.push(pour);
      apart.push({ beside: besideOf(assessment, pour), name: pour.ingredient.resolution.text, why });
    } else {
      inBottle.push({ pour, of: planned!.of, unit: amount!.unit, amount: amount!.value / plan.serves, ...(against && { doubt: against }) });
    }
  }
  const garnish = flat.field("garnish")?.field.items.map(({ text }) => ({ name: text, why: "it goes on the glass" })) ?? [];
  const vessel = pours.filter((_, index) => plan.pours[index]!.stage === "vessel");
  const isAll = vessel.every((pour) => inBottle.some((one) => one.pour === pour));
  return { inBottle, apart: [...apart, ...garnish], beside, marked, isAll };
}

function knownAmount(amount: Amount | object): { unit: "ml" | "g"; value: number } | undefined {
  for (const unit of ["ml", "g"] as const) {
    const known = (amount as Partial<Record<"ml" | "g", { value?: number }>>)[unit];
    if (known?.value !== undefined && known.value > 0) return { unit, value: known.value };
  }
  return undefined;
}

function whyNothing(apart: readonly Apart[]): string {
  return apart.length > 0 ? apart.map(({ name, why }) => `${name} (${why})`).join(", ") : "it pours nothing";
}

/** Volumes do not add: one serve as the mixture that it is. */
function exactServe({ assessment, sorted, options, settings }: Making): Figure {
  const water = waterOf(assessment, sorted, options.water, 1, settings);
  const parts = sorted.inBottle.map(({ of, unit, amount }) => part(of, unit, { value: amount, u: 0, why: "" }));
  const wet = water.exactMl > 0 ? [part(pureWater, "ml", { value: water.exactMl, u: 0, why: "" })] : [];
  return assessPrep(mixture(assessment, [...parts, ...wet])).figure("volumeMl");
}

function made({ house, assessment, settings, sorted, options }: Making, serves: number, sizeMl: number): Batch {
  const { flat } = assessment;
  const pours = sorted.inBottle.map((one) => batchPour(one, serves, settings));
  const water = waterOf(assessment, sorted, options.water, serves, settings);
  const parts = pours.map(({ measured, unit }, index) => part(sorted.inBottle[index]!.of, unit, asMeasured(measured)));
  const model = mixture(assessment, [...parts, ...(water.measured ? [part(pureWater, "ml", asMeasured(water.measured))] : [])]);
  const outcome = assessPrep(model);
  const volumeMl = outcome.figure("volumeMl");
  const serveMl = perServe(volumeMl, serves);
  const inBottle = pours.map(({ pour }) => pour);
  return {
    assessment,
    settings,
    made: options.made,
    serves,
    pours,
    water,
    apart: sorted.apart,
    volumeMl,
    strengthPct: outcome.figure("strengthPct"),
    serveMl,
    jiggerMl: onJigger(serveMl, settings.jiggerMl),
    bottles: { sizeMl, headspace, count: volumeMl.value === null ? null : Math.ceil(volumeMl.value / (sizeMl * (1 - headspace)) - 1e-9) },
    cold: inTheCold(model, settings.freezerC),
    served: compareServed(assessment, sorted, model, water, serves),
    useBy: useByOfBottle(house, inBottle, options.made),
    allergens: allergensOf(house, flat, inBottle, sorted.beside),
  };
}

function batchPour({ pour, of, unit, amount, doubt }: InBottle, serves: number, settings: Settings): BatchPour {
  const exact = amount * serves;
  const { gPerMl, reasons } = liquidOf(of);
  const density = reasons.volume.length === 0 ? gPerMl : undefined;
  const measured = unit === "g" ? measureG(exact, settings) : measureMl(exact, density, pour.quantity, settings);
  const weighed = unit === "ml" && density && measured.way !== "scale" ? measureG(exact * density, settings) : undefined;
  return { pour, exact, unit, measured, ...(weighed && { weighed }), ...(doubt && { doubt }) };
}

/** The batch with the rest as the spec has it, and with the water of the ice where that is not in the bottle. */
function compareServed(assessment: Assessment, { inBottle }: Sorted, batch: PrepModel, water: Water, serves: number): Compared[] {
  const { pours, outcome, plan } = assessment;
  const times = serves / plan.serves;
  const rest = pours.flatMap((pour, index): PrepPart[] => {
    const poured = inBottle.some((one) => one.pour === pour) ? undefined : outcome.poured(index);
    return poured ? [part(plan.pours[index]!.of, "g", { value: poured.g * times, u: 0, why: "" })] : [];
  });
  const melt = (outcome.value("waterMl") ?? 0) * times;
  const missing = melt - water.exactMl;
  const late = missing > 1e-9 ? [part(pureWater, "ml", { value: missing, u: 0, why: "" })] : [];
  const served = assessPrep(mixture(assessment, [...batch.parts, ...rest, ...late]));
  return compared.flatMap((figure): Compared[] => {
    const [own, now] = [outcome.value(figure), served.value(figure)];
    return own === null || now === null ? [] : [{ figure, own, batch: now }];
  });
}

function part(of: Model, unit: "ml" | "g", amount: { value: number; u: number; why: string }): PrepPart {
  return { of, amount: unit === "ml" ? { ml: amount } : { g: amount } };
}

function mixture({ flat }: Assessment, parts: readonly PrepPart[]): PrepModel {
  return { type: "prep", name: flat.entry.name?.text ?? "", parts };
}
