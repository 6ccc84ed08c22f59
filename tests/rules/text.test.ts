/** Findings in the text itself: lines, fields, values, allowances. */
import { describe, expect, test } from "vitest";
import { fields } from "../../grammar/fields.ts";
import { houseOf } from "../house/make.ts";
import { apply, checkFindings, codesIn, findIn, findOne } from "./check.ts";

/** A drink that is whole but for the lines given. */
const drink = (...lines: string[]) =>
  ["drink Café ½ 🍸", "  glass: highball", "  method: build over cubed ice", "  garnish: none", ...lines, ""].join("\n");

describe("lines", () => {
  test("each line that does not read is found by itself, and its neighbours are not", () =>
    checkFindings(
      drink(
        "  50 ml gin",
        "  10 ml",
        "  ^^^^^ syntax",
        "  2,5 cl dry vermouth",
        "  ^^^ decimal-comma",
        "  soda water 50 ml",
        "  ^^^^^^^^^^^^^^^^ turned-pour",
      ),
    ));
  test.each([
    ["book Slack Water\n  chapters: a.md;\n    b.md\n    c.md\n", 2],
    ["book Slack Water\n  avoid: craft\n    artisanal\n", 1],
    [drink("  garnish: mint;", "    lemon zest"), 1],
    [drink("  method: build,", "    stir"), 1],
    [drink("  glass: highball", "  gin"), 0],
    [drink("  notes: Cold;", "  gin"), 0],
    [drink("  garnish: none", "  gin"), 0],
  ])("a list that goes on below is told so: %s", (text, count) => {
    const found = findIn(houseOf(text)).filter(({ finding }) => finding.code === "missing-amount");
    expect(found.filter(({ finding }) => finding.what.startsWith("A list stands on one line")).length).toBe(count);
    expect(found.length).toBe(Math.max(count, text.includes("  gin") ? 1 : 0));
  });
  test("columns count UTF-16 units behind an emoji and a combining mark", () =>
    checkFindings("drink 🍸 Cafe\u0301\n  garnish: 🍋, none\n  glass: 🍸🍸\n         ^^^^ unknown-glass\n  method: none\n  50 ml gin\n"));
  test("nothing is found inside an entry that is not known but its head", () =>
    checkFindings("drnk Slip Water\n^^^^ unknown-entry\n  glas: rocks\n  50 mll gin\n"));
  test("the first line under no entry is found, the rest has the same cure", () =>
    checkFindings("  50 ml gin\n  ^^^^^^^^^ syntax\n  25 ml lime juice\n\ndrink Slip Water\n  status: draft\n"));
  test("a half-typed head takes nothing from the drink before it", () =>
    expect(codesIn(`${drink("  50 ml gin")}dri\n  20 ml lime juice\n`)).toEqual(["unknown-entry"]));
  test("both readings of 1,000 are offered", () => {
    const { located } = findOne("prep plain syrup\n  1,000 g sugar\n  1000 g water\n", "thousands-comma");
    expect(located.finding.fixes?.().flatMap(({ edits }) => edits.map(({ text }) => text))).toEqual(["1000", "1.000"]);
  });
  test("a pasted spec is indented in one go, or line by line", () => {
    const pasted = "drink Slip Water\nglass: none\nmethod: none\ngarnish: none\n50 ml gin\n";
    const [first] = findIn(houseOf(pasted));
    expect(first!.finding.fixes!().map(({ title }) => title)).toEqual(["Indent all 4 lines of this drink", "Indent this line"]);
    const house = houseOf(pasted);
    apply(house, findIn(house)[0]!.finding.fixes!()[0]!);
    expect(findIn(house)).toEqual([]);
  });
  test("a line of another kind of entry is found", () =>
    checkFindings(
      "menu Card\n  50 ml gin\n  ^^^^^^^^^ misplaced-line\n  - Slip Water 8.00\n\nprep p\n  100 g water\n  swap water for milk\n  ^^^^^^^^^^^^^^^^^^^ misplaced-line\n",
    ));
});

describe("fields", () => {
  test("a misspelt field is found, with the near one as its fix", () => {
    const { located } = findOne(drink("  50 ml gin", "  stroy: Named for it."), "unknown-field");
    expect(located.finding.todo).toBe("Did you mean “story”?");
  });
  test("a field of another kind of entry says where it belongs", () => {
    const { located } = findOne(drink("  50 ml gin", "  holds: 240 ml"), "unknown-field");
    expect(located.finding.todo).toBe("It belongs to a glass.");
  });
  test("what may be repeated is not found", () =>
    expect(codesIn("stock gin\n  kind: spirit\n  aka: dry gin\n  aka: London\n")).toEqual([]));
  test("a second prose field goes with all of its lines", () => {
    const { house, located } = findOne(drink("  50 ml gin", "  story: One.", "  story:", "    Two.", "", "    Three."), "repeated-field");
    expect(located.finding.fixes!()[0]!.edits).toHaveLength(4);
    expect(house.getLineOf(located.finding.entry)).toBe(0);
  });
});

