/** A prep, computed: how much it makes and what is in it. */

import { batchOf } from "./composition.ts";
import { ethanolDensity } from "./ethanol-water.ts";
import { at, massOf, sugarOf } from "./liquid.ts";
import { type Figure, type PrepFigureName, type PrepModel, type PrepOutcome, prepFigureNames } from "./plan.ts";
import { mergeTexts, type Topic } from "./reasons.ts";
import { differentiate, type Shift, sourcesOf, spreadsOf } from "./uncertainty.ts";

/** Computes a prep from its parts, measured values put in. Uncertainties when the first is asked for. */
export function assessPrep(model: PrepModel): PrepOutcome {
  const batch = batchOf(model);
  const values = figuresOf(model);
  let spreads: number[] | undefined;
  const value = (name: PrepFigureName): number | null => {
    const number = values[prepFigureNames.indexOf(name)]!;
    return Number.isNaN(number) || because(name, batch, model).length > 0 ? null : number;
  };
  return {
    value,
    figure(name): Figure {
      const number = value(name);
      if (number === null) return { value: null, plusMinus: null, because: because(name, batch, model) };
      spreads ??= spreadsOf(
        differentiate(sourcesOf(model), (shift) => figuresOf(model, shift)),
        prepFigureNames.length,
      );
      return { value: number, plusMinus: spreads[prepFigureNames.indexOf(name)]! };
    },
  };
}

/** In the order of `prepFigureNames`. */
function figuresOf(model: PrepModel, shift?: Shift): number[] {
  const { masses, volumeMl, massInG, boiledOffG, leftBehindG } = batchOf(model, shift);
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
    (100 * masses[at.salt]!) / grams,
    sugar / masses[at.water]!,
    (100 * (sugar + masses[at.acid]! + masses[at.salt]! + masses[at.solids]!)) / grams,
    massInG,
    boiledOffG,
    leftBehindG,
  ];
}

const madeFrom: Readonly<Record<PrepFigureName, readonly Topic[]>> = {
  massG: ["volume"],
  volumeMl: ["volume", "ethanol"],
  densityGPerMl: ["volume", "ethanol"],
  brix: ["volume", "sugar"],
  strengthPct: ["volume", "ethanol"],
  acidGPer100G: ["volume", "acid"],
  sugarGPer100Ml: ["volume", "ethanol", "sugar"],
  acidGPer100Ml: ["volume", "ethanol", "acid"],
  saltGPer100G: ["volume", "salt"],
  sugarToWater: ["volume", "sugar"],
  solubleGPer100G: ["volume", "sugar", "acid", "salt", "solids"],
  massInG: ["volume"],
  boiledOffG: ["volume"],
  leftBehindG: ["volume"],
};

/** From so much sugar on, g/100 g, it is spoken of as a syrup. */
const leastSugar = 20;

/** How much there is of it; what it is made of may be known where this is not. */
const sizes: ReadonlySet<PrepFigureName> = new Set(["massG", "volumeMl", "leftBehindG"]);
/** What was read on it is known, whatever is not. */
const readAs: Partial<Record<PrepFigureName, keyof NonNullable<PrepModel["measured"]>>> = {
  brix: "brix",
  strengthPct: "abvPct",
  densityGPerMl: "densityGPerMl",
};

function because(name: PrepFigureName, { reasons, unsized }: ReturnType<typeof batchOf>, model: PrepModel): readonly string[] {
  const reading = readAs[name];
  if (name === "sugarToWater" && reasons.sugar.length === 0) {
    const values = figuresOf(model);
    if (values[prepFigureNames.indexOf("brix")]! < leastSugar) {
      return [`less than ${leastSugar} g of sugar in 100 g: not what one calls a syrup`];
    }
    if (values[prepFigureNames.indexOf(name)] === Number.POSITIVE_INFINITY) return ["there is no water in it"];
  }
  if (reading && model.measured?.[reading]) return [];
  let all: readonly string[] = [];
  for (const topic of madeFrom[name]) all = mergeTexts(all, reasons[topic]);
  if (sizes.has(name)) all = mergeTexts(all, unsized);
  return all.length === 0 && model.parts.every((part) => part.discarded) ? [`${model.name} has nothing in it`] : all;
}
