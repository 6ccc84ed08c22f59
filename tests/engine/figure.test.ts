import { expect, test } from "vitest";
import { nearestAmount } from "../../server/engine/adjust.ts";
import { assess } from "../../server/engine/assess.ts";
import { inUnit, type ShownUnit, show, showValue } from "../../server/engine/figure.ts";
import { exactly, lime, nobodyKnows, plan, pour, spirit, syrup } from "./plans.ts";

test.each<[number | null, number | null, ShownUnit, string]>([
  [17.0832, 0.53, "% vol", "17.1 ± 0.5 % vol"],
  [54.79, 6.71, "ml", "55 ± 7 ml"],
  [10.533, 1.163, "", "10.5 ± 1.2"],
  [0.5229, 0.064, "%", "52 ± 6 %"],
  [-6.745, 0.196, "C", "−6.7 ± 0.2 °C"],
  [0.8452, 0.0937, "g/100 ml", "0.85 ± 0.09 g/100 ml"],
  [2.04, 0.096, "g/100 ml", "2.0 ± 0.1 g/100 ml"],
  [1234.4, 120, "ml", "1230 ± 120 ml"],
  [1250, 400, "mg", "1300 ± 400 mg"],
  [50, 0, "brix", "50.00 °Bx"],
  [1.22965, 0.0001, "g/ml", "1.230 g/ml"],
  [0, 0, "ml", "0 ml"],
  [-0.001, 0.4, "C", "0.0 ± 0.4 °C"],
  [null, null, "% vol", "unknown"],
])("%s ± %s %s is shown as %s", (value, plusMinus, unit, text) => expect(show({ value, plusMinus }, unit)).toBe(text));

test("the value alone keeps its digits", () => {
  expect(showValue({ value: 17.0832, plusMinus: 0.53 }, "% vol")).toBe("17.1 % vol");
  expect(showValue({ value: null, plusMinus: null }, "% vol")).toBe("unknown");
});

test("volumes in other units", () => {
  const figure = { value: 59.1470591, plusMinus: 0.6 };
  expect(inUnit(figure, "oz", 29.5735295625).value).toBeCloseTo(2, 8);
  expect(show(inUnit(figure, "cl", 30), "cl")).toBe("5.91 ± 0.06 cl");
  expect(inUnit({ value: null, plusMinus: null, because: ["?"] }, "oz", 30).because).toEqual(["?"]);
});

const sour = (syrupMl: number) => plan([pour(spirit, 60), pour(lime, 22.5), pour(syrup, { ml: exactly(syrupMl, 0.6) })], "shake");
const ratioAtMost = (most: number) => (drink: { value(name: "ratio"): number | null }) => (drink.value("ratio") ?? most + 1) <= most;

test("the nearest amount that puts a drink right is a multiple of the jigger's step", () => {
  expect(nearestAmount(sour(67.5), 2, 2.5, ratioAtMost(13))).toBe(27.5);
  expect(nearestAmount(sour(5), 2, 2.5, (drink) => drink.value("sugarGPer100Ml")! >= 4)).toBe(10);
  const present = assess(sour(22.5)).value("ratio")!;
  expect(nearestAmount(sour(22.5), 1, 0.1, ratioAtMost(present - 0.01))).toBe(22.6); // no dust of binary fractions
});

test("an amount between two steps may go either way, the nearer first", () => {
  const seen: number[] = [];
  nearestAmount(sour(21), 2, 2.5, (drink) => {
    seen.push(Math.round(drink.value("beforeVolumeMl")! * 10) / 10);
    return seen.length === 4;
  });
  expect(seen.map((volume) => Math.sign(volume - seen[0]!))).toEqual([0, 1, -1, 1]); // 20, 22.5, 17.5, 25 ml
});

test("none is offered where none holds, or where the pour has no ml to change", () => {
  expect(nearestAmount(sour(22.5), 2, 2.5, () => false)).toBeUndefined();
  expect(nearestAmount(sour(22.5), 9, 2.5, () => true)).toBeUndefined();
  expect(nearestAmount(plan([pour(spirit, { ml: nobodyKnows("some") })]), 0, 2.5, () => true)).toBeUndefined();
  expect(nearestAmount(plan([pour(spirit, { g: exactly(50) })]), 0, 2.5, () => true)).toBeUndefined();
});
