/** The chain rule along a drink's path gives what moving each source through the whole of it gives. */
import { expect, test } from "vitest";
import { figureNames, type ServePlan, type Uncertain } from "../../server/engine/plan.ts";
import { gradientsOf } from "../../server/engine/propagation.ts";
import { run } from "../../server/engine/serve.ts";
import { differentiate, spreadsOf } from "../../server/engine/uncertainty.ts";
import { type Chance, chanceFrom } from "../reference/chance.ts";
import { randomDrink } from "../reference/random-drinks.ts";
import { exactly, ml, step, stock } from "./plans.ts";

/** With what random drinks have not: a glass, a garnish that costs, water and cold that the method states. */
function withMore(drink: ServePlan, chance: Chance): ServePlan {
  const sometimes = <T>(share: number, part: T) => (chance.often(share) ? part : undefined);
  const { serveIceG, ...plan } = drink;
  const peel = { ...stock("peel", { abv: exactly(1, 0.1) }), price: { amount: exactly(0.02, 0.001), per: "ml" } } as const;
  return {
    ...plan,
    ...sometimes(0.3, { serveIceG }),
    ...sometimes(0.5, { glassC: exactly(chance.between(-15, 40), 2) }),
    ...sometimes(0.3, { beside: [{ of: peel, amount: ml(5, 1) }] }),
    steps: [
      ...plan.steps,
      ...(sometimes(0.2, [step("pre-dilute", { waterShare: exactly(0.2, 0.01) })]) ?? []),
      ...(sometimes(0.2, [step("hold", { toC: exactly(chance.between(0, 8), 1) })]) ?? []),
    ],
  };
}

/** Everything in a plan that has an uncertainty, however deep. */
function sourcesIn(part: unknown, found = new Set<Uncertain>()): Set<Uncertain> {
  if (typeof part !== "object" || part === null) return found;
  if ("u" in part) found.add(part as Uncertain);
  for (const inner of Object.values(part)) sourcesIn(inner, found);
  return found;
}

/** Figures to which some source brings more or less, by over 1 % of the figure's whole uncertainty. */
function apart(plan: ServePlan): string[] {
  const chained = gradientsOf(plan, run(plan).values);
  const whole = differentiate(new Set([...sourcesIn(plan), ...chained.keys()]), (shift) => run(plan, shift).values);
  const spreads = spreadsOf(whole, figureNames.length);
  return figureNames.filter((_, index) =>
    [...whole].some(([source, slopes]) => {
      const off = Math.abs(slopes[index]! - (chained.get(source)?.[index] ?? 0)) * source.u;
      return off > 0.01 * spreads[index]! + 1e-6;
    }),
  );
}

test("each source brings to each figure what whole runs say", () => {
  const chance = chanceFrom(20);
  const drinks = Array.from({ length: 300 }, () => withMore(randomDrink(chance), chance));
  const found = drinks.map(apart).filter((figures) => figures.length > 0);
  // Figures bend within a tenth of an uncertainty here and there: as a glass is full, as the last ice melts, as there is acid enough for a ratio.
  expect(found.length, `${found}`).toBeLessThanOrEqual(0.02 * drinks.length);
});
