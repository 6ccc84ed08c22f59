/** A prep, computed: how much it makes and what is in it. */

import { batchOf } from "./composition.ts";
import { ethanolDensity } from "./ethanol-water.ts";
import { at, massOf, sugarOf } from "./liquid.ts";
import { type Figure, type PrepFigureName, type PrepModel, type PrepOutcome, prepFigureNames } from "./plan.ts";
import { mergeTexts, type Reasons, type Topic } from "./reasons.ts";
import { differentiate, type Gradients, type Shift, sourcesOf, spreadOf } from "./uncertainty.ts";

/** Computes a prep from its parts, measured values put in. Uncertainties when the first is asked for. */
export function assessPrep(model: PrepModel): PrepOutcome {
  const { reasons } = batchOf(model);
  const values = figuresOf(model);
  let gradients: Gradients | undefined;
  const value = (name: PrepFigureName): number | null => {
    const number = values[prepFigureNames.indexOf(name)]!;
    return Number.isNaN(number) || because(name, reasons, model).length > 0 ? null : number;
  };
  return {
    value,
    figure(name): Figure {
      const number = value(name);
      if (number === null) return { value: null, plusMinus: null, because: because(name, reasons, model) };
      gradients ??= differentiate(sourcesOf(model), (shift) => figuresOf(model, shift));
      return { value: number, plusMinus: spreadOf(gradients, prepFigureNames.indexOf(name)) };
    },
  };
}

/** In the order of `prepFigureNames`. */
function figuresOf(model: PrepModel, shift?: Shift): number[] {
  const { masses, volumeMl } = batchOf(model, shift);
  const grams = massOf(masses);
  const acid = masses[at.titratable]!;
  const sugar = sugarOf(masses);
  return [
    grams,
    volumeMl,
    grams / volumeMl,
    (100 * sugar) / grams,
    (100 * masses[at.ethanol]!) / (ethanolDensity / 1000) / volumeMl,
    (100 * acid) / grams,
    (100 * sugar) / volumeMl,
    (100 * acid) / volumeMl,
  ];
}

const madeFrom: Readonly<Record<PrepFigureName, readonly Topic[]>> = {
  massG: ["volume"],
  volumeMl: ["volume"],
  densityGPerMl: ["volume"],
  brix: ["volume", "sugar"],
  strengthPct: ["volume", "ethanol"],
  acidGPer100G: ["volume", "acid"],
  sugarGPer100Ml: ["volume", "sugar"],
  acidGPer100Ml: ["volume", "acid"],
};

function because(name: PrepFigureName, reasons: Reasons, model: PrepModel): readonly string[] {
  let all: readonly string[] = [];
  for (const topic of madeFrom[name]) all = mergeTexts(all, reasons[topic]);
  return all.length === 0 && model.parts.every((part) => part.discarded) ? [`${model.name} has nothing in it`] : all;
}
