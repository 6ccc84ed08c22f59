/** Findings about the drink as it is computed, and about its making. */
import { describe, expect, test } from "vitest";
import { assessDrink } from "../../server/house/drink.ts";
import { familyOf, isInside } from "../../server/house/family.ts";
import { shaken, specimen } from "../../server/rules/specimen.ts";
import { entryNamed, houseOf } from "../house/make.ts";
import { apply, checkFindings, codesIn, findIn, findOne } from "./check.ts";

const sour = (syrup: string, more: Record<string, string> = {}) =>
  specimen(["60 ml spirit", "30 ml lime juice", syrup], { ...shaken, glass: "double rocks", family: "sour", ...more });

function isInWindows(text: string): boolean {
  const house = houseOf(text);
  const { flat, outcome } = assessDrink(house, entryNamed(house, "Slip Water"));
  return [...familyOf(house, flat).windows.values()].every((window) => isInside(outcome, window));
}

/** 4 : 2 : 1 of 40 % spirit, lime juice and 2:1 agave syrup: common practice, from memory, no source. */
const spirit = "stock spirit\n  kind: spirit\n  abv: 40 %\n\n";

describe("sweet against sour", () => {
  test("a sour of 4 : 2 : 1 is in balance", () => expect(codesIn(`${spirit}${sour("15 ml 2:1 agave syrup")}`)).toEqual([]));
  test.each([
    ["three times the syrup", "45 ml 2:1 agave syrup", "too sweet"],
    ["a quarter of it", "3.75 ml 2:1 agave syrup", "too sour"],
  ])("with %s it is found, and each offered fix ends it", (_what, syrup, verdict) => {
    // The quarter is no mark of the jigger; here it is the balance that is asked about.
    const text = `house The Slip\n  severity: unmeasurable off\n\n${spirit}${sour(syrup)}`;
    const { located } = findOne(text, "unbalanced");
    expect(located.finding.what).toContain(verdict);
    const count = located.finding.fixes!().length;
    expect(count).toBeGreaterThan(0);
    for (let index = 0; index < count; index++) {
      const { house, located: again } = findOne(text, "unbalanced");
      apply(house, again.finding.fixes!()[index]!);
      expect(findIn(house)).toEqual([]);
    }
  });
  test("the fix is an amount that the jigger measures, nearest to the present one", () => {
    const { located } = findOne(sour("45 ml plain syrup"), "unbalanced");
    const text = located.finding.fixes!()[0]!.edits[0]!.text;
    expect(Number(text) / 2.5).toBe(Math.round(Number(text) / 2.5));
    expect(isInWindows(sour(`${text} ml plain syrup`))).toBe(true);
    expect(isInWindows(sour(`${Number(text) + 2.5} ml plain syrup`))).toBe(false);
  });
  test("ounces stay ounces", () => {
    const text = specimen(["2 oz rum", "3/4 oz lime juice", "2 1/4 oz plain syrup"], { ...shaken, glass: "double rocks", family: "sour" });
    const { house, located } = findOne(`house The Slip\n  units: oz\n  jigger: 1/4 oz\n\n${text}`, "unbalanced");
    expect(located.finding.fixes!()[0]!.edits[0]!.text).toMatch(/^[12]?(?: ?[13]\/[24])?$/);
    apply(house, located.finding.fixes!()[0]!);
    expect(findIn(house).map(({ finding }) => finding.code)).not.toContain("unbalanced");
  });
  test("in a riff the fix is a line of the riff, and the parent stays as it is", () => {
    const parent = sour("22.5 ml plain syrup");
    const { house, located } = findOne(`${parent}\ndrink Sweet One\n  from: Slip Water\n  45 ml plain syrup\n  # the end\n`, "unbalanced");
    apply(house, located.finding.fixes!()[0]!);
    expect(findIn(house)).toEqual([]);
    const other = findOne(`${parent}\ndrink Sour One\n  from: Slip Water\n  swap plain syrup for water\n`, "unbalanced");
    expect(other.located.finding.what).toMatch(/not sweet enough|too sour/);
  });
  test("for an inherited pour a riff writes a line of its own", () => {
    const text = `${sour("22.5 ml plain syrup")}\ndrink Sour One\n  from: Slip Water\n  15 ml almond syrup\n`;
    const { house, located } = findOne(text, "unbalanced");
    const texts = located.finding.fixes!().flatMap(({ edits }) => edits.map((edit) => edit.text));
    expect(texts).toContainEqual(expect.stringMatching(/^\n {2}[\d.]+ ml (?:plain syrup|lime juice)$/));
    for (const { edits } of located.finding.fixes!())
      for (const edit of edits) expect("entry" in edit && edit.entry.name?.text).toBe("Sour One");
    apply(house, located.finding.fixes!()[0]!);
    expect(findIn(house)).toEqual([]);
  });
  test("far outside is a warning, a little outside is information, a draft gets hints", () => {
    const severityOf = (text: string) => findOne(text, "unbalanced").located.finding.severity;
    expect(severityOf(sour("67.5 ml plain syrup"))).toBe("warning");
    expect(severityOf(sour("67.5 ml plain syrup", { status: "draft" }))).toBe("hint");
    const near = "family sour\n  ratio: none\n  sugar: 4 to 8 g/100 ml\n\n";
    expect(severityOf(`${near}${sour("27.5 ml plain syrup")}`)).toBe("information");
  });
  test("within twice the uncertainty nothing is said", () => {
    const text = sour("15 ml plain syrup");
    const house = houseOf(text);
    const { outcome } = assessDrink(house, entryNamed(house, "Slip Water"));
    const { value, plusMinus } = outcome.figure("acidGPer100Ml");
    const windows = (high: number) => `family sour\n  ratio: none\n  acid: 0 to ${high} g/100 ml\n\n`;
    expect(codesIn(`${windows(value! - 1.9 * plusMinus!)}${text}`)).toEqual([]);
    expect(codesIn(`${windows(value! - 2.1 * plusMinus!)}${text}`)).toEqual(["unbalanced"]);
  });
  test("a drink's own window comes before its family's, and carries the finding", () =>
    checkFindings(
      "drink Slip Water\n  family: sour\n  glass: rocks\n  method: shake 12 s; fine strain\n  garnish: none\n  ratio: 14 to 20\n         ^^^^^^^^ unbalanced\n  60 ml rum\n  22.5 ml lime juice\n  22.5 ml plain syrup\n",
    ));
  test("a sour that has only its spirit yet is not found fault with", () =>
    expect(codesIn(specimen(["60 ml rum"], { ...shaken, family: "sour" }))).not.toContain("unbalanced"));
  test("a frozen spirit takes up less water, and the balance knows", () => {
    const house = houseOf(
      `${sour("15 ml plain syrup")}\n${specimen(["60 ml spirit, frozen", "30 ml lime juice", "15 ml plain syrup"], shaken, "Cold One")}`,
    );
    const water = (name: string) => assessDrink(house, entryNamed(house, name)).outcome.value("waterMl")!;
    expect(water("Cold One")).toBeLessThan(water("Slip Water"));
  });
});

