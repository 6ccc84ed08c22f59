import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { batchOf } from "../../server/engine/composition.ts";
import { at, massOf } from "../../server/engine/liquid.ts";
import {
  type PrepFigureName,
  type PrepModel,
  type PrepPart,
  type PrepStep,
  prepFigureNames,
  type SolidSort,
} from "../../server/engine/plan.ts";
import { assessPrep } from "../../server/engine/prep.ts";
import { processes, setting, strained } from "../../server/engine/processes.ts";
import { findTechnique } from "../../server/engine/techniques.ts";
import { exactly, g, lime, ml, nobodyKnows, prep, spirit, stock, sugar, syrup, water } from "./plans.ts";

const step = (words: string, to?: PrepStep["to"]): PrepStep => ({ does: findTechnique(words)!.process!, ...(to && { to }) });
const solid = (of: PrepPart["of"], grams: number | PrepPart["amount"], sort: SolidSort): PrepPart => ({
  of,
  amount: typeof grams === "number" ? g(grams) : grams,
  discarded: true,
  strained: sort,
});
const of = (parts: readonly PrepPart[], more: Partial<PrepModel> = {}): PrepModel => ({ ...prep("it", [], more), parts });
const part = (model: PrepPart["of"], grams: number): PrepPart => ({ of: model, amount: g(grams) });

const leaves = stock("mint", {});
const berries = stock("raspberry", { sugar: 5, acid: 1.6, per: "100 g", solid: true });
const milk = stock("milk", { sugar: 5, sugarKind: "lactose", solids: 6.8, per: "100 g" });
const butter = stock("butter", { solids: 82, per: "100 g" });
const vinegar = stock("vinegar", { acid: 5, acidKind: "acetic" });

const valuesOf = (model: PrepModel) => {
  const outcome = assessPrep(model);
  return Object.fromEntries(prepFigureNames.map((name) => [name, outcome.value(name)])) as Record<PrepFigureName, number | null>;
};
const reasonsOf = (model: PrepModel, name: PrepFigureName) => assessPrep(model).figure(name).because;

