/**
 * What a technique is called in a sentence: told to do, and as done. One row for every word by which
 * a method may call one.
 */

export interface MethodWords {
  /** `fine-strain`, as it goes on in a sentence. */
  readonly tell: string;
  /** `fine-strained`. */
  readonly done: string;
  /** How the ice is told where the method names none. */
  readonly ice?: "with" | "over";
}

export const methodWords: Readonly<Record<string, MethodWords>> = {
  shake: { tell: "shake", done: "shaken", ice: "with" },
  "hard shake": { tell: "shake hard", done: "shaken hard", ice: "with" },
  shaken: { tell: "shake", done: "shaken", ice: "with" },
  "dry shake": { tell: "dry-shake", done: "dry-shaken" },
  "reverse dry shake": { tell: "strain off the ice and dry-shake", done: "strained off the ice and dry-shaken" },
  "whip shake": { tell: "whip-shake", done: "whip-shaken" },
  whip: { tell: "whip-shake", done: "whip-shaken" },
  stir: { tell: "stir", done: "stirred", ice: "with" },
  stirred: { tell: "stir", done: "stirred", ice: "with" },
  throw: { tell: "throw", done: "thrown", ice: "with" },
  roll: { tell: "roll", done: "rolled", ice: "with" },
  swizzle: { tell: "swizzle", done: "swizzled", ice: "with" },
  blend: { tell: "blend", done: "blended", ice: "with" },
  "flash blend": { tell: "flash-blend", done: "flash-blended", ice: "with" },
  build: { tell: "build", done: "built", ice: "over" },
  churn: { tell: "churn", done: "churned", ice: "with" },
  "pre-dilute": { tell: "dilute", done: "diluted" },
  hold: { tell: "hold", done: "held" },
  carbonate: { tell: "carbonate", done: "carbonated" },
  "fine strain": { tell: "fine-strain", done: "fine-strained" },
  "double strain": { tell: "double-strain", done: "double-strained" },
  strain: { tell: "strain", done: "strained" },
  dump: { tell: "pour with the ice", done: "poured with the ice" },
  muddle: { tell: "muddle", done: "muddled" },
  rinse: { tell: "rinse", done: "rinsed" },
  float: { tell: "float", done: "floated" },
  top: { tell: "top", done: "topped" },
  layer: { tell: "layer", done: "layered" },
  infuse: { tell: "infuse", done: "infused" },
  steep: { tell: "steep", done: "steeped" },
  macerate: { tell: "macerate", done: "macerated" },
  "fat-wash": { tell: "fat-wash", done: "fat-washed" },
  "fat wash": { tell: "fat-wash", done: "fat-washed" },
  "milk-clarify": { tell: "milk-clarify", done: "milk-clarified" },
  "milk clarify": { tell: "milk-clarify", done: "milk-clarified" },
  clarify: { tell: "clarify", done: "clarified" },
  reduce: { tell: "reduce", done: "reduced" },
  "boil down": { tell: "boil down", done: "boiled down" },
  "cook down": { tell: "cook down", done: "cooked down" },
  simmer: { tell: "simmer", done: "simmered" },
  boil: { tell: "boil", done: "boiled" },
  ferment: { tell: "ferment", done: "fermented" },
  "acid-adjust": { tell: "acid-adjust", done: "acid-adjusted" },
  "acid adjust": { tell: "acid-adjust", done: "acid-adjusted" },
  smoke: { tell: "smoke", done: "smoked" },
  heat: { tell: "heat", done: "heated" },
  warm: { tell: "warm", done: "warmed" },
  mix: { tell: "mix", done: "mixed" },
  combine: { tell: "combine", done: "combined" },
  dissolve: { tell: "dissolve", done: "dissolved" },
  foam: { tell: "foam", done: "foamed" },
  charge: { tell: "charge", done: "charged" },
  chill: { tell: "chill", done: "chilled" },
  freeze: { tell: "freeze", done: "frozen" },
  rest: { tell: "rest", done: "rested" },
};

/** The row of a technique as a method writes it, in any case; `dry-shake` is `dry shake`. */
export function wordsOf(written: string, canonical: string): MethodWords {
  const folded = written.toLowerCase();
  return methodWords[folded] ?? methodWords[folded.replaceAll("-", " ")] ?? methodWords[canonical] ?? { tell: written, done: written };
}
