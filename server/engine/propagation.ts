/**
 * From the uncertainty of what a drink is made from to that of its figures: the chain rule along the path
 * that a drink takes. Pours are added up; the steps chill them; the glass is filled and served.
 *
 * A source is moved only on the way that reads it. What that changes in the mixture on its way to the next
 * is turned into figures by the mixture's slopes: how each figure moves with each thing in it. Of those there
 * are some twenty, however many sources there are.
 */

import { type Liquid, liquidOf, movedLiquids } from "./composition.ts";
import { proteinShare } from "./energy.ts";
import { glassHeat } from "./glass.ts";
import { addMasses, at, massOf, noMasses } from "./liquid.ts";
import { type Beside, type PourPlan, type ServePlan, sugarKinds, type Uncertain } from "./plan.ts";
import { emptyMixture, isTop, payFor, pourAll, pourOne } from "./pouring.ts";
import { noReasons } from "./reasons.ts";
import { chillPoured, figureIndex, noFigures, serve } from "./serve.ts";
import { equal, type Mixture } from "./slush.ts";
import { sugars } from "./substances.ts";
import { modelDoubt } from "./techniques.ts";
import { type Gradients, isKnown, priceSources, type Shift, shiftsOf, stepOf } from "./uncertainty.ts";

/**
 * Of every source with an uncertainty the derivative of each figure, in the order of `figureNames`. `figures`
 * is what they are.
 */
export function gradientsOf(plan: ServePlan, figures: readonly number[]): Gradients {
  const gradients = new Map<Uncertain, number[]>();
  const slopesOf = (source: Uncertain): number[] => {
    let slopes = gradients.get(source);
    if (!slopes) {
      slopes = noFigures();
      gradients.set(source, slopes);
    }
    return slopes;
  };
  const { chilling, serving } = linksOf(plan, figures);

  for (const pour of plan.pours) if (!isTop(pour)) moveOne(pour, pourOne, pour.stage === "vessel" ? chilling : serving);
  for (const beside of plan.beside ?? []) moveOne(beside, payFor, serving);
  moveIn(chilling, stepSources(plan));
  moveIn(serving, servingSources(plan, serving.entering[ice]!));
  return gradients;

  /** A part whose sources only change what it brings. */
  function moveOne<Part extends PourPlan | Beside>(part: Part, bring: Bring<Part>, to: Link) {
    const base = liquidOf(part.of);
    for (const { source, up, down } of movedLiquids(part.of)) move(source, up, down);
    for (const { source, up, down } of shiftsOf(partSources(part))) move(source, base, base, up, down);

    function move(source: Uncertain, more: Liquid, less: Liquid, up?: Shift, down?: Shift) {
      const change = emptyMixture();
      const times = 1 / (2 * stepOf(source));
      bring(part, more, change, times, up);
      bring(part, less, change, -times, down);
      to.follow(flowOf(change, 0), slopesOf(source));
    }
  }

  /** Sources that a link reads itself. */
  function moveIn(link: Link, sources: readonly Uncertain[]) {
    for (const { source, up, down } of shiftsOf(sources)) {
      const slopes = slopesOf(source);
      const more = link.figures(link.entering, up);
      const less = link.figures(link.entering, down);
      for (let i = 0; i < slopes.length; i++) slopes[i]! += (more[i]! - less[i]!) / (2 * up.by);
    }
  }
}

type Bring<Part> = (part: Part, liquid: Liquid, to: Mixture, times: number, shift?: Shift) => void;

/** What goes on from link to link: a mixture's masses, its heat, its freezing offset, and the ice beside it. */
type Flow = number[];
const heat = noMasses().length;
const freezingOff = heat + 1;
const ice = heat + 2;

function flowOf({ masses, heatJ, freezingOffC }: Mixture, iceG: number): Flow {
  const flow = masses.slice();
  flow.push(heatJ, freezingOffC, iceG);
  return flow;
}

function mixtureIn(flow: Flow): Mixture {
  return { masses: flow.slice(0, heat), heatJ: flow[heat]!, freezingOffC: flow[freezingOff]! };
}

/** A part of the path, with all that follows it. */
interface Link {
  readonly entering: Flow;
  /** The figures that come of what enters. */
  figures(flow: Flow, shift?: Shift): number[];
  /** Adds what a small change of what enters changes in the figures. */
  follow(change: Flow, figures: number[]): void;
}

