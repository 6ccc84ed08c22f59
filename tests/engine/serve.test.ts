import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { assess } from "../../server/engine/assess.ts";
import { liquidOf } from "../../server/engine/composition.ts";
import { ethanolWaterContent } from "../../server/engine/heat.ts";
import { heatIn, massOf } from "../../server/engine/liquid.ts";
import { meltOf } from "../../server/engine/melt.ts";
import type { FigureName, ServePlan } from "../../server/engine/plan.ts";
import { figureNames } from "../../server/engine/plan.ts";
import { run } from "../../server/engine/serve.ts";
import { findTechnique, techniques } from "../../server/engine/techniques.ts";
import { exactly, g, lime, nobodyKnows, plan, pour, spirit, step, stock, syrup, water } from "./plans.ts";

const sourPours = [pour(spirit, 60), pour(lime, 22.5), pour(syrup, 22.5)];
const sour = plan(sourPours, "shake");

describe("the vessel", () => {
  test("without a method nothing is diluted and everything is as poured", () => {
    const drink = assess(plan(sourPours));
    expect(drink.value("waterMl")).toBe(0);
    expect(drink.value("afterVolumeMl")).toBe(drink.value("beforeVolumeMl"));
    expect(drink.value("strengthPct")).toBe(drink.value("beforeStrengthPct"));
    expect(drink.melt).toBeNull();
  });

  test("volumes never add: spirit and water lose, mass does not", () => {
    const drink = assess(plan([pour(stock("ethanol", { abv: 100 }), 50), pour(water, 50)]));
    expect(drink.value("beforeVolumeMl")).toBeCloseTo(96.463, 2); // OIML R 22
  });

  test("shaking adds water, takes strength, and goes below zero", () => {
    const drink = assess(sour);
    expect(drink.value("dilutionShare")).toBeGreaterThan(0.4);
    expect(drink.value("dilutionShare")).toBeLessThan(0.6);
    expect(drink.value("strengthPct")).toBeLessThan(drink.value("beforeStrengthPct")!);
    expect(drink.value("temperatureC")).toBeLessThan(-4);
    expect(drink.value("ethanolG")).toBeCloseTo(60 * 0.4 * 0.78923912, 8);
  });

  test("a dry shake changes nothing, before or alone", () => {
    const both = assess(plan(sourPours, [step("dry shake", { seconds: 10 }), step("shake")]));
    for (const name of figureNames) expect(both.value(name)).toBe(assess(sour).value(name));
    expect(assess(plan(sourPours, "dry shake")).value("waterMl")).toBe(0);
  });

  test("shaken is colder and more diluted than stirred, stirred than built", () => {
    const [shaken, stirred, built] = ["shake", "stir", "build"].map((method) => assess(plan(sourPours, method)));
    expect(shaken!.value("dilutionShare")).toBeGreaterThan(stirred!.value("dilutionShare")!);
    expect(stirred!.value("dilutionShare")).toBeGreaterThan(built!.value("dilutionShare")!);
    expect(shaken!.value("temperatureC")).toBeLessThan(stirred!.value("temperatureC")!);
    expect(stirred!.value("temperatureC")).toBeLessThan(built!.value("temperatureC")!);
  });

  test("half the time is less water; more than enough is no more", () => {
    const shakenFor = (seconds: number) => assess(plan(sourPours, [step("shake", { seconds })])).value("waterMl")!;
    expect(shakenFor(6)).toBeLessThan(shakenFor(12) - 3);
    expect(shakenFor(1)).toBeLessThan(shakenFor(6));
    expect(shakenFor(40)).toBeCloseTo(shakenFor(12), 6);
    const stirredFor = (seconds: number) => assess(plan(sourPours, [step("stir", { seconds })])).value("waterMl")!;
    expect(stirredFor(90)).toBeGreaterThan(stirredFor(30));
  });

  test("a spirit from the freezer takes up less water, a hot one more", () => {
    const at = (tC: number) =>
      assess(plan([pour(spirit, 60, { temperatureC: exactly(tC) }), ...sourPours.slice(1)], "shake")).value("waterMl")!;
    expect(at(-18)).toBeLessThan(at(20) - 10);
    expect(at(70)).toBeGreaterThan(at(20) + 15);
  });

  test("ice from the freezer melts less than wet ice, crushed ice brings more water than cubes", () => {
    const water = (tC: number, kind: "cubed" | "crushed") =>
      assess(plan(sourPours, "shake", { ice: { kind, temperatureC: exactly(tC) } })).value("waterMl")!;
    expect(water(-18, "cubed")).toBeLessThan(water(-1, "cubed") - 5);
    expect(water(0, "crushed")).toBeGreaterThan(water(0, "cubed") + 1);
  });

  test("what melts is bounded by the ice there is, and then the drink stays warm", () => {
    const drink = assess(plan(sourPours, "shake", { ice: { kind: "cubed", massG: exactly(20), temperatureC: exactly(0) } }));
    expect(drink.melt!.meltG).toBe(20);
    expect(drink.value("temperatureC")).toBeGreaterThan(0);
  });

  test("a juice frozen solid owes its thawing: it melts far less ice than one that is merely cold", () => {
    const at = (tC: number) => assess(plan([pour(spirit, 60), pour(lime, 30, { temperatureC: exactly(tC) })], "shake")).value("waterMl")!;
    expect(at(-18)).toBeLessThan(at(0) - 20); // 30 g of ice to thaw takes what would melt about 30 g
  });

  test("blended ice is all drunk: it counts as water, melted or not", () => {
    const ice = { kind: "crushed" as const, massG: exactly(180), temperatureC: exactly(-5) };
    const drink = assess(plan([pour(spirit, 60), pour(lime, 25), pour(syrup, 35)], [step("blend", { ice })]));
    expect(drink.value("waterMl")).toBeCloseTo(180 / 0.99820123, 6);
    expect(drink.value("temperatureC")).toBeLessThan(-1);
    expect(drink.value("fillShare")).toBeNull();
  });

  test("two drinks in two vessels are twice one drink in one", () => {
    const one = assess(sour);
    const two = assess(plan([pour(spirit, 120), pour(lime, 45), pour(syrup, 45)], "shake", { serves: 2 }));
    expect(two.value("waterMl")).toBeCloseTo(2 * one.value("waterMl")!, 6);
    expect(two.value("temperatureC")).toBeCloseTo(one.value("temperatureC")!, 8);
  });

  test("pre-diluted with a quarter of water", () => {
    const drink = assess(plan([pour(spirit, 80)], [step("pre-dilute", { waterShare: 0.25 })]));
    expect(drink.value("waterMl")).toBeCloseTo(20, 8);
    expect(drink.value("strengthPct")).toBeCloseTo(32.1, 1);
  });
});

