/** The usual cautions: where in the samples each is said, and that none is said anywhere else. */
import { describe, expect, test } from "vitest";
import { assessDrink } from "../../server/house/drink.ts";
import { cautionsIn } from "../../server/reports/cautions-in.ts";
import { cautions, cautionsOf } from "../../server/rules/cautions/all.ts";
import { shaken, specimen } from "../../server/rules/specimen.ts";
import { entryNamed, houseIn, houseOf } from "../house/make.ts";
import { codesIn, findIn, findOne } from "./check.ts";

const codes = new Set(cautions.map(({ code }) => code));
const cautionsFound = (text: string) => codesIn(text).filter((code) => codes.has(code));
/** The codes of what a hover says of a drink or a prep. */
const saidOf = (text: string, name = "Slip Water") => {
  const house = houseOf(text);
  const lines = cautionsOf(house, entryNamed(house, name));
  return cautions.filter(({ docs }) => lines.some((line) => line.startsWith(`${docs.title}: `))).map(({ code }) => code);
};

describe("the samples", () => {
  const whereIn = (folder: string) =>
    findIn(houseIn(folder))
      .filter(({ finding }) => codes.has(finding.code))
      .map(({ uri, finding }) => `${uri.slice(uri.lastIndexOf("/") + 1)} ${finding.entry.name?.text}: ${finding.code}`)
      .sort();

  test("the demo house has these and no others", () =>
    expect(whereIn("samples/halyard-room")).toEqual([
      "preps.drink lemon-strength acid: strong-acid",
      "round.drink Night Watch: caffeine-with-alcohol",
      "round.drink Stove Lid: raw-egg",
    ]));

  test("each has one sample that deserves it, once, and none has another", () =>
    expect(whereIn("samples/mistakes").map((found) => found.replace(/ .*:/, ""))).toEqual(
      [...codes].sort().map((code) => `${code}.drink ${code}`),
    ));

  test("on a sheet they stand once, the gravest first, with the names", () => {
    const house = houseIn("samples/halyard-room");
    const entries = [...house.documents()].flatMap(({ tree }) => tree.entries);
    expect([...cautionsIn(house, entries)].map(([line, names]) => [line.split(":")[0], names])).toEqual([
      ["Raw egg", ["Stove Lid"]],
      ["Alcohol with caffeine", ["Night Watch"]],
      ["Concentrated acid", ["lemon-strength acid"]],
    ]);
  });
});

