/** Time, kept temperatures, added water, the glass, and what must hold whatever is done. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { assess } from "../../server/engine/assess.ts";
import { liquidOf } from "../../server/engine/composition.ts";
import { glassHeat, meetGlass } from "../../server/engine/glass.ts";
import { iceContent, mixingHeat } from "../../server/engine/heat.ts";
import { at, freezingPoint, heatIn, massOf, noMasses } from "../../server/engine/liquid.ts";
import type { ServePlan } from "../../server/engine/plan.ts";
import { figureIndex, run } from "../../server/engine/serve.ts";
import { heatWithIce, temperatureOf } from "../../server/engine/slush.ts";
import { techniques } from "../../server/engine/techniques.ts";
import { exactly, g, lime, nobodyKnows, plan, pour, spirit, step, stock, syrup, water } from "./plans.ts";

const sourPours = [pour(spirit, 60), pour(lime, 22.5), pour(syrup, 22.5)];
const chilling = techniques.filter(({ chill }) => chill).map(({ id }) => id);

describe("time", () => {
  const timed = (id: string, seconds: number) => assess(plan(sourPours, [step(id, { seconds })]));

  test.each(chilling)("%s: never less water for longer, and never warmer where ice is left", (id) => {
    const times = [1, 3, 6, 10, 15, 30, 60, 120, 600].map((seconds) => timed(id, seconds));
    for (const [index, one] of times.entries()) {
      if (index === 0) continue;
      expect(one.value("waterMl")).toBeGreaterThanOrEqual(times[index - 1]!.value("waterMl")! - 1e-9);
      if (one.contacts[0]!.step.technique.chill!.drunk) continue;
      expect(one.value("temperatureC")).toBeLessThanOrEqual(times[index - 1]!.value("temperatureC")! + 1e-9);
    }
  });

  test.each(["shake", "stir", "throw", "roll", "swizzle", "build", "churn"])(
    "%s: 6 s and 15 s differ, and both are on the way to equilibrium",
    (id) => {
      const [six, fifteen, end] = [6, 15, 900].map((seconds) => timed(id, seconds));
      expect(fifteen!.value("waterMl")! - six!.value("waterMl")!).toBeGreaterThan(4);
      expect(six!.value("temperatureC")! - fifteen!.value("temperatureC")!).toBeGreaterThan(2);
      expect(end!.value("waterMl")).toBeGreaterThanOrEqual(fifteen!.value("waterMl")!);
      // At equilibrium a drink is as cold as it freezes.
      expect(end!.value("temperatureC")).toBeCloseTo(end!.value("freezingC")!, 2);
    },
  );

  test("shaken is all but level at 12 s; stirred is not there in 30 s, and nearly in two minutes (Cooking Issues, 2009 and 2010)", () => {
    expect(timed("shake", 12).value("temperatureC")! - timed("shake", 60).value("temperatureC")!).toBeLessThan(1);
    expect(timed("stir", 30).value("temperatureC")! - timed("shake", 15).value("temperatureC")!).toBeGreaterThan(2);
    expect(timed("stir", 120).value("temperatureC")! - timed("stir", 900).value("temperatureC")!).toBeLessThan(0.5);
  });

  test("how long it took is a doubt of its own where it matters", () => {
    const spread = (id: string, u: number) => assess(plan(sourPours, [step(id, { seconds: exactly(10, u) })])).figure("waterMl").plusMinus!;
    expect(spread("stir", 2)).toBeGreaterThan(1.05 * spread("stir", 0));
  });
});

describe("a temperature that is kept", () => {
  test("is the drink's, with its uncertainty, and no water comes in", () => {
    const drink = assess(plan(sourPours, [step("hold", { toC: exactly(-5, 1) })]));
    expect(drink.value("temperatureC")).toBeCloseTo(-5, 6);
    expect(drink.figure("temperatureC").plusMinus).toBeCloseTo(1, 2);
    expect(drink.value("waterMl")).toBe(0);
    expect(drink.value("temperatureC")).toBeGreaterThan(drink.value("freezingC")!);
  });

  test("below its freezing point it is partly ice, and thaws like it", () => {
    const warmed = (toC: number) => {
      const held = plan([pour(water, g(100))], [step("hold", { toC })]);
      return assess({ ...held, pours: [...held.pours, pour(water, g(100), { stage: "after", temperatureC: exactly(90) })] }).value(
        "temperatureC",
      )!;
    };
    // 100 g at 90 °C give 90 × 4.19 × 100 = 37.7 kJ (CRC: water, 4.18 to 4.22); 100 g of ice at −10 °C take 33.4 + 2.1 = 35.4 kJ.
    expect(warmed(-10)).toBeGreaterThan(1);
    expect(warmed(-10)).toBeLessThan(5);
    expect(warmed(0.01)).toBeCloseTo(45, 0);
  });

  test("that nobody stated makes the temperature unknown and nothing else, until there is ice", () => {
    const unknown = step("hold", { toC: nobodyKnows("no temperature") });
    const held = assess(plan(sourPours, [unknown]));
    expect(held.figure("temperatureC").because).toEqual(["no temperature"]);
    expect(held.value("strengthPct")).not.toBeNull();
    const shaken = assess(plan(sourPours, [unknown, step("shake")]));
    expect(shaken.figure("strengthPct").because).toEqual(["no temperature"]);
    expect(shaken.value("beforeStrengthPct")).not.toBeNull();
  });
});

describe("water that the method adds", () => {
  test("is a share of the volume before, and doubts in it are the water's", () => {
    const drink = assess(plan([pour(spirit, 80)], [step("pre-dilute", { waterShare: exactly(0.25, 0.01) })]));
    expect(drink.value("waterMl")).toBeCloseTo(20, 8);
    expect(drink.figure("waterMl").plusMinus).toBeCloseTo(0.8, 6);
  });

  test("that nobody stated makes what follows unknown, and not what was before", () => {
    const drink = assess(plan([pour(spirit, 80)], [step("pre-dilute", { waterShare: nobodyKnows("no share") })]));
    for (const name of ["waterMl", "dilutionShare", "strengthPct", "temperatureC"] as const) {
      expect(drink.figure(name).because).toEqual(["no share"]);
    }
    expect(drink.value("beforeStrengthPct")).toBeCloseTo(40, 8);
    expect(drink.value("ethanolG")).not.toBeNull();
  });
});

describe("the glass", () => {
  const served = (glassC: number | undefined, more: Partial<ServePlan> = {}) =>
    assess(plan(sourPours, "shake", { ...(glassC !== undefined && { glassC: exactly(glassC, 2) }), ...more }));

  test("warms or cools the drink as far as its heat goes, and melts nothing in the tin", () => {
    const [none, cold, room] = [served(undefined), served(4), served(20)];
    expect(room.value("waterMl")).toBe(none.value("waterMl"));
    expect(room.value("vesselTemperatureC")).toBeCloseTo(none.value("temperatureC")!, 9);
    expect(cold.value("temperatureC")! - none.value("temperatureC")!).toBeGreaterThan(0.5);
    expect(room.value("temperatureC")).toBeGreaterThan(cold.value("temperatureC")! + 1);
    // By hand: 159 ml of drink of about 3.9 J/(K ml) and 0.5 J/(K ml) of glass share the heat.
    const byHand = (3.9 * none.value("temperatureC")! + 0.5 * 20) / (3.9 + 0.5);
    expect(Math.abs(room.value("temperatureC")! - byHand)).toBeLessThan(0.3);
  });

  test("from the freezer cannot bring a shaken drink far below where it freezes", () => {
    const [none, frozen] = [served(undefined), served(-18)];
    expect(frozen.value("temperatureC")).toBeLessThan(none.value("temperatureC")!);
    expect(none.value("temperatureC")! - frozen.value("temperatureC")!).toBeLessThan(0.4);
  });

  test("that is cold costs a hot drink a few degrees, a warm one less", () => {
    const hot = [pour(spirit, 50), pour(syrup, 15), pour(water, 120, { temperatureC: exactly(85) })];
    const temperature = (glassC: number) => assess(plan(hot, [], { glassC: exactly(glassC) })).value("temperatureC")!;
    expect(temperature(50)).toBeGreaterThan(58);
    expect(temperature(50)).toBeLessThan(64);
    expect(temperature(20)).toBeLessThan(temperature(50) - 2);
    expect(temperature(20)).toBeGreaterThan(50);
  });

  test("with ice in it leaves the temperature to the ice", () => {
    const iced = { serveIceG: exactly(120) };
    expect(served(20, iced).value("temperatureC")).toBe(served(undefined).value("temperatureC"));
    const built = (glassC: number) => assess(plan(sourPours, "build", { glassC: exactly(glassC) })).value("temperatureC");
    expect(built(20)).toBe(built(-18));
  });

  test("is unsure of its own heat, and says so", () => {
    const sources = [...served(20).gradient("temperatureC").keys()];
    expect(sources).toContain(glassHeat);
    expect(served(20).figure("temperatureC").plusMinus).toBeGreaterThan(served(undefined).figure("temperatureC").plusMinus! * 0.9);
  });
});

test("the heat of mixing melts an eighth more ice under a spirit, a sixth more in a sour, next to nothing more in wine", () => {
  const more = (...pours: (readonly [Parameters<typeof liquidOf>[0], number])[]) =>
    equilibriumMelt(pours, true) / equilibriumMelt(pours, false) - 1;
  expect(more([spirit, 60])).toBeCloseTo(1 / 8, 2);
  expect(more([spirit, 60], [lime, 22.5], [syrup, 22.5])).toBeCloseTo(1 / 6, 1);
  expect(more([stock("wine", { abv: 12 }), 90])).toBeLessThan(0.02);
});

/** Grams of ice at 0 °C that bring pours at 20 °C to equilibrium, none left over, with and without the heat of mixing. */
function equilibriumMelt(pours: readonly (readonly [Parameters<typeof liquidOf>[0], number])[], mixing: boolean): number {
  const heat = (masses: number[], tC: number) => {
    const base = masses[at.water]! + masses[at.ethanol]!;
    return heatIn(masses, tC) - (mixing ? 0 : base * mixingHeat(masses[at.ethanol]! / base));
  };
  const masses = noMasses();
  let heatJ = 0;
  for (const [of, volume] of pours) {
    const { perGram, gPerMl } = liquidOf(of);
    const own = perGram.map((amount) => amount * volume * gPerMl);
    for (const [index, amount] of own.entries()) masses[index]! += amount;
    heatJ += heat(own, 20);
  }
  const dry = masses[at.water]!;
  let [low, high] = [0, 200];
  while (high - low > 1e-9) {
    const melt = (low + high) / 2;
    masses[at.water] = dry + melt;
    if (heatJ + melt * iceContent(0) > heat(masses, freezingPoint(masses))) low = melt;
    else high = melt;
  }
  return low;
}

