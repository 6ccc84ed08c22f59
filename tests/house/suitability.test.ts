import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { techniques } from "../../server/engine/techniques.ts";
import { suitabilityOf } from "../../server/house/suitability.ts";
import { entryNamed, houseOf } from "./make.ts";

const of = (text: string, name = "Slip") => {
  const house = houseOf(text);
  return suitabilityOf(house, entryNamed(house, name));
};
const allergensOf = (text: string, name?: string) => of(text, name).contains.map(({ allergen }) => allergen);
const from = (text: string, allergen: string, name?: string) => of(text, name).contains.find((one) => one.allergen === allergen)?.names;
const drink = (...lines: string[]) => `drink Slip\n${lines.map((line) => `  ${line}\n`).join("")}`;

describe("what a drink contains", () => {
  test("comes from its pours, its options, its rim and its garnish", () => {
    const text = drink("garnish: celery stick", "rim: sesame, half", "50 ml white wine", "1 egg white, optional");
    expect(allergensOf(text)).toEqual(["egg", "celery", "sesame", "sulphites"]);
    expect(from(text, "celery")).toEqual(["celery stick"]);
  });

  test("comes from an alternative as well: one is poured, and nobody knows which", () =>
    expect(from(drink("20 ml sugar syrup", "  or almond syrup"), "nuts")).toEqual(["almond syrup"]));

  test("comes through preps in preps and through a drink poured in a drink", () => {
    const preps = "prep punch base\n  100 ml cream\n  100 ml rum\n\nprep fog\n  100 ml punch base\n  50 ml water\n\n";
    expect(from(preps + drink("50 ml fog"), "milk")).toEqual(["cream in fog"]);
    expect(from(`${preps + drink("50 ml fog")}\ndrink Deep\n  40 ml Slip\n`, "milk", "Deep")).toEqual(["cream in Slip"]);
  });

  test("is kept by what is strained out, discarded or only coats the glass", () =>
    expect(
      allergensOf(`prep wash\n  100 ml gin\n  20 g butter, strained out\n\n${drink("50 ml wash", "rinse oat milk, discarded")}`),
    ).toEqual(["gluten", "milk"]));

  test("follows a riff: what it swaps in comes, what it swaps out goes, what it inherits stays", () => {
    const riff = `${drink("garnish: celery stick", "50 ml cream", "10 ml almond syrup")}\ndrink Ebb\n  from: Slip\n  swap cream for oat milk\n`;
    expect(allergensOf(riff, "Ebb")).toEqual(["gluten", "nuts", "celery"]);
  });

  test("comes with milk that clarifies, whether it is poured or only named as a step", () => {
    expect(allergensOf(`prep clear\n  method: milk-clarify\n  100 ml lemon juice\n\n${drink("50 ml clear")}`)).toEqual(["milk"]);
    expect(allergensOf(drink("method: milk-clarify; stir 20 s", "50 ml gin"))).toEqual(["milk"]);
  });

  test("is called as it is written where it stands under another name", () =>
    expect(from(drink("10 g walnuts"), "nuts")).toEqual(["walnuts"]));

  test.each([
    ["white wine", "sulphites"],
    ["oloroso sherry", "sulphites"],
    ["sweet vermouth", "sulphites"],
    ["cider", "sulphites"],
    ["sherry vinegar", "sulphites"],
    ["beer", "gluten"],
    ["malt syrup", "gluten"],
    ["almond syrup", "nuts"],
    ["pistachio syrup", "nuts"],
    ["cream liqueur", "milk"],
    ["egg liqueur", "egg"],
    ["celery bitters", "celery"],
    ["worcester sauce", "fish"],
    ["soy sauce", "soya"],
    ["sesame oil", "sesame"],
    ["peanut butter", "peanut"],
    ["mustard", "mustard"],
  ])("%s holds %s, as the larder takes it to", (name, allergen) => {
    const found = of(drink(`20 ml ${name}`)).contains.find((one) => one.allergen === allergen);
    expect(found).toEqual({ allergen, names: [name], assumed: true });
  });
});

