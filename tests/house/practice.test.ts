/**
 * What bars take for granted, worked out: common practice, no source. A check of direction and size, not of
 * the last digit. (4 : 2 : 1 of spirit, lime and agave syrup stands in `sour.test.ts`.)
 */
import { describe, expect, test } from "vitest";
import type { Known } from "../../server/engine/plan.ts";
import { assessDrink } from "../../server/house/drink.ts";
import { assessPrepEntry } from "../../server/house/prep.ts";
import { stockFacts } from "../../server/house/stock.ts";
import { specimen } from "../../server/rules/specimen.ts";
import { entryNamed, houseOf } from "./make.ts";

const made = (name: string, ...lines: string[]) => {
  const house = houseOf(`prep ${name}\n${lines.map((line) => `  ${line}\n`).join("")}`);
  return assessPrepEntry(house, entryNamed(house, name));
};
const poured = (...pours: string[]) => {
  const house = houseOf(specimen(pours, { glass: "coupe", method: "shake 12 s; fine strain", family: "sour" }));
  return assessDrink(house, entryNamed(house, "Slip Water")).outcome;
};
const larder = (name: string) => {
  const house = houseOf("drink none\n");
  const scope = house.scopeOf([...house.documents()][0]!.tree.entries[0]!);
  return stockFacts(house, house.lookup(scope, "ingredient", name)[0]!.entry).model;
};
const value = (known: Known) => ("value" in known ? known.value : Number.NaN);

describe("two parts of citric to one of malic acid, 6 g in 100 g, stand in for lime juice", () => {
  const lines = ["4 g citric acid", "2 g malic acid", "to 100 g water"];

  test("as sour by volume, within what one lime differs from the next", () => {
    const acid = made("lime acid", ...lines).value("acidGPer100Ml")!;
    expect(acid).toBeGreaterThan(5.4);
    expect(acid).toBeLessThan(6.6);
  });

  test("poured for the same volume of juice, the drink is as sour to a fiftieth, and a little less sweet", () => {
    const house = houseOf(
      `prep lime acid\n${lines.map((line) => `  ${line}\n`).join("")}\n${specimen(["60 ml rum", "22.5 ml lime acid", "22.5 ml plain syrup"], { method: "shake 12 s", glass: "coupe" })}`,
    );
    const standIn = assessDrink(house, entryNamed(house, "Slip Water")).outcome;
    const juice = poured("60 ml rum", "22.5 ml lime juice", "22.5 ml plain syrup");
    expect(standIn.value("acidGPer100Ml")! / juice.value("acidGPer100Ml")!).toBeCloseTo(1, 1.7);
    expect(standIn.value("sweetnessGPer100Ml")!).toBeLessThan(juice.value("sweetnessGPer100Ml")!);
  });
});

describe("one part of salt to five of water, by weight", () => {
  const saline = made("salt water", "1 part salt", "5 parts water", "parts by: weight");

  test("stays dissolved: under the 26.4 g in 100 g that cold water holds (CRC Handbook, from memory)", () => {
    const share = 100 / 6;
    expect(share).toBeLessThan(26.4);
    expect(saline.value("densityGPerMl")!).toBeCloseTo(1.125, 2); // sodium chloride of that strength, from memory
  });

  test("five drops of it in a sour are felt and not tasted: about 0.03 g in 100 ml", () => {
    const house = houseOf(
      `prep salt water\n  1 part salt\n  5 parts water\n  parts by: weight\n\n${specimen(["60 ml rum", "22.5 ml lime juice", "22.5 ml plain syrup", "5 drops salt water"], { method: "shake 12 s", glass: "coupe" })}`,
    );
    const salt = assessDrink(house, entryNamed(house, "Slip Water")).outcome.value("saltGPer100Ml")!;
    expect(salt).toBeGreaterThan(0.015);
    expect(salt).toBeLessThan(0.1);
  });
});

test("agave syrup cut two to one with water is as sweet as a sugar syrup between 1 : 1 and 2 : 1", () => {
  const sweetness = (syrup: string) => poured("60 ml rum", "22.5 ml lime juice", `22.5 ml ${syrup}`).value("sweetnessGPer100Ml")!;
  expect(made("cut agave", "2 parts agave syrup", "1 part water", "parts by: weight").value("brix")!).toBeCloseTo(45.4, 0);
  expect(sweetness("diluted agave syrup")).toBeGreaterThan(sweetness("plain syrup"));
  expect(sweetness("diluted agave syrup")).toBeLessThan(sweetness("rich syrup"));
});

describe("18 g of ground coffee to 40 g of espresso", () => {
  const [groundG, cupG] = [18, 40];
  const espresso = larder("espresso");

  test("draws a fifth of the coffee with the larder's espresso: 18 to 22 % is what roasters aim for", () => {
    const drawn = (cupG * value(espresso.solids.amount)) / groundG;
    expect(drawn).toBeGreaterThan(18);
    expect(drawn).toBeLessThan(22);
  });

  test("there is less caffeine in the cup than in the grounds, and not much less than half", () => {
    const inCup = (cupG * value(espresso.caffeineMg.amount)) / 100;
    const inGrounds = (groundG * value(larder("ground coffee").caffeineMg.amount)) / 100;
    expect(inCup).toBeLessThan(inGrounds);
    expect(inCup).toBeGreaterThan(0.2 * inGrounds);
  });
});

// Espresso is 67 ± 3 °C in the cup (Italian certified espresso); a freezer's spirit −18 °C.
describe("freezing the spirits offsets a hot coffee in the tin", () => {
  const water = (vodka: string, espresso: string) =>
    poured(`50 ml vodka${vodka}`, `30 ml espresso${espresso}`, "20 ml coffee liqueur", "5 ml plain syrup").value("waterMl")!;
  const allAtRoom = water("", "");

  test("a hot coffee alone melts about 16 ml more, a frozen spirit alone about 20 ml less", () => {
    const hot = water("", ", at 67 C") - allAtRoom;
    const frozen = allAtRoom - water(", frozen", "");
    for (const moved of [hot, frozen]) {
      expect(moved).toBeGreaterThan(12);
      expect(moved).toBeLessThan(24);
    }
  });

  test.each(["at 67 C", "at 85 C"])("a coffee %s and a frozen spirit melt what both at room temperature do, within a tenth", (hot) =>
    expect(Math.abs(water(", frozen", `, ${hot}`) / allAtRoom - 1)).toBeLessThan(0.1),
  );
});
