/** The sum of coefficient k times the k-th power of x (Horner's scheme), lowest power first. */
export function polynomial(coefficients: readonly number[], x: number): number {
  let sum = 0;
  for (let k = coefficients.length - 1; k >= 0; k--) sum = sum * x + coefficients[k]!;
  return sum;
}

export type Cubic = readonly [number, number, number, number];

/** The same of the third degree, for what is reckoned thousands of times in a drink. */
export function cubic(c: Cubic, x: number): number {
  return c[0] + x * (c[1] + x * (c[2] + x * c[3]));
}