describe("what nobody states", () => {
  test("is not stated, and never free from", () => {
    const { contains, notStated } = of(drink("50 ml aged rum", "10 ml nobody's cordial", "1 egg white"));
    expect(contains.map(({ allergen }) => allergen)).toEqual(["egg"]);
    expect(notStated).toEqual(["aged rum", "nobody's cordial"]);
  });

  test("an answer is `none`, or words that are known; a slip is none", () => {
    const rum = (line: string) => of(`stock aged rum\n  kind: spirit\n${line}\n${drink("50 ml aged rum")}`).notStated;
    expect(rum("  allergens: none")).toEqual([]);
    expect(rum("  allergens: nuts")).toEqual([]);
    expect(rum("  allergens: nutz")).toEqual(["aged rum"]);
    expect(rum("")).toEqual(["aged rum"]);
  });

  test("a kind alone is no answer: a sesame salt is not what salt is", () => {
    expect(of(drink("1 g sea salt")).notStated).toEqual([]);
    expect(of(`stock shore salt\n  kind: salt\n\n${drink("1 g shore salt")}`).notStated).toEqual(["shore salt"]);
    const stout = of(`stock milk stout\n  kind: beer\n\n${drink("100 ml milk stout")}`);
    expect(stout.contains).toEqual(["gluten", "milk"].map((allergen) => ({ allergen, names: ["milk stout"], assumed: true })));
    expect(stout.notStated).toEqual(["milk stout"]);
  });

  test("a prep's own line answers for what is silent in it, adds, and takes nothing away", () => {
    const prep = (line: string) => of(`prep base\n${line}  100 ml aged rum\n  50 ml cream\n\n${drink("50 ml base")}`);
    expect(prep("").notStated).toEqual(["aged rum in base"]);
    expect(prep("  allergens: none\n")).toMatchObject({ contains: [{ allergen: "milk", names: ["cream in base"] }], notStated: [] });
    expect(prep("  allergens: nuts\n").contains.map(({ allergen, names }) => [allergen, ...names])).toEqual([
      ["milk", "cream in base"],
      ["nuts", "base"],
    ]);
  });

  test("what a name tells is assumed, and is no answer", () => {
    const told = of(drink("rim: crushed peanuts", "30 ml ginger ale", "20 ml almond gin", "10 ml oat cream"));
    expect(told.contains).toEqual([
      { allergen: "gluten", names: ["oat cream"], assumed: true },
      { allergen: "peanut", names: ["crushed peanuts"], assumed: true },
      { allergen: "nuts", names: ["almond gin"], assumed: true },
    ]);
    expect(told.notStated).toEqual(expect.arrayContaining(["crushed peanuts", "almond gin", "oat cream"]));
    expect(of(`stock wheat vodka\n  kind: spirit\n\n${drink("50 ml wheat vodka")}`).contains).toEqual([]);
  });

  test("another word for one on the line is not lost, and the list not whole", () => {
    const syrup = (words: string) => of(`stock shore syrup\n  kind: syrup\n  allergens: ${words}\n\n${drink("20 ml shore syrup")}`);
    for (const words of ["tree nuts", "may contain nuts", "almonds"])
      expect(syrup(words)).toMatchObject({
        contains: [{ allergen: "nuts", names: ["shore syrup"], assumed: false }],
        notStated: ["shore syrup"],
      });
    expect(syrup("nut free")).toMatchObject({ contains: [], notStated: ["shore syrup"] });
  });

  test("what pours nothing, or itself, is not stated", () => {
    expect(of(`prep shrub\n  steps: Ask the late shift.\n\n${drink("20 ml shrub")}`).notStated).toEqual(["shrub"]);
    expect(of("prep a\n  10 ml b\n\nprep b\n  10 ml a\n\ndrink Slip\n  10 ml a\n").notStated).toEqual(["a"]);
  });
});