function linksOf(plan: ServePlan, before: readonly number[]): { chilling: Link; serving: Link } {
  const { vessel, after } = pourAll(plan);
  const chill = (flow: Flow, figures: number[], shift?: Shift): Flow => {
    const mixture = mixtureIn(flow);
    const { iceG } = chillPoured(plan, mixture, noReasons, figures, shift);
    return flowOf(mixture, iceG);
  };
  const poured = flowOf(vessel, 0);
  const chilled = chill(poured, noFigures());
  const together = flowOf(after, 0);
  addMasses(together, chilled, 1);
  // At its freezing point a drink bends: it is moved as the liquid, or as the slush, that it is.
  if (before[figureIndex.temperatureC]! >= before[figureIndex.freezingC]! - equal) together[freezingOff]! -= 0.01;
  const serving = link(together, before, (flow, shift) => {
    const figures = before.slice();
    serve(plan, mixtureIn(flow), flow[ice]!, [], noReasons, figures, shift);
    return figures;
  });
  const chilling = link(poured, before, (flow, shift) => {
    const figures = before.slice();
    const change = chill(flow, figures, shift);
    addMasses(change, chilled, -1);
    serving.follow(change, figures);
    return figures;
  });
  return { chilling, serving };
}

/** `before` is what the figures are; `figures`, what they come to with another flow or with a source moved. */
function link(entering: Flow, before: readonly number[], figures: Link["figures"]): Link {
  const grams = Math.max(1, massOf(entering));
  const slopes: number[][] = [];
  /** Of each figure, after one of the things that enter; worked out when first asked for. */
  const slopesAfter = (thing: number): number[] => {
    let slope = slopes[thing];
    if (!slope) {
      // So little of it that one side is enough, and well above what the solvers leave open.
      const step = 1e-7 * (thing === heat ? 100 * grams : Math.max(entering[thing]!, grams / 1000));
      slope = figures(entering.with(thing, entering[thing]! + step));
      for (let i = 0; i < slope.length; i++) slope[i] = (slope[i]! - before[i]!) / step;
      slopes[thing] = slope;
    }
    return slope;
  };
  return {
    entering,
    figures,
    follow(change, sum) {
      for (let thing = 0; thing < change.length; thing++) {
        const by = change[thing]!;
        if (by === 0) continue;
        const slope = slopesAfter(thing);
        for (let i = 0; i < sum.length; i++) sum[i]! += by * slope[i]!;
      }
    },
  };
}

// Sources, by what reads them

function partSources(part: PourPlan | Beside): Uncertain[] {
  const { amount, price } = part;
  const sources = priceSources(price);
  const add = (source: Uncertain) => sources.includes(source) || sources.push(source);
  const quantity = "ml" in amount ? amount.ml : "g" in amount ? amount.g : "topToMl" in amount ? amount.topToMl : undefined;
  if (quantity && isKnown(quantity)) add(quantity);
  if ("temperatureC" in part) add(part.temperatureC);
  return sources;
}

function stepSources(plan: ServePlan): Uncertain[] {
  const sources = [plan.ambientC];
  const add = (source: Uncertain) => sources.includes(source) || sources.push(source);
  for (const { technique, ice, seconds, waterShare, toC } of plan.steps) {
    if (seconds) add(seconds);
    if (waterShare && isKnown(waterShare)) add(waterShare);
    if (toC && isKnown(toC)) add(toC);
    if (!technique.chill) continue;
    const { kind, massG, temperatureC } = ice ?? plan.ice;
    const doubt = modelDoubt(technique);
    add(temperatureC);
    add(massG ?? doubt.iceG);
    add(kind === "crushed" ? doubt.waterCrushed : doubt.water);
    add(doubt.temperature);
  }
  return sources;
}

function servingSources(plan: ServePlan, leftG: number): Uncertain[] {
  const sources: Uncertain[] = [];
  const add = (source: Uncertain) => sources.includes(source) || sources.push(source);
  if (plan.serveIceG) add(plan.serveIceG);
  if (plan.glassC && !((plan.serveIceG?.value ?? leftG) > 0)) {
    add(plan.glassC);
    add(glassHeat);
  }
  if (plan.glass) add(plan.glass.capacityMl);
  for (const pour of plan.pours) {
    const { perGram } = liquidOf(pour.of);
    for (const kind of sugarKinds) if (perGram[at[kind]]! > 0) add(sugars[kind].sweetness);
    if (perGram[at.solids]! > 0) add(proteinShare);
    if (!isTop(pour)) continue;
    for (const { source } of movedLiquids(pour.of)) add(source);
    partSources(pour).forEach(add);
  }
  return sources;
}
