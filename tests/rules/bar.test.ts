/** Findings about what the bar has, keeps and earns: out of stock, frozen hard, layers that sink, cost. */
import { describe, expect, test } from "vitest";
import { assessDrink } from "../../server/house/drink.ts";
import { layersOf } from "../../server/house/layers.ts";
import { shaken, specimen } from "../../server/rules/specimen.ts";
import { entryNamed, houseOf } from "../house/make.ts";
import { checkFindings, codesIn, findIn, findOne } from "./check.ts";

const of = (code: string, text: string) => findIn(houseOf(text)).filter(({ finding }) => finding.code === code);

describe("out of stock", () => {
  const juice = (status: string) => `stock quince juice\n  kind: juice\n${status}\n`;
  const out = juice("  status: out\n");
  const cordial = (more = "") => `prep quince cordial\n  100 g quince juice\n  100 g white sugar\n${more}\n`;
  const with_ = (...pours: string[]) => specimen(["50 ml gin", ...pours, "100 ml soda water"]);

  test("the pour is marked, in a riff that takes it over its name, and none where it is swapped out", () =>
    checkFindings(
      `${out}${with_("20 ml quince juice").replace("  20 ml quince juice\n", "  20 ml quince juice\n        ^^^^^^^^^^^^ out-of-stock\n")}
drink Slack Water
      ^^^^^^^^^^^ out-of-stock
  from: Slip Water

drink Spring Water
  from: Slip Water
  swap quince juice for apple juice
`,
    ));

  test("a prep dies with what it is made of, and its drinks with it", () => {
    const { located } = findOne(`${out}${cordial()}${with_("20 ml quince cordial")}`, "out-of-stock");
    expect(located.finding.what).toBe("The quince cordial needs quince juice, which is out: this drink is off tonight.");
    expect(located.finding.related?.map(({ entry, place }) => [entry.name?.text, place.line])).toEqual([["quince juice", 2]]);
  });

  test("but not where there is some left, or something else goes into it", () => {
    expect(codesIn(`${out}${cordial("  status: in\n")}${with_("20 ml quince cordial")}`)).toEqual([]);
    expect(
      codesIn(`${out}${cordial().replace("quince juice\n", "quince juice\n    or apple juice\n")}${with_("20 ml quince cordial")}`),
    ).toEqual([]);
  });

  test("a drink that is poured in a drink takes it off too", () => {
    const base = "drink Base\n  method: none\n  glass: none\n  garnish: none\n  40 ml quince juice\n\n";
    const found = of("out-of-stock", `${out}${base}${with_("20 ml Base")}`);
    expect(found.map(({ finding }) => finding.what)).toEqual([
      "The quince juice is out: this drink is off tonight.",
      "The Base needs quince juice, which is out: this drink is off tonight.",
    ]);
  });

  test("what stands in is the first alternative that is there", () => {
    const pours = ["20 ml quince juice", "  or quince cordial", "  or apple juice"];
    const { located } = findOne(`${out}${cordial()}${with_(...pours)}`, "out-of-stock");
    expect(located.finding.what).toBe("The quince juice is out: apple juice stands in for it.");
  });

  test("an option, a retired drink and a stock that is in are not found; a draft gets a hint", () => {
    expect(codesIn(`${out}${with_("20 ml quince juice, optional")}`)).toEqual([]);
    expect(codesIn(`${out}${with_("20 ml quince juice").replace("  glass", "  status: retired\n  glass")}`)).toEqual([]);
    expect(codesIn(`${juice("  status: in\n")}${with_("20 ml quince juice")}`)).toEqual([]);
    const draft = findOne(`${out}${with_("20 ml quince juice").replace("  glass", "  status: draft\n  glass")}`, "out-of-stock");
    expect(draft.located.finding.severity).toBe("hint");
  });

  test("it follows the stock while that is edited", () => {
    const house = houseOf(`${out}=== b.drink\n${with_("20 ml quince juice")}`);
    const codes = () => findIn(house).map(({ finding }) => finding.code);
    expect(codes()).toEqual(["out-of-stock"]);
    const stock = houseOf(juice("")).document("file:///house/spec.drink")!;
    house.setDocument(stock);
    expect(codes()).toEqual([]);
  });
});

