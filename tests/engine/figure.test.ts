import { expect, test } from "vitest";
import { inUnit, type ShownUnit, show, showValue } from "../../server/engine/figure.ts";

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
  [-5, 1, "C", "−5.0 ± 1.0 °C"],
  [-5, 1 - 1e-9, "C", "−5.0 ± 1.0 °C"],
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