describe("after the ice", () => {
  test("what is poured after is not shaken: it adds volume and heat, never melt", () => {
    const wine = stock("sparkling wine", { abv: 12 });
    const after = assess(plan([...sourPours, pour(wine, 75, { stage: "after", temperatureC: exactly(4) })], "shake"));
    const plain = assess(sour);
    expect(after.value("waterMl")).toBe(plain.value("waterMl"));
    expect(after.value("beforeVolumeMl")).toBe(plain.value("beforeVolumeMl"));
    expect(after.value("afterVolumeMl")).toBeCloseTo(plain.value("afterVolumeMl")! + 75, 0);
    expect(after.value("temperatureC")).toBeGreaterThan(plain.value("temperatureC")!);
    expect(after.value("temperatureC")).toBeLessThan(4);
  });

  test("`top to 180 ml` makes 180 ml after dilution", () => {
    const drink = assess(plan([...sourPours, pour(water, { topToMl: exactly(180) }, { stage: "after" })], "shake"));
    expect(drink.value("afterVolumeMl")).toBeCloseTo(180, 6);
    expect(drink.poured(3)!.ml).toBeGreaterThan(10);
  });

  test("`top` fills to the washline, less the ice that floats", () => {
    const glass = { capacityMl: exactly(350), washline: 0.9 };
    const long = (more: Partial<ServePlan>) =>
      assess(plan([pour(spirit, 50), pour(water, { top: true }, { stage: "after" })], [], { glass, ...more }));
    expect(long({}).value("afterVolumeMl")).toBeCloseTo(315, 6);
    expect(long({}).value("fillShare")).toBeCloseTo(0.9, 8);
    const iced = long({ serveIceG: exactly(120) });
    expect(iced.value("afterVolumeMl")).toBeGreaterThan(180);
    expect(iced.value("afterVolumeMl")).toBeLessThan(200);
    expect(iced.value("fillShare")).toBeCloseTo(0.9, 2);
  });

  test("topping up without a glass is unknown and says why", () => {
    const drink = assess(plan([pour(spirit, 50), pour(water, { top: true }, { stage: "after" })]));
    expect(drink.figure("strengthPct")).toEqual({
      value: null,
      plusMinus: null,
      because: ["no glass is named, so how much water tops it up is not known"],
    });
    expect(drink.value("beforeStrengthPct")).toBeCloseTo(40, 8);
  });

  test("the ice that a built drink was built on fills the glass", () => {
    const glass = { capacityMl: exactly(350), washline: 0.9 };
    const built = assess(plan([pour(spirit, 60)], "build", { glass }));
    const stirred = assess(plan([pour(spirit, 60)], "stir", { glass }));
    expect(built.value("fillShare")! * 350).toBeGreaterThan(built.value("afterVolumeMl")! + 100);
    expect(stirred.value("fillShare")! * 350).toBeCloseTo(stirred.value("afterVolumeMl")!, 8);
    const dumped = assess(plan([pour(spirit, 60)], [step("shake"), step("dump")], { glass }));
    expect(dumped.value("fillShare")! * 350).toBeGreaterThan(dumped.value("afterVolumeMl")! + 80);
  });
});

