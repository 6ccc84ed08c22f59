/** Names that mean nothing, names that mean two things, riffs of what is not there. */
import { describe, expect, test } from "vitest";
import { specimen } from "../../server/rules/specimen.ts";
import { houseOf } from "../house/make.ts";
import { apply, checkFindings, codesIn, findIn, findOne } from "./check.ts";

const spec = (...pours: string[]) => specimen(pours);

describe("ingredients", () => {
  test("the name alone is marked, behind a fraction, an accent and an emoji, and before its remarks", () =>
    checkFindings(
      'drink 🍸\n  glass: coupe\n  method: none\n  garnish: none\n  1½ oz café ½ 🍋, chilled\n        ^^^^^^^^^ unknown-ingredient\n  1½ oz "gni"\n        ^^^^^ unknown-ingredient\n',
    ));
  test("the near name is offered and put in, quotation marks and all", () => {
    const { house, located } = findOne(spec('50 ml "aged rmu"'), "unknown-ingredient");
    apply(house, located.finding.fixes!()[0]!);
    expect(findIn(house)).toEqual([]);
    expect([...house.documents()][0]!.tree.entries[0]!.lines.some(({ text }) => text === "  50 ml aged rum")).toBe(true);
  });
  test("an alternative and what a swap puts in are looked at too", () =>
    expect(codesIn(`${spec("50 ml gin", "or gni")}\ndrink Other\n  from: Slip Water\n  swap gin for 50 ml vodak\n`)).toEqual([
      "unknown-ingredient",
      "unknown-ingredient",
    ]));
  test("it can be declared in the file that holds most stocks, with the kind that its name ends in", () => {
    const text = `${spec("50 ml pine needle gin")}=== stock.drink\nstock rum\n  kind: spirit\n\nstock beer\n  kind: beer\n=== other.drink\nstock wine\n  kind: wine\n`;
    const { house, located } = findOne(text, "unknown-ingredient");
    const fix = located.finding.fixes!().find(({ title }) => title.startsWith("Declare"))!;
    expect(fix.edits).toEqual([{ uri: "file:///house/stock.drink", text: "\nstock pine needle gin\n  kind: spirit\n" }]);
    apply(house, fix);
    expect(findIn(house)).toEqual([]);
  });
  test("without any stock it is declared in the same file", () => {
    const { house, located } = findOne(spec("50 ml tide water"), "unknown-ingredient");
    apply(house, located.finding.fixes!().at(-1)!);
    expect(findIn(house).map(({ finding }) => finding.code)).not.toContain("unknown-ingredient");
    expect([...house.documents()][0]!.tree.entries.map(({ kind }) => kind)).toEqual(["drink", "stock"]);
  });
  test("stocks of another house in the checkout are not taken for this one's", () => {
    const text = `house The Slip\n\n${spec("50 ml tide water")}=== quay/house.drink\nhouse The Quay\n\nstock a\n  kind: spirit\n`;
    const { located } = findOne(text, "unknown-ingredient");
    expect(located.finding.fixes!().at(-1)!.edits).toMatchObject([{ uri: "file:///house/spec.drink" }]);
  });
  test("a name that is declared later is known, and one that is taken away is not", () => {
    const house = houseOf(`${spec("50 ml tide water")}=== stock.drink\nstock tide water\n  kind: spirit\n`);
    expect(findIn(house)).toEqual([]);
    house.removeDocument("file:///house/stock.drink");
    expect(findIn(house).map(({ finding }) => finding.code)).toEqual(["unknown-ingredient"]);
  });
});

describe("units", () => {
  test.each([
    ["50 mll gin", "ml"],
    ["50 lm gin", "ml"],
    ["2 dsh orange bitters", "dash"],
    ["2 tspn sugar", "tsp"],
    ["50 mll of gin", "ml"],
    ["50 mll. gin", "ml"],
  ])("in `%s` the unit was meant to be %s", (pour, unit) => {
    const { house, located } = findOne(spec(pour), "unknown-unit");
    expect(located.finding.fixes!()[0]!.title).toBe(`Change to “${unit}”`);
    apply(house, located.finding.fixes!()[0]!);
    expect(findIn(house).map(({ finding }) => finding.code)).not.toContain("unknown-unit");
  });
  test.each(["6 mint leaves", "2 egg whites", "1 can beer", "1 pod cardamom", "50 ml gin"])("`%s` is no slip", (pour) =>
    expect(codesIn(spec("50 ml gin", pour))).not.toContain("unknown-unit"),
  );
  test("a name that starts like a unit is a name where it is declared", () =>
    expect(codesIn(`stock mll gin\n  kind: fruit\n  each: 50 g\n\n${spec("1 mll gin")}`)).toEqual([]));
  test("per cent measures no pour", () => checkFindings(`${spec("50 ml gin", "5 % soda water")}    ^ unknown-unit\n`));
});

describe("glass, family, ice", () => {
  test("remarks behind a glass are no part of its name", () =>
    expect(codesIn(specimen(["50 ml gin"], { glass: "highball, chilled" }))).toEqual([]));
  test.each([
    "shake with cracked ice",
    "build over cubed ice",
    "strain over large cube",
    "blend with 120 g crushed ice",
    "strain over a large cube",
  ])("`%s` names an ice that is known", (method) => expect(codesIn(specimen(["50 ml gin"], { method }))).toEqual([]));
  test("the ice in a step is marked by its name alone", () =>
    checkFindings(
      "drink Slip Water\n  glass: rocks\n  garnish: none\n  method: shake 12 s; strain over 120 g glacier ice\n                                        ^^^^^^^^^^^ unknown-ice\n  50 ml gin\n",
    ));
  test("a house's own usual ice is looked at", () => expect(codesIn("house The Slip\n  ice: cubde ice\n")).toEqual(["unknown-ice"]));
});