describe("frozen and meant to pour", () => {
  const cold = (pour: string, method = shaken.method) => of("freezes-in-freezer", specimen([pour, "20 ml gin"], { ...shaken, method }));

  test.each(["20 ml fino sherry, frozen", "20 ml sweet vermouth, at -20 C", "20 ml plain syrup, frozen"])("%s is found", (pour) =>
    expect(cold(pour)).toHaveLength(1),
  );
  test.each([
    "20 ml gin, frozen",
    "20 ml orange liqueur, frozen",
    "20 ml fino sherry, at -5 C",
    "20 ml lime juice, frozen",
    "20 ml water, frozen",
  ])("%s is not", (pour) => expect(cold(pour)).toEqual([]));
  test("nor what goes into a blender", () => expect(cold("60 ml red wine, frozen", "blend with 100 g crushed ice")).toEqual([]));

  test("a prep and a stock that stand in the freezer are, and the house's freezer counts", () => {
    const kept = "prep harbour mix\n  100 ml gin\n  200 ml water\n  stored: freezer\n          ^^^^^^^ freezes-in-freezer\n";
    checkFindings(
      `stock quay vermouth\n  kind: vermouth\n  abv: 16 %\n  sugar: 4 g/100 ml\n  stored: freezer\n          ^^^^^^^ freezes-in-freezer\n\n${kept}`,
    );
    expect(of("freezes-in-freezer", `house The Slip\n  freezer: -6 C\n\n${kept.replace(/\n +\^.*\n/, "\n")}`)).toEqual([]);
  });

  test("a batch that a step holds too cold is, on that step", () => {
    const held = (degrees: string) =>
      specimen(["50 ml gin", "25 ml dry vermouth"], { method: `pre-dilute 70 %; hold at ${degrees}`, glass: "coupe" });
    expect(of("freezes-in-freezer", held("-5 C"))).toEqual([]);
    const { located } = findOne(held("-18 C"), "freezes-in-freezer");
    expect(located.finding.what).toMatch(/^At −18 °C about \d+ % of it is ice: it does not pour\.$/);
    expect(located.finding.entry.lines[located.finding.place.line]!.text.slice(located.finding.place.start)).toBe("hold at -18 C");
  });
});

describe("layers", () => {
  const layered = (...pours: string[]) => specimen(pours, { glass: "shot glass", method: "layer" });
  const order = (text: string) => {
    const house = houseOf(text);
    return layersOf(assessDrink(house, entryNamed(house, "Slip Water"))).map(({ name, outcome }) => [name, outcome.value("densityGPerMl")]);
  };

  test("weigh what published tables say of them", () => {
    const stocks =
      "stock half syrup\n  kind: syrup\n  brix: 50\n  acid: 0 g/100 ml as citric\n  solids: 0 g/100 g\n\nstock plain spirit\n  kind: spirit\n  abv: 40 %\n\n";
    const [syrup, water, spirit] = order(`${stocks}${layered("10 ml half syrup", "10 ml water", "10 ml plain spirit")}`);
    // 50 °Bx: NBS Circular 440; water and 40 % vol: OIML R 22. All at 20 °C.
    expect(syrup![1]).toBeCloseTo(1.2296, 3);
    expect(water![1]).toBeCloseTo(0.9982, 4);
    expect(spirit![1]).toBeCloseTo(0.94805, 4);
  });

  test("in falling order are right, and one that rises is marked", () => {
    expect(codesIn(layered("10 ml grenadine", "10 ml coffee liqueur", "10 ml brandy"))).toEqual([]);
    const found = of("layer-order", layered("10 ml brandy", "10 ml grenadine"));
    expect(found.map(({ finding }) => finding.what)).toEqual([
      expect.stringMatching(
        /^The grenadine is heavier than the brandy below it, 1\.\d+ ?(?:± [\d.]+ )?g\/ml against 0\.9\d+ ?(?:± [\d.]+ )?g\/ml: it sinks\.$/,
      ),
    ]);
  });

  test("that weigh the same within twice the uncertainty are let be", () =>
    expect(of("layer-order", layered("10 ml rum", "10 ml gin"))).toEqual([]));

  test("what floats lies on the drink after its ice; air in it cannot be weighed", () => {
    const sour = (floated: string) => specimen(["50 ml rum", "25 ml lime juice", "20 ml plain syrup", floated], shaken);
    expect(of("layer-order", sour("10 ml red wine, floated"))).toEqual([]);
    const [{ finding }] = of("layer-order", sour("10 ml grenadine, floated")) as [ReturnType<typeof of>[number]];
    expect(finding.what).toMatch(/heavier than the drink below it/);
    expect(of("layer-order", specimen(["50 ml rum", "20 ml cream, whipped, floated"], shaken))).toEqual([]);
  });
});

