/**
 * What every generated house shares: itself, its glasses, its stock and its preps. The figures are
 * round numbers of common practice, no source: they give the server something to compute with.
 */
import type { Entry } from "./house.ts";

const stock = (name: string, kind: string, ...fields: Entry["fields"]): Entry => ({
  kind: "stock",
  name,
  fields: [["kind", kind], ...fields],
});
const glass = (name: string, holds: string): Entry => ({ kind: "glass", name, fields: [["holds", holds]] });
const spirit = (name: string, abv: string) => stock(name, "spirit", ["abv", abv], ["price", "24.00 per 700 ml"]);
const wine = (name: string, kind: string, abv: string, sugar: number, acid: number) =>
  stock(name, kind, ["abv", abv], ["sugar", `${sugar} g/100 ml`], ["acid", `${acid} g/100 ml as tartaric`]);
const juice = (name: string, sugar: number, acid: number) =>
  stock(name, "juice", ["sugar", `${sugar} g/100 ml`], ["acid", `${acid} g/100 ml as citric`], ["keeps", "1 day chilled"]);
const syrup = (name: string, sweetener: string, parts: number, steps: string): Entry => ({
  kind: "prep",
  name,
  fields: [
    ["parts by", "weight"],
    ["keeps", "14 days chilled"],
    ["steps", [steps]],
  ],
  pours: [
    { amount: parts, unit: parts === 1 ? "part" : "parts", of: sweetener },
    { amount: 1, unit: "part", of: "water", notes: ["hot"] },
  ],
});

export const shared: readonly Entry[] = [
  {
    kind: "house",
    name: "The Halyard Room",
    fields: [
      ["country", "GB"],
      ["currency", "GBP"],
      ["units", "ml"],
      ["jigger", "2.5 ml"],
    ],
  },
  glass("coupe", "240 ml"),
  glass("highball", "400 ml"),
  glass("rocks", "320 ml"),
  glass("wine glass", "450 ml"),
  spirit("aged rum", "43 %"),
  spirit("white rum", "40 %"),
  spirit("dry gin", "41 %"),
  spirit("rye whiskey", "46 %"),
  spirit("grain whisky", "40 %"),
  spirit("agave spirit", "40 %"),
  spirit("grape brandy", "40 %"),
  stock("coffee liqueur", "liqueur", ["abv", "20 %"], ["sugar", "33 g/100 ml"]),
  wine("oloroso sherry", "fortified wine", "18 %", 0.5, 0.45),
  wine("white port", "fortified wine", "19 %", 9, 0.4),
  wine("sweet vermouth", "vermouth", "16 %", 15, 0.5),
  wine("dry vermouth", "vermouth", "18 %", 3, 0.5),
  wine("bitter aperitif", "bitter aperitif", "24 %", 18, 0.3),
  wine("gentian aperitif", "bitter aperitif", "20 %", 17, 0.3),
  stock(
    "sparkling wine",
    "sparkling wine",
    ["abv", "12 %"],
    ["sugar", "0.9 g/100 ml"],
    ["acid", "0.6 g/100 ml as tartaric"],
    ["fizz", "yes"],
  ),
  stock("clove bitters", "bitters", ["abv", "44 %"]),
  stock("orange bitters", "bitters", ["abv", "40 %"]),
  juice("lemon juice", 2.5, 6),
  juice("lime juice", 1.7, 6),
  stock("soda water", "mixer", ["sugar", "0 g/100 ml"], ["fizz", "yes"]),
  stock("tonic water", "mixer", ["sugar", "8 g/100 ml"], ["acid", "0.4 g/100 ml as citric"], ["fizz", "yes"]),
  stock("espresso", "coffee", ["caffeine", "212 mg/100 g"]),
  stock("egg white", "egg", ["each", "30 g"], ["allergens", "egg"]),
  stock("white sugar", "sugar", ["sugar", "100 g/100 g"]),
  stock("maple syrup", "syrup", ["brix", "66"]),
  stock("water", "water"),
  syrup("plain syrup", "white sugar", 1, "Stir until it is clear."),
  syrup("rich syrup", "white sugar", 2, "Warm gently, stir until it is clear."),
  syrup("tea syrup", "white sugar", 1, "Steep the tea for four minutes first."),
  syrup("fennel syrup", "white sugar", 1, "Steep the crushed seeds overnight, then strain."),
  syrup("smoked maple syrup", "maple syrup", 2, "Smoke the syrup under a lid for ten minutes."),
];
