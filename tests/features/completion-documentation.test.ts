import { expect, test } from "vitest";
import { completion, resolveCompletion } from "../../server/features/completion.ts";
import { itemsAt, saysAt } from "./completing.ts";
import { fixtureOf } from "./cursor.ts";

test("an item is light until it is asked for", () => {
  for (const item of itemsAt(fixtureOf("drink Slip\n  <>"))) {
    expect(Object.keys(item).sort()).toEqual(["data", "filterText", "kind", "label", "sortText", "textEdit"]);
  }
});

const gin = "stock quay gin\n  kind: spirit\n  abv: 43 %\n  sugar: 0 g/100 ml\n  acid: 0 g/100 ml\n  price: 18.00 per 700 ml\n\n";
const poured = "drink A\n  25 ml quay gin\n\ndrink B\n  25 ml quay gin\n\ndrink C\n  50 ml quay gin\n\n";

test.each([
  ["dr<>", "drink", "", "A spec"],
  ["drink Slip\n  gl<>", "glass", "glass: coupe, chilled", "What it is served in"],
  ["drink Slip\n  sw<>", "swap", "", "In a riff: `swap this for that`."],
  ["drink Slip\n  2 <>", "dashes", "0.8 ml here", "One shake of a dasher bottle"],
  ["house H\n  ounce: 30 ml\n\ndrink Slip\n  2 <>", "oz", "30 ml here", "Fluid ounce"],
  // How cold it is there is for the house to say.
  ["house H\n  freezer: -21 C\n\ndrink Slip\n  50 ml gin, <>", "frozen", "−21 °C here", "At the freezer's temperature"],
  ["drink Slip\n  glass: coupe, <>", "chilled", "4 °C here", "As cold as the fridge."],
  ["drink Slip\n  50 ml gin, at <>", "4 C", "", "As warm as it is here: the fridge."],
  ["drink Slip\n  method: dry<>", "dry shake", "", "Shaken without ice"],
  ["drink Slip\n  method: stir <>", "30 s", "stir 30 s", "Stirred with ice"],
  ["house H\n  country: <>", "IE", "Ireland", "Counts in Irish standard drinks of 10 g of alcohol."],
  ["house H\n  currency: <>", "SEK", "", "Swedish Krona"], // CLDR, English
  ["stock a\n  stored: <>", "freezer", "−18 °C here", "Where it stands before service"],
  ["stock a\n  status: <>", "out", "", "There is none: its drinks cannot be poured tonight."],
  ["stock a\n  allergens: <>", "sulphites", "", "from 10 mg/kg or 10 mg/l on"], // Regulation (EU) 1169/2011, Annex II
  ["stock a\n  kind: <>", "spirit", "", "Where nobody says otherwise: spirit, 4"],
  ["house H\n  severity: <>", "glass-too-small", "warning: ", "."],
  ["house H\n  severity: salty <>", "off", "", "Not looked for."],
  ["drink Slip\n  tasted: <>", "2026-11-28", "", "Today."],
  ["drink A\n  tags: smoky\n\ndrink Slip\n  tags: <>", "smoky", "", "Written once in this house."],
  ["drink A\n  10 ml harbour cordial\n\nstock <>", "harbour cordial", "", "declared nowhere"],
  [`${gin}drink Slip\n  50 ml q<>`, "quay gin", "stock", "Spirit, 43 % vol, 18.00 per 700 ml."],
  [`${gin}${poured}drink Slip\n  50 ml q<>`, "quay gin", "stock", "Poured in 3 drinks, most often 25 ml."],
  ["drink Slip\n  50 ml lemon j<>", "lemon juice", "larder", "From the larder."],
  ["drink Slip\n  50 ml fresh lemon j<>", "fresh lemon juice", "larder", "Another name of lemon juice."],
  ["prep Sweet\n  100 g sugar\n  100 g water\n\ndrink Slip\n  5 ml Sw<>", "Sweet", "prep", "Made here"],
  [`${gin}drink A\n  50 ml quay gin\n  50 ml water\n\ndrink Slip\n  from: <>`, "A", "drink", "21.5 % vol, 50 ml quay gin and 50 ml water."],
  ["drink Slip\n  glass: <>", "coupe", "larder", "Holds "],
  ["drink Slip\n  family: <>", "egg sour", "larder", "Ratio "],
  ["drink Slip\n  method: shake with <>", "large cube", "larder", "Large cube, "],
  ["drink Slip\n  price: 9.00\n\nmenu Late\n  - <>", "Slip", "drink", ""],
])("%j: %s says %j, %j", (text, label, detail, says) => {
  const said = saysAt(text, label);
  expect(said.detail.startsWith(detail)).toBe(true);
  if (detail === "") expect(said.detail).toBe("");
  expect(said.text).toContain(says);
});

test("whatever is offered anywhere has a line to say for itself", () => {
  const places = [
    "<>",
    "  <>",
    "  50 <>",
    "  50 ml <>",
    "  50 ml gin, <>",
    "  method: <>",
    "  method: shake <>",
    "  glass: coupe, <>",
    "  # <>",
  ];
  for (const head of ["drink Slip", "prep Mix", "menu Late", "stock a", "house H", "glass g", "ice i", "family f"]) {
    for (const place of places) {
      const { house, document, position } = fixtureOf(`${head}\n${place}`);
      for (const item of completion(house, document, position, { today: "2026-11-28" }).items) {
        const said = resolveCompletion(house, item);
        expect(said.documentation, `${head}, ${place}: ${item.label}`).toBeDefined();
      }
    }
  }
});

test("a lone fold of words stays text", () => {
  const said = saysAt(
    "stock *quay*\n  kind: spirit\n  price: 9 per 700 ml\n  origin: _x_\n\ndrink A\n  tags: _x_\n\ndrink B\n  5 ml *q<>",
    "*quay*",
  );
  expect(said.text).not.toMatch(/(?<!\\)\*/);
});

test("an item of another server, or of a text that is gone, comes back as it was", () => {
  const { house } = fixtureOf("drink Slip<>\n");
  for (const data of [undefined, 7, { uri: "file:///house/spec.drink" }, { uri: "file:///gone.drink", what: "field", name: "glass" }]) {
    expect(resolveCompletion(house, { label: "glass", data })).toEqual({ label: "glass", data });
  }
  const item = { label: "x", data: { uri: "file:///house/spec.drink", what: "constructor", name: "x" } };
  expect(resolveCompletion(house, item)).toEqual(item);
});
