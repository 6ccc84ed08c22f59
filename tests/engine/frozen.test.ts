/** What is frozen brings: each figure beside a sum by hand from handbook figures. */
import { describe, expect, test } from "vitest";
import { assess } from "../../server/engine/assess.ts";
import { liquidOf } from "../../server/engine/composition.ts";
import { at, heatIn, noMasses } from "../../server/engine/liquid.ts";
import type { Model } from "../../server/engine/plan.ts";
import { heatWithIce, iceWithin } from "../../server/engine/slush.ts";
import { exactly, g, lime, plan, pour, spirit, step, stock, syrup, water } from "./plans.ts";

const solution = (of: "ethanol" | "sucrose", massPct: number) => {
  const masses = noMasses();
  masses[at[of]] = massPct;
  masses[at.water] = 100 - massPct;
  return masses;
};
/** J to bring a gram from one temperature to another, °C, whatever of it freezes or thaws on the way. */
const heatBetween = (model: Model, fromC: number, toC: number) =>
  heatWithIce(liquidOf(model).perGram, toC) - heatWithIce(liquidOf(model).perGram, fromC);

describe("how much of a liquid is ice", () => {
  // By the rule of the lever: what is left must be as strong as what freezes there (CRC Handbook, 102nd ed.).
  test.each([
    ["ethanol", 10, -10.92, 20], // 10 g in 50 g of 20 %
    ["ethanol", 5, -4.47, 10],
    ["ethanol", 15, -20.47, 30],
    ["sucrose", 20, -4.45, 40],
    ["sucrose", 10, -1.47, 20],
  ] as const)("%s of %d %% mass at %d °C leaves a liquid of %d %%", (of, massPct, tC, leftPct) => {
    const byHand = 100 - (100 * massPct) / leftPct;
    expect(Math.abs(iceWithin(solution(of, massPct), tC) - byHand)).toBeLessThan(1);
  });

  test("a spirit in the freezer stays liquid: 40 % vol freezes at −23.6 °C (CRC, interpolated)", () => {
    const { perGram } = liquidOf(spirit);
    expect(iceWithin(perGram, -18)).toBe(0);
    expect(heatWithIce(perGram, -18)).toBe(heatIn(perGram, -18));
    expect(iceWithin(perGram, -26)).toBeGreaterThan(0);
  });
});

describe("what thawing takes", () => {
  test("water from −18 to 0 °C: 334 J/g and 18 K of ice at 2.04 J/(g K), the middle of 2.10 at 0 and 1.98 at −18 °C (ice tables)", () =>
    expect(heatBetween(water, -18, 0)).toBeCloseTo(333.6 + 18 * 2.04, 0));

  test("a 20 % sugar solution from −4.45 to −1.47 °C: melt the half that is ice, then warm it all", () => {
    const sugar = stock("solution", { sugar: 20, per: "100 g" });
    // At −4.45 °C ice takes 333.6 J/g less 4.45 K × (4.22 − 2.09) to melt; the solution 3.68 J/(g K) to warm (Bubnik 1995).
    const byHand = 0.5 * (333.6 - 4.45 * 2.13) + 2.98 * 3.68;
    expect(Math.abs(heatBetween(sugar, -4.45, -1.47) - byHand)).toBeLessThan(0.02 * byHand);
  });

  test("frozen strawberries: between what thaws of them with a tenth of their water never frozen, and with all of it", () => {
    // 91.6 % water, 306 J/g of latent heat, 1.84 J/(g K) frozen: ASHRAE Handbook, Refrigeration, thermal properties of foods, from memory.
    const berry = stock("strawberry", { sugar: 4.9, sugarKind: "glucose", acid: 0.9, solids: 2.5, per: "100 g", solid: true });
    const thawing = heatBetween(berry, -18, 0);
    expect(thawing).toBeGreaterThan(0.9 * 306 + 18 * 1.84);
    expect(thawing).toBeLessThan(306 + 18 * 1.84);
  });
});

describe("in a drink", () => {
  const cold = { temperatureC: exactly(-18) };

  test("a gram of frozen water spares nearly the 371 ÷ 334 g of ice that its thawing takes: less diluted, the drink goes colder", () => {
    const with20 = (tC: number) => assess(plan([pour(spirit, 60), pour(water, g(20), { temperatureC: exactly(tC) })], "shake")).melt!.meltG;
    const spared = with20(0) - with20(-18);
    expect(spared / 20).toBeGreaterThan(0.9);
    expect(spared / 20).toBeLessThan(371 / 334);
  });

  test("frozen fruit blended without ice is what chills: it ends below 0 °C, part of it ice", () => {
    const berry = stock("strawberry", { sugar: 5, sugarKind: "glucose", acid: 0.9, solids: 2.5, per: "100 g", solid: true });
    const noIce = { kind: "cubed" as const, massG: exactly(0), temperatureC: exactly(0) };
    const drink = assess(plan([pour(spirit, 50), pour(syrup, 15), pour(berry, g(150), cold)], [step("blend", { ice: noIce })]));
    expect(drink.value("waterMl")).toBe(0);
    expect(drink.value("temperatureC")).toBeLessThan(drink.value("freezingC")!);
    expect(drink.value("temperatureC")).toBeGreaterThan(-12);
    const thawed = assess(plan([pour(spirit, 50), pour(syrup, 15), pour(berry, g(150))], [step("blend", { ice: noIce })]));
    expect(thawed.value("temperatureC")).toBeGreaterThan(18);
  });

  test("what is frozen stiff melts no ice, and stays partly frozen: no colder than it came in", () => {
    const drink = assess(plan([pour(lime, 60, cold), pour(syrup, 30, cold)], "shake"));
    expect(drink.melt!.meltG).toBe(0);
    expect(drink.value("temperatureC")).toBeGreaterThan(-18);
    expect(drink.value("temperatureC")).toBeLessThan(drink.value("freezingC")!);
  });
});
