/** Hovers on what a bar has, keeps and earns. Prices are invented. */
import { expect, test } from "vitest";
import { hoverAt } from "./cursor.ts";

const house = "house The Slip\n  currency: GBP\n  tax: 20 %\n  prices: with tax\n  target cost: 20 %\n\n";
const gin = "stock harbour gin\n  kind: spirit\n  abv: 40 %\n  price: 28.00 per 700 ml\n\n"; // 0.04 a millilitre
const drink = (pours: string, more = "") => `drink Slip Wa<>ter\n  glass: rocks\n  method: stir 20 s\n${more}${pours}\n`;

const row = (text: string, label: string) => new RegExp(`^\\| ${label} \\| (.*?) \\|$`, "m").exec(hoverAt(text))?.[1];

test("a drink tells its cost and its share of each price beside the house's target", () => {
  // 60 × 0.04 = 2.40 of 12.00 ÷ 1.2; of 15.00 ÷ 1.2 it would be 19 %.
  const menu = "menu Card\n  - Slip Water 12.00\n\n";
  expect(row(`${house}${gin}${menu}${drink("  60 ml harbour gin")}`, "cost")).toMatch(
    /^£2\.40 ± 0\.03, 24 % of the price without tax \| \*\*above 20 %\*\*$/,
  );
  const two = `${menu}menu Late card\n  - Slip Water 15.00\n\n`;
  expect(row(`${house}${gin}${two}${drink("  60 ml harbour gin")}`, "cost")).toMatch(
    /, 24 % on Card, 19 % on Late card \| \*\*above 20 %\*\*$/,
  );
});

test("what has no price is told, and a house without any hears nothing of cost", () => {
  expect(row(`${house}${gin}${drink("  60 ml harbour gin\n  10 ml lime juice", "  garnish: paper flag\n")}`, "cost")).toMatch(
    /^at least £2\.40, paper flag not counted(?: \|)?$/,
  );
  expect(hoverAt(drink("  60 ml gin"))).not.toContain("cost");
});

test("a drink says that it is off, or what it falls back on", () => {
  const out = "stock quince juice\n  kind: juice\n  status: out\n\n";
  expect(hoverAt(`${out}${drink("  20 ml quince juice")}`)).toContain("**Off tonight**: quince juice is out.");
  expect(hoverAt(`${out}${drink("  20 ml quince juice\n    or apple juice")}`)).toContain(
    "**Falls back**: quince juice is out: apple juice instead.",
  );
  expect(hoverAt(drink("  20 ml apple juice"))).not.toMatch(/Off tonight|Falls back/);
});

test("a stock that is out lists the drinks it takes off, through preps and in other files", () => {
  const text = `stock quince jui<>ce
  kind: juice
  status: out

prep quince cordial
  100 g quince juice
  100 g white sugar
=== long.drink
drink Slack Rope
  20 ml quince cordial

drink Bare Hook
  20 ml quince juice
    or apple juice

drink Dry Rope
  20 ml apple juice
`;
  expect(hoverAt(text)).toContain("**Out**: it takes Slack Rope off tonight; Bare Hook falls back on something else.");
  expect(hoverAt(text.replace("jui<>ce", "juice").replace("prep quince cor", "prep quince cor<>"))).toContain(
    "**Cannot be made**: quince juice is out.",
  );
  expect(hoverAt(text.replace("  status: out\n", ""))).not.toContain("Out");
});

test("a prep tells where it freezes and what it is in the house's freezer", () => {
  const prep = (pours: string) => `house The Slip\n  freezer: -18 C\n\nprep harbour mi<>x\n${pours}`;
  // 20 % vol freezes at −8.2 °C (CRC Handbook, interpolated); 40 at −23.6.
  expect(row(prep("  100 ml vodka\n  100 ml water\n"), "freezes")).toMatch(
    /^from −8\.\d(?: ± 0?\.?\d+)? °C; 4\d(?:\.\d)? ± \d(?:\.\d)? % of it is ice at −18 °C, and it does not pour$/,
  );
  expect(row(prep("  100 ml vodka\n"), "freezes")).toMatch(/^from −23\.\d.*; liquid at −18 °C$/);
});

test("so does a drink that is diluted beforehand, and no other", () => {
  const batched = drink("  50 ml gin\n  25 ml dry vermouth").replace("stir 20 s", "pre-dilute 25 %");
  expect(hoverAt(batched)).toMatch(/Batched, it freezes from −1\d.*; (?:.* at −18 °C|liquid)/);
  expect(hoverAt(drink("  50 ml gin\n  25 ml dry vermouth"))).not.toContain("freezes");
});

test("a step that layers shows the order, each with its weight", () => {
  const text = "drink Slip Water\n  glass: shot glass\n  method: lay<>er\n  20 ml coffee liqueur\n  20 ml cream, whipped\n  20 ml brandy\n";
  expect(hoverAt(text)).toMatch(
    /From the bottom: coffee liqueur \(1\.\d+(?: ± [\d.]+)? g\/ml\), cream \(beaten with air\) and brandy \(0\.9\d+(?: ± [\d.]+)? g\/ml\), at 20 °C\./,
  );
});
