/**
 * What is done to a prep: one row for each process, for each sort of thing that is strained out, and for
 * each that sets. What a process cannot tell is unknown afterwards, and only that. None of them takes an
 * allergen out.
 */

import type { PrepPart, SolidSort, Uncertain } from "./plan.ts";
import type { Topic } from "./reasons.ts";
import type { Process, Technique } from "./technique.ts";

const practice = "practice, no source";
const physics = "what boils off is water; mass and solids are conserved";

/** What is marked as strained out leaves here, with what it holds back. */
export const straining: Process = { strains: true };

const boiling: Process = { boils: true };
const size = "State what it comes to, as in `reduce to 300 ml` or `by half`, or a `yield:`.";

export const processes: readonly Technique[] = [
  row("infuse", ["infuse", "steep"], practice, "Left with what flavours it. What is strained out of it holds back some of the liquid."),
  row(
    "macerate",
    ["macerate"],
    practice,
    "Left with fruit or herbs. What is strained out holds back some of the liquid; how much of its sugar and acid a fruit leaves is unknown.",
  ),
  row(
    "fat-wash",
    ["fat-wash", "fat wash"],
    practice,
    "Shaken with fat, chilled until that sets, strained: strength as before, and some of the liquid stays in the fat. Milk and nuts count as allergens all the same.",
    straining,
  ),
  row(
    "milk-clarify",
    ["milk-clarify", "milk clarify"],
    practice,
    "Curdled with milk and strained: fat and most of the protein go, with the liquid in the curd; water and milk sugar stay. How much acid the curd takes is unknown. Milk counts as an allergen all the same.",
    { strains: true, clouds: { about: ["acid"], because: "how much acid the curd takes out is not known" } },
  ),
  row(
    "clarify",
    ["clarify"],
    practice,
    "Cleared by a filter, a gel or spinning: what is dissolved stays. What the filter keeps only a `yield:` can tell.",
    { wastes: true },
  ),
  row("reduce", ["reduce", "boil down", "cook down"], physics, `Boiled down: water goes off, and alcohol before it. ${size}`, boiling),
  row("simmer", ["simmer", "boil"], physics, `Kept boiling: water goes off, and alcohol before it. ${size}`, boiling),
  row("ferment", ["ferment"], practice, "Sugar turns to alcohol, acid and gas. Only in vessels that let the gas out.", {
    clouds: { about: ["volume", "ethanol", "sugar", "acid"], because: "how far the fermentation went is not known" },
  }),
  row("acid-adjust", ["acid-adjust", "acid adjust"], practice, "Acid is weighed in until it is as sour as wanted: add the acid as a pour."),
  row("smoke", ["smoke"], practice, "Held under smoke: no change of water or strength."),
  {
    ...row("heat", ["heat", "warm"], practice, "Warmed as far as is stated, below the boil: what evaporates is not counted."),
    brings: "stated",
  },
  row("mix", ["mix", "combine", "dissolve"], practice, "Mixed until even."),
  row(
    "foam",
    ["foam", "charge"],
    practice,
    "Gas is beaten or pressed in: volumes and density here are of the liquid, without the gas. Only in vessels made for the pressure.",
    { foams: true },
  ),
];

/** What a gram of something holds back when it is strained out, and what it gives. */
export interface Strained {
  /** Grams of liquid for a gram of it as it went in. */
  readonly holdsG: Uncertain;
  /** Of what it holds, that which nobody knows how much of it goes over; salt always is. */
  readonly gives: readonly Topic[];
  /** It is full of water, which takes the place of alcohol. */
  readonly watery?: boolean;
}

/**
 * Ranges of common practice, no source; their half-width counts as two standard uncertainties. What a
 * house really strains out it says with a yield.
 */
export const strained: Readonly<Record<SolidSort, Strained>> = {
  fruit: { holdsG: held("fruit", 0, 0.6), gives: ["sugar", "acid"], watery: true },
  vegetable: { holdsG: held("a vegetable", 0, 0.6), gives: ["sugar", "acid"], watery: true },
  herb: { holdsG: held("a fresh herb or a peel", 0.3, 1.5), gives: [] },
  spice: { holdsG: held("a spice or a root", 0.2, 2.5), gives: [] },
  // Brewed tea has less acid than counts: 0 to 0.06 g in 100 ml.
  tea: { holdsG: held("tea leaf", 2, 5), gives: [] },
  coffee: { holdsG: held("ground coffee", 1.8, 2.4), gives: ["acid"] },
  fat: { holdsG: held("fat", 0.02, 0.2), gives: [] },
  other: { holdsG: held("what is strained out", 0.2, 2), gives: ["sugar", "acid"] },
};

/** What part of the solids sets and is strained out (all of the fat does), and what a gram of that holds back. */
export const setting: Readonly<Record<NonNullable<PrepPart["sets"]>, { readonly solids: Uncertain; readonly holdsG: Uncertain }>> = {
  // Four fifths of milk's protein are casein (from memory): 0.7 of its solids without the fat, 0.85 where fat is among them.
  curd: {
    solids: { value: 0.77, u: 0.08, why: "how much of the milk's solids the curd takes, practice" },
    holdsG: held("dry curd", 1.5, 4.5),
  },
  fat: { solids: { value: 1, u: 0, why: "" }, holdsG: strained.fat.holdsG },
};

function held(what: string, low: number, high: number): Uncertain {
  return { value: (low + high) / 2, u: (high - low) / 4, why: `what a gram of ${what} holds back, ${low} to ${high} g, practice` };
}

function row(id: string, words: readonly string[], source: string, doc: string, does?: Process): Technique {
  return { id, words, doc, source, ...(does && { process: does }) };
}