describe("what nobody knows stays unknown, as far as it reaches", () => {
  // Costs hang on prices alone: tests/engine/cost.test.ts.
  const physical = figureNames.filter((name) => !name.endsWith("PerServe"));
  const known = (drink: ReturnType<typeof assess>) => physical.filter((name) => drink.value(name) !== null);
  const withRum = (label: Parameters<typeof stock>[1], amount = { ml: exactly(60) } as Parameters<typeof pour>[1]) =>
    assess(plan([pour(stock("rum", label), amount), pour(lime, 22.5), pour(syrup, 22.5)], "shake"));

  test("a strength: strength, water and all that is per 100 ml", () => {
    const drink = withRum({ abv: nobodyKnows("the strength of rum is not given") });
    expect(known(drink)).toEqual(["caffeineMg"]);
    expect(drink.figure("strengthPct").because).toEqual(["the strength of rum is not given"]);
  });

  test("a sugar: only what names sugar", () => {
    const drink = withRum({ abv: 40, sugar: nobodyKnows("the sugar of rum is not given") });
    expect(drink.value("strengthPct")).toBeCloseTo(15, 0);
    expect(drink.value("acidGPer100Ml")).not.toBeNull();
    for (const name of ["sugarGPer100Ml", "sweetnessGPer100Ml", "ratio"] as const) {
      expect(drink.figure(name).because).toEqual(["the sugar of rum is not given"]);
    }
  });

  test("a sugar that is weighed: its volume too", () => {
    const honey = withRum({ sugar: nobodyKnows("the sugar of honey is not given") }, g(20));
    expect(honey.value("strengthPct")).toBeNull();
    const measured = withRum({ sugar: nobodyKnows("the sugar of honey is not given"), density: 1.42 }, g(20));
    expect(measured.value("strengthPct")).not.toBeNull();
  });

  test("an acid: acid, ratio and energy; salt: salt; solids: energy; an amount: everything", () => {
    const all = physical.filter((name) => name !== "fillShare");
    const but = (...names: FigureName[]) => all.filter((name) => !names.includes(name));
    expect(known(withRum({ abv: 40, acid: nobodyKnows("?") }))).toEqual(but("acidGPer100Ml", "ratio", "energyKJ", "energyKcal"));
    expect(known(withRum({ abv: 40, salt: nobodyKnows("?") }))).toEqual(but("saltGPer100Ml", "freezingC"));
    expect(known(withRum({ abv: 40, solids: nobodyKnows("?") }))).toEqual(but("energyKJ", "energyKcal"));
    expect(known(withRum({ abv: 40, fat: nobodyKnows("?") }))).toEqual(but("energyKJ", "energyKcal"));
    expect(known(withRum({ abv: 40 }, { ml: nobodyKnows("`some` is no amount") }))).toEqual([]);
  });

  test("each reason once, in the order of the pours", () => {
    const a = stock("rum", { abv: nobodyKnows("rum has no strength") });
    const b = stock("gin", { abv: nobodyKnows("gin has no strength") });
    expect(assess(plan([pour(a, 30), pour(b, 30), pour(a, 10)])).figure("strengthPct").because).toEqual([
      "rum has no strength",
      "gin has no strength",
    ]);
  });

  test("what is unknown after the ice leaves what was before it known", () => {
    const fizz = stock("fizz", { abv: nobodyKnows("no strength") });
    const drink = assess(plan([...sourPours, pour(fizz, 60, { stage: "after" })], "shake"));
    expect(drink.value("dilutionShare")).not.toBeNull();
    expect(drink.value("strengthPct")).toBeNull();
  });

  test("too little acid has no ratio, and says so", () => {
    expect(assess(plan([pour(spirit, 60), pour(syrup, 5)], "stir")).figure("ratio").because).toEqual([
      "less than 0.15 g of acid in 100 ml: too little to weigh the sweetness against",
    ]);
  });
});

