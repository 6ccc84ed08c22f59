import { describe, expect, test } from "vitest";
import { read } from "../../grammar/read.ts";
import { currencyNames } from "../../server/features/completion/platform.ts";
import { completion } from "../../server/features/completion.ts";
import { root } from "../house/make.ts";
import { labelsAt, linesAfter, take } from "./completing.ts";
import { type Fixture, fixtureOf } from "./cursor.ts";

const shelf = "=== shelf.drink\nstock aged rum\n  kind: spirit\n  abv: 43 %\n=== spec.drink\n";

describe("what is offered where", () => {
  test.each([
    ["dr<>", ["drink", "prep"], ["abv"]],
    ["<>", ["drink"], []],
    ["drink Slip\n  <>", ["family", "glass", "swap"], ["abv", "drink"]],
    ["drink Slip\n  gla<>", ["glass", "garnish"], ["holds"]],
    ["drink Slip\n  glass: coupe\n  g<>", ["garnish"], ["glass"]],
    ["glass stem\n  <>", ["holds", "washline"], ["family"]],
    ["family salty sour\n  <>", ["ratio", "salt"], ["glass"]],
    ["ice slab\n  <>", ["weight", "temperature", "kind"], ["abv"]],
    ["menu Late\n  <>", ["section", "-", "valid from"], ["glass"]],
    ["house The Slip\n  <>", ["country", "severity", "freezer"], ["glass"]],
    ["house The Slip\n  target c<>", ["target cost"], []],
    ["ice slab\n  kind: <>", ["large cube", "crushed"], ["spirit"]],
    ["stock gin\n  kind: sp<>", ["spirit"], ["drink"]],
    ["stock gin\n  fizz: <>", ["yes", "no"], []],
    ["stock gin\n  status: <>", ["in", "out"], ["draft"]],
    ["drink Slip\n  status: <>", ["draft", "live", "retired"], ["out"]],
    ["stock cream\n  allergens: <>", ["milk", "none"], []],
    ["stock cream\n  allergens: milk, <>", ["egg"], ["milk", "none"]],
    ["stock cream\n  price: 2.50 <>", ["per 700 ml", "per 1 kg"], ["ml"]],
    ["stock lime\n  acid: 6 <>", ["g/100 ml", "g/100 g"], ["as citric"]],
    ["stock lime\n  acid: 6 g/100 ml <>", ["as citric", "malic"], ["g/100 ml"]],
    ["stock lime\n  sugar: 2 g/100 g <>", ["fructose", "invert"], ["as citric"]],
    ["stock gin\n  abv: 43 <>", ["%"], ["ml"]],
    ["drink Slip\n  serves: 2 <>", [], ["ml", "C"]],
    ["drink Slip\n  tasted: <>", ["2026-11-28"], []],
    ["house The Slip\n  country: <>", ["GB", "IE"], []],
    ["house The Slip\n  currency: <>", ["GBP", "EUR", "JPY"], []],
    ["house The Slip\n  freezer: <>", ["-18 C"], []],
    ["house The Slip\n  freezer: -20 <>", ["C", "F"], ["ml"]],
    ["house The Slip\n  severity: <>", ["glass-too-small"], ["off"]],
    ["house The Slip\n  severity: glass-too-small <>", ["off", "hint", "error"], ["glass-too-small"]],
    ["drink Slip\n  family: egg s<>", ["egg sour"], ["coupe"]],
    ["drink Slip\n  glass: <>", ["coupe"], ["egg sour"]],
    ["drink Slip\n  glass: coupe, ch<>", ["chilled", "frozen", "at"], ["coupe"]],
    ["drink Slip\n  glass: coupe, at <>", ["-18 C", "4 C"], ["coupe"]],
    ["drink Slip\n  garnish: 2 lem<>", ["lemon zest"], ["coupe"]],
    ["drink Slip\n  method: dry shake 10 s; sh<>", ["shake", "stir"], []],
    ["drink Slip\n  method: shake <>", ["12 s", "with cracked ice"], ["shake", "over cracked ice"]],
    ["drink Slip\n  method: shake 8 s <>", ["with cracked ice"], ["12 s"]],
    ["drink Slip\n  method: shake with <>", ["cracked ice"], ["12 s"]],
    ["drink Slip\n  method: build <>", ["over cubed ice"], ["with cubed ice"]],
    ["drink Slip\n  method: throw <>", ["7 times"], []],
    ["drink Slip\n  method: shake 12 <>", ["s", "min"], ["ml"]],
    ["drink Slip\n  method: hold <>", ["at -18 C"], ["12 s"]],
    ["drink Slip\n  50 <>", ["ml", "dashes", "lime juice"], ["egg sour"]],
    ["drink Slip\n  50<>", ["ml", "g"], ["lime juice"]],
    ["drink Slip\n  50m<>", ["ml"], ["lime juice", "glass"]],
    ["drink Slip\n  50 m<>", ["ml"], ["egg sour"]],
    ["drink Slip\n  50 ml l<>", ["lime juice"], ["ml", "coupe"]],
    ["drink Slip\n  top <>", ["soda water"], ["ml"]],
    ["drink Slip\n  50 ml gin, fro<>", ["frozen", "chilled"], ["gin"]],
    ["drink Slip\n  50 ml gin, frozen, <>", ["optional"], ["frozen"]],
    ["drink Slip\n  50 ml gin, at <>", ["-18 C", "85 C"], ["frozen"]],
    ["drink Slip\n  50 ml gin\n    or 50 ml l<>", ["lime juice"], []],
    ["prep Sour Mix\n  <>", ["to", "yield", "parts by"], ["glass", "swap"]],
    ["prep Sour Mix\n  method: <>", ["infuse", "reduce"], []],
    ["prep Sour Mix\n  method: reduce <>", ["by half", "to 300 ml"], []],
    ["stock <>", ["lime juice"], ["drink"]],
  ])("%j", (text, wanted, unwanted) => {
    const labels = labelsAt(text);
    expect(labels).toEqual(expect.arrayContaining(wanted));
    for (const label of unwanted) expect(labels).not.toContain(label);
  });

  test.each([
    ["drink Slip\n  story: Once <>"],
    ["drink Slip\n  story: Once\n    <>"],
    ["drink Slip\n  story: Once\n    upon <>"],
    ["drink Slip\n  50 ml gin # so <>"],
    ["# so <>"],
    ["word nobody knows\n  50 <>"],
    ["stock gin\n  50 <>"],
    ["drink Slip\n  50 ml <> nobody knows"],
    ["drink Slip\n  50 <> ml gin"],
    ["drink Slip\n  glass: <> nobody knows"],
    ["<>  50 ml gin"],
  ])("nothing in %j", (text) => expect(labelsAt(text)).toEqual([]));

  test("behind prose the next field is offered again", () => expect(labelsAt("drink Slip\n  story: Once\n  <>")).toContain("glass"));

  test("currencies and their names are the platform's", () => {
    expect(currencyNames.of("GBP")).toBe("British Pound"); // CLDR, English
    expect(labelsAt("house The Slip\n  currency: <>").length).toBeGreaterThan(140); // ISO 4217 counts some 155 in use
  });
});

