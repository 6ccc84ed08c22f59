import { expect, test } from "vitest";
import { partsOnly } from "../../server/reports/assess.ts";
import { assessText } from "../../server/reports/assess-text.ts";
import { type Look, plainLook } from "../../server/reports/sheet.ts";
import { drinkReport, known, prepReport, unknown } from "./figures.ts";

const measure = { units: "ml", ounceMl: 30 } as const;
const longName = "A Rope of Some Length, Twice Around the Bollard, Low Tide";
const sheet = { house: "Test Room", measure, atLength: false, cautions: new Map<string, string[]>() };

test("the sheet, read by eye", () => {
  const finding = { code: "unbalanced", severity: "warning", line: 10, message: "Too sweet." } as const;
  const drinks = [
    drinkReport(),
    drinkReport({
      name: longName,
      family: "equal bitter",
      file: "long.drink",
      findings: [finding, { ...finding, code: "no-garnish", line: 9 }, { ...finding, code: "syntax", severity: "error", line: 12 }],
    }),
    drinkReport({
      name: "Dry Rope",
      file: "long.drink",
      family: null,
      after: { ...drinkReport().after, acidGPer100Ml: known(0.02, 0.004), ratio: unknown("too little acid") },
      glass: { capacityMl: unknown("no glass is named"), fillShare: unknown("no glass is named") },
    }),
    drinkReport({
      name: "Blind Rope",
      file: "long.drink",
      after: { ...drinkReport().after, strengthPct: unknown("nothing says how strong hemp water is") },
    }),
  ];
  const preps = [prepReport(), prepReport({ name: "syrup by thirds", massG: unknown(partsOnly), volumeMl: unknown(partsOnly) })];
  const cautions = new Map([["Raw egg: tell the guest, and follow your local food code.", ["Slack Rope", longName]]]);
  expect(assessText({ drinks, preps }, { ...sheet, cautions }, plainLook)).toMatchInlineSnapshot(`
    "Test Room: 4 drinks and 2 preps

    Drink                         Strength  Volume  Dilution  Sweetness      Acid  Ratio  Temp.  Fill
    family                           % vol      ml         %   g/100 ml  g/100 ml            °C     %
    ─────────────────────────────────────────────────────────────────────────────────────────────────
    bar.drink
    Slack Rope                        15.0     160        50        8.9      0.85   10.5   −6.8    67
    sour                             ± 0.6     ± 7       ± 7      ± 0.5    ± 0.06  ± 0.7  ± 0.5   ± 3

    long.drink
    A Rope of Some Length, Twice      15.0     160        50        8.9      0.85   10.5   −6.8    67
    Around the Bollard, Low Tide     ± 0.6     ± 7       ± 7      ± 0.5    ± 0.06  ± 0.7  ± 0.5   ± 3
    equal bitter
      1 error: syntax on line 12; 2 warnings: unbalanced on line 10, no-garnish on line 9
    Dry Rope                          15.0     160        50        8.9      0.02      –   −6.8     –
    no family                        ± 0.6     ± 7       ± 7      ± 0.5                   ± 0.5
    Blind Rope                           ?     160        50        8.9      0.85   10.5   −6.8    67
    sour                                       ± 7       ± 7      ± 0.5    ± 0.06  ± 0.7  ± 0.5   ± 3
      ? nothing says how strong hemp water is

    Prep             Weight  Volume  Density  Sugar  to water  Strength     Acid
                          g      ml     g/ml    °Bx     x : 1     % vol  g/100 g
    ────────────────────────────────────────────────────────────────────────────
    bay syrup           300     228     1.31   64.7      1.83         0     0.00
                                              ± 0.9    ± 0.07
    syrup by thirds       –       –     1.31   64.7      1.83         0     0.00
                                              ± 0.9    ± 0.07

    ! Raw egg: tell the guest, and follow your local food code. (Slack Rope; A Rope of Some Length,
      Twice Around the Bollard, Low Tide)

    Sweetness is as sucrose, acid as citric, ratio the one divided by the other; dilution is the water
    added, of the volume before. Volumes are of all serves together. A prep is what is left of it after
    boiling and straining; its sugar, also to one of water, and its acid are by weight. A dash stands
    where there is nothing to tell: too little acid for a ratio, no glass, parts without a size.

    ± is one standard uncertainty, from the measures, the labels and the model of melting ice, which is
    set by published measurements and not by the ice of this bar. No laboratory has seen these drinks.
    "
  `);
});

