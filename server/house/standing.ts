/** What a drink that is served on ice takes up while it is drunk: a band, as the house shows it. */
import type { Assessment } from "./drink.ts";
import { type Measure, showBand } from "./show.ts";

export interface Standing {
  readonly minutes: number;
  readonly lowMl: number;
  readonly highMl: number;
}

/** A quick guest and a slow one. */
const shownMinutes = [5, 15] as const;

/** For one serve; empty without ice in the glass, and where amounts are not known. */
export function standingOf({ outcome, proportional }: Pick<Assessment, "outcome" | "proportional">): Standing[] {
  if (proportional) return [];
  return shownMinutes.flatMap((minutes) => {
    const band = outcome.standing(minutes);
    return band ? [{ minutes, ...band }] : [];
  });
}

/** `6 to 21 ml more water in 5 minutes, 20 to 40 ml in 15 (practice, no source)`. */
export function showStanding(standing: readonly Standing[], measure: Measure): string {
  const bands = standing.map(({ minutes, lowMl, highMl }, index) => {
    const band = showBand(lowMl, highMl, measure);
    return index === 0 ? `${band} more water in ${minutes} minutes` : `${band} in ${minutes}`;
  });
  return `${bands.join(", ")} (practice, no source)`;
}