// Whatever is done

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const anyPour = fc
  .record({ abv: between(0, 60), sugar: between(0, 60), acid: between(0, 6), ml: between(1, 90), tC: between(-25, 90) })
  .filter(({ abv, sugar }) => abv + sugar < 90)
  .map(({ abv, sugar, acid, ml, tC }) => pour(stock("any", { abv, sugar, acid }), ml, { temperatureC: exactly(tC) }));
const anyIce = fc
  .record({
    kind: fc.constantFrom("cubed" as const, "crushed" as const, "large cube" as const),
    massG: between(0, 400),
    tC: between(-20, 0),
  })
  .map(({ kind, massG, tC }) => ({ kind, massG: exactly(massG), temperatureC: exactly(tC) }));
const anyContact = fc
  .record({ id: fc.constantFrom(...chilling), seconds: between(0.5, 120), ice: anyIce })
  .map(({ id, seconds, ice }) => step(id, { seconds, ice }));
const anyWater = between(0, 1).map((waterShare) => step("pre-dilute", { waterShare }));
const anyHold = between(-25, 80).map((toC) => step("hold", { toC }));
const steps = (...kinds: fc.Arbitrary<ReturnType<typeof step>>[]) => fc.array(fc.oneof(...kinds), { minLength: 1, maxLength: 4 });
const pours = fc.array(anyPour, { minLength: 1, maxLength: 5 });

