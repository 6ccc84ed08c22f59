/**
 * The techniques: what each step of a method does to water and temperature. One row each; parsing,
 * hover and the reference page read this table.
 *
 * `shake` and `stir` are calibrated, not validated: with 150 g of ice at 0 °C and everything else at
 * 20 °C they come within 5 % of D. Arnold's regressions of measured dilution (Liquid Intelligence, 2014,
 * from memory) for mixtures of 15…40 % vol with 40 g of sugar per litre. That shaking comes to
 * equilibrium within 12 to 15 s, and stirring not within two minutes, is from the same author's published
 * experiments (Cooking Issues, 2009 and 2010). Every other row is practice without a source, set between
 * those two, and carries a wide spread.
 */

import type { IcePlan, Uncertain } from "./plan.ts";
import { processes, straining } from "./processes.ts";
import type { Chill, Technique } from "./technique.ts";

/** The vessel: what of the tins' steel (0.50 kJ/(kg K)) a dozen seconds reach; how much of it is calibration. */
const shaking: Chill = { alpha: 1, vesselJPerK: 45, clingingMl: 2, iceG: 150, spread: 0.12, timeConstantS: 4, usualS: 12 };
const stirring: Chill = { alpha: 0.49, vesselJPerK: 0, clingingMl: 0, iceG: 150, spread: 0.15, timeConstantS: 30, usualS: 30 };
/** As stirring, for a few turns of the spoon: a fifth of the volume under a bare spirit. */
const building: Chill = { ...stirring, spread: 0.25, usualS: 8, settledS: 30 };

const practice = "practice, no source";
const measured = "calibrated to D. Arnold, Liquid Intelligence (2014), from memory";

export const techniques: readonly Technique[] = [
  row("shake", ["shake", "hard shake", "shaken"], measured, "Shaken with ice until it is as cold as its ice can make it.", {
    chill: shaking,
  }),
  row("dry shake", ["dry shake"], practice, "Shaken without ice, for foam, before it is shaken with ice: no water, no cold."),
  row(
    "reverse dry shake",
    ["reverse dry shake"],
    practice,
    "Strained off its ice and shaken again without it, for foam: no water, no cold.",
  ),
  row("whip shake", ["whip shake", "whip"], practice, "Shaken with a few pieces of ice until they are gone: all of it is drunk.", {
    chill: { ...shaking, iceG: 25, spread: 0.3, usualS: 10, drunk: true },
  }),
  row("stir", ["stir", "stirred"], measured, "Stirred with ice: less cold and less water than shaking.", { chill: stirring }),
  row("throw", ["throw"], practice, "Poured from tin to tin over ice, for air: between stirring and shaking.", {
    chill: { ...stirring, alpha: 0.75, clingingMl: 1, spread: 0.25, timeConstantS: 15, usualS: 20, roundS: 3 },
  }),
  row("roll", ["roll"], practice, "Tipped gently from tin to tin with ice.", {
    chill: { ...stirring, alpha: 0.6, clingingMl: 1, spread: 0.25, timeConstantS: 10, usualS: 10, roundS: 2 },
  }),
  row("swizzle", ["swizzle"], practice, "Spun with crushed ice in the glass.", {
    chill: { ...shaking, alpha: 0.85, vesselJPerK: 45, iceG: 180, spread: 0.25, timeConstantS: 8, usualS: 15 },
    iceInGlass: true,
  }),
  row("blend", ["blend", "flash blend"], practice, "Blended: all the ice is drunk, melted or not, and is counted as water.", {
    chill: { ...shaking, clingingMl: 0, spread: 0.1, usualS: 20, drunk: true },
  }),
  row("build", ["build"], practice, "Put together over ice in the glass it is served in; what is hot meets none where none is named.", {
    chill: building,
    iceInGlass: true,
  }),
  row("churn", ["churn"], practice, "Lifted through crushed ice in the glass with a spoon.", {
    chill: { ...building, alpha: 0.6, clingingMl: 1, usualS: 12 },
    iceInGlass: true,
  }),
  row(
    "pre-dilute",
    ["pre-dilute"],
    practice,
    "A share of its volume is added as water, for the ice that will not be there; as warm as the room.",
    {
      dilutes: true,
    },
  ),
  row(
    "hold",
    ["hold"],
    practice,
    "Kept until it is as cold or as warm as stated; whether it freezes there follows from what it is made of.",
    {
      brings: "stated",
    },
  ),
  row(
    "carbonate",
    ["carbonate"],
    practice,
    "Carbon dioxide is dissolved: neither water nor strength change. Only in bottles made for the pressure.",
  ),
  row(
    "fine strain",
    ["fine strain"],
    practice,
    "Through a fine sieve: no change of a drink; what a prep strains out holds some of it back.",
    {
      process: straining,
    },
  ),
  row("double strain", ["double strain"], practice, "Through two strainers: as fine strain.", { process: straining }),
  row("strain", ["strain"], practice, "Off its ice: no change of a drink; what a prep strains out holds some of it back.", {
    process: straining,
  }),
  row("dump", ["dump"], practice, "Into the glass with the ice it was made with.", { iceInGlass: true }),
  row("muddle", ["muddle"], practice, "Pressed in the vessel: no change that is computed."),
  row("rinse", ["rinse"], practice, "The glass is wetted and emptied."),
  row("float", ["float"], practice, "Poured on top, last."),
  row("top", ["top"], practice, "Filled up, last."),
  row("layer", ["layer"], practice, "Poured one on another without mixing."),
  // For preps
  ...processes,
  row("chill", ["chill"], practice, "Left in the fridge until it is as cold, or as cold as stated; no ice in it.", { brings: "fridge" }),
  row("freeze", ["freeze"], practice, "Left in the freezer until it is as cold, or as cold as stated.", { brings: "freezer" }),
  row("rest", ["rest"], practice, "Left alone."),
];

