/** A large amount as a bar measures it: with the jigger, in a jug, on the scale, or by the dash. */
import type { Quantity } from "../../grammar/tree.ts";
import type { Uncertain } from "../engine/plan.ts";
import { nearestMeasurable, unitText } from "./measurable.ts";
import type { Settings } from "./settings.ts";
import { mlIn, ounceFraction, showNumber } from "./show.ts";

export interface Measured {
  /** `1250 ml`, `45.2 g`, `9 dashes`. */
  readonly text: string;
  readonly way: "jigger" | "jug" | "scale" | "count";
  /** What then goes in, in the unit of what was to go in. */
  readonly amount: number;
  /** How much more than it should be that is, as a share; less where negative. */
  readonly off: number;
  /** How right a careful hand is, in the same unit. */
  readonly u: number;
}

/** A jug is marked in tens of ml, and used from a litre up: practice, no source. */
const jugMl = 10;
const jugFromMl = 1000;
/** Further off than this the jigger is too coarse, and the scale is at hand: practice, no source. */
const near = 0.02;

/** `gPerMl`: absent where nobody knows it. `written`: the quantity in the spec, for what is counted by the dash. */
export function measureMl(exactMl: number, gPerMl: number | undefined, written: Quantity | undefined, settings: Settings): Measured {
  const poured = pouredMl(exactMl, settings);
  if (Math.abs(poured.off) <= near) return poured;
  const finer = [poured, ...countedMl(exactMl, written, settings), ...weighedMl(exactMl, gPerMl, settings)];
  return finer.reduce((best, one) => (Math.abs(one.off) < Math.abs(best.off) - 1e-9 ? one : best));
}

/** On the scale; whole grams from a kilogram up, for what weighs kilograms shows no less. */
export function measureG(exactG: number, { scaleG }: Settings): Measured {
  const step = exactG >= 1000 ? Math.max(1, scaleG) : scaleG;
  const amount = nearestMeasurable(exactG, step);
  // A kitchen scale: practice, no source.
  const u = Math.max(0.05, step / 2 / Math.sqrt(3), 0.005 * amount);
  return { text: `${plain(amount)} g`, way: "scale", amount, off: offBy(amount, exactG), u };
}

function pouredMl(exactMl: number, settings: Settings): Measured {
  const { jiggerMl } = settings;
  const isJug = exactMl >= jugFromMl;
  const step = isJug ? jiggerMl * Math.ceil(jugMl / jiggerMl - 1e-9) : jiggerMl;
  const amount = nearestMeasurable(exactMl, step);
  // On a mark a hand is right to 1 ml, in a jug to 1 %: practice, no source.
  const u = Math.max(Math.min(1, jiggerMl / 2 / Math.sqrt(3)), 0.01 * amount);
  return { text: volumeText(amount, settings), way: isJug ? "jug" : "jigger", amount, off: offBy(amount, exactMl), u };
}

function countedMl(exactMl: number, written: Quantity | undefined, { bar }: Settings): Measured[] {
  const unit = written?.unit;
  const one = unit?.unit.bar ? bar[unit.unit.id] : undefined;
  if (!unit || !one || !unit.unit.ml) return [];
  const count = Math.max(1, Math.round(exactMl / one.value));
  const amount = count * one.value;
  return [
    { text: `${count} ${unitText(unit.unit, unit.text, count)}`, way: "count", amount, off: offBy(amount, exactMl), u: count * one.u },
  ];
}

function weighedMl(exactMl: number, gPerMl: number | undefined, settings: Settings): Measured[] {
  if (!gPerMl) return [];
  const { text, amount, off, u } = measureG(exactMl * gPerMl, settings);
  return [{ text, way: "scale", amount: amount / gPerMl, off, u: u / gPerMl }];
}

/** As what it is, for the engine. */
export function asMeasured({ amount, u, way }: Measured): Uncertain {
  return { value: amount, u, why: ways[way] };
}
const ways: Readonly<Record<Measured["way"], string>> = {
  jigger: "as measured with the jigger",
  jug: "as measured in a jug",
  scale: "as weighed",
  count: "as counted by hand",
};

function volumeText(ml: number, settings: Settings): string {
  const amount = ml / mlIn(settings);
  if (settings.units !== "oz") return `${plain(amount)} ${settings.units}`;
  return `${ounceFraction(amount) ?? showNumber(amount)} oz`;
}

/** All the digits that the measure has. */
function plain(amount: number): string {
  return String(Number(amount.toPrecision(6)));
}

function offBy(amount: number, exact: number): number {
  return exact > 0 ? amount / exact - 1 : 0;
}