test("every contact's heats come out even, frozen or not, to 1e-9 of what is moved, and their sum is the drink's", () =>
  fc.assert(
    fc.property(pours, steps(anyContact, anyWater), between(0, 40), (poured, method, ambientC) => {
      const drink = plan(poured, method, { ambientC: exactly(ambientC) });
      const { contacts, served, grams } = run(drink);
      let heatJ = poured.reduce(
        (sum, one, index) => sum + grams[index]! * heatWithIce(liquidOf(one.of).perGram, one.temperatureC.value),
        0,
      );
      let movedJ = Math.abs(heatJ);
      for (const { fromDrinkJ, fromVesselJ, meltingJ, restOfIceJ, iceG, meltG, share, afterC, step: of } of contacts) {
        const moved = Math.abs(fromDrinkJ) + Math.abs(fromVesselJ) + Math.abs(meltingJ) + Math.abs(restOfIceJ);
        expect(Math.abs(fromDrinkJ + fromVesselJ - meltingJ - restOfIceJ)).toBeLessThanOrEqual(1e-9 * Math.max(moved, 1));
        heatJ -= fromDrinkJ;
        movedJ += moved;
        if (!of.technique.chill!.drunk) continue;
        const cooled = Math.max(0, share * iceG - meltG);
        heatJ += cooled * iceContent(afterC) + (iceG - meltG - cooled) * iceContent(of.ice!.temperatureC.value);
      }
      if (method.some(({ waterShare }) => waterShare)) return;
      expect(Math.abs(served.mixture.heatJ - heatJ)).toBeLessThanOrEqual(1e-9 * Math.max(movedJ, 1));
    }),
  ));

