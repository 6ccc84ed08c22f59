/** `assess`: a plan to its outcome, each figure with its uncertainty or with the reason why it is unknown. */

import { liquidOf } from "./composition.ts";
import { costReasons } from "./cost.ts";
import { proteinShare } from "./energy.ts";
import { glassHeat } from "./glass.ts";
import { at } from "./liquid.ts";
import type { Figure, FigureName, Outcome, ServePlan, Uncertain } from "./plan.ts";
import { mergeTexts, noReasons, type Topic } from "./reasons.ts";
import { figureIndex, leastAcid, type Run, run } from "./serve.ts";
import { standingWater } from "./standing.ts";
import { modelDoubt } from "./techniques.ts";
import { differentiate, type Gradients, planSources, sourcesOf, spreadOf } from "./uncertainty.ts";

/**
 * Computes a drink. Figures are there at once; uncertainties only when the first of them is asked for
 * (about two runs for each source), so ask for `value` where a plain number is enough.
 */
export function assess(plan: ServePlan): Outcome {
  return new Assessed(plan);
}

class Assessed implements Outcome {
  readonly #plan: ServePlan;
  readonly #run: Run;
  #gradients: Gradients | undefined;

  constructor(plan: ServePlan) {
    this.#plan = plan;
    this.#run = run(plan);
  }

  get melt() {
    const { contacts } = this.#run;
    const sum = (of: "iceG" | "meltG" | "clingingG") => contacts.reduce((all, contact) => all + contact[of], 0);
    return contacts.length > 0 ? { iceG: sum("iceG"), meltG: sum("meltG"), clingingG: sum("clingingG") } : null;
  }

  get contacts() {
    return this.#run.contacts;
  }

  standing(minutes: number) {
    const unknown =
      reasonsFor("temperatureC", this.#run, this.#plan).length > 0 || reasonsFor("strengthPct", this.#run, this.#plan).length > 0;
    return unknown ? null : standingWater(this.#run.served, this.#plan, minutes);
  }

  value(name: FigureName): number | null {
    const value = this.#run.values[figureIndex[name]]!;
    return Number.isNaN(value) || reasonsFor(name, this.#run, this.#plan).length > 0 ? null : value;
  }

  figure(name: FigureName): Figure {
    const value = this.value(name);
    if (value === null) return { value, plusMinus: null, because: reasonsFor(name, this.#run, this.#plan) };
    return { value, plusMinus: spreadOf(this.#allGradients(), figureIndex[name]) };
  }

  gradient(name: FigureName): ReadonlyMap<Uncertain, number> {
    const index = figureIndex[name];
    return new Map([...this.#allGradients()].map(([source, slopes]) => [source, slopes[index]!]));
  }

  poured(index: number): { g: number; ml: number } | null {
    const pour = this.#plan.pours[index];
    if (!pour || reasonsFor("afterVolumeMl", this.#run, this.#plan).length > 0) return null;
    const g = this.#run.grams[index]!;
    return { g, ml: g / liquidOf(pour.of).gPerMl };
  }

  #allGradients(): Gradients {
    this.#gradients ??= differentiate(allSources(this.#plan), (shift) => run(this.#plan, shift).values);
    return this.#gradients;
  }
}

function allSources(plan: ServePlan): Set<Uncertain> {
  const sources = planSources(plan);
  if (plan.glassC) sources.add(glassHeat);
  for (const pour of plan.pours) {
    for (const source of sourcesOf(pour.of)) sources.add(source);
    if (liquidOf(pour.of).perGram[at.solids]! > 0) sources.add(proteinShare);
  }
  for (const { of } of plan.beside ?? []) for (const source of sourcesOf(of)) sources.add(source);
  for (const { technique, ice } of plan.steps) {
    if (!technique.chill) continue;
    const doubt = modelDoubt(technique);
    const { kind, massG } = ice ?? plan.ice;
    sources.add(kind === "crushed" ? doubt.waterCrushed : doubt.water);
    sources.add(doubt.temperature);
    if (!massG) sources.add(doubt.iceG);
  }
  return sources;
}

const feeding: readonly Topic[] = ["ethanol", "sugar", "acid", "solids"];

/** What each figure is made from: of what was in the vessel, or of the whole drink. */
const madeFrom: Readonly<Record<FigureName, { part: "vessel" | "steps" | "whole"; about: readonly Topic[] }>> = {
  beforeVolumeMl: { part: "vessel", about: ["volume"] },
  beforeMassG: { part: "vessel", about: ["volume"] },
  beforeStrengthPct: { part: "vessel", about: ["volume", "ethanol"] },
  waterMl: { part: "steps", about: ["volume"] },
  dilutionShare: { part: "steps", about: ["volume"] },
  vesselTemperatureC: { part: "steps", about: ["volume", "heat"] },
  afterVolumeMl: { part: "whole", about: ["volume"] },
  strengthPct: { part: "whole", about: ["volume", "ethanol"] },
  sugarGPer100Ml: { part: "whole", about: ["volume", "sugar"] },
  sweetnessGPer100Ml: { part: "whole", about: ["volume", "sugar"] },
  acidGPer100Ml: { part: "whole", about: ["volume", "acid"] },
  ratio: { part: "whole", about: ["volume", "sugar", "acid"] },
  saltGPer100Ml: { part: "whole", about: ["volume", "salt"] },
  temperatureC: { part: "whole", about: ["volume", "heat"] },
  fillShare: { part: "whole", about: ["volume"] },
  ethanolG: { part: "whole", about: ["ethanol"] },
  caffeineMg: { part: "whole", about: ["caffeine"] },
  densityGPerMl: { part: "whole", about: ["volume"] },
  freezingC: { part: "whole", about: ["volume", "ethanol", "sugar", "salt"] },
  costPerServe: { part: "whole", about: [] }, // see `cost.ts`
  pricedPerServe: { part: "whole", about: [] },
  energyKJ: { part: "whole", about: feeding },
  energyKcal: { part: "whole", about: feeding },
};

const none: readonly string[] = [];

function reasonsFor(name: FigureName, run: Run, plan: ServePlan): readonly string[] {
  const { part, about } = madeFrom[name];
  let reasons = none;
  if (run[part] !== noReasons) for (const topic of about) reasons = mergeTexts(reasons, run[part][topic]);
  if (name === "costPerServe") return costReasons(plan, run.whole.volume);
  if (name === "fillShare" && !plan.glass) return mergeTexts(reasons, ["no glass is named"]);
  if (name === "ratio" && reasons.length === 0 && !(run.values[figureIndex.acidGPer100Ml]! >= leastAcid)) {
    return [`less than ${leastAcid} g of acid in 100 ml: too little to weigh the sweetness against`];
  }
  return reasons;
}