describe("boiling down", () => {
  const cordial = [part(lime, 300), part(sugar, 200)];

  test("takes off water only: sugar, acid and what it weighs besides are as before", () => {
    const before = batchOf(of(cordial)).masses;
    const after = batchOf(of(cordial, { steps: [step("reduce", g(400))] })).masses;
    expect(massOf(after)).toBeCloseTo(400, 6);
    for (const [index, grams] of before.entries()) expect(after[index]).toBeCloseTo(index === at.water ? grams - 100 : grams, 6);
  });

  test("comes to the volume that is stated", () => {
    expect(valuesOf(of(cordial, { steps: [step("reduce", ml(300))] })).volumeMl).toBeCloseTo(300, 6);
  });

  test("by half leaves half of the volume, and says with how good an eye", () => {
    const whole = valuesOf(of(cordial)).volumeMl!;
    const half = assessPrep(of(cordial, { steps: [step("reduce", { share: exactly(0.5, 0.05) })] }));
    expect(half.value("volumeMl")).toBeCloseTo(whole / 2, 6);
    expect(half.figure("volumeMl").plusMinus! / whole).toBeCloseTo(0.05, 4);
  });

  test("1:1 syrup boiled to three quarters of its weight is 2:1, by arithmetic", () => {
    const reduced = valuesOf(of([part(sugar, 100), part(water, 100)], { steps: [step("simmer", g(150))] }));
    expect(reduced.sugarToWater).toBeCloseTo(2, 8);
    expect(reduced.brix).toBeCloseTo(66.667, 3);
    expect(reduced.boiledOffG).toBeCloseTo(50, 8);
  });

  test("without a size nothing is known but what went in, and the yield is a size", () => {
    const unsized = of(cordial, { steps: [step("reduce")] });
    expect(reasonsOf(unsized, "brix")).toEqual(["it: how much boils away is not stated"]);
    expect(reasonsOf(unsized, "massG")).toEqual(["it: how much boils away is not stated"]);
    expect(valuesOf({ ...unsized, makes: g(400) })).toEqual(valuesOf(of(cordial, { steps: [step("reduce", g(400))], makes: g(400) })));
  });

  test("with solids still in it, the yield is what is left after they are out", () => {
    const made = valuesOf(of([...cordial, solid(leaves, 20, "herb")], { steps: [step("simmer"), step("strain")], makes: ml(300) }));
    expect(made.volumeMl).toBeCloseTo(300, 6);
    expect(made.leftBehindG).toBeCloseTo(20 * strained.herb.holdsG.value, 6);
    expect(made.massInG).toBeCloseTo(made.massG! + made.boiledOffG! + made.leftBehindG!, 6);
  });

  test("with alcohol in it the strength is unknown until it is measured", () => {
    const wine = of([part(spirit, 500)], { steps: [step("reduce", g(250))] });
    expect(reasonsOf(wine, "strengthPct")).toEqual([
      "alcohol boils off before water does: how much is left in it is not known until it is measured",
    ]);
    expect(valuesOf(wine).massG).toBeCloseTo(250, 6);
    expect(valuesOf(wine).volumeMl).toBeNull();
  });

  test.each([0, 8])("measured at %d %% vol, the rest of the alcohol went off, and the size is as stated", (abv) => {
    for (const to of [g(250), ml(250)]) {
      const made = valuesOf(of([part(spirit, 500), part(sugar, 50)], { steps: [step("reduce", to)], measured: { abvPct: exactly(abv) } }));
      expect(made.strengthPct).toBeCloseTo(abv, 6);
      expect("g" in to ? made.massG : made.volumeMl).toBeCloseTo(250, 5);
      expect(made.massG! + made.boiledOffG!).toBeCloseTo(550, 6);
    }
  });

  test("the acid of vinegar goes off with the steam", () => {
    const gastrique = of([part(vinegar, 300), part(sugar, 200)], { steps: [step("reduce", g(350))] });
    expect(reasonsOf(gastrique, "acidGPer100G")).toEqual(["vinegar boils off with the steam: how much acid is left in it is not known"]);
    expect(valuesOf(gastrique).brix).toBeCloseTo((100 * 200) / 350, 6);
  });

  test.each([
    ["more than there is", g(900), "it: there is less of it to begin with than it is boiled down to"],
    ["less than is dissolved", g(100), "it: more is dissolved in it than it is boiled down to"],
  ])("to %s is unknown", (_what, to, because) => {
    expect(reasonsOf(of(cordial, { steps: [step("reduce", to)] }), "brix")).toEqual([because]);
  });
});

