/** A batch, poured and shared out again, is the drink; and each of its parts stands as its reason says. */
import fc from "fast-check";
import { evaluate } from "mathjs";
import { describe, expect, test } from "vitest";
import { type Batch, type BatchOptions, type BatchSize, batchOf } from "../../server/house/batch.ts";
import type { Measured } from "../../server/house/batch-measure.ts";
import { assessDrink } from "../../server/house/drink.ts";
import type { House } from "../../server/house/house.ts";
import { entryNamed, houseIn, houseOf } from "./make.ts";

const made = "2026-11-28";

function mixed(house: House, name: string, size: BatchSize, options: Partial<BatchOptions> = {}): Batch {
  const batch = batchOf(house, entryNamed(house, name), size, { made, ...options });
  if ("problem" in batch) throw new Error(batch.problem);
  return batch;
}

function refused(house: House, name: string, size: BatchSize, options: Partial<BatchOptions> = {}): string {
  const batch = batchOf(house, entryNamed(house, name), size, { made, ...options });
  return "problem" in batch ? batch.problem : "";
}

const halyard = houseIn("samples/halyard-room");
const drinks = [...halyard.documents()]
  .flatMap(({ tree }) => tree.entries)
  .flatMap(({ kind, name }) => (kind === "drink" ? name!.text : []));

/** How many of the house's steps an amount is: a jigger of 2.5 ml, a jug of tens, a scale of 0.1 g, whole dashes. */
function steps({ text, way }: Measured): number {
  return Number.parseFloat(text) / { jigger: 2.5, jug: 10, scale: 0.1, count: 1 }[way];
}

describe("the demo house", () => {
  test("all its drinks are looked at", () => expect(drinks.length).toBeGreaterThanOrEqual(20));

  test.each(drinks)("%s: poured as measured and summed, it is the drink within what rounding is said to do", (name) => {
    const entry = entryNamed(halyard, name);
    const { outcome, plan } = assessDrink(halyard, entry);
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 200 }), fc.constantFrom(undefined, true, false), (serves, water) => {
        const batch = mixed(halyard, name, { serves }, water === undefined ? {} : { water });
        for (const { exact, measured, weighed } of batch.pours) {
          expect(measured.amount / exact - 1).toBeCloseTo(measured.off, 9);
          expect(Math.abs(measured.off)).toBeLessThanOrEqual(0.02);
          expect(steps(measured)).toBeCloseTo(Math.round(steps(measured)), 6);
          if (weighed) expect(steps(weighed)).toBeCloseTo(Math.round(steps(weighed)), 6);
        }
        for (const { figure, own, batch: now } of batch.served) {
          expect(own).toBe(outcome.value(figure));
          // No figure moves further than all that goes in, or is missing, of the bottle.
          const worst = Math.max(...batch.pours.map(({ measured }) => Math.abs(measured.off)), Math.abs(batch.water.measured?.off ?? 0));
          expect(Math.abs(now - own)).toBeLessThanOrEqual(2 * worst * own + 1e-6 * own + 1e-9);
        }
        expect(batch.water.exactMl).toBeCloseTo(batch.water.measured ? (outcome.value("waterMl")! * serves) / plan.serves : 0, 9);
      }),
      { numRuns: 25 },
    );
  });

  test.each(drinks)("%s: written out with the batch's amounts as a spec of its own, it comes to the same figures", (name) => {
    const serves = 37;
    const batch = mixed(halyard, name, { serves });
    const { flat, plan, outcome, pours } = assessDrink(halyard, entryNamed(halyard, name));
    const inBottle = batch.pours.map(({ pour, unit, measured }) => `${measured.amount} ${unit} ${pour.ingredient.resolution.text}`);
    const beside = pours.flatMap((pour, index) => {
      if (batch.pours.some((one) => one.pour === pour)) return [];
      return `${(outcome.poured(index)!.g * serves) / plan.serves} g ${pour.ingredient.resolution.text}`;
    });
    const melt = batch.water.measured?.amount ?? (outcome.value("waterMl")! * serves) / plan.serves;
    const house = houseIn("samples/halyard-room");
    const written = ["drink Poured", `serves: ${serves}`, ...inBottle, ...beside, ...(melt > 0 ? [`${melt} ml water`] : [])].join("\n  ");
    const uri = "file:///samples/halyard-room/poured.drink";
    const [document] = [...houseOf(written).documents()];
    house.setDocument({ ...document!, uri });
    const poured = assessDrink(house, entryNamed(house, "Poured"));
    expect(flat.pours.length).toBeGreaterThan(0);
    expect(batch.served.length).toBeGreaterThan(0);
    for (const { figure, batch: now } of batch.served) {
      const value = poured.outcome.value(figure)!;
      expect(Math.abs(value - now), figure).toBeLessThanOrEqual(1e-5 * Math.abs(now) + 1e-6);
    }
  });
});

