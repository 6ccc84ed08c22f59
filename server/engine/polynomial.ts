/** The sum of coefficient k times the k-th power of x (Horner's scheme), lowest power first. */
export function polynomial(coefficients: readonly number[], x: number): number {
  let sum = 0;
  for (let k = coefficients.length - 1; k >= 0; k--) sum = sum * x + coefficients[k]!;
  return sum;
}
