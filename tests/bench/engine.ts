/** How long one drink of eight pours takes: a plain sum, its figures, and all figures with their uncertainties. */
import { read } from "../../grammar/read.ts";
import { assess } from "../../server/engine/assess.ts";
import { figureNames, type Model, type ServePlan } from "../../server/engine/plan.ts";
import { assessDrink } from "../../server/house/drink.ts";
import { House } from "../../server/house/house.ts";
import { readLarder } from "../../server/larder/larder.ts";
import { percentile } from "./percentile.ts";

/** Microseconds, the median of the batches. */
export interface EngineSpeed {
  readonly sum: number;
  readonly values: number;
  readonly figures: number;
  /** With ingredients that no drink was made of before. */
  readonly met: number;
}

const spec = `drink Eight
  glass: collins
  method: shake 12 s; strain over cubed ice
  45 ml aged rum
  15 ml orange liqueur
  30 ml pineapple juice
  20 ml lime juice
  10 ml passion fruit puree
  10 ml simple syrup
  2 dashes aromatic bitters
  30 ml ginger beer
`;
const batches = 60;

export function engineSpeed(): EngineSpeed {
  const house = new House({ larder: readLarder(), roots: ["file:///bench"] });
  const tree = read(spec);
  house.setDocument({ uri: "file:///bench/eight.drink", version: null, tree });
  const { plan } = assessDrink(house, tree.entries[0]!);
  // Another plan each time: nothing that is kept for a drink answers for it.
  const fresh = (of = (model: Model) => model): ServePlan => ({ ...plan, pours: plan.pours.map((pour) => ({ ...pour, of: of(pour.of) })) });
  const allFigures = (of?: (model: Model) => Model) => {
    const outcome = assess(fresh(of));
    return figureNames.reduce((sum, name) => sum + (outcome.figure(name).plusMinus ?? 0), 0);
  };
  return {
    sum: time(20_000, () => sumOf(plan)),
    values: time(1000, () => {
      const outcome = assess(fresh());
      return figureNames.reduce((sum, name) => sum + (outcome.value(name) ?? 0), 0);
    }),
    figures: time(200, () => allFigures()),
    met: time(50, () => allFigures(renewed)),
  };
}

/** The same ingredient as another object, for which nothing is kept. */
function renewed(model: Model): Model {
  return model.type === "stock" ? { ...model } : { ...model, parts: model.parts.map((part) => ({ ...part, of: renewed(part.of) })) };
}

/** What a spreadsheet does: volumes × strengths ÷ volume. */
function sumOf({ pours }: ServePlan): number {
  let ethanol = 0;
  let volume = 0;
  for (const { of, amount } of pours) {
    const ml = "ml" in amount && "value" in amount.ml ? amount.ml.value : 0;
    const strength = of.type === "stock" && "value" in of.abvPct ? of.abvPct.value : 0;
    ethanol += ml * strength;
    volume += ml;
  }
  return ethanol / volume;
}

let kept = 0;

function time(runs: number, run: () => number): number {
  const times: number[] = [];
  for (let batch = -batches / 2; batch < batches; batch++) {
    const start = performance.now();
    for (let count = 0; count < runs; count++) kept += run();
    if (batch >= 0) times.push(((performance.now() - start) * 1000) / runs);
  }
  return Number.isNaN(kept) ? Number.NaN : percentile(times, 0.5);
}
