/**
 * How often the interval that a figure claims holds the figure, when everything that it was computed from
 * is drawn anew at once: first-order propagation against Monte Carlo.
 */
import { assess } from "../../server/engine/assess.ts";
import { difference } from "../../server/engine/difference.ts";
import {
  type Figure,
  type FigureName,
  figureNames,
  type Model,
  type Outcome,
  type ServePlan,
  type Uncertain,
} from "../../server/engine/plan.ts";
import { type Chance, chanceFrom } from "./chance.ts";
import { randomDrink, riffOf } from "./random-drinks.ts";

/** Shares of the draws that fell within one and within two standard uncertainties. */
export interface Coverage {
  readonly figure: FigureName;
  /** Draws of drinks in which the figure is known and not certain. */
  readonly draws: number;
  readonly within1: number;
  readonly within2: number;
}

/** What a normal distribution holds within one and within two standard deviations. */
export const claimed = { within1: 0.683, within2: 0.954 } as const;

export interface Coverages {
  readonly figures: readonly Coverage[];
  /** The figure of a riff less its parent's, which share most of their sources. */
  readonly differences: readonly Coverage[];
}

/** So many random drinks, and a riff on every other; each with its sources drawn so many times. */
export function coverageOf(drinks: number, drawsEach: number, seed: number): Coverages {
  const chance = chanceFrom(seed);
  const figures = new Tally();
  const differences = new Tally();
  for (let i = 0; i < drinks; i++) {
    const parent = randomDrink(chance);
    const riff = i % 2 === 0 ? riffOf(parent, chance) : undefined;
    const [one, other] = [assess(parent), riff && assess(riff)];
    const known = figureNames.filter((name) => one.value(name) !== null);
    const claims = known.map((name) => ({ name, itself: one.figure(name), apart: other && difference(other, one, name) }));
    const sources = new Set([one, other].flatMap((drink) => known.flatMap((name) => [...(drink?.gradient(name).keys() ?? [])])));
    for (let draw = 0; draw < drawsEach; draw++) {
      const [here, there] = drawn(sources, chance, () => [outcomeOf(parent), riff && outcomeOf(riff)] as const);
      for (const { name, itself, apart } of claims) {
        const [value, riffs] = [here.value(name), there?.value(name) ?? null];
        if (value === null) continue;
        figures.count(name, value, itself);
        if (apart && riffs !== null) differences.count(name, riffs - value, apart);
      }
    }
  }
  return { figures: figures.all(), differences: differences.all() };
}

/** Computed anew, with whatever its sources are now. */
const outcomeOf = (plan: ServePlan): Outcome => assess({ ...plan, pours: plan.pours.map((pour) => ({ ...pour, of: renewed(pour.of) })) });

/** The same ingredient as another object: what the engine remembers of the first does not hold for it. */
function renewed(model: Model): Model {
  return model.type === "stock" ? { ...model } : { ...model, parts: model.parts.map((part) => ({ ...part, of: renewed(part.of) })) };
}

/** Moves every source at once, wherever it is used, for as long as `use` runs. The object is the source. */
function drawn<T>(sources: ReadonlySet<Uncertain>, chance: Chance, use: () => T): T {
  const before = [...sources].map((source) => [source as { value: number; u: number }, source.value] as const);
  for (const [source, value] of before) source.value = value + source.u * chance.normal();
  try {
    return use();
  } finally {
    for (const [source, value] of before) source.value = value;
  }
}

class Tally {
  readonly #counts = new Map<FigureName, { draws: number; in1: number; in2: number }>();

  /** Counts a draw, unless the figure is unknown, or as good as certain. */
  count(figure: FigureName, drawn: number, { value, plusMinus }: Figure): void {
    if (value === null || plusMinus === null || !(plusMinus > 1e-6 * Math.max(1, Math.abs(value)))) return;
    const counts = this.#counts.get(figure) ?? { draws: 0, in1: 0, in2: 0 };
    this.#counts.set(figure, counts);
    const off = Math.abs(drawn - value) / plusMinus;
    counts.draws++;
    if (off <= 1) counts.in1++;
    if (off <= 2) counts.in2++;
  }

  all(): Coverage[] {
    return figureNames.flatMap((figure) => {
      const counts = this.#counts.get(figure);
      return counts ? [{ figure, draws: counts.draws, within1: counts.in1 / counts.draws, within2: counts.in2 / counts.draws }] : [];
    });
  }
}
