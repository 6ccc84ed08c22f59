/** Whether a printed figure carries only digits that its uncertainty leaves standing. */
import { expect } from "vitest";
import type { Figure } from "../../server/engine/plan.ts";

export interface Printed {
  readonly value: number;
  /** What one of its last digit is worth; trailing zeros of a whole number are no digits. */
  readonly place: number;
  readonly spread?: number;
}

/** The first number in a text, with its ± where it has one; absent where there is no number. */
export function numberIn(text: string): Printed | undefined {
  const found = /(−?)(\d+(?:\.\d+)?)(?: ± (\d+(?:\.\d+)?))?/.exec(text);
  if (!found) return undefined;
  const [, minus, number, spread] = found;
  const value = Number(`${minus ? "-" : ""}${number}`);
  return { value, place: placeOf(number!), ...(spread !== undefined && { spread: Number(spread) }) };
}

/** Fewer than twenty of the last digit: its uncertainty's first digit, or first two where they are under 20, stand there. */
const mostOfLast = 20;

/** That a text prints this figure (times a scale) with no digit that its uncertainty denies, and right. */
export function checkDigits(text: string, { value, plusMinus }: Pick<Figure, "value" | "plusMinus">, scale = 1): void {
  const printed = numberIn(text);
  if (value === null || !printed || plusMinus === null) return;
  const u = plusMinus * scale;
  if (u > 0 && printed.value !== 0) expect(u / printed.place, `${text}: ${value * scale} ± ${u}`).toBeLessThan(mostOfLast);
  if (printed.spread !== undefined)
    expect(Math.abs(printed.spread - u), `${text}: ± ${u}`).toBeLessThanOrEqual(
      0.5 * Math.max(printed.place, placeOf(String(printed.spread))) * (1 + 1e-9),
    );
  // To a digit more than half of the last one: what is printed is the figure, not something near it.
  expect(Math.abs(printed.value - value * scale), `${text}: ${value * scale}`).toBeLessThanOrEqual(Math.max(0.51 * printed.place, u));
}

function placeOf(number: string): number {
  const decimals = number.split(".")[1]?.length;
  if (decimals) return 10 ** -decimals;
  return 10 ** (/0*$/.exec(number)![0].length % number.length);
}
