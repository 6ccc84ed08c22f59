/**
 * Why a figure is unknown. This is the one place that says how far an unknown reaches.
 *
 * - An amount nobody gave makes everything about the drink unknown: its volume, and with it every figure.
 * - A strength nobody gave makes the strength and everything that follows from the chilling unknown
 *   (water, temperature, volume after), and so every figure per 100 ml.
 * - A sugar, an acid, a salt or a caffeine nobody gave makes only the figures that name it unknown. In
 *   volume and heat it counts as none: under 1 % of a drink's volume for what fits in a pour. The one
 *   exception is an ingredient that is weighed, has no stated density, and whose sugar is unknown: then
 *   its volume is unknown too.
 * - Solids or a fat nobody gave make only the energy unknown.
 *
 * Reasons are texts, each kept once, in the order in which the ingredients are poured.
 */

export const topics = ["volume", "ethanol", "sugar", "acid", "salt", "caffeine", "solids", "heat"] as const;
export type Topic = (typeof topics)[number];

/** For each topic the reasons why it is unknown; known where there are none. */
export type Reasons = { readonly [topic in Topic]: readonly string[] };

const none: readonly string[] = [];
export const noReasons: Reasons = {
  volume: none,
  ethanol: none,
  sugar: none,
  acid: none,
  salt: none,
  caffeine: none,
  solids: none,
  heat: none,
};

/** Both together; the very object `a` or `noReasons` where nothing is added, so that the usual case costs nothing. */
export function mergeReasons(a: Reasons, b: Reasons): Reasons {
  if (b === noReasons || a === b) return a;
  if (a === noReasons) return b;
  const merged = {} as Record<Topic, readonly string[]>;
  for (const topic of topics) merged[topic] = mergeTexts(a[topic], b[topic]);
  return merged;
}

export function mergeTexts(a: readonly string[], b: readonly string[]): readonly string[] {
  if (a.length === 0) return b;
  const more = b.filter((text) => !a.includes(text));
  return more.length === 0 ? a : [...a, ...more];
}

/** The same reason for these topics, on top of what is known already. */
export function addReason(reasons: Reasons, because: string, ...about: readonly Topic[]): Reasons {
  const added = { ...reasons };
  for (const topic of about) added[topic] = mergeTexts(reasons[topic], [because]);
  return added;
}
