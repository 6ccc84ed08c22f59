/** What a step of a method is to the engine: the rows of `techniques.ts`, for a drink, and of `processes.ts`, for a prep. */

import type { Topic } from "./reasons.ts";

/** What a technique does to heat and water. One row each in `techniques.ts`. */
export interface Technique {
  readonly id: string;
  /** The words that name it in a method, the first one canonical. */
  readonly words: readonly string[];
  /** For hover and the reference page: what it does to water and temperature. */
  readonly doc: string;
  /** Absent: no ice, no change of water or temperature (fine strain, dry shake). */
  readonly chill?: Chill;
  /** The ice stays in the glass with the drink (build, swizzle, strain over). */
  readonly iceInGlass?: boolean;
  /** It adds water by the share that is stated. */
  readonly dilutes?: boolean;
  /** It brings the drink to the temperature that is stated; where none is, to that of this place, or to nobody knows which. */
  readonly brings?: "stated" | "fridge" | "freezer";
  /** Where its figures come from; "practice, no source" where they come from nowhere. */
  readonly source: string;
  /** What it does to a prep; absent: nothing. */
  readonly process?: Process;
}

export interface Chill {
  /** T = alpha × the freezing point of the diluted drink. */
  readonly alpha: number;
  readonly vesselJPerK: number;
  /** Water that clings to the ice and comes along, in ml, per 150 g of cubed ice. */
  readonly clingingMl: number;
  /** The usual weight of ice, g. */
  readonly iceG: number;
  /** Relative standard uncertainty of the melt that the model itself has. */
  readonly spread: number;
  /** Seconds to come within 1/e of its end. */
  readonly timeConstantS: number;
  /** Seconds taken where the method states none. */
  readonly usualS: number;
  /** Seconds in which it comes to alpha; absent: the usual ones. */
  readonly settledS?: number;
  /** Seconds of one time, where it is counted in times (`throw 6 times`). */
  readonly roundS?: number;
  /** All the ice ends up in the drink, melted or not (blend): it counts as water. */
  readonly drunk?: boolean;
}

/** What a step does to a prep. One row each in `processes.ts`. */
export interface Process {
  /** Water goes off as steam until so much is left as is stated. */
  readonly boils?: boolean;
  /** What is to be strained out goes here; otherwise at the end. */
  readonly strains?: boolean;
  /** Some of it is lost that only a stated yield tells. */
  readonly wastes?: boolean;
  /** Gas goes in, which no volume here counts. */
  readonly foams?: boolean;
  /** What nobody can know after it, and why; the prep's name goes before the reason. */
  readonly clouds?: { readonly about: readonly Topic[]; readonly because: string };
}
