/**
 * First-order propagation. A figure's sources are the `Uncertain` objects it was computed from; each is
 * moved a little by itself, by identity, so that what occurs twice counts as the one thing it is.
 */

import type { Known, Model, Price, ServePlan, Uncertain } from "./plan.ts";
import { setting, strained } from "./processes.ts";
import { kindsOf, sugars } from "./substances.ts";

/** One source moved away from its value; all others stay. */
export interface Shift {
  readonly source: Uncertain;
  readonly by: number;
}

/** The number, moved if it is the one that is being moved. */
export function read(quantity: Uncertain, shift: Shift | undefined): number {
  return shift !== undefined && shift.source === quantity ? quantity.value + shift.by : quantity.value;
}

export function isKnown(quantity: Known): quantity is Uncertain {
  return (quantity as { because?: string }).because === undefined;
}

/** For each source, the derivative of each figure after it. */
export type Gradients = ReadonlyMap<Uncertain, number[]>;

/**
 * Derivatives by central differences over a tenth of each source's own uncertainty. `evaluate` gives
 * the figures with one source moved; NaN where a figure is unknown, and then the derivative is NaN.
 * Sources without uncertainty are left out.
 */
export function differentiate(sources: Iterable<Uncertain>, evaluate: (shift: Shift) => number[]): Gradients {
  const gradients = new Map<Uncertain, number[]>();
  for (const source of sources) {
    if (!(source.u > 0)) continue;
    const by = source.u / 10;
    const slope = evaluate({ source, by });
    const below = evaluate({ source, by: -by });
    for (let i = 0; i < slope.length; i++) slope[i] = (slope[i]! - below[i]!) / (2 * by);
    gradients.set(source, slope);
  }
  return gradients;
}

/** The standard uncertainty of the figure with this index: contributions added in quadrature. */
export function spreadOf(gradients: Gradients, index: number): number {
  let sum = 0;
  for (const [source, slopes] of gradients) {
    const part = slopes[index]! * source.u;
    if (!Number.isNaN(part)) sum += part * part;
  }
  return Math.sqrt(sum);
}

const ofModels = new WeakMap<Model, ReadonlySet<Uncertain>>();

/** Every source that an ingredient's composition or sweetness is computed from. */
export function sourcesOf(model: Model): ReadonlySet<Uncertain> {
  let sources = ofModels.get(model);
  if (!sources) {
    sources = model.type === "stock" ? stockSources(model) : prepSources(model);
    ofModels.set(model, sources);
  }
  return sources;
}

function stockSources(stock: Extract<Model, { type: "stock" }>): ReadonlySet<Uncertain> {
  const sources = new Set<Uncertain>();
  const add = (quantity: Known | undefined) => quantity && isKnown(quantity) && sources.add(quantity);
  add(stock.abvPct);
  for (const { amount, sugar } of stock.sugars) {
    add(amount);
    for (const kind of kindsOf(sugar)) add(sugars[kind].sweetness);
  }
  for (const { amount } of [...stock.acids, stock.salt, stock.solids, stock.caffeineMg]) add(amount);
  add(stock.fat?.amount);
  add(stock.densityGPerMl);
  for (const source of priceSources(stock.price)) sources.add(source);
  return sources;
}

function prepSources(prep: Extract<Model, { type: "prep" }>): ReadonlySet<Uncertain> {
  const sources = new Set<Uncertain>();
  for (const { of, amount, price, strained: sort, sets } of prep.parts) {
    if (sort) sources.add(strained[sort].holdsG);
    if (sets) for (const source of Object.values(setting[sets])) sources.add(source);
    for (const quantity of Object.values(amount)) if (isKnown(quantity)) sources.add(quantity);
    for (const source of [...sourcesOf(of), ...priceSources(price)]) sources.add(source);
  }
  for (const size of [prep.makes, ...(prep.steps ?? []).flatMap(({ to, waterShare }) => [to, waterShare && { waterShare }])])
    for (const quantity of Object.values<Known>(size ?? {})) if (isKnown(quantity)) sources.add(quantity);
  if (prep.measured?.brix) sources.add(sugars.sucrose.sweetness);
  for (const quantity of Object.values(prep.measured ?? {})) sources.add(quantity);
  return sources;
}

export function priceSources(price: Price | undefined): Uncertain[] {
  if (!price) return [];
  return [...(isKnown(price.amount) ? [price.amount] : []), ...(price.waste ? [price.waste] : [])];
}

/** Every source in a plan that is not one of its ingredients' own. */
export function planSources(plan: ServePlan): Set<Uncertain> {
  const sources = new Set<Uncertain>([plan.ambientC, plan.ice.temperatureC]);
  const add = (quantity: Uncertain | undefined) => quantity && sources.add(quantity);
  for (const { price } of [...plan.pours, ...(plan.beside ?? [])]) for (const source of priceSources(price)) sources.add(source);
  for (const { amount } of plan.beside ?? [])
    for (const quantity of Object.values<Known>(amount)) if (isKnown(quantity)) sources.add(quantity);
  for (const { amount, temperatureC } of plan.pours) {
    sources.add(temperatureC);
    for (const quantity of Object.values(amount) as (Known | true)[]) if (quantity !== true && isKnown(quantity)) sources.add(quantity);
  }
  for (const { ice, seconds, waterShare, toC } of plan.steps) {
    add(ice?.massG);
    add(ice?.temperatureC);
    add(seconds);
    for (const quantity of [waterShare, toC]) if (quantity && isKnown(quantity)) add(quantity);
  }
  add(plan.glassC);
  add(plan.ice.massG);
  add(plan.serveIceG);
  add(plan.glass?.capacityMl);
  return sources;
}
