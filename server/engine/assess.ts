/** `assess`: a plan to its outcome, each figure with its uncertainty or with the reason why it is unknown. */

import { liquidOf } from "./composition.ts";
import { costReasons } from "./cost.ts";
import { proteinShare } from "./energy.ts";
import { glassHeat } from "./glass.ts";
import { at } from "./liquid.ts";
import { type Figure, type FigureName, figures, type Outcome, type ServePlan, type Uncertain } from "./plan.ts";
import { mergeTexts, noReasons } from "./reasons.ts";
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

const none: readonly string[] = [];

function reasonsFor(name: FigureName, run: Run, plan: ServePlan): readonly string[] {
  const { of, needs } = figures[name];
  let reasons = none;
  if (run[of] !== noReasons) for (const topic of needs) reasons = mergeTexts(reasons, run[of][topic]);
  if (name === "costPerServe") return costReasons(plan, run.whole.volume);
  if (name === "fillShare" && !plan.glass) return mergeTexts(reasons, ["no glass is named"]);
  if (name === "ratio" && reasons.length === 0 && !(run.values[figureIndex.acidGPer100Ml]! >= leastAcid)) {
    return [`less than ${leastAcid} g of acid in 100 ml: too little to weigh the sweetness against`];
  }
  return reasons;
}
