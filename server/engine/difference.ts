/** How far a figure of one drink lies from the same figure of another. */

import type { Figure, FigureName, Outcome } from "./plan.ts";

type Compared = Pick<Outcome, "figure" | "gradient">;

/** The first less the second; what both are computed from is not doubted twice. Unknown where either is. */
export function difference(one: Compared, other: Compared, name: FigureName): Figure {
  const [here, there] = [one.figure(name), other.figure(name)];
  if (here.value === null || there.value === null) {
    return { value: null, plusMinus: null, because: [...new Set([...(here.because ?? []), ...(there.because ?? [])])] };
  }
  const [mine, others] = [one.gradient(name), other.gradient(name)];
  let variance = 0;
  for (const source of new Set([...mine.keys(), ...others.keys()])) {
    const slope = (mine.get(source) ?? 0) - (others.get(source) ?? 0);
    if (!Number.isNaN(slope)) variance += (slope * source.u) ** 2;
  }
  return { value: here.value - there.value, plusMinus: Math.sqrt(variance) };
}