describe("misspelt words", () => {
  test.each(["frozne", "chiled", "floatd", "optinal", "muddle"])("“%s” is a slip", (word) =>
    expect(codesIn(specimen([`60 ml gin, ${word}`]))).toEqual(["misspelt-modifier"]),
  );
  test.each(["crushed by hand", "from the tap", "hot", "frozen", "after dark"])("“%s” is none", (word) =>
    expect(codesIn(specimen([`60 ml gin, ${word}`]))).not.toContain("misspelt-modifier"),
  );
  test.each(["shaek 12 s", "sitr 30 s", "fine strian", "bulid over cubed ice", "swizle with crushed ice"])(
    "“%s” is a slip of a technique",
    (method) => expect(codesIn(specimen(["60 ml gin"], { method }))).toEqual(["misspelt-technique"]),
  );
  test.each(["warm the mug; pour in the order given", "test the temperature", "still and quiet", "none"])("“%s” is prose", (method) =>
    expect(codesIn(specimen(["60 ml gin"], { method }))).not.toContain("misspelt-technique"),
  );
});

describe("two of a name", () => {
  test("the later one is found, by file and line, with the place of the first", () => {
    const { located } = findOne("stock lime\n  kind: fruit\n=== z.drink\nstock limes\n  kind: fruit\n", "duplicate-name");
    expect(located.uri).toBe("file:///house/z.drink");
    expect(located.finding.related).toHaveLength(1);
    expect(located.finding.what).toContain("in spec.drink");
  });
  test("accents do not tell names apart, kinds do", () => {
    expect(codesIn("prep rosé cordial\n  100 g water\n\nstock rose cordial\n  kind: syrup\n")).toEqual(["duplicate-name"]);
    expect(codesIn("stock house bitter\n  kind: bitter aperitif\n\nstock house bitters\n  kind: bitters\n")).toEqual([]);
    expect(codesIn("stock Slip\n  kind: spirit\n\nglass Slip\n  holds: 200 ml\n")).toEqual([]);
  });
  test("another name of the same entry is none, of another entry is", () => {
    expect(codesIn("stock slip gin\n  kind: spirit\n  aka: Slip Gin; slip gins\n")).toEqual([]);
    checkFindings("stock slip gin\n  kind: spirit\n\nstock quay gin\n  kind: spirit\n  aka: slip gin\n       ^^^^^^^^ duplicate-name\n");
  });
  test("a house may give a larder's name a meaning of its own", () =>
    expect(codesIn("stock gin\n  kind: spirit\n  abv: 44 %\n")).toEqual([]));
  test("when the first one goes, so does the finding", () => {
    const house = houseOf("stock lime\n  kind: fruit\n=== z.drink\nstock limes\n  kind: fruit\n");
    expect(findIn(house)).toHaveLength(1);
    house.removeDocument("file:///house/spec.drink");
    expect(findIn(house)).toEqual([]);
  });
  test("two houses in one folder are found, one in each is not", () => {
    expect(codesIn("house A\n=== b.drink\nhouse B\n")).toEqual(["duplicate-house"]);
    expect(codesIn("house A\n=== b/b.drink\nhouse B\n")).toEqual([]);
  });
});

describe("riffs", () => {
  const parent = spec("50 ml gin", "20 ml lime juice", "20 ml lime juice", "100 ml soda water");
  const riff = (...lines: string[]) => `${parent}\ndrink Other\n  from: Slip Water\n${lines.map((line) => `  ${line}\n`).join("")}`;

  test("a swap of what is there is not found, of what is not there is", () => {
    expect(codesIn(riff("swap gin for vodka", "without soda water"))).toEqual([]);
    expect(codesIn(riff("swap rum for vodka", "without tonic water"))).toEqual(["missing-swap", "missing-swap"]);
  });
  test("of two alike the amount tells, or `without all`", () => {
    expect(codesIn(riff("without lime juice"))).toEqual(["missing-swap"]);
    expect(codesIn(riff("without all lime juice"))).toEqual([]);
  });
  test("a misspelt one is offered the near name", () => {
    const { house, located } = findOne(riff("swap gni for vodka"), "missing-swap");
    apply(house, located.finding.fixes!()[0]!);
    expect(findIn(house)).toEqual([]);
  });
  test("without its parent only the parent is found", () =>
    expect(codesIn("drink Other\n  from: Nobody\n  swap gin for vodka\n  without soda water\n")).toEqual(["missing-parent"]));
  test("what is inherited is not missing, `none` is an answer", () => {
    expect(codesIn(riff("swap gin for vodka"))).toEqual([]);
    expect(codesIn(riff("garnish: none", "glass: none", "method: none"))).toEqual([]);
  });
});

describe("circles", () => {
  test("each circle is found once, on the line that closes it, by file and line", () =>
    checkFindings("prep a\n  100 g b\n=== z.drink\nprep b\n  100 g water\n  50 g a\n  ^^^^^^ cyclic\n"));
  test("a thing made from itself is a circle of one", () => checkFindings("prep a\n  100 g a\n  ^^^^^^^ cyclic\n"));
  test("a riff of a riff of itself", () =>
    expect(codesIn("drink a\n  from: b\n  50 ml gin\n\ndrink b\n  from: c\n\ndrink c\n  from: a\n")).toEqual(["cyclic"]));
  test("what uses a circle without being in it is not found for it", () =>
    expect(codesIn(`prep a\n  100 g b\n\nprep b\n  100 g a\n\n${spec("50 ml gin", "20 ml a")}`)).toEqual(["cyclic"]));
});
