/** Where functions of a temperature cross zero. */

/** Where a function that falls evenly with the temperature crosses zero: secants from two nearby points. */
export function zeroOf(surplus: (t: number) => number, start: number): number {
  let last = start;
  let atLast = surplus(last);
  let t = start + Math.sign(atLast) * 0.01;
  for (let round = 0; round < 50 && t !== last; round++) {
    const there = surplus(t);
    if (there === atLast) break;
    const next = t - (there * (t - last)) / (there - atLast);
    last = t;
    atLast = there;
    t = next;
    if (Math.abs(t - last) < 1e-8) break; // the secant's own error is the square of its last step
  }
  return t;
}