describe("what comes first", () => {
  test("the house's own before the larder's", () => expect(labelsAt(`${shelf}drink Slip\n  50 ml a<>`)[0]).toBe("aged rum"));

  test("the house's unit, then those that it measures in", () => {
    const labels = labelsAt("house The Slip\n  units: cl\n\ndrink Fog\n  2 dashes clove bitters\n\ndrink Slip\n  5 <>");
    expect(labels.slice(0, 2)).toEqual(["cl", "dashes"]);
  });

  test.each([
    ["1 da", "dash", "1 dash"],
    ["2 da", "dashes", "2 dashes"],
    ["1/2 da", "dash", "1/2 dash"],
    ["1 1/2 pa", "parts", "1 1/2 parts"],
  ])("a unit in the number that its amount wants: %s", (typed, label, taken) => {
    expect(take(`drink Slip\n  ${typed}<>`, label)).toBe(`  ${taken}`);
  });

  test("what is poured more", () => {
    const poured = "drink A\n  25 ml lime juice\n\ndrink B\n  20 ml lime juice\n  50 ml dry gin\n\n";
    expect(labelsAt(`${poured}drink Slip\n  50 ml <>`).slice(0, 2)).toEqual(["lime juice", "dry gin"]);
  });

  test("behind top what is topped with", () => {
    const poured = "drink A\n  50 ml dry gin\n  top tonic water\n\ndrink B\n  50 ml dry gin\n\n";
    expect(labelsAt(`${poured}drink Slip\n  top <>`)[0]).toBe("tonic water");
  });

  test("steps and tags that the house writes", () => {
    const written = "drink A\n  method: shake 9 s; fine strain\n  tags: smoky\n\ndrink B\n  method: shake 9 s\n\n";
    expect(labelsAt(`${written}drink Slip\n  method: <>`)[0]).toBe("shake 9 s");
    expect(labelsAt(`${written}drink Slip\n  tags: <>`)).toEqual(["smoky"]);
  });

  test("fields that the house writes, then those that only this kind of entry takes", () => {
    expect(labelsAt("drink A\n  season: winter\n\ndrink Slip\n  <>")[0]).toBe("season");
    expect(labelsAt("drink Slip\n  <>")[0]).toBe("family");
  });

  test("what is poured, before a field that no drink of the house has", () => {
    const poured = "drink A\n  15 ml sugar syrup\n\n";
    expect(labelsAt(`${poured}drink Slip\n  sug<>`).filter((label) => label.startsWith("sugar") || label.startsWith("15"))[0]).toBe(
      "15 ml sugar syrup",
    );
  });

  test("no drink's first step is to strain it", () => {
    const strained = "drink A\n  method: shake 9 s; fine strain\n\ndrink B\n  method: stir 20 s; fine strain\n\n";
    expect(labelsAt(`${strained}drink Slip\n  method: <>`)[0]).toBe("shake 9 s");
    expect(labelsAt(`${strained}drink Slip\n  method: stir 20 s; <>`)[0]).toBe("fine strain");
  });

  test("what is being typed is not offered as written elsewhere", () => {
    expect(labelsAt("drink A\n  garnish: lemon zest\n\ndrink Slip\n  garnish: lem<>")).not.toContain("lem");
    expect(labelsAt("drink A\n  tags: smoky\n\ndrink Slip\n  tags: smo<>")).toEqual(["smoky"]);
    expect(labelsAt("drink A\n  tags: smo\n\ndrink Slip\n  tags: smo<>")).toEqual(["smo"]);
  });

  test("names that are poured and declared nowhere, at the head of a stock", () => {
    expect(labelsAt("drink A\n  10 ml harbour cordial\n\nstock <>")[0]).toBe("harbour cordial");
  });

  test("what is found on the line, behind `# allow`", () => {
    expect(labelsAt("drink Slip\n  50 ml nobody knows # allow <>")[0]).toBe("unknown-ingredient");
    expect(labelsAt("drink Slip\n  # <>\n  50 ml nobody knows")[0]).toBe("allow unknown-ingredient");
    expect(labelsAt("# allow <>\ndrink Slip\n  glass: coupe\n")).toContain("missing-method");
  });
});

