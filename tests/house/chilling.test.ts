/** From the words of a method, a glass and an ice to what the engine is handed. */
import { describe, expect, test } from "vitest";
import { assessDrink } from "../../server/house/drink.ts";
import { standingOf } from "../../server/house/standing.ts";
import { entryNamed, houseOf } from "./make.ts";

const bar =
  "house Bar\n  ambient: 20 C\n  fridge: 4 C\n  freezer: -18 C\n\nglass stem\n  holds: 200 ml\n\nglass cold stem\n  holds: 150 ml\n  stored: freezer\n\nice large cube\n  kind: large cube\n  weight: 110 g\n  temperature: -2 C\n\n";
function drink(method: string, more = "", pours = "  60 ml gin\n  10 ml dry vermouth\n") {
  const house = houseOf(`${bar}drink Slip\n  method: ${method}\n${more}${pours}`);
  return assessDrink(house, entryNamed(house, "Slip"));
}

describe("steps", () => {
  test("a share of water, held to its per cent; a range is uncertain by its width", () => {
    const { plan, outcome } = drink("pre-dilute 25 %; hold at -5 C");
    expect(plan.steps[0]!.waterShare).toMatchObject({ value: 0.25 });
    expect(outcome.value("waterMl")! / outcome.value("beforeVolumeMl")!).toBeCloseTo(0.25, 8);
    expect(outcome.value("temperatureC")).toBeCloseTo(-5, 6);
    expect(drink("pre-dilute 20-30 %").plan.steps[0]!.waterShare).toMatchObject({ value: 0.25, u: 0.025 });
  });

  test("a temperature, in either scale, with a reason for its uncertainty", () => {
    expect(drink("hold at 23 F").plan.steps[0]!.toC).toMatchObject({ value: -5, why: "the temperature stated in the method" });
    const places = drink("chill; freeze").plan;
    expect(places.steps.map(({ toC }) => (toC as { value: number }).value)).toEqual([4, -18]);
    expect(drink("heat to 65 C").outcome.value("temperatureC")).toBeCloseTo(65, 6);
  });

  test("whether it freezes where it is held follows from what is in it", () => {
    const strong = drink("hold at -10 C").outcome;
    const weak = drink("hold at -10 C", "", "  60 ml lime juice\n  30 ml gin\n").outcome;
    expect(strong.value("freezingC")).toBeLessThan(-10);
    expect(weak.value("freezingC")).toBeGreaterThan(-10);
  });

  test("what is not stated is unknown, with the step's name", () => {
    expect(drink("pre-dilute").outcome.figure("strengthPct").because).toEqual(["how much water “pre-dilute” adds is not stated"]);
    const held = drink("hold").outcome;
    expect(held.figure("temperatureC").because).toEqual(["how warm “hold” makes it is not stated"]);
    expect(held.value("strengthPct")).not.toBeNull();
  });

  test("a time is uncertain by how it is taken; so many times are a time", () => {
    expect(drink("shake 10 s").plan.steps[0]!.seconds).toMatchObject({ value: 10, u: 1 });
    expect(drink("shake 10-14 s").plan.steps[0]!.seconds).toMatchObject({ value: 12, u: 1 });
    expect(drink("shake").plan.steps[0]!.seconds).toBeUndefined();
    expect(drink("throw 6 times").plan.steps[0]!.seconds!.value).toBe(18);
    expect(drink("throw 3 times").outcome.value("waterMl")).toBeLessThan(drink("throw 6 times").outcome.value("waterMl")! - 5);
  });
});

describe("hot", () => {
  const toddy = "  50 ml whisky\n  10 ml lemon juice\n  120 ml hot water\n";

  test.each(["build", "build; stir", "stir", "warm the mug; build"])("%s: nothing melts into what is hot", (method) => {
    const { outcome } = drink(method, "  glass: stem\n", toddy);
    expect(outcome.value("waterMl")).toBe(0);
    expect(outcome.value("temperatureC")).toBeGreaterThan(45);
    // Two degrees of the glass, of the spirit and of the hot water: what ice would do is none of its doubts.
    expect(outcome.figure("temperatureC").plusMinus).toBeLessThan(5);
  });

  test("hot water and boiling water are as hot as the house's hot things", () => {
    const { plan } = drink("build", "", "  100 ml hot water\n  100 ml boiling water\n  100 ml water\n");
    expect(plan.pours.map(({ temperatureC }) => temperatureC.value)).toEqual([85, 85, 20]);
  });

  test.each(["build over cubed ice", "shake 12 s; fine strain", "stir 30 s with cubed ice"])("%s: with ice it is cold", (method) => {
    expect(drink(method, "  glass: stem\n", toddy).outcome.value("waterMl")).toBeGreaterThan(10);
  });
});