/** A bar whose figures can be worked out on paper. */
const bar = `house Paper Bar
  jigger: 2.5 ml
  scale: 0.1 g
  bottle: 700 ml
  dash: 0.8 ml
  freezer: -18 C
  country: GB

stock plain spirit
  kind: spirit
  abv: 40 %

stock plain syrup
  kind: syrup
  sugar: 60 g/100 ml
  acid: 0 g/100 ml
  abv: 0 %
  keeps: 14 days chilled
  allergens: none

stock plain acid
  kind: vinegar
  sugar: 0 g/100 ml
  acid: 6 g/100 ml as citric
  abv: 0 %

drink Stirred
  method: stir 30 s; strain over large cube
  50 ml plain spirit
  10 ml plain syrup
  2 dashes aromatic bitters

drink Shaken
  method: shake 12 s; fine strain
  50 ml plain spirit
  20 ml plain syrup
  25 ml lemon juice
  1 egg white
  6 mint leaves, muddled
  top soda water

drink Marked
  method: stir 20 s; strain
  50 ml plain spirit, batched
  20 ml lemon juice, batched
  10 ml plain syrup

drink Still
  60 ml plain spirit
  30 ml plain syrup
  10 ml plain acid
`;
const paper = houseOf(bar);

describe("by hand", () => {
  // 33 serves: 1980 + 990 + 330 ml, and nothing is rounded but the jug's tens: exact here.
  const still = mixed(paper, "Still", { serves: 33 });

  test("amounts", () => {
    expect(still.pours.map(({ measured }) => [measured.text, measured.way, measured.off])).toEqual([
      ["1980 ml", "jug", 0],
      ["990 ml", "jigger", 0],
      ["330 ml", "jigger", 0],
    ]);
    expect(still.water).toMatchObject({ exactMl: 0, why: "none: no ice meets it" });
  });

  test("sugar and acid are those that a library of mathematics makes of the same sum", () => {
    const volume = still.volumeMl.value!;
    const sugar = Number(evaluate(`(990 * 60 / 100) / ${volume} * 100`));
    const acid = Number(evaluate(`(330 * 6 / 100) / ${volume} * 100`));
    const figures = Object.fromEntries(still.served.map(({ figure, batch }) => [figure, batch]));
    expect(figures.sugarGPer100Ml).toBeCloseTo(sugar, 6);
    expect(figures.acidGPer100Ml).toBeCloseTo(acid, 6);
    expect(figures.strengthPct).toBeCloseTo(Number(evaluate(`1980 * 0.40 / ${volume} * 100`)), 2);
    // Volumes contract by a little, never by a fiftieth: practice, no source.
    expect(volume).toBeLessThan(3300);
    expect(volume).toBeGreaterThan(3300 * 0.98);
  });

  test("a spirit's weight is its density's: 40 % vol weighs 0.9480 g/ml at 20 °C, OIML R 22 (1975)", () => {
    const [spirit] = mixed(paper, "Still", { serves: 5 }).pours;
    expect(spirit!.measured.text).toBe("300 ml");
    expect(spirit!.weighed!.amount).toBeCloseTo(300 * 0.948, 0);
  });

  test.each([
    [1, ["50 ml", "10 ml", "2 dashes"]],
    [9, ["450 ml", "90 ml", "18 dashes"]],
    [25, ["1250 ml", "250 ml", "40 ml"]],
  ])("%d serves: what the jigger is too coarse for is counted", (serves, texts) => {
    expect(mixed(paper, "Stirred", { serves }).pours.map(({ measured }) => measured.text)).toEqual(texts);
  });

  test("what is neither on the jigger nor counted is weighed, to the scale's step", () => {
    const [, syrup] = mixed(paper, "Stirred", { serves: 1.13 }).pours;
    expect(syrup!.measured.way).toBe("scale");
    expect(syrup!.measured.text).toMatch(/^1\d(\.\d)? g$/);
    expect(Math.abs(syrup!.measured.off)).toBeLessThan(0.005);
  });
});