describe("one pour puts it right", () => {
  const savoury = { family: "savoury", method: "build over 110 g cubed ice", glass: "collins" };
  test.each([
    ["strength-outside", specimen(["15 ml gin", "160 ml soda water"], { family: "dry highball", glass: "collins" }), /^[\d.]+$/],
    ["salty", specimen(["50 ml vodka", "120 ml tomato juice", "10 ml lemon juice", "4 g salt"], savoury), /^[\d.]+$/],
    ["salty", specimen(["50 ml vodka", "120 ml tomato juice", "10 ml lemon juice", "14 pinches salt"], savoury), /^\d+( pinch)?$/],
    ["unbalanced", specimen(["60 ml rum", "22.5 ml lime juice", "30 g sugar"], { ...shaken, family: "sour" }), /^[\d.]+$/],
    ["unbalanced", specimen(["60 ml rum", "22.5 ml lime juice", "10 barspoons plain syrup"], { ...shaken, family: "sour" }), /^\d+$/],
  ])("%s", (code, text, written) => {
    const fixes = findOne(text, code).located.finding.fixes!();
    expect(fixes.length).toBeGreaterThan(0);
    expect(fixes.map(({ edits }) => edits[0]!.text)).toContainEqual(expect.stringMatching(written));
    for (const index of fixes.keys()) {
      const { house, located } = findOne(text, code);
      apply(house, located.finding.fixes!()[index]!);
      expect(findIn(house).map(({ finding }) => finding.code)).not.toContain(code);
    }
  });
  test("nobody is told to pour half the spirit of a drink because it is strong", () => {
    const cold = specimen(["70 ml vodka, frozen", "10 ml dry vermouth"], { ...shaken, family: "dry stirred", method: "stir 30 s; strain" });
    const { todo, fixes } = findOne(cold, "strength-outside").located.finding;
    expect([todo, ...fixes!().map(({ title }) => title)].join("\n")).not.toMatch(/vodka/);
  });
  test("what the title promises is what it comes to", () => {
    const { house, located } = findOne(
      specimen(["15 ml gin", "160 ml soda water"], { family: "dry highball", glass: "collins" }),
      "strength-outside",
    );
    const fix = located.finding.fixes!()[0]!;
    apply(house, fix);
    const strength = assessDrink(house, entryNamed(house, "Slip Water")).outcome.value("strengthPct")!;
    expect(Number(/\(strength ([\d.]+) % vol\)$/.exec(fix.title)![1])).toBeCloseTo(strength, 1);
  });
});