describe("straining", () => {
  test("peel left in dry sugar gives all the water there is: no size and no °Brix until they are measured", () => {
    const oil = of([part(sugar, 200), solid(leaves, 100, "herb")]);
    for (const name of ["massG", "volumeMl", "brix", "sugarToWater"] as const) {
      expect(valuesOf(oil)[name]).toBeNull();
      expect(reasonsOf(oil, name)).toEqual(["what mint gives to it is not known until it is measured"]);
    }
    expect(valuesOf(of([part(sugar, 200), part(water, 100), solid(leaves, 100, "herb")])).brix).toBeCloseTo(66.667, 3);
  });

  test("solids hold back liquid: less of it, and the same stuff", () => {
    const whole = valuesOf(of([part(syrup, 500)]));
    const made = valuesOf(of([part(syrup, 500), solid(leaves, 20, "herb")]));
    expect(made.massG).toBeCloseTo(500 - 20 * strained.herb.holdsG.value, 8);
    for (const name of ["brix", "densityGPerMl", "acidGPer100G", "sugarToWater"] as const) expect(made[name]).toBeCloseTo(whole[name]!, 8);
  });

  // About 2 g of water a gram of ground coffee: common practice, no source.
  test("30 g of ground coffee keep about 60 g of a litre", () => {
    const brew = assessPrep(of([part(water, 1000), solid(stock("coffee", {}), 30, "coffee")]));
    const { value, plusMinus } = brew.figure("leftBehindG");
    expect(value).toBeGreaterThan(50);
    expect(value).toBeLessThan(70);
    expect(plusMinus).toBeCloseTo(30 * strained.coffee.holdsG.u, 6);
  });

  test("what really came out, where it is stated, is what there is", () => {
    const made = assessPrep(of([part(syrup, 500), solid(leaves, 20, "herb")], { makes: ml(380) }));
    expect(made.value("volumeMl")).toBeCloseTo(380, 8);
    expect(made.figure("volumeMl").plusMinus).toBe(0);
    expect(made.value("brix")).toBeCloseTo(50, 8);
  });

  test("more than went in is not believed, but for what two jugs differ", () => {
    expect(reasonsOf(of([part(water, 500)], { makes: ml(800) }), "massG")).toEqual(["it is said to make more than goes in"]);
    expect(valuesOf(of([part(water, 500)], { makes: ml(505) })).volumeMl).toBeCloseTo(505, 8);
  });

  test("solids that nobody weighed leave only the size unknown", () => {
    const infusion = of([part(spirit, 500), solid(leaves, { g: nobodyKnows("what one bunch of mint weighs is not given") }, "herb")]);
    expect(reasonsOf(infusion, "massG")).toEqual(["what one bunch of mint weighs is not given"]);
    expect(valuesOf(infusion).strengthPct).toBeCloseTo(40, 6);
    expect(valuesOf({ ...infusion, makes: g(480) }).massG).toBeCloseTo(480, 8);
  });

  test("a fruit leaves its sugar and its acid, and in alcohol its water; nobody knows how much of them", () => {
    const inSyrup = of([part(syrup, 500), solid(berries, 100, "fruit")]);
    const because = ["what raspberry gives to it is not known until it is measured"];
    for (const name of ["brix", "acidGPer100G"] as const) expect(reasonsOf(inSyrup, name)).toEqual(because);
    expect(valuesOf(inSyrup).massG).not.toBeNull();
    expect(valuesOf({ ...inSyrup, measured: { brix: exactly(48) } }).brix).toBeCloseTo(48, 8);
    expect(reasonsOf(of([part(spirit, 500), solid(berries, 100, "fruit")]), "strengthPct")).toEqual(because);
  });

  test("what is too little to be read counts as none", () => {
    const touched = valuesOf(of([part(spirit, 700), solid(berries, 5, "fruit")]));
    for (const name of ["strengthPct", "brix", "acidGPer100G"] as const) expect(touched[name]).not.toBeNull();
  });

  test.each(["herb", "spice", "tea"] as const)("%s leaves every figure of the liquid as it was", (sort) => {
    const made = valuesOf(of([part(spirit, 500), part(syrup, 100), solid(leaves, 5, sort)]));
    for (const name of ["strengthPct", "brix", "acidGPer100G"] as const) expect(made[name]).not.toBeNull();
  });

  test("parts without a size may say what they make", () => {
    const parts = valuesOf(of([part(sugar, 100), part(water, 100)], { shares: true, makes: ml(700) }));
    expect(parts.volumeMl).toBeCloseTo(700, 8);
    expect(parts.massInG).toBeCloseTo(parts.massG!, 8);
  });
});

describe("what sets", () => {
  const punch = [part(spirit, 400), part(lime, 200), { ...part(milk, 200), sets: "curd" as const }];

  test("milk leaves its sugar and its water; the acid is unknown, strength and sugar are not", () => {
    const made = of(punch, { steps: [step("milk-clarify")] });
    const plain = of(punch.slice(0, 2).concat(part(milk, 200)));
    expect(reasonsOf(made, "acidGPer100G")).toEqual(["it: how much acid the curd takes out is not known"]);
    const { masses } = batchOf(made);
    const before = batchOf(plain).masses;
    expect(masses[at.lactose]! / masses[at.ethanol]!).toBeCloseTo(before[at.lactose]! / before[at.ethanol]!, 8);
    const curd = setting.curd.solids.value * 0.068 * 200;
    expect(valuesOf(made).leftBehindG).toBeCloseTo(curd * (1 + setting.curd.holdsG.value), 6);
  });

  test("fat takes some of the spirit along and none of its strength", () => {
    const oil = of([part(spirit, 500), solid(stock("oil", {}), 100, "fat")], { steps: [step("fat-wash")] });
    expect(valuesOf(oil).strengthPct).toBeCloseTo(40, 8);
    expect(valuesOf(oil).massG).toBeCloseTo(500 - 100 * strained.fat.holdsG.value, 8);
  });

  test("the water of butter stays in", () => {
    const washed = valuesOf(of([part(spirit, 500), { ...part(butter, 100), sets: "fat" }], { steps: [step("fat-wash")] }));
    const diluted = valuesOf(of([part(spirit, 500), part(water, 18)]));
    expect(washed.strengthPct).toBeCloseTo(diluted.strengthPct!, 6);
  });
});