describe("water", () => {
  const why = (name: string, options: Partial<BatchOptions> = {}, house = paper) => mixed(house, name, { serves: 10 }, options).water;

  test("is what the ice would have melted, for what is stirred and served", () => {
    const melt = assessDrink(paper, entryNamed(paper, "Stirred")).outcome.value("waterMl")!;
    expect(melt).toBeGreaterThan(5);
    expect(why("Stirred").exactMl).toBeCloseTo(10 * melt, 9);
  });

  test.each([
    ["Shaken", {}, "none: each is still to shake with ice, which brings it"],
    ["Marked", {}, "none: the ice brings it at service, with what is poured beside"],
    ["Stirred", { water: false }, "left out, as asked"],
  ])("%s %j: %s", (name, options, said) => expect(why(name, options)).toEqual({ exactMl: 0, plusMinus: 0, why: said }));

  test("what is stirred with something fresh gets it from the ice", () => {
    const house = houseOf(`${bar}\ndrink Fresh\n  method: stir 20 s; strain\n  50 ml plain spirit\n  20 ml lemon juice\n`);
    expect(why("Fresh", {}, house).why).toBe("none: it is still stirred with what stands apart, and the ice brings it");
  });

  test("is put in where it is asked for, however the drink is made", () => {
    expect(why("Marked", { water: true }).exactMl).toBeGreaterThan(10);
  });

  test("served, it makes no difference who brought it", () => {
    const figures = (water: boolean) => mixed(paper, "Stirred", { serves: 100 }, { water }).served.map(({ batch }) => batch);
    const [dry, wet] = [figures(false), figures(true)];
    for (const [index, value] of dry.entries()) expect(wet[index]! / value).toBeCloseTo(1, 2);
  });
});