test("one drink at length, read by eye", () => {
  const finding = { code: "unbalanced", severity: "warning", line: 10, message: "This is too sweet. Pour less syrup." } as const;
  const drink = drinkReport({
    findings: [finding],
    glass: { capacityMl: unknown("no glass is named"), fillShare: unknown("no glass is named") },
  });
  expect(assessText({ drinks: [drink], preps: [] }, { ...sheet, atLength: true }, plainLook)).toMatchInlineSnapshot(`
    "Test Room: 1 drink

    Slack Rope  sour, bar.drink:8
    Allergens       egg (egg white); not stated for hemp water
    Diets           not vegan (egg white); not stated: kosher
    Before the ice  107 ± 2 ml, 22.4 ± 0.3 % vol, 112 ± 2 g
    Water added     53 ± 7 ml, 50 ± 7 % of the volume before
    As served       160 ± 7 ml, 15.0 ± 0.6 % vol, −6.8 °C
    Sweet and sour  sweetness 8.9 ± 0.5 g/100 ml, acid 0.85 ± 0.06 g/100 ml, ratio 10.5 ± 0.7
    Sugar and salt  sugar 8.9 ± 0.5 g/100 ml, salt 0 g/100 ml
    One serve       18.9 ± 0.5 g alcohol, 2.4 UK units, 770 ± 20 kJ / 186 ± 5 kcal
    Keeps           1 day chilled (lemon juice), the shortest that is stated
    Glass           no glass is named
    Warning         line 10: This is too sweet. Pour less syrup. [unbalanced]

    Sweetness is as sucrose, acid as citric, ratio the one divided by the other; dilution is the water
    added, of the volume before. Volumes are of all serves together.

    ± is one standard uncertainty, from the measures, the labels and the model of melting ice, which is
    set by published measurements and not by the ice of this bar. No laboratory has seen these drinks.
    "
  `);
});

test("a sheet of nothing says so", () => {
  expect(assessText({ drinks: [], preps: [] }, sheet, plainLook)).toBe("Test Room: no drinks and no preps\n");
});

test("emphasis moves nothing: taken out, the sheet is the plain one", () => {
  const set = (text: string) => `\u001b[1m${text}\u001b[22m`;
  const bold: Look = { width: 100, strong: set, faint: set, severity: (_, text) => set(text) };
  const report = {
    drinks: [drinkReport({ name: longName }), drinkReport({ name: "w".repeat(90), file: "b.drink" })],
    preps: [prepReport()],
  };
  const plain = assessText(report, sheet, plainLook);
  expect(assessText(report, sheet, bold).replaceAll("\u001b[1m", "").replaceAll("\u001b[22m", "")).toBe(plain);
});

test("names in wide and combining letters keep the numbers in line", () => {
  const drinks = [drinkReport({ name: "Größe" }), drinkReport({ name: "Cafe\u0301 Rope" }), drinkReport({ name: "綱" })];
  const lines = assessText({ drinks, preps: [] }, sheet, plainLook).split("\n");
  const ends = lines.filter((line) => line.includes("15.0 ")).map((line) => columnsOf(line));
  expect(ends).toHaveLength(3);
  expect(new Set(ends).size).toBe(1);
});

test("ounces and centilitres", () => {
  const volume = (units: "cl" | "oz") =>
    assessText({ drinks: [drinkReport()], preps: [] }, { ...sheet, measure: { units, ounceMl: 30 } }, plainLook);
  expect(volume("cl")).toMatch(/^Slack Rope +15\.0 +16\.0 /m);
  expect(volume("oz")).toMatch(/^Slack Rope +15\.0 +5\.3 /m);
});

/** Columns of a terminal: a combining mark has none, a Han letter two. */
function columnsOf(line: string): number {
  return [...line].reduce((sum, letter) => sum + (/\p{M}/u.test(letter) ? 0 : /\p{Script=Han}/u.test(letter) ? 2 : 1), 0);
}