describe("a whole pour", () => {
  const poured = "drink A\n  22.5 ml lemon juice\n\ndrink B\n  22.5ml lemon juice\n\ndrink C\n  30 ml lemon juice\n\n";
  test("has the amount that most drinks pour", () => {
    expect(take(`${poured}drink Slip\n  lem<>`, "22.5 ml lemon juice")).toBe("  22.5 ml lemon juice");
  });
  test("a prep's amount is a prep's", () => {
    expect(labelsAt(`${poured}prep Mix\n  500 g lemon juice\n\nprep Slip\n  lem<>`)).toContain("500 g lemon juice");
  });
  test("an amount that does not read is never passed on", () => {
    expect(labelsAt("drink A\n  2,5 cl lemon juice\n\ndrink Slip\n  lem<>")).toContain("lemon juice");
  });
  test("what was never poured comes with an amount to fill in, for editors that can", () => {
    const snippets = { snippets: true };
    expect(take("drink Slip\n  lem<>", "lemon juice", snippets)).toBe(`  \${1:25} ml lemon juice`);
    expect(take("house H\n  units: oz\n\ndrink Slip\n  lem<>", "lemon juice", snippets)).toBe(`  \${1:1} oz lemon juice`);
    expect(take("drink Slip\n  aro<>", "aromatic bitters", snippets)).toBe(`  \${1:2} dashes aromatic bitters`);
    expect(take("drink Slip\n  lem<>", "lemon juice")).toBe("  lemon juice");
  });
});

describe("riffs", () => {
  const parent = "drink Fog\n  50 ml dry gin\n  10 ml lime juice\n  5 ml lime juice\n  2 dashes clove bitters\n\n";
  test.each([
    ["swap <>", ["dry gin", "10 ml lime juice", "5 ml lime juice", "clove bitters"]],
    ["swap dry gin for aged rum\n  without <>", ["10 ml lime juice", "5 ml lime juice", "clove bitters", "all"]],
    ["without 5 ml lime juice\n  without <>", ["dry gin", "lime juice", "clove bitters"]],
    ["without all lime juice\n  swap <>", ["dry gin", "clove bitters"]],
    ["without all <>", ["lime juice"]],
  ])("%j", (lines, labels) => expect(labelsAt(`${parent}drink Slip\n  from: Fog\n  ${lines}`)).toEqual(labels));

  test("nothing where there is no parent", () => expect(labelsAt("drink Slip\n  swap <>")).toEqual([]));

  test("what is swapped in: of the same kind first", () => {
    const stocks = "stock aaa\n  kind: juice\n\nstock zzz\n  kind: spirit\n\n";
    const labels = labelsAt(`${stocks}${parent}drink Slip\n  from: Fog\n  swap dry gin for <>`);
    expect(labels.indexOf("zzz")).toBeLessThan(labels.indexOf("aaa"));
    expect(labels).not.toContain("coupe");
  });

  test("no riff of itself, nor of what is made from it", () => {
    const labels = labelsAt("drink Slip\n  from: <>\n\ndrink Fog\n  from: Slip\n\ndrink Mist\n  30 ml Fog\n\ndrink Rain\n  30 ml gin");
    expect(labels).toEqual(["Rain"]);
  });
});