test("mass in is mass out, and melt lies between nothing and all the ice", () =>
  fc.assert(
    fc.property(pours, steps(anyContact, anyWater, anyHold), (poured, method) => {
      const { values, contacts, served, grams } = run(plan(poured, method));
      const waterMl = values[figureIndex.waterMl]!;
      expect(massOf(served.mixture.masses)).toBeCloseTo(grams.reduce((sum, one) => sum + one, 0) + waterMl * 0.9982012, 4);
      for (const { meltG, iceG } of contacts) {
        expect(meltG).toBeGreaterThanOrEqual(0);
        expect(meltG).toBeLessThanOrEqual(iceG);
      }
    }),
  ));

test("warmer in never means less melt: a pour, the room, or an ice, frozen pours too", () =>
  fc.assert(
    fc.property(
      pours,
      steps(anyContact),
      between(0, 40),
      fc.constantFrom("pour", "room", "ice"),
      fc.nat(),
      (poured, method, warmer, what, which) => {
        const warmPours = poured.map((one, index) =>
          index === which % poured.length ? { ...one, temperatureC: exactly(one.temperatureC.value + warmer) } : one,
        );
        const warmIces = method.map((one, index) =>
          index === which % method.length
            ? { ...one, ice: { ...one.ice!, temperatureC: exactly(Math.min(0, one.ice!.temperatureC.value + warmer)) } }
            : one,
        );
        const warm = plan(what === "pour" ? warmPours : poured, what === "ice" ? warmIces : method, {
          ambientC: exactly(what === "room" ? 20 + warmer : 20),
        });
        expect(assess(warm).melt!.meltG).toBeGreaterThanOrEqual(assess(plan(poured, method)).melt!.meltG - 1e-6);
      },
    ),
  ));

test("what the glass gives is what the drink gets, to 1e-9 of it, and both come to one temperature between the two", () =>
  fc.assert(
    fc.property(pours, between(-20, 80), between(1, 300), (poured, glassC, jPerK) => {
      const { mixture } = run(plan(poured)).served;
      const before = { ...mixture };
      const beforeC = temperatureOf(before);
      meetGlass(mixture, jPerK, glassC);
      const afterC = temperatureOf(mixture);
      const [got, given] = [mixture.heatJ - before.heatJ, jPerK * (glassC - afterC)];
      expect(Math.abs(got - given)).toBeLessThanOrEqual(1e-9 * Math.max(Math.abs(got), jPerK));
      expect(afterC).toBeGreaterThanOrEqual(Math.min(beforeC, glassC) - 1e-6);
      expect(afterC).toBeLessThanOrEqual(Math.max(beforeC, glassC) + 1e-6);
    }),
  ));