describe("values", () => {
  test.each(fields.map((field) => [field.name, field.entries[0]!, field] as const))(
    "the table's own example of %s reads",
    (name, kind, field) => {
      const head = kind === "house" ? "house The Slip" : `${kind} Thing`;
      expect(
        codesIn(`${head}\n  ${name}: ${field.example}\n`).filter((code) => code === "wrong-value" || code === "unknown-field"),
      ).toEqual([]);
    },
  );
  test.each([
    ["stock", "abv: strong"],
    ["stock", "abv: 120 %"],
    ["stock", "abv: 43 ml"],
    ["stock", "sugar: 60 %"],
    ["stock", "acid: 6 g/100 ml as vinegar"],
    ["stock", "price: cheap"],
    ["stock", "price: 26.50 per 700 sips"],
    ["stock", "price: 26.50"],
    ["stock", "kind: sprit"],
    ["stock", "allergens: milk, nutts"],
    ["stock", "fizz: a little"],
    ["stock", "keeps: long"],
    ["stock", "each: leaf"],
    ["stock", "density: 1.04 kg"],
    ["stock", "status: draft"],
    ["prep", "measured: March"],
    ["prep", "measured: 2026-02-30"],
    ["prep", "parts by: feel"],
    ["drink", "serves: 2 ml"],
    ["drink", "total: 120"],
    ["drink", "ratio: 4"],
    ["drink", "tasted: 1/2/2026"],
    ["family", "strength: weak"],
    ["glass", "holds: 240 g"],
    ["glass", "washline: 90 ml"],
    ["ice", "temperature: cold"],
    ["house", "country: Great Britain"],
    ["house", "currency: quid"],
    ["house", "units: ml and oz"],
    ["house", "jigger: small"],
    ["house", "ounce: large"],
    ["house", "freezer: -18 ml"],
    ["house", "severity: salty loud"],
  ])("in a %s `%s` is found", (kind, line) => expect(codesIn(`${kind} Thing\n  ${line}\n`)).toEqual(["wrong-value"]));
  test.each(["abv: none", "sugar: none", "price: none", "kind: none", "keeps: none"])("`%s` clears the field and is not found", (line) =>
    expect(codesIn(`stock Thing\n  ${line}\n`)).toEqual([]),
  );
  test("a bare per cent of sugar is offered by weight and by volume", () => {
    const { located } = findOne("stock s\n  kind: syrup\n  sugar: 66 %\n", "wrong-value");
    expect(located.finding.fixes!().map(({ title }) => title)).toEqual(["Write “66 g/100 g”", "Write “66 g/100 ml”"]);
  });
  test("the word alone is marked, not the line", () =>
    checkFindings("stock s\n  allergens: milk, nutts\n                   ^^^^^ wrong-value\n"));
});

describe("allowances", () => {
  const odd = "  51 ml gin";
  test("one lets the finding on its own line stand", () => expect(codesIn(drink(`${odd}  # allow unmeasurable: our thimble`))).toEqual([]));
  test("and one on the line above, through other comments", () =>
    expect(codesIn(drink("  # allow unmeasurable: our thimble", "  # it holds 51", odd))).toEqual([]));
  test("but no other finding, and no other line", () =>
    checkFindings(drink("  # allow salty: we like it", "  ^^^^^^^^^^^^^^^^^^^^^^^^^ unused-allowance", odd, "  ^^^^^ unmeasurable")));
  test("above a head it is meant for the head", () =>
    expect(codesIn("# allow missing-garnish: a bottle\ndrink Slip Water\n  glass: none\n  method: none\n  50 ml gin\n")).toEqual([]));
  test("also where another entry stands above, and not through a blank line", () => {
    const bottle = "drink Slip Water, Bottled\n  glass: none\n  method: none\n  50 ml gin\n";
    expect(codesIn(`${drink("  50 ml gin")}# allow missing-garnish: a bottle\n${bottle}`)).toEqual([]);
    expect(codesIn(`${drink("  50 ml gin")}# allow missing-garnish: a bottle\n\n${bottle}`)).toEqual([
      "unused-allowance",
      "missing-garnish",
    ]);
  });
  test("one above a head that needs none is found", () =>
    expect(codesIn(`# allow missing-garnish: a bottle\n${drink("  50 ml gin")}`)).toEqual(["unused-allowance"]));
  test("without a reason it allows nothing", () =>
    expect(codesIn(drink(`${odd}  # allow unmeasurable`)).sort()).toEqual(["allow-without-reason", "unmeasurable"]));
});

describe("severities", () => {
  test("a house turns a rule off, up and down", () => {
    const spec = drink("  51 ml gin");
    expect(codesIn(`house The Slip\n  severity: unmeasurable off\n\n${spec}`)).toEqual([]);
    expect(findOne(`house The Slip\n  severity: unmeasurable error\n\n${spec}`, "unmeasurable").located.finding.severity).toBe("error");
  });
  test("a code that no rule has is found", () => checkFindings("house The Slip\n  severity: salti off\n            ^^^^^ unknown-rule\n"));
});