describe("glass", () => {
  const glass = (ml: number) => `glass thimble\n  holds: ${ml} ml\n\n`;
  const spec = specimen(["60 ml gin", "30 ml dry vermouth"], { ...shaken, glass: "thimble", method: "stir 30 s; strain" });
  test("liquid and ice count, and only what surely spills is found", () => {
    const house = houseOf(`${glass(200)}${spec}`);
    const ml = assessDrink(house, entryNamed(house, "Slip Water")).outcome.value("afterVolumeMl")!;
    expect(codesIn(`${glass(Math.ceil(ml) + 1)}${spec}`)).toEqual([]);
    expect(codesIn(`${glass(Math.round(ml / 1.3))}${spec}`)).toEqual(["glass-too-small"]);
    const iced = spec.replace("stir 30 s; strain", "stir 30 s; strain over 100 g cubed ice");
    expect(codesIn(`${glass(Math.ceil(ml) + 20)}${iced}`)).toEqual(["glass-too-small"]);
  });
  test("parts that say no size fill no glass", () =>
    expect(codesIn(specimen(["20 parts gin", "10 parts dry vermouth"], { ...shaken, method: "none" }))).toEqual([]));
  test("what is poured for eight is held against eight glasses", () =>
    expect(codesIn(specimen(["320 ml rum", "160 ml dry vermouth"], { ...shaken, serves: "8", method: "stir 30 s; strain" }))).toEqual([]));
});

describe("what does not go together", () => {
  test.each(["30 ml cream", "30 ml cream liqueur", "30 ml sour cream mix"])("%s with lemon curdles", (pour) =>
    expect(
      codesIn(`prep sour cream mix\n  100 g cream\n  10 g sugar\n\n${specimen(["45 ml brandy", pour, "25 ml lemon juice"], shaken)}`),
    ).toEqual(["curdling"]),
  );
  test.each(["30 ml coconut cream", "1 egg white", "30 ml clear milk punch"])("%s does not", (pour) =>
    expect(
      codesIn(
        `prep clear milk punch\n  100 ml milk\n  50 ml rum\n  method: milk-clarify\n  abv: 12 %\n  brix: 5\n\n${specimen(["45 ml brandy", pour, "25 ml lemon juice"], shaken)}`,
      ),
    ).not.toContain("curdling"),
  );
  test.each([
    ["60 ml soda water, after", []],
    ["top soda water", []],
    ["top to 180 ml soda water", []],
    ["60 ml soda water", ["shaken-bubbles"]],
  ])("`%s` in a shaken drink", (pour, expected) =>
    expect(codesIn(specimen(["50 ml gin", "25 ml lemon juice", "20 ml plain syrup", pour], shaken))).toEqual(expected),
  );
  test("a built drink is built in its glass", () => expect(codesIn(specimen(["100 ml soda water", "50 ml gin"]))).toEqual([]));
  test("its fix leaves every figure as it is", () => {
    const text = specimen(["60 ml soda water", "50 ml gin", "25 ml lemon juice", "20 ml plain syrup"], shaken);
    const { house, located } = findOne(text, "shaken-bubbles");
    const before = assessDrink(house, entryNamed(house, "Slip Water")).outcome.value("strengthPct");
    apply(house, located.finding.fixes!()[0]!);
    expect(assessDrink(house, entryNamed(house, "Slip Water")).outcome.value("strengthPct")).toBe(before);
  });
});

