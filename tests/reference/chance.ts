/** Chance that can be repeated: the same seed draws the same numbers on every machine. */
export interface Chance {
  between(low: number, high: number): number;
  whole(low: number, high: number): number;
  one<T>(of: readonly T[]): T;
  /** True so often, 0…1. */
  often(share: number): boolean;
  /** From the normal distribution around 0 with a deviation of 1. */
  normal(): number;
}

/** Uniform numbers by mulberry32, normal ones from pairs of them by Box and Muller. */
export function chanceFrom(seed: number): Chance {
  let state = seed;
  const uniform = (): number => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
  const between = (low: number, high: number) => low + (high - low) * uniform();
  const whole = (low: number, high: number) => Math.floor(between(low, high + 1));
  return {
    between,
    whole,
    one: (of) => of[whole(0, of.length - 1)]!,
    often: (share) => uniform() < share,
    normal: () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform()),
  };
}