describe("diets", () => {
  const diet = (text: string, which: string) => of(text).diets.find((one) => one.diet === which);

  test("suit where all that goes in is stated to; vegan is vegetarian too", () => {
    const text = drink("25 ml lemon juice", "100 ml soda water");
    expect(diet(text, "vegan")).toMatchObject({ suits: true, assumed: true });
    expect(diet(drink("diet: halal", "100 ml soda water"), "halal")).toEqual({ diet: "halal", suits: true, because: [] });
    expect(diet(text, "vegetarian")).toMatchObject({ suits: true });
    expect(diet(text, "gluten free")).not.toHaveProperty("suits");
  });

  test("do not suit where one thing is against them, and say which", () => {
    expect(diet(drink("25 ml lemon juice", "1 egg white"), "vegan")).toEqual({ diet: "vegan", suits: false, because: ["egg white"] });
    expect(diet(drink("100 ml beer"), "gluten free")).toMatchObject({ suits: false, because: ["beer"] });
    expect(diet(drink("5 ml worcester sauce"), "vegetarian")).toMatchObject({ suits: false, because: ["worcester sauce"] });
    expect(diet(`stock heather honey\n  kind: honey\n\n${drink("20 g heather honey")}`, "vegan")).toMatchObject({ suits: false });
  });

  test("a line on the drink answers for what is silent, and not against what is known", () => {
    expect(diet(drink("diet: vegan", "20 ml cream"), "vegan")).toMatchObject({ suits: false, because: ["cream"] });
    expect(diet(drink("50 ml gin"), "halal")).not.toHaveProperty("suits");
  });
});

describe("whatever is poured", () => {
  const names = [
    "gin",
    "aged rum",
    "cream",
    "egg white",
    "white wine",
    "almond syrup",
    "lemon juice",
    "nobody's tonic",
    "worcester sauce",
    "water",
  ];
  const line = fc.tuple(
    fc.constantFrom(...names),
    fc.constantFrom("", ", optional", ", strained out", ", to rim", ", discarded", ", frozen"),
  );
  const pours = fc.array(line, { minLength: 1, maxLength: 6 }).map((all) => all.map(([name, modifier]) => `20 ml ${name}${modifier}`));
  const method = fc
    .array(fc.constantFrom(...techniques.flatMap(({ words }) => words)), { maxLength: 4 })
    .map((steps) => steps.join("; ") || "none");

  test("one more pour, or one more `or`, never takes an allergen or a silence away", () =>
    fc.assert(
      fc.property(pours, line, fc.boolean(), (lines, [name, modifier], or) => {
        const before = of(drink(...lines));
        const after = of(drink(...lines, `${or ? "  or " : ""}20 ml ${name}${modifier}`));
        expect(after.contains.map(({ allergen }) => allergen)).toEqual(
          expect.arrayContaining(before.contains.map(({ allergen }) => allergen)),
        );
        expect(after.notStated).toEqual(expect.arrayContaining([...before.notStated]));
        const only = of(drink(`20 ml ${name}`));
        expect(after.contains.map(({ allergen }) => allergen)).toEqual(
          expect.arrayContaining(only.contains.map(({ allergen }) => allergen)),
        );
        for (const { diet, suits } of before.diets)
          if (suits !== true) expect(after.diets.find((one) => one.diet === diet)!.suits).not.toBe(true);
      }),
      { numRuns: 60 },
    ));

  test("no method of a prep or a drink clears an allergen or makes a diet fit", () =>
    fc.assert(
      fc.property(pours, method, method, (lines, making, serving) => {
        const bare = of(drink(...lines));
        const made = of(
          `prep base\n  method: ${making}\n${lines.map((one) => `  ${one}\n`).join("")}\n${drink(`method: ${serving}`, "50 ml base")}`,
        );
        for (const { allergen } of bare.contains) expect(made.contains.map((one) => one.allergen)).toContain(allergen);
        expect(made.notStated).toEqual(bare.notStated.map((name) => `${name} in base`));
        for (const { diet, suits } of made.diets) if (suits) expect(bare.diets.find((one) => one.diet === diet)!.suits).toBe(true);
      }),
      { numRuns: 60 },
    ));
});