test("what bubbles and what is milk stand in the fridge, where nobody says otherwise", () => {
  const { plan } = drink("build", "", "  10 ml tonic water\n  10 ml brut\n  10 ml lager\n  10 ml cider\n  10 ml cream\n  10 ml gin\n");
  expect(plan.pours.map(({ temperatureC }) => temperatureC.value)).toEqual([4, 4, 4, 4, 4, 20]);
});

describe("ice", () => {
  const ice = (method: string) => drink(method).plan.steps[0]!.ice;

  test.each([
    ["shake with cracked ice", "cracked", undefined, 0],
    ["shake with 120 g crushed ice", "crushed", 120, 0],
    ["shake 12 s with 5 cubes", "cubed", 125, 0],
    ["shake with 300 ml cubed ice", "cubed", 174, 0],
    ["stir 30 s with 2 large cubes", "large cube", 220, -2],
    ["shake with 100 g of cubed ice at -10 C, hard", "cubed", 100, -10],
    ["stir with freezer ice", "cubed", undefined, -18],
    ["blend without ice", "cubed", 0, 0],
  ] as const)("%s", (method, kind, massG, temperatureC) => {
    expect(ice(method)!.kind).toBe(kind);
    expect(ice(method)!.massG?.value).toBe(massG);
    expect(ice(method)!.temperatureC.value).toBe(temperatureC);
  });

  test("that is named nowhere is the drink's, or the house's", () => {
    expect(ice("shake 12 s")).toBeUndefined();
    expect(drink("shake 12 s", "  ice: crushed ice\n").plan.ice.kind).toBe("crushed");
    expect(drink("shake 12 s").plan.ice.kind).toBe("cubed");
  });

  test("in the glass: what it is built on, less what melts; what it is strained over, as it is; none off its ice", () => {
    const built = drink("build over 130 g cubed ice", "  glass: stem\n");
    expect(built.plan.steps[0]!.ice!.massG!.value).toBe(130);
    expect(built.plan.serveIceG).toBeUndefined();
    const over = drink("stir 25 s; strain over large cube", "  glass: stem\n").plan;
    expect([over.serveIceG!.value, over.serveIceKind]).toEqual([110, "large cube"]);
    expect(drink("stir 25 s over ice; strain", "  glass: stem\n").plan.serveIceG).toBeUndefined();
    expect(drink("shake; strain; float on top", "  glass: stem\n").plan.serveIceG).toBeUndefined();
    // A glass without a weight of ice is half filled with it.
    expect(drink("build over cubed ice", "  glass: stem\n").plan.steps[0]!.ice!.massG!.value).toBeCloseTo(90, 8);
  });

  test("built for several, each glass has its own", () =>
    expect(drink("build over 130 g cubed ice", "  glass: stem\n  serves: 3\n").plan.steps[0]!.ice!.massG!.value).toBe(390));
});

describe("the glass", () => {
  const glassC = (glass: string, method = "shake 12 s; fine strain") => drink(method, `  glass: ${glass}\n`).plan.glassC?.value;

  test.each([
    ["stem", 20],
    ["stem, chilled", 4],
    ["stem, frozen", -18],
    ["stem, at -8 C", -8],
    ["cold stem", -18],
    ["cold stem, chilled", 4],
    ["nobody's glass, chilled", 4],
    ["stem, warm", 50],
  ])("%s", (glass, temperatureC) => expect(glassC(glass)).toBe(temperatureC));

  test("that a step warms or cools is as warm as that, and the drink is not", () => {
    expect(glassC("stem", "warm the glass")).toBe(50);
    expect(glassC("stem", "freeze the glass; shake 12 s")).toBe(-18);
    expect(glassC("stem", "heat the glass to 60 C")).toBe(60);
    const warmed = drink("warm the glass", "  glass: stem\n");
    expect(warmed.plan.steps).toEqual([]);
  });

  test("nobody names warms nothing", () => expect(drink("shake 12 s").plan.glassC).toBeUndefined());

  test("chilled keeps a drink colder than one from the shelf, and both have the same water", () => {
    const [shelf, chilled] = ["stem", "stem, chilled"].map((glass) => drink("shake 12 s; fine strain", `  glass: ${glass}\n`).outcome);
    expect(chilled!.value("temperatureC")).toBeLessThan(shelf!.value("temperatureC")! - 1);
    expect(chilled!.value("waterMl")).toBe(shelf!.value("waterMl"));
  });
});

test("a drink on ice takes up a band of water, one off it none, and one in parts without a size none that is known", () => {
  const built = standingOf(drink("build over 130 g cubed ice", "  glass: stem\n"));
  expect(built.map(({ minutes }) => minutes)).toEqual([5, 15]);
  for (const { lowMl, highMl } of built) expect(lowMl).toBeLessThan(highMl);
  expect(standingOf(drink("shake 12 s; fine strain", "  glass: stem\n"))).toEqual([]);
  expect(standingOf(drink("build over 130 g cubed ice", "", "  2 parts gin\n  1 part dry vermouth\n"))).toEqual([]);
});
