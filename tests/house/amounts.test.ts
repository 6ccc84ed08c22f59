/** How sure a poured amount is. */
import { expect, test } from "vitest";
import { assessDrink } from "../../server/house/drink.ts";
import { entryNamed, houseOf } from "./make.ts";

function spread(jigger: string, pour: string): number {
  const house = houseOf(`house H\n  jigger: ${jigger}\n\ndrink Slip\n  ${pour} gin\n`);
  const amount = assessDrink(house, entryNamed(house, "Slip")).plan.pours[0]!.amount as { ml: { u: number } };
  return amount.ml.u;
}

// Half a step, as a rectangle: the step ÷ √12. A line that is filled to is met to 1 ml: practice, no source.
test.each([
  ["2.5 ml", "60 ml", 2.5 / Math.sqrt(12)],
  ["1/4 oz", "2 oz", 1],
  ["1/4 oz", "3/4 oz", 1],
  ["1/4 oz", "1/8 oz", 29.5735 / 4 / Math.sqrt(12)],
  ["10 ml", "40 ml", 1],
  ["10 ml", "45 ml", 10 / Math.sqrt(12)],
])("with a jigger marked every %s, %s", (jigger, pour, u) => expect(spread(jigger, pour)).toBeCloseTo(u, 2));