test.each(cautions.map((one) => [one.code, one] as const))(
  "%s is calm and short, and names its source",
  (_code, { docs, advice, severity }) => {
    expect(`${docs.title}: ${advice}`.length).toBeLessThan(140);
    expect(advice).not.toMatch(/!|danger|never ever|must/i);
    expect(docs.source).toMatch(/\((?:all )?(?:as reported|read|from memory|figures read|read in summary)|, read;|no source/i);
    expect(["information", "warning"]).toContain(severity);
  },
);

describe("once, and where it is brought", () => {
  const egg = specimen(["50 ml rum", "1 egg white", "1 egg"], shaken);
  test("is said of a foam that only lies on top, in the one that it is", () => {
    const foam = "prep sea foam\n  4 egg whites\n  100 ml lemon juice\n\n";
    const { what } = findOne(`${foam}${specimen(["50 ml brandy"], { garnish: "sea foam" })}`, "raw-egg").located.finding;
    expect(what).toBe("The egg white in the sea foam is raw.");
  });

  test("one finding for an entry, on the line", () => expect(findOne(egg, "raw-egg").located.line).toBe(5));
  test("what a comment lets stand is not said in a hover either, and the next line is looked at", () => {
    const allowed = egg.replace("1 egg white", "1 egg white  # allow raw-egg: pasteurised");
    expect(findOne(allowed, "raw-egg").located.line).toBe(6);
    expect(saidOf(allowed)).toEqual(["raw-egg"]);
    const both = allowed.replace("1 egg\n", "1 egg  # allow raw-egg: pasteurised too\n");
    expect(cautionsFound(both)).toEqual([]);
    expect(saidOf(both)).toEqual([]);
  });
  test("a house can turn one off", () => {
    const off = `house H\n  severity: raw-egg off\n\n${egg}`;
    expect(cautionsFound(off)).toEqual([]);
    expect(saidOf(off)).toEqual([]);
  });
  test("a riff leaves an inherited line to its parent, and still says it to whoever points at it", () => {
    const riff = `${egg}\ndrink Riff\n  from: Slip Water\n  swap rum for gin\n`;
    expect(cautionsFound(riff)).toEqual(["raw-egg"]);
    expect(saidOf(riff, "Riff")).toEqual(["raw-egg"]);
    expect(saidOf(`${riff}  without egg\n  without egg white\n`, "Riff")).toEqual([]);
  });
  test("for the guest it is told of each drink that pours the prep, for the maker of the prep alone", () => {
    const nog = "prep nog mix\n  3 egg\n  100 g sugar\n\n";
    expect(findOne(`${nog}${specimen(["90 ml nog mix", "30 ml rum"], shaken)}`, "raw-egg").located.finding.what).toBe(
      "The egg in the nog mix is raw.",
    );
    const bark =
      "stock cinchona bark\n  kind: spice\n\nprep bark syrup\n  500 g sugar\n  500 g water\n  5 g cinchona bark, strained out\n\n";
    const found = findIn(houseOf(`${bark}${specimen(["50 ml gin", "20 ml bark syrup"])}`)).map(
      ({ finding }) => `${finding.entry.name?.text}: ${finding.code}`,
    );
    expect(found).toEqual(["bark syrup: cinchona-bark", "Slip Water: quinine"]);
    expect(saidOf(`${bark}${specimen(["50 ml gin", "20 ml bark syrup"])}`)).toEqual(["cinchona-bark", "quinine"]);
  });
});

describe("by what is stated", () => {
  const flip = (egg: string, before = "") => `${before}${specimen(["60 ml port", egg], shaken)}`;
  test.each([
    ["1 egg", "", ["raw-egg"]],
    ["30 ml egg white", "", ["raw-egg"]],
    ["1 pasteurised egg white", "", []],
    ["1 egg white, pasteurised", "", []],
    ["1 egg white, unpasteurised", "", ["raw-egg"]],
    ["1 egg white", "stock egg white\n  kind: egg\n  pasteurised: yes\n\n", []],
    ["1 pasteurised egg", "stock pasteurised egg\n  kind: egg\n  pasteurised: no\n  each: 50 g\n\n", ["raw-egg"]],
    ["3 g egg white powder", "stock egg white powder\n  kind: egg\n\n", []],
    ["40 ml nog mix", "prep nog mix\n  3 egg\n  100 g sugar\n  pasteurised: yes\n\n", []],
    ["30 ml egg liqueur", "", []],
    ["60 ml unpasteurised milk", "stock unpasteurised milk\n  kind: dairy\n\n", ["unpasteurised"]],
    ["60 ml milk", "", []],
    ["60 ml apple juice", "", []],
  ])("`%s`", (pour, before, expected) => expect(cautionsFound(flip(pour, before))).toEqual(expected));
});

describe("by a figure", () => {
  test.each([
    ["30 ml espresso", ["caffeine-with-alcohol"]],
    ["30 ml decaffeinated espresso", []],
    ["150 ml cola", []],
    ["100 ml black tea", []],
    ["200 ml strong tea", ["caffeine-with-alcohol"]],
  ])("caffeine from a cup of tea on, beside alcohol: %s", (pour, expected) => {
    expect(cautionsFound(specimen(["50 ml rum", pour], { glass: "pint" })).filter((code) => code !== "large-serve")).toEqual(expected);
    expect(cautionsFound(specimen([pour]))).toEqual([]);
  });
  test("caffeine is told in milligrams, however much it is", () => {
    const found = findIn(houseOf(specimen(["50 ml rum", "120 ml espresso"], { glass: "pint" })));
    expect(found.find(({ finding }) => finding.code === "caffeine-with-alcohol")!.finding.what).toMatch(/ \d{3} ± \d+ mg of caffeine/);
  });
  test("caffeine is told per serve", () => {
    const bowl = (serves: string) => cautionsFound(specimen(["300 ml rum", "400 ml strong tea"], { glass: "pint", serves }));
    expect(bowl("4")).toEqual(["caffeine-with-alcohol"]);
    expect(bowl("8")).toEqual([]);
  });
  test.each([
    ["30 ml espresso", ["caffeine-with-alcohol"]],
    ["some espresso", ["caffeine-with-alcohol"]],
    ["5 ml espresso", []],
  ])("where it cannot be computed in full, what is known counts: %s", (coffee, expected) =>
    expect(cautionsFound(specimen(["50 ml vodka", coffee, "5 ml nobody's syrup"]))).toEqual(expected),
  );
  test("a riff that pours the spirit answers for it", () => {
    const text = `${specimen(["60 ml espresso", "20 ml plain syrup"])}\ndrink Riff\n  from: Slip Water\n  50 ml rum\n`;
    expect(findOne(text, "caffeine-with-alcohol").located.finding.entry.name?.text).toBe("Riff");
    const swap = `${specimen(["60 ml espresso", "50 ml rum"])}\ndrink Riff\n  from: Slip Water\n  swap rum for gin\n`;
    expect(findOne(swap, "caffeine-with-alcohol").located.finding.entry.name?.text).toBe("Slip Water");
  });

  test.each([
    ["to 100 g water", []],
    ["to 50 g water", ["strong-acid"]],
  ])("a drink is not warned of a weak solution, only of a strong one: %s", (water, expected) => {
    // 6 g in 100 g is as sour as lemon juice; 12 g in 100 g is above the 10 % of the CLP regulation (see the rule).
    const text = `prep sour water\n  6 g citric acid  # allow strong-acid: we weigh it with glasses on\n  ${water}\n\n`;
    expect(cautionsFound(`${text}${specimen(["50 ml gin", "2 ml sour water"])}`)).toEqual(expected);
  });
  test.each(["cider vinegar", "lime juice", "ascorbic acid"])("%s hurts nobody", (name) =>
    expect(cautionsFound(`prep mix\n  20 g ${name}\n  100 g water\n`)).toEqual([]),
  );

  const strong = (ml: number, house = "") => cautionsFound(`${house}${specimen([`${ml} ml vodka`], { glass: "pint" })}`);
  test("a serve is too much only when it surely is, per serve, and where the house says", () => {
    const text = specimen(["100 ml vodka"], { glass: "pint" });
    const of = houseOf(text);
    const { value, plusMinus } = assessDrink(of, entryNamed(of, "Slip Water")).outcome.figure("ethanolG");
    // 100 ml at 40 % vol hold 31.57 g of ethanol: OIML R 22.
    expect(strong(100)).toEqual([]);
    expect(strong(100, `house H\n  serve limit: ${(value! - 1.9 * plusMinus!).toFixed(2)} g\n\n`)).toEqual([]);
    expect(strong(100, `house H\n  serve limit: ${(value! - 2.1 * plusMinus!).toFixed(2)} g\n\n`)).toEqual(["large-serve"]);
    expect(strong(150)).toEqual(["large-serve"]);
    expect(strong(150, "house H\n  serve limit: none\n\n")).toEqual([]);
    expect(cautionsFound(specimen(["150 ml vodka"], { glass: "pint", serves: "2" }))).toEqual([]);
  });
  test("parts without a size hold no grams", () => expect(cautionsFound(specimen(["20 parts vodka"], { glass: "pint" }))).toEqual([]));
});

describe("low-acid infusions", () => {
  const oil = "stock olive oil\n  kind: other\n\nstock garlic\n  kind: vegetable\n\n";
  const prep = (lines: readonly string[], keeps = "21 days chilled") =>
    cautionsFound(`${oil}prep mix\n${[...lines, ...(keeps ? [`keeps: ${keeps}`] : [])].map((line) => `  ${line}\n`).join("")}`);
  const water = ["500 g water", "50 g cucumber, strained out"];
  test.each([
    ["in plain water for weeks", water, "21 days chilled", ["low-acid-infusion"]],
    ["out of the cold", water, "2 days", ["low-acid-infusion"]],
    ["for seven days in the cold", water, "7 days chilled", []],
    ["in the fridge", [...water, "stored: fridge"], "2 days", []],
    ["frozen", water, "3 months frozen", []],
    ["where nobody says how long", water, "", []],
    ["with a measured pH", [...water, "ph: 4.2"], "21 days chilled", []],
    [
      "with a pH that is not low",
      [...water, "10 g citric acid  # allow strong-acid: glasses on", "ph: 5.2"],
      "21 days chilled",
      ["low-acid-infusion"],
    ],
    ["sour", [...water, "10 g citric acid  # allow strong-acid: glasses on"], "21 days chilled", []],
    ["sweet", [...water, "500 g sugar"], "21 days chilled", []],
    ["strong", ["500 g gin", "50 g cucumber, strained out"], "1 month", []],
    ["without a plant", ["500 g water", "10 g salt"], "21 days chilled", []],
    ["under oil, whatever it says", ["250 g olive oil", "30 g garlic"], "", ["low-acid-infusion"]],
    ["under oil, for a few days in the cold", ["250 g olive oil", "30 g garlic"], "4 days chilled", []],
    ["under oil and spirit", ["50 g olive oil", "30 g garlic", "500 g gin"], "", []],
    ["a dry spice under oil", ["250 g olive oil", "3 g peppercorn"], "", []],
  ])("%s", (_what, lines, keeps, expected) => expect(prep(lines, keeps)).toEqual(expected));
});

describe("by a name", () => {
  test.each([
    ["2 dashes grapefruit bitters", []],
    ["1 grapefruit zest", []],
    ["20 ml grapefruit liqueur", []],
    ["60 ml red grapefruit juice", ["grapefruit"]],
    ["60 ml quinquina", ["quinine"]],
    ["60 ml wine aperitif", ["quinine"]],
    ["2 dashes tonka bitters", []],
    ["20 ml tonka syrup", ["coumarin"]],
    ["10 ml liquorice liqueur", ["liquorice"]],
    ["2 dashes licorice bitters", []],
    ["10 ml cinchona bark tincture", ["cinchona-bark", "quinine"]],
    ["10 ml tobacco tincture", ["tobacco"]],
    ["5 g bitter almonds", ["stone-fruit-kernels"]],
    ["2 drops bitter almond extract", []],
    ["1 orange zest, flamed", ["flaming"]],
    ["50 ml flamingo rum", []],
    ["50 ml yew berry gin", ["hazard"]],
  ])("`%s`", (pour, expected) => expect(cautionsFound(specimen(["50 ml gin", pour]))).toEqual(expected));
  test.each([
    ["garnish: orange zest, flamed", ["flaming"]],
    ["garnish: dry iceberg lettuce", []],
    ["garnish: grapefruit wedge", []],
    ["story: Foxglove grew by the door.", []],
    ["method: build; flame the zest over it", ["flaming"]],
    ["method: build away from the flame", []],
    ["method: build; charge the siphon", ["pressure"]],
    ["method: build; torch the rosemary", ["flaming"]],
  ])("`%s`", (line, expected) => {
    const [name = "", value] = line.split(": ");
    expect(cautionsFound(specimen(["50 ml gin"], { [name]: value }))).toEqual(expected);
  });
  test("in the steps, at the word", () => {
    const { located } = findOne("prep syrup\n  100 g water\n  steps:\n    Steep the foxglove.\n", "hazard");
    expect([located.line, located.finding.place.start, located.finding.place.end]).toEqual([3, 14, 22]);
  });
});

describe("allergens on a menu", () => {
  const drinks = ["Milk Run", "Milk Round", "Milk Float", "Milk Churn"]
    .map((name) => specimen(["60 ml brandy", "30 ml cream"], shaken, name))
    .join("\n");
  const menu = (more: string, house = "") =>
    `${house}${drinks}\n${specimen(["60 ml brandy", "60 ml soya milk"], shaken, "Bean")}\nmenu Card\n${more}  - Milk Run 9\n  - Milk Round 9\n  - Milk Float 9\n  - Milk Churn 9\n  - Bean 9\n`;
  test("are told once for a menu, each with its drinks", () =>
    expect(findOne(menu(""), "unnamed-allergens").located.finding.what).toBe(
      "This menu says nothing of allergens, and its drinks hold milk (Milk Run, Milk Round and 2 more) and soya (Bean).",
    ));
  test("go by the country's own list and names", () =>
    expect(findOne(menu("", "house H\n  country: US\n\n"), "unnamed-allergens").located.finding.what).toContain("soybean (Bean)"));
  test.each(["  allergens: ask us\n", "  note: We keep a list of allergens.\n"])("%j is enough", (line) =>
    expect(cautionsFound(menu(line))).toEqual([]),
  );
  test("a menu of what holds none says nothing", () =>
    expect(cautionsFound(`${specimen(["50 ml vodka", "100 ml soda water"])}\nmenu Card\n  - Slip Water 9\n`)).toEqual([]));
});