/**
 * Water that clings to ice of this kind, as a multiple of what clings to cubes of the same weight: it goes
 * with the surface. Practice, no source.
 */
export const clingingByKind: Readonly<Record<IcePlan["kind"], number>> = {
  cubed: 1,
  cracked: 1.5,
  crushed: 3,
  "large cube": 0.4,
  block: 0.3,
};

/** What the model itself is unsure of in one technique; one and the same for every drink made so. */
export interface ModelDoubt {
  /** A factor of 1 ± spread on the water that a contact with ice gives. */
  readonly water: Uncertain;
  /** The same on crushed ice: at least 0.25, for its surface and its water differ from heap to heap (practice). */
  readonly waterCrushed: Uncertain;
  /** K on the temperature at its end: 10 × spread, so 1.2 shaken, 1.5 stirred, 2.5 built (practice). */
  readonly temperature: Uncertain;
  /** The usual weight of ice, g, where none is stated: right to a quarter where it is drunk (practice), and else in `water`. */
  readonly iceG: Uncertain;
}

const doubts = new WeakMap<Technique, ModelDoubt>();

export function modelDoubt(technique: Technique): ModelDoubt {
  let doubt = doubts.get(technique);
  if (!doubt) {
    const { spread = 0, iceG = 0 } = technique.chill ?? {};
    const step = technique.words[0];
    doubt = {
      water: { value: 1, u: spread, why: `how much ice melts in this step (${step}), by the model` },
      waterCrushed: { value: 1, u: Math.max(spread, 0.25), why: `how much crushed ice melts in this step (${step}), by the model` },
      temperature: { value: 0, u: 10 * spread, why: `how cold this step (${step}) makes it, by the model` },
      iceG: { value: iceG, u: technique.chill?.drunk ? 0.25 * iceG : 0, why: `how much ice is usual for this step (${step}), practice` },
    };
    doubts.set(technique, doubt);
  }
  return doubt;
}

/** Ice colder than this, °C, is dry; wet at 0 °C, in proportion between. Practice, no source. */
export const dryIceBelowC = -4;

function row(
  id: string,
  words: readonly string[],
  source: string,
  doc: string,
  more: Partial<Omit<Technique, "id" | "words" | "source" | "doc">> = {},
): Technique {
  return { id, words, doc, source, ...more };
}

const byWord = new Map<string, Technique>();
for (const technique of techniques) for (const word of technique.words) byWord.set(word, technique);

/** The technique that these words name, any case, one blank between words; `dry-shake` reads as `dry shake`. */
export function findTechnique(words: string): Technique | undefined {
  const folded = words.trim().toLowerCase().replace(/\s+/g, " ");
  return byWord.get(folded) ?? byWord.get(folded.replaceAll("-", " ")) ?? byWord.get(folded.replaceAll(" ", "-"));
}