describe("cost above the house's target", () => {
  const house = (target: string) => `house The Slip\n  currency: GBP\n  tax: 20 %\n  prices: with tax\n${target}\n`;
  const gin = "stock harbour gin\n  kind: spirit\n  abv: 40 %\n  price: 28.00 per 700 ml\n\n"; // 0.04 a millilitre
  const card = (...lines: string[]) => `\nmenu Card\n${lines.map((line) => `  - ${line}\n`).join("")}`;

  test("is marked on the menu's price and on the drink's own", () =>
    checkFindings(
      `${house("  target cost: 20 %\n")}${gin}${specimen(["60 ml harbour gin"], { price: "9.00" }).replace("price: 9.00\n", "price: 9.00\n         ^^^^ over-target-cost\n")}
menu Card
  section Long
  - Slip Water 15.00
  - Slip Water £8.00 / 30.00 jug
               ^^^^^ over-target-cost
`,
    ));

  test("says what is left of the price, what share goes, and what price would do", () => {
    // 60 × 0.04 = 2.40 of 8.00 ÷ 1.2 = 6.67: 36 %. At 20 % it has to bring 12.00, with tax 14.40.
    const { located } = findOne(
      `${house("  target cost: 20 %\n")}${gin}${specimen(["60 ml harbour gin"])}${card("Slip Water 8.00")}`,
      "over-target-cost",
    );
    expect(located.finding.what).toMatch(/^The ingredients take 36 % of the £6\.67 that Slip Water brings without tax, .* take 20 %\.$/);
    expect(located.finding.todo).toBe("A price of £14.40 would do, or less of what is dear.");
  });

  test("is found where what is known of it is too much already", () => {
    const text = `${house("  target cost: 20 %\n")}${gin}${specimen(["60 ml harbour gin", "10 ml lime juice"])}${card("Slip Water 8.00")}`;
    expect(findOne(text, "over-target-cost").located.finding.what).toContain("take at least 36 %");
  });

  test("follows what is bought and what is asked, and another price on the menu computes no drink again", () => {
    const files = (bought: string, asked: string) =>
      `=== house.drink\n${house("  target cost: 20 %\n")}=== stock.drink\n${gin.replace("28.00", bought)}=== drinks.drink\n${specimen(["60 ml harbour gin"])}=== menu.drink\n${card(`Slip Water ${asked}`)}`;
    const one = houseOf(files("28.00", "8.00"));
    const codes = () => findIn(one).map(({ finding }) => finding.code);
    const edit = (name: string, text: string) => one.setDocument(houseOf(text).document(`file:///house/${name}`)!);
    expect(codes()).toEqual(["over-target-cost"]);
    edit("stock.drink", files("10.00", "8.00"));
    expect(codes()).toEqual([]);
    const outcome = assessDrink(one, entryNamed(one, "Slip Water"));
    edit("menu.drink", files("10.00", "3.00"));
    expect(codes()).toEqual(["over-target-cost"]);
    expect(assessDrink(one, entryNamed(one, "Slip Water"))).toBe(outcome);
  });

  test("is not within twice the uncertainty, nor without a target, a price or a known tax", () => {
    const text = (target: string, price: string) =>
      `${house(target)}${gin}${specimen(["60 ml harbour gin"])}${card(`Slip Water ${price}`)}`;
    expect(codesIn(text("  target cost: 20 %\n", "14.30"))).toEqual([]);
    expect(codesIn(text("", "8.00"))).toEqual([]);
    expect(codesIn(text("  target cost: 20 %\n", ""))).toEqual([]);
    expect(codesIn(text("  target cost: 20 %\n", "8.00").replace("  tax: 20 %\n", ""))).toEqual([]);
    expect(codesIn(text("  target cost: 20 %\n", "8.00").replace(/ {2}price: .*\n/, ""))).toEqual([]);
  });
});
