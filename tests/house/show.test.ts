import fc from "fast-check";
import { expect, test } from "vitest";
import {
  ounceFraction,
  showFigure,
  showList,
  showNumber,
  showShare,
  showTemperature,
  showVolume,
  showWeight,
  showWindow,
} from "../../server/house/show.ts";

const measured = (value: number, u: number) => ({ value, u });

test.each([
  [showFigure(measured(17.13, 0.52), "% vol"), "17.1 ± 0.5 % vol"],
  [showFigure(measured(43, 0.17), "% vol"), "43 % vol"], // under one part in a hundred changes nothing
  [showFigure(measured(0.004, 0.06), "% vol", 1), "0 % vol"], // nobody reads the second decimal of a strength
  [showFigure({ value: null, plusMinus: null }), "unknown"],
  [showFigure(measured(0.0017, 0.0009), "g/100 ml", 2), "0 g/100 ml"],
  [showFigure(7.249, "", 1), "7.2"],
  [showShare(0.525), "53 %"],
  [showShare(measured(0.52, 0.06)), "52 ± 6 %"],
  [showTemperature(-5.23), "−5.2 °C"],
  [showTemperature(-18), "−18 °C"],
  [showTemperature(measured(2.04, 0.8)), "2.0 ± 0.8 °C"],
  [showTemperature(-0.01), "0 °C"],
  [showWeight(47.38), "47.4 g"],
  [showWeight(1234), "1.23 kg"],
  [showWeight(0.0093), "9.3 mg"],
  [showWeight(0), "0 g"],
  [showNumber(1234.5), "1235"],
  [showNumber(0.0333333), "0.0333"],
  [showNumber(-0.04, 1), "0"],
])("%s", (shown, expected) => expect(shown).toBe(expected));

test.each([
  ["ml", 1, 52.5, "52.5 ml"],
  ["cl", 1, 52.5, "5.25 cl"],
  ["oz", 30, 52.5, "1 3/4 oz"],
  ["oz", 29.5735295625, 60, "2.03 oz"],
] as const)("in %s of %f ml: %f ml is %s", (units, ounceMl, ml, expected) => expect(showVolume(ml, { units, ounceMl })).toBe(expected));

test("an uncertain volume is never dressed up as a fraction", () =>
  expect(showVolume(measured(45, 3), { units: "oz", ounceMl: 30 })).toBe("1.50 ± 0.10 oz"));

test.each([
  [5, "inside 4 to 13"],
  [4, "inside 4 to 13"],
  [3.99, "below 4 to 13"],
  [13.4, "above 4 to 13"],
])("a window of 4 to 13 around %f", (value, expected) => expect(showWindow(value, 4, 13)).toBe(expected));

test.each([
  [2, "2"],
  [0.75, "3/4"],
  [1.5, "1 1/2"],
  [1 / 3, "1/3"],
  [2.875, "2 7/8"],
  [0.3, undefined],
  [0, undefined],
  [-1, undefined],
  [Number.NaN, undefined],
])("%f ounces are %s", (ounces, expected) => expect(ounceFraction(ounces)).toBe(expected));

test.each([
  [[], ""],
  [["gin"], "gin"],
  [["gin", "rum"], "gin and rum"],
  [["a", "b", "c", "d", "e"], "a, b, c and 2 more"],
])("%j as a list", (texts, expected) => expect(showList(texts)).toBe(expected));

test("what is shown is the value, to within half of its last digit or its uncertainty", () =>
  fc.assert(
    fc.property(fc.double({ min: 0.01, max: 5000, noNaN: true }), fc.double({ min: 0, max: 0.3, noNaN: true }), (value, share) => {
      const [shown] = showFigure({ value, u: share * value }).split(" ± ");
      expect(Math.abs(Number(shown) - value)).toBeLessThanOrEqual(Math.max(0.006 * value, 0.6 * share * value));
    }),
  ));
