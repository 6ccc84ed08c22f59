/** No figure is printed with a digit that its uncertainty denies, however it is printed. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { showFigure, showShare, showTemperature, showVolume, showWeight } from "../../server/house/show.ts";
import { checkDigits, numberIn } from "./digits.ts";

const size = (from: number, to: number) => fc.integer({ min: 1000 * from, max: 1000 * to }).map((thousandths) => thousandths / 1000);
const figure = fc
  .tuple(size(-3, 4), size(-4, 0), fc.constantFrom(1, -1))
  .map(([magnitude, share, sign]) => ({ value: sign * 10 ** magnitude, u: 10 ** (magnitude + share) }));

const ways: readonly (readonly [name: string, scale: (shown: string) => number, show: (of: { value: number; u: number }) => string])[] = [
  ["a figure", () => 1, (of) => showFigure(of, "g")],
  ["a figure that nobody reads to the second decimal", () => 1, (of) => showFigure(of, "% vol", 1)],
  ["a share", () => 100, (of) => showShare(of)],
  ["a temperature", () => 1, (of) => showTemperature(of)],
  ["a volume in ml", () => 1, (of) => showVolume(of, { units: "ml", ounceMl: 30 })],
  ["a volume in cl", () => 0.1, (of) => showVolume(of, { units: "cl", ounceMl: 30 })],
  ["a weight", (shown) => (shown.endsWith("kg") ? 0.001 : shown.endsWith("mg") ? 1000 : 1), (of) => showWeight(of)],
];

test.each(ways)("%s", (_name, scale, show) =>
  fc.assert(
    fc.property(figure, (of) => {
      const shown = show(of);
      checkDigits(shown, { value: of.value, plusMinus: of.u }, scale(shown));
    }),
    { numRuns: 500 },
  ),
);

test("the check itself finds a digit too many", () => {
  expect(() => checkDigits("5234 ml", { value: 5234, plusMinus: 40 })).toThrow();
  expect(() => checkDigits("17.13 ± 0.52", { value: 17.13, plusMinus: 0.52 })).toThrow();
  expect(() => checkDigits("17.1 ± 1.2 ml", { value: 17.13, plusMinus: 1.2 })).not.toThrow();
  expect(numberIn("−6.7 ± 0.2 °C")).toEqual({ value: -6.7, place: 0.1, spread: 0.2 });
});