test("a mix of water and ethanol takes more heat to warm than water from 5 to 25 % mass", () => {
  const perDegree = (massFraction: number, tC: number) =>
    ethanolWaterContent(massFraction, tC + 0.5) - ethanolWaterContent(massFraction, tC - 0.5);
  for (const massFraction of [0.05, 0.1, 0.15, 0.2, 0.25]) {
    for (const tC of [-5, 0, 10, 20]) expect(perDegree(massFraction, tC)).toBeGreaterThan(perDegree(0, tC)); // Perry p. 2-184, Melinder 2010
  }
});

test("every technique's words name one row, and only one", () => {
  const words = techniques.flatMap((technique) => technique.words);
  expect(new Set(words).size).toBe(words.length);
  for (const technique of techniques) for (const word of technique.words) expect(findTechnique(word.toUpperCase())).toBe(technique);
  expect(findTechnique("dry-shake")?.id).toBe("dry shake");
  expect(findTechnique("fat wash")?.id).toBe("fat-wash");
  expect(findTechnique("sing to it")).toBeUndefined();
});

// Properties; those of the steps of a method stand in `chilling.test.ts`

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const anyPour = fc
  .record({ abv: between(0, 60), sugar: between(0, 60), acid: between(0, 6), ml: between(1, 90), tC: between(-18, 90) })
  .filter(({ abv, sugar }) => abv + sugar < 90)
  .map(({ abv, sugar, acid, ml, tC }) => pour(stock("any", { abv, sugar, acid }), ml, { temperatureC: exactly(tC) }));
const anyIce = fc.record({ kind: fc.constantFrom("cubed" as const, "crushed" as const), massG: between(0, 400), tC: between(-20, 0) });
const anyChill = fc.constantFrom(...techniques.filter(({ chill }) => chill));
const anyDrink = fc
  .record({ pours: fc.array(anyPour, { minLength: 1, maxLength: 6 }), technique: anyChill, ice: anyIce, seconds: between(1, 120) })
  .map(({ pours, technique, ice, seconds }) =>
    plan(pours, [{ technique, seconds: exactly(seconds) }], {
      ice: { kind: ice.kind, massG: exactly(ice.massG), temperatureC: exactly(ice.tC) },
    }),
  );

test("mass, volume, strength and ethanol of any drink agree", () =>
  fc.assert(
    fc.property(anyDrink, (drink) => {
      const { values, grams } = run(drink);
      const water = values[figureNames.indexOf("waterMl")]! * 0.99820123;
      const after = grams.reduce((sum, mass) => sum + mass, 0) + water;
      const volume = values[figureNames.indexOf("afterVolumeMl")]!;
      const density = after / volume;
      expect(density).toBeGreaterThan(0.8);
      expect(density).toBeLessThan(1.4);
      expect(values[figureNames.indexOf("ethanolG")]).toBeCloseTo(
        (values[figureNames.indexOf("strengthPct")]! / 100) * volume * 0.78923912,
        8,
      );
    }),
  ));

test("energy is conserved to 1e-9 of the heat moved", () =>
  fc.assert(
    fc.property(anyPour, anyIce, anyChill, between(0.5, 200), between(0, 40), (one, ice, { chill }, seconds, ambientC) => {
      const { perGram } = liquidOf(one.of);
      const masses = perGram.map((amount) => amount * 90);
      const mixture = { masses, heatJ: heatIn(masses, one.temperatureC.value), freezingOffC: 0 };
      const { heat, meltG } = meltOf(mixture, chill!, { massG: ice.massG, temperatureC: ice.tC, clingingG: 2 }, ambientC, seconds, 45);
      const left = heat.mixtureBefore + heat.iceBefore + heat.fromVessel - heat.mixtureAfter - heat.iceAfter;
      const moved = Math.abs(heat.iceAfter - heat.iceBefore) + Math.abs(heat.mixtureAfter - heat.mixtureBefore) + meltG;
      expect(Math.abs(left)).toBeLessThanOrEqual(1e-9 * Math.max(moved, 1));
      expect(massOf(masses)).toBeCloseTo(90, 8);
    }),
  ));