describe("a menu", () => {
  const drinks = "drink Slip\n  price: 12.50\n\ndrink Fog\n\ndrink Mist\n  price: 30.00\n  serves: 4\n\n";
  test("what is not on it first, with the price that it states for one", () => {
    expect(labelsAt(`${drinks}menu Late\n  - Fog\n  - <>`)).toEqual(["Mist", "Slip", "Fog"]);
    expect(take(`${drinks}menu Late\n  - S<>`, "Slip")).toBe("  - Slip 12.50");
    expect(take(`${drinks}menu Late\n  - M<>`, "Mist")).toBe("  - Mist");
    expect(take(`${drinks}menu Late\n  Sl<>`, "Slip")).toBe("  - Slip 12.50");
  });
  test("a price that is there stays", () => expect(take(`${drinks}menu Late\n  - S<> 14.00`, "Slip")).toBe("  - Slip 14.00"));
  test("sections as other menus have them", () => {
    expect(labelsAt("menu Early\n  section Long\n\nmenu Late\n  section <>")).toEqual(["Long"]);
  });
});

describe("as the texts stand", () => {
  const labels = ({ house, position, document }: Fixture) => {
    return completion(house, house.document(document.uri)!, position).items.map(({ label }) => label);
  };
  const set = ({ house }: Fixture, text: string) => house.setDocument({ uri: `${root}/shelf.drink`, version: null, tree: read(text) });

  test("a name that comes is offered, one that goes is not, and an entry edited under its name still is", () => {
    const fixture = fixtureOf("drink Slip\n  50 ml quay<>");
    expect(labels(fixture)).toEqual([]);
    set(fixture, "stock quay gin\n");
    expect(labels(fixture)).toEqual(["quay gin"]);
    set(fixture, "stock quay gin\n  kind: spirit\n");
    expect(labels(fixture)).toEqual(["quay gin"]);
    set(fixture, "stock quay rum\n");
    expect(labels(fixture)).toEqual(["quay rum"]);
    fixture.house.removeDocument(`${root}/shelf.drink`);
    expect(labels(fixture)).toEqual([]);
  });

  test("typing in a drink lays out no names anew and computes no other entry", () => {
    const drinks = Array.from({ length: 50 }, (_, number) => `drink Fog ${number}\n  50 ml dry gin\n`).join("\n");
    const fixture = fixtureOf("drink Slip\n  50 ml d<>");
    set(fixture, drinks);
    expect(labels(fixture)[0]).toBe("dry gin");
    for (const typed of ["  50 ml dr", "  dr", "  50 "]) {
      fixture.house.setDocument({ ...fixture.document, tree: read(`drink Slip\n${typed}`) });
      const before = fixture.house.memo.computed;
      const position = { line: 1, character: typed.length };
      expect(completion(fixture.house, fixture.house.document(fixture.document.uri)!, position).items.length).toBeGreaterThan(0);
      expect(fixture.house.memo.computed).toBe(before);
    }
  });

  test("a long list says that it is not whole; the letters typed bring up the rest", () => {
    const many = Array.from({ length: 600 }, (_, number) => `stock quay ${number} gin\n`).join("\n");
    const fixture = fixtureOf("drink Slip\n  50 ml quay <>");
    set(fixture, many);
    const list = completion(fixture.house, fixture.document, fixture.position);
    expect([list.isIncomplete, list.items.length]).toEqual([true, 250]);
    const further = fixtureOf("drink Slip\n  50 ml quay 599<>");
    set(further, many);
    expect(labels(further)).toEqual(["quay 599 gin"]);
    expect(completion(further.house, further.document, further.position).isIncomplete).toBe(false);
  });
});

