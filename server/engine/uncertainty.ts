/**
 * First-order propagation. A figure's sources are the `Uncertain` objects it was computed from; each is
 * moved a little by itself, by identity, so that what occurs twice counts as the one thing it is.
 */

import type { Known, Model, Price, Uncertain } from "./plan.ts";
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

/** By how much a source is moved. */
export function stepOf({ u }: Uncertain): number {
  return u / 10;
}

/** A source moved up and down. */
export interface Shifts {
  readonly source: Uncertain;
  readonly up: Shift;
  readonly down: Shift;
}

/** Those without uncertainty are left out. */
export function shiftsOf(sources: Iterable<Uncertain>): Shifts[] {
  const shifts: Shifts[] = [];
  for (const source of sources) {
    const by = stepOf(source);
    if (by > 0) shifts.push({ source, up: { source, by }, down: { source, by: -by } });
  }
  return shifts;
}

/**
 * Derivatives by central differences. `evaluate` gives the figures with one source moved; NaN where a figure
 * is unknown, and then the derivative is NaN. Sources without uncertainty are left out.
 */
export function differentiate(sources: Iterable<Uncertain>, evaluate: (shift: Shift) => number[]): Gradients {
  const gradients = new Map<Uncertain, number[]>();
  for (const { source, up, down } of shiftsOf(sources)) {
    const slope = evaluate(up);
    const below = evaluate(down);
    for (let i = 0; i < slope.length; i++) slope[i] = (slope[i]! - below[i]!) / (2 * up.by);
    gradients.set(source, slope);
  }
  return gradients;
}

/** The standard uncertainty of each of so many figures: contributions added in quadrature, unknown ones left out. */
export function spreadsOf(gradients: Gradients, figures: number): number[] {
  const spreads = new Array<number>(figures).fill(0);
  for (const [{ u }, slopes] of gradients) {
    for (let i = 0; i < figures; i++) {
      const part = slopes[i]! * u;
      if (!Number.isNaN(part)) spreads[i]! += part * part;
    }
  }
  for (let i = 0; i < figures; i++) spreads[i] = Math.sqrt(spreads[i]!);
  return spreads;
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