test("water that is added goes in: 25 % of the volume of a syrup", () => {
  const before = valuesOf(of([part(syrup, 500)]));
  const made = valuesOf(of([part(syrup, 500)], { steps: [{ does: {}, waterShare: exactly(0.25) }] }));
  expect(made.massInG! - 500).toBeCloseTo(0.25 * before.volumeMl! * 0.99820123, 8); // density of water at 20 °C: OIML R 22
  expect(made.massG).toBeCloseTo(made.massInG!, 8);
  expect(reasonsOf(of([part(syrup, 500)], { steps: [{ does: {}, waterShare: nobodyKnows("how much is not said") }] }), "brix")).toEqual([
    "how much is not said",
  ]);
});

test("a ferment is unknown but for its salt; clarifying leaves only its size unknown", () => {
  const base = [part(syrup, 500)];
  for (const name of ["strengthPct", "brix", "acidGPer100G", "massG"] as const)
    expect(reasonsOf(of(base, { steps: [step("ferment")] }), name)).toEqual(["it: how far the fermentation went is not known"]);
  const clear = of(base, { steps: [step("clarify")] });
  expect(valuesOf(clear).brix).toBeCloseTo(50, 8);
  expect(reasonsOf(clear, "volumeMl")).toEqual(["how much of it is left after clarifying is not stated"]);
  expect(valuesOf({ ...clear, makes: g(450) }).massG).toBeCloseTo(450, 8);
});

// Properties

const anyLiquid = fc.constantFrom(spirit, lime, syrup, water, milk, vinegar);
const anyPart = fc.oneof(
  fc.tuple(anyLiquid, fc.double({ min: 50, max: 900, noNaN: true })).map(([model, grams]) => part(model, grams)),
  fc
    .tuple(
      fc.constantFrom(leaves, berries),
      fc.double({ min: 1, max: 60, noNaN: true }),
      fc.constantFrom(...(Object.keys(strained) as SolidSort[])),
    )
    .map(([model, grams, sort]) => solid(model, grams, sort)),
  fc.double({ min: 10, max: 200, noNaN: true }).map((grams): PrepPart => ({ ...part(milk, grams), sets: "curd" })),
  fc.double({ min: 10, max: 200, noNaN: true }).map((grams): PrepPart => ({ ...part(butter, grams), sets: "fat" })),
);
const anyStep = fc
  .tuple(fc.constantFrom(...processes.flatMap((row) => row.process ?? [])), fc.double({ min: 0.3, max: 0.95, noNaN: true }))
  .map(([does, share]): PrepStep => ({ does, ...(does.boils && { to: { share: exactly(share) } }) }));
const anyPrep = fc
  .tuple(fc.array(anyPart, { minLength: 1, maxLength: 6 }), fc.array(anyStep, { maxLength: 4 }))
  .map(([parts, steps]) => of([part(water, 400), ...parts], { steps }));

test("what went in is there, or boiled off, or was left behind", () =>
  fc.assert(
    fc.property(anyPrep, (model) => {
      const { masses, massInG, boiledOffG, leftBehindG } = batchOf(model);
      const poured = model.parts.reduce(
        (sum, { amount, discarded }) => sum + (discarded ? 0 : (amount as { g: { value: number } }).g.value),
        0,
      );
      expect(massInG).toBeCloseTo(poured, 6);
      expect(massOf(masses) + boiledOffG + leftBehindG).toBeCloseTo(massInG, 6);
      expect(Math.min(boiledOffG, leftBehindG, ...masses.filter((_, index) => index !== at.extraMl))).toBeGreaterThanOrEqual(-1e-9);
    }),
  ));

test("what is held back takes nothing out of its due: without curd, fat and steam, shares stay as they were", () =>
  fc.assert(
    fc.property(anyPrep, (model) => {
      const plain = model.parts.filter(({ sets }) => !sets);
      const before = batchOf(of(plain.filter(({ discarded }) => !discarded))).masses;
      const after = batchOf(of(plain)).masses;
      for (const index of [at.water, at.ethanol, at.sucrose, at.acid, at.salt])
        expect(after[index]! / massOf(after)).toBeCloseTo(before[index]! / massOf(before), 8);
    }),
  ));