describe("what stands apart", () => {
  const apart = (name: string, house = paper) => mixed(house, name, { serves: 4 }).apart.map((one) => `${one.name}: ${one.why}`);

  test("egg, fresh juice, leaves and bubbles, each with its reason", () => {
    expect(apart("Shaken")).toEqual([
      expect.stringMatching(/^lemon juice: (?:fresh juice turns \(|juice turns, and nobody)/),
      "egg white: egg spoils, and foams only when it is fresh",
      "mint leaves: pressed fresh for each drink",
      "soda water: poured last, to fill the glass",
    ]);
  });

  test("where a spec marks its pours, nothing else is in the bottle, and a doubtful one is said", () => {
    expect(apart("Marked")).toEqual(["plain syrup: not marked `batched`"]);
    expect(mixed(paper, "Marked", { serves: 4 }).pours.map(({ doubt }) => doubt !== undefined)).toEqual([false, true]);
  });

  test.each([
    ["30 ml cream", /^cream: dairy spoils$/],
    ["rinse absinthe", /^absinthe: it rinses the glass$/],
    ["10 ml plain syrup, floated", /^plain syrup: floated on top/],
    ["30 ml espresso, hot", /^espresso: poured hot$/],
    ["90 ml ginger beer", /^ginger beer: its bubbles would go$/],
    ["1 g salt, to rim", /^salt: it is for the rim$/],
    ["5 ml plain syrup, optional", /^plain syrup: only where it is wanted$/],
    ["10 ml nog base", /^nog base: egg spoils.*egg white in nog base/],
    ["5 ml plain syrup, after", /^plain syrup: poured after the ice$/],
    ["plain syrup, to taste", /^plain syrup: nobody says how much/],
  ])("%s", (pour, said) => {
    const house = houseOf(`${bar}\nprep nog base\n  50 ml egg white\n  50 ml plain syrup\n\ndrink More\n  50 ml plain spirit\n  ${pour}\n`);
    expect(apart("More", house)).toEqual([expect.stringMatching(said)]);
  });

  test("a prep that says how long it keeps is taken at its word", () => {
    const house = houseOf(
      `${bar}\nprep nog base\n  50 ml egg white\n  50 ml plain syrup\n  keeps: 2 days chilled\n\ndrink More\n  10 ml nog base\n`,
    );
    expect(apart("More", house)).toEqual([]);
    const { useBy, allergens } = mixed(house, "More", { serves: 4 });
    expect(useBy).toMatchObject({ date: "2026-11-30", keeping: { name: "nog base" } });
    expect(allergens.contains.map(({ allergen }) => allergen)).toContain("egg");
  });
});

describe("bottles", () => {
  test("filled, one holds whole serves and has room at its neck", () => {
    fc.assert(
      fc.property(fc.constantFrom(...drinks), fc.integer({ min: 200, max: 5000 }), (name, bottleMl) => {
        const { volumeMl, serves, bottles } = mixed(halyard, name, { fill: true }, { bottleMl });
        expect(Number.isInteger(serves)).toBe(true);
        expect(bottles.count).toBe(1);
        expect(volumeMl.value!).toBeLessThanOrEqual(0.97 * bottleMl);
        const more = mixed(halyard, name, { serves: serves + 2 }).volumeMl.value!;
        expect(more).toBeGreaterThan(0.97 * bottleMl);
      }),
      { numRuns: 60 },
    );
  });

  test("a volume is reached but for the rounding", () => {
    expect(mixed(paper, "Stirred", { ml: 5000 }).volumeMl.value! / 5000).toBeCloseTo(1, 2);
  });

  test("what cannot be made is said in plain words", () => {
    expect(refused(paper, "Stirred", { fill: true }, { bottleMl: 20 })).toMatch(/^A bottle of 20 ml does not hold one serve of /);
    expect(refused(paper, "Stirred", { serves: 1e6 })).toMatch(/^That is more than a bar pours/);
    const loose = houseOf("drink Loose\n  2 parts gin\n  1 part water\n\ndrink Eggs\n  1 egg white\n\ndrink Nothing\n");
    expect(refused(loose, "Loose", { serves: 2 })).toMatch(/^Loose is in parts without a size/);
    expect(refused(loose, "Eggs", { serves: 2 })).toBe(
      "Nothing of Eggs stands in a bottle: egg white (egg spoils, and foams only when it is fresh).",
    );
    expect(refused(loose, "Nothing", { serves: 2 })).toBe("Nothing of Nothing stands in a bottle: it pours nothing.");
    const strange = houseOf("drink Strange\n  50 ml moonlight\n");
    expect(refused(strange, "Strange", { ml: 2000 })).toMatch(/^How much one serve of Strange comes to is unknown: .*moonlight/);
    expect(mixed(strange, "Strange", { serves: 2 })).toMatchObject({ strengthPct: { value: null }, served: [], bottles: { count: null } });
  });
});

describe("the label", () => {
  test("is good for as long as is stated, and says of what that is not", () => {
    const { useBy } = mixed(paper, "Stirred", { serves: 4 });
    expect(useBy).toMatchObject({ date: "2026-12-12", notStated: ["plain spirit", "aromatic bitters"] });
  });

  test.each([
    ["2 days", "2026-03-01"], // over the end of a February of 28 days
    ["6 hours", "2026-02-27"],
    ["1 week", "2026-03-06"],
  ])("%s from 2026-02-27 is %s", (keeps, date) => {
    const house = houseOf(`stock brine\n  kind: syrup\n  keeps: ${keeps}\n\ndrink One\n  50 ml brine\n`);
    expect(mixed(house, "One", { serves: 2 }, { made: "2026-02-27" }).useBy.date).toBe(date);
  });

  test("nothing stated is no date", () => {
    const house = houseOf("stock brine\n  kind: spirit\n  abv: 40 %\n\ndrink One\n  50 ml brine\n");
    expect(mixed(house, "One", { serves: 2 }).useBy).toEqual({ notStated: ["brine"] });
  });

  test("allergens are those of the bottle: egg that is shaken in later is none, an alternative counts", () => {
    const house = houseOf(
      `${bar}\nstock nut syrup\n  kind: syrup\n  allergens: nuts\n\ndrink Two\n  garnish: grated almond\n  50 ml plain spirit\n    or nut syrup\n  1 egg white\n`,
    );
    const { contains } = mixed(house, "Two", { serves: 4 }).allergens;
    expect(contains.map(({ allergen }) => allergen)).toEqual(["nuts"]);
    expect(contains[0]!.names).toEqual(["nut syrup"]);
  });

  test("what the drink itself states stays", () => {
    const house = houseOf(`${bar}\ndrink Two\n  allergens: celery\n  50 ml plain spirit\n  1 egg white\n`);
    expect(mixed(house, "Two", { serves: 4 }).allergens.contains.map(({ allergen }) => allergen)).toEqual(["celery"]);
  });
});

test("a strong batch stays liquid in the freezer, a weak one does not pour", () => {
  // 40 % vol freezes near −23 to −27 °C, 10 % vol near −4: see the table of freezing points in tests/reference.
  const cold = (name: string) => mixed(paper, name, { serves: 4 }, { water: false }).cold;
  expect(cold("Stirred").iceShare.value).toBe(0);
  const weak = houseOf(`${bar}\ndrink Weak\n  20 ml plain spirit\n  60 ml water\n`);
  expect(mixed(weak, "Weak", { serves: 4 }).cold.iceShare.value!).toBeGreaterThan(0.4);
});