describe("measuring", () => {
  test.each(["50 ml", "22.5 ml", "2.25 cl", "about 3 ml", "20-25 ml", "3 dashes", "1 barspoon", "13 g", "1 part", "1/4 oz", "3/8 oz"])(
    "%s is measured",
    (amount) => expect(codesIn(specimen([`${amount} gin`]))).toEqual([]),
  );
  test.each(["51 ml", "22 ml", "2.2 cl", "1 ml", "1/3 oz"])("%s is not", (amount) =>
    expect(codesIn(specimen([`${amount} gin`]))).toEqual(["unmeasurable"]),
  );
  test("a house with finer marks measures more, one with a pouring ounce measures it in them", () => {
    expect(codesIn(`house The Slip\n  jigger: 1 ml\n\n${specimen(["51 ml gin"])}`)).toEqual([]);
    expect(codesIn(`house The Slip\n  ounce: 30 ml\n\n${specimen(["1 1/2 oz gin", "1/4 oz dry vermouth"])}`)).toEqual([]);
    expect(codesIn(`house The Slip\n  ounce: 30 ml\n\n${specimen(["1/8 oz gin"])}`)).toEqual(["unmeasurable"]);
    expect(codesIn(`house The Slip\n  units: oz\n  jigger: 1/4 oz\n\n${specimen(["1/8 oz gin"])}`)).toEqual(["unmeasurable"]);
  });
  test("so small an amount that rounding would make another drink is not rounded", () =>
    expect(findOne(specimen(["1 ml saline"]), "unmeasurable").located.finding.fixes!()).toEqual([]));
  test("jugs measure what is poured for several", () =>
    expect(codesIn(specimen(["321 ml gin"], { serves: "8", glass: "none" }))).toEqual([]));

  test("mixed units are found once, at the first that the house does not write", () =>
    checkFindings(`${specimen(["30 ml dry vermouth", "2 oz gin"])}  ^^^^ mixed-units\n  1 oz gin\n`));
  test("both ways of putting them right end it, the exact one to the ml", () => {
    const text = specimen(["2 oz gin", "30 ml dry vermouth"]);
    const exact = findOne(text, "mixed-units").located.finding.fixes!().map(({ edits }) => edits[0]!.text);
    expect(exact).toEqual(["60 ml", "59.15 ml"]); // US fluid ounce 29.5735 ml: NIST Handbook 44.
    const pouring = findOne(`house The Slip\n  ounce: 30 ml\n\n${text}`, "mixed-units").located.finding.fixes!();
    expect(pouring.map(({ edits }) => edits[0]!.text)).toEqual(["60 ml"]);
  });
  test("what a riff inherits counts", () =>
    checkFindings(`${specimen(["30 ml dry vermouth"])}\ndrink Other\n  from: Slip Water\n  2 oz gin\n  ^^^^ mixed-units\n`));
  test("a drink all in the other unit is left alone", () => expect(codesIn(specimen(["2 oz gin", "1 oz dry vermouth"]))).toEqual([]));
  test("centilitres and millilitres are one system, dashes and spoons none", () =>
    expect(codesIn(specimen(["3 cl dry vermouth", "50 ml gin", "1 tsp water", "2 dashes orange bitters"]))).toEqual([]));

  test("sugar by volume is found, with its weight", () => {
    const { located } = findOne("prep p\n  100 ml sugar\n  100 ml water\n", "volume-of-solid");
    // Scooped white sugar 0.845 g/ml: USDA SR28 19335.
    expect(located.finding.fixes!()[0]!.edits[0]!.text).toBe("85 g");
  });
  test.each(["1 barspoon sugar", "1 pinch salt", "15 g sugar", "15 ml honey", "15 ml plain syrup"])("`%s` is not", (pour) =>
    expect(codesIn(specimen(["50 ml gin", pour]))).not.toContain("volume-of-solid"),
  );
});

describe("what is missing", () => {
  test("a drink that pours nothing yet is asked for nothing", () => expect(codesIn("drink Slip Water\n")).toEqual([]));
  test("a draft gets hints", () => {
    const found = findIn(houseOf("drink Slip Water\n  status: draft\n  50 ml gin\n"));
    expect(found.map(({ finding }) => `${finding.code} ${finding.severity}`).sort()).toEqual([
      "missing-garnish hint",
      "missing-glass hint",
      "missing-method hint",
    ]);
  });
});

describe("figures that are unknown", () => {
  const bottle = "stock bottle\n  kind: other\n\n";
  test("are found once, on the head, with every reason", () => {
    const { located } = findOne(`${bottle}${specimen(["50 ml bottle", "hot sauce, to taste"])}`, "unknown-figures");
    expect(located.finding.place).toEqual({ line: 0, start: 6, end: 16 });
    expect(located.finding.what).toContain("strength of bottle");
    expect(located.finding.what).toContain("hot sauce");
  });
  test("are not found again in what is made from them", () => {
    const text = `${bottle}prep mix\n  100 g bottle\n\n${specimen(["50 ml mix"])}\ndrink Riff\n  from: Slip Water\n  swap mix for mix\n`;
    const found = findIn(houseOf(text)).map(({ finding }) => `${finding.code} ${finding.entry.name?.text}`);
    expect(found).toEqual(["unknown-figures mix"]);
  });
  test.each(["50 ml gni", "50 mll gin", "gin", "1,000 ml gin", "50 % gin"])("`%s` has its own finding and no second one", (pour) =>
    expect(codesIn(specimen(["50 ml rum", pour]))).not.toContain("unknown-figures"),
  );
  test("a prep that states what it measures is known", () =>
    expect(codesIn("prep wild wine\n  1 l apple juice\n  method: ferment 5 days\n  abv: 5 %\n  brix: 4\n")).not.toContain(
      "unknown-ingredient",
    ));
});
