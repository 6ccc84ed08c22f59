/** The band of water that a drink on ice takes up while it is drunk. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { assess } from "../../server/engine/assess.ts";
import type { ServePlan } from "../../server/engine/plan.ts";
import { exactly, lime, nobodyKnows, plan, pour, spirit, step, stock, syrup, water } from "./plans.ts";

const onIce = (iceG: number, more: Partial<ServePlan> = {}) =>
  assess(plan([pour(spirit, 60), pour(syrup, 5)], [step("stir")], { serveIceG: exactly(iceG), glassC: exactly(20), ...more }));

test("there is none without ice in the glass, and none of a drink that is unknown", () => {
  expect(assess(plan([pour(spirit, 60)], "stir")).standing(5)).toBeNull();
  expect(assess(plan([pour(spirit, 60)], "build")).standing(5)).not.toBeNull();
  expect(assess(plan([pour(stock("?", { abv: nobodyKnows("?") }), 60)], "build")).standing(5)).toBeNull();
});

test("the room alone, by hand: a drink at rest on much ice takes up what its glass lets in", () => {
  // 120 ml of water and 200 g of crushed ice at 0 °C in a room at 20 °C: a cylinder of 320 ml has 0.0259 m²;
  // 7 to 15 W/(m² K) × 20 K × 15 min ÷ 333.6 J/g = 9.8 to 21 g. The ice is at 0 °C, so is the drink, within half a kelvin.
  const standing = assess(
    plan([pour(water, 120, { temperatureC: exactly(0) })], [], { serveIceG: exactly(200), serveIceKind: "crushed" }),
  ).standing(15)!;
  expect(standing.lowMl).toBeGreaterThan(9);
  expect(standing.lowMl).toBeLessThan(10);
  expect(standing.highMl).toBeGreaterThan(20);
  expect(standing.highMl).toBeLessThan(21.1);
});

test("a warm glass, a warmer drink, smaller ice each add to it; one large cube takes less than cubes of its weight", () => {
  const water5 = (more: Partial<ServePlan>) => onIce(110, more).standing(5)!.highMl;
  expect(water5({ glassC: exactly(20) })).toBeGreaterThan(water5({ glassC: exactly(-18) }) + 1);
  expect(water5({ ambientC: exactly(35) })).toBeGreaterThan(water5({}));
  expect(onIce(110, { serveIceKind: "large cube" }).standing(5)!.highMl).toBeLessThan(water5({}));
  expect(onIce(110, { serveIceKind: "crushed" }).standing(5)!.lowMl).toBeGreaterThan(onIce(110).standing(5)!.lowMl);
});

test("it is one serve's", () => {
  const two = plan([pour(spirit, 120), pour(syrup, 10)], [step("stir")], { serveIceG: exactly(110), glassC: exactly(20), serves: 2 });
  expect(assess(two).standing(5)!.highMl).toBeCloseTo(onIce(110).standing(5)!.highMl, 6);
});

test("the low end is below the high one, neither shrinks with time, none is more than the ice", () =>
  fc.assert(
    fc.property(
      fc.record({ tC: fc.integer({ min: -18, max: 90 }), roomC: fc.integer({ min: 5, max: 40 }), iceG: fc.integer({ min: 1, max: 400 }) }),
      fc.constantFrom("cubed" as const, "crushed" as const, "large cube" as const),
      fc.array(fc.double({ min: 0, max: 120, noNaN: true }), { minLength: 2, maxLength: 6 }),
      ({ tC, roomC, iceG }, kind, minutes) => {
        const pours = [pour(spirit, 45, { temperatureC: exactly(tC) }), pour(lime, 20), pour(water, 60)];
        const drink = assess(
          plan(pours, [], { serveIceG: exactly(iceG), serveIceKind: kind, ambientC: exactly(roomC), glassC: exactly(roomC) }),
        );
        let last = { lowMl: 0, highMl: 0 };
        for (const one of minutes.sort((a, b) => a - b).map((time) => drink.standing(time)!)) {
          expect(one.lowMl).toBeLessThanOrEqual(one.highMl + 1e-9);
          expect(one.lowMl).toBeGreaterThanOrEqual(last.lowMl - 1e-9);
          expect(one.highMl).toBeGreaterThanOrEqual(last.highMl - 1e-9);
          expect(one.highMl).toBeLessThanOrEqual(iceG);
          last = one;
        }
      },
    ),
  ));
