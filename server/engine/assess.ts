/** `assess`: a plan to its outcome, each figure with its uncertainty or with the reason why it is unknown. */

import { liquidOf } from "./composition.ts";
import { costReasons } from "./cost.ts";
import { type Figure, type FigureName, figureNames, figures, type Outcome, type ServePlan, type Uncertain } from "./plan.ts";
import { gradientsOf } from "./propagation.ts";
import { mergeTexts, noReasons } from "./reasons.ts";
import { figureIndex, leastAcid, type Run, run } from "./serve.ts";
import { standingWater } from "./standing.ts";
import { type Gradients, spreadsOf } from "./uncertainty.ts";

/**
 * Computes a drink. Figures are there at once; uncertainties only when the first of them is asked for
 * (thirty times the work), so ask for `value` where a plain number is enough.
 */
export function assess(plan: ServePlan): Outcome {
  return new Assessed(plan);
}

class Assessed implements Outcome {
  readonly #plan: ServePlan;
  readonly #run: Run;
  #gradients: Gradients | undefined;
  #spreads: readonly number[] | undefined;

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
    const index = figureIndex[name];
    const value = this.#run.values[index]!;
    const because = reasonsFor(name, this.#run, this.#plan);
    if (Number.isNaN(value) || because.length > 0) return { value: null, plusMinus: null, because };
    return { value, plusMinus: this.#allSpreads()[index]! };
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
    this.#gradients ??= gradientsOf(this.#plan, this.#run.values);
    return this.#gradients;
  }

  #allSpreads(): readonly number[] {
    this.#spreads ??= spreadsOf(this.#allGradients(), figureNames.length);
    return this.#spreads;
  }
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