describe("what is written", () => {
  test.each([
    ["drink Crème 🍋\n  ½ oz dry g<>", "dry gin", "  ½ oz dry gin"],
    ["drink Slip\n  gar<>", "garnish", "  garnish: "],
    ["drink Slip\n  gar<>: lemon zest", "garnish", "  garnish: lemon zest"],
    ["drink Slip\n  ga<>nish: lemon zest", "garnish", "  garnish: lemon zest"],
    ["drink Slip\n  glass: co<>", "coupe", "  glass: coupe"],
    ["drink Slip\n  glass:<>", "coupe", "  glass: coupe"],
    ["drink Slip\n  glass: co<>, chilled", "coupe", "  glass: coupe, chilled"],
    ["drink Slip\n  glass: coupe,<>", "chilled", "  glass: coupe, chilled"],
    ["drink Slip\n  50<>", "ml", "  50 ml"],
    ["drink Slip\n  50m<>", "ml", "  50 ml"],
    ["drink Slip\n  50m<> lemon juice", "ml", "  50 ml lemon juice"],
    ["drink Slip\n  50 <>lemon juice", "ml", "  50 ml lemon juice"],
    ["drink Slip\n  50 m<>lemon juice", "ml", "  50 ml lemon juice"],
    ["drink Slip\n  50 m<>l lemon juice", "cl", "  50 cl lemon juice"],
    ["drink Slip\n  50 ml d<> gin", "dry gin", "  50 ml dry gin"],
    ["drink Slip\n  50 <> lemon juice", "ml", "  50 ml lemon juice"],
    ["drink Slip\n  50 ml le<>mon juice", "lime juice", "  50 ml lime juice"],
    ["drink Slip\n  50 ml le<>mon juice, frozen # cold", "lime juice", "  50 ml lime juice, frozen # cold"],
    ["drink Slip\n  50 ml lemon<> juice", "lemon juice", "  50 ml lemon juice"],
    ["drink Slip\n  50 ml dr<>gin", "dry gin", "  50 ml dry gin"],
    ["drink Slip\n  50 ml gin,fro<>", "frozen", "  50 ml gin,frozen"],
    ["drink Slip\n  dr<> gin", "dry gin", "  dry gin"],
    ["drink Fog\n  50 ml gin\n\ndrink Slip\n  from: Fog\n  swap g<>", "gin", "  swap gin for "],
    ["drink Fog\n  50 ml gin\n\ndrink Slip\n  from: Fog\n  swap g<> for rum", "gin", "  swap gin for rum"],
    ["drink Fog\n  50 ml gin\n\ndrink Slip\n  from: Fog\n  sw<> gin for rum", "swap", "  swap gin for rum"],
    ["stock 12 year rye\n  kind: spirit\n\ndrink Slip\n  50 ml 12<>", "12 year rye", '  50 ml "12 year rye"'],
    ['stock 12 year rye\n  kind: spirit\n\ndrink Slip\n  50 ml "1<>"', "12 year rye", '  50 ml "12 year rye"'],
    ["stock cream\n  allergens: mi<>, egg", "milk", "  allergens: milk, egg"],
    ["drink Slip\n  method: sh<>; fine strain", "shake", "  method: shake; fine strain"],
    ["drink Slip\n  50 ml gin # al<>", "allow", "  50 ml gin # allow "],
    ["drink Slip\n  50 ml gin # allow unknown-i<>: it is", "unknown-ingredient", "  50 ml gin # allow unknown-ingredient: it is"],
    ["drink Slip\n\nmenu Late\n  -<>", "Slip", "  - Slip"],
    ["drink Slip\n\nmenu Late\n  <>", "section", "  section "],
    ["pre<>", "prep", "prep "],
    ["pre<> Syrup", "prep", "prep Syrup"],
  ])("%j takes %s", (text, label, expected) => expect(take(text, label)).toBe(expected));

  test("where the editor asks for both: what is inserted, and what takes the place of the whole name", () => {
    const text = "drink Slip\n  50 ml le<>mon juice";
    expect(take(text, "lime juice", { insertReplace: true }, "replace")).toBe("  50 ml lime juice");
    expect(take(text, "lime juice", { insertReplace: true }, "insert")).toBe("  50 ml lime juicemon juice");
  });

  test("nothing behind the end of a line: there stands what the tree does not know", () => {
    const { house, document, position } = fixtureOf("drink Slip\n  50 ml <>");
    expect(completion(house, document, position).items.length).toBeGreaterThan(0);
    expect(completion(house, document, { ...position, character: position.character + 1 }).items).toEqual([]);
  });

  test("no other line changes", () => {
    const text = "drink Slip\r\n  50 ml l<>\r\n  25 ml dry gin\r\n";
    expect(linesAfter(text, "lime juice")).toEqual(["drink Slip", "  50 ml lime juice", "  25 ml dry gin", ""]);
  });
});
