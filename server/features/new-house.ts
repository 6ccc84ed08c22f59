/** A small working house for a folder that has none: what holds everywhere, a first spec, a menu. Nothing is written over. */
import type { Position, WorkspaceEdit } from "vscode-languageserver-types";
import { fileNameOf, folderOf } from "../house/document.ts";
import type { House } from "../house/house.ts";
import { countryNames } from "./completion/platform.ts";
import type { Refusal } from "./rename.ts";

export interface NewHouse {
  /** The folder's URI without a closing slash. */
  readonly folder: string;
  readonly name: string;
  /** Two letters; empty for one that is not listed. */
  readonly country: string;
}

export interface WrittenHouse {
  readonly edit: WorkspaceEdit;
  /** Where the first spec's name stands, to be typed over. */
  readonly open: { readonly uri: string; readonly position: Position };
}

/** Countries that a standard drink is known of, with their money: ISO 3166-1 and ISO 4217. */
const currencies: Readonly<Record<string, string>> = {
  ...{ AT: "EUR", AU: "AUD", CA: "CAD", CH: "CHF", CL: "CLP", CN: "CNY", DE: "EUR", DK: "DKK", EE: "EUR", ES: "EUR", FI: "EUR" },
  ...{ FR: "EUR", GB: "GBP", HK: "HKD", HR: "EUR", HU: "HUF", IE: "EUR", IN: "INR", IS: "ISK", IT: "EUR", JP: "JPY", LU: "EUR" },
  ...{ NL: "EUR", NO: "NOK", NZ: "NZD", PL: "PLN", PT: "EUR", SE: "SEK", SG: "SGD", US: "USD", VN: "VND" },
};

export interface CountryChoice {
  readonly country: string;
  readonly label: string;
  readonly description: string;
}

/** What can be chosen, by name, and last a country that is not listed. */
export function countryChoices(): CountryChoice[] {
  const listed = Object.entries(currencies).map(([country, currency]) => {
    return { country, label: countryNames.of(country) ?? country, description: `${country}, ${currency}` };
  });
  const other = { country: "", label: "Another country", description: "its two letters and its currency can be added to the house" };
  return [...listed.sort((one, another) => (one.label < another.label ? -1 : 1)), other];
}

/** Why a folder cannot have a new house; absent where it can. */
export function whyNoHouse(house: House, folder: string): Refusal | undefined {
  for (const { uri, tree, margins } of house.documents()) {
    const index = margins ? -1 : tree.entries.findIndex(({ kind }) => kind === "house");
    if (index < 0 || folderOf(uri) !== folder) continue;
    return {
      because: `This folder has a house already: line ${tree.starts[index]! + 1} of ${fileNameOf(uri)}. Two in one folder would contradict each other.`,
    };
  }
  return undefined;
}

export function newHouse(house: House, asked: NewHouse): WrittenHouse | Refusal {
  const refusal = whyNoHouse(house, asked.folder);
  if (refusal) return refusal;
  const name = asked.name.trim();
  if (!name || /[\r\n"“”#]/.test(name))
    return { because: `“${asked.name}” is no name: it needs a word, and neither line breaks, quotation marks nor “#”.` };
  const files = [
    { uri: freeName(house, asked.folder, "house"), text: houseText(name, asked.country) },
    { uri: freeName(house, asked.folder, "drinks"), text: drinksText(asked.country) },
    { uri: freeName(house, asked.folder, "menu"), text: menuText(asked.country) },
  ];
  const documentChanges = files.flatMap(({ uri, text }) => [
    { kind: "create" as const, uri, options: { overwrite: false, ignoreIfExists: false } },
    { textDocument: { uri, version: null }, edits: [{ range: { start: fileStart, end: fileStart }, newText: text }] },
  ]);
  const drink = files[1]!;
  const line = drink.text.split("\n").findIndex((one) => one.startsWith("drink "));
  return { edit: { documentChanges }, open: { uri: drink.uri, position: { line, character: "drink ".length } } };
}

const fileStart: Position = { line: 0, character: 0 };

/** `house.drink`, or with a number where that is taken. */
function freeName(house: House, folder: string, stem: string): string {
  for (let number = 1; ; number++) {
    const uri = `${folder}/${stem}${number === 1 ? "" : `-${number}`}.drink`;
    if (!house.document(uri)) return uri;
  }
}

const inOunces = (country: string) => country === "US";

function houseText(name: string, country: string): string {
  const currency = currencies[country];
  return [
    "# What holds for every drink in this folder and below it.",
    "",
    `house ${name}`,
    ...(country ? [`  country: ${country}`] : []),
    ...(currency ? [`  currency: ${currency}`] : []),
    ...(inOunces(country) ? ["  units: oz", "  jigger: 0.25 oz"] : ["  units: ml", "  jigger: 2.5 ml"]),
    "  freezer: -18 C",
    "  fridge: 4 C",
    "",
    "# What is bought. The built-in larder knows gin too, within a range: the label's own strength is exact.",
    "stock gin",
    "  kind: spirit",
    "  abv: 41 %",
    "",
    "# What is made here.",
    "prep honey syrup",
    "  2 parts honey",
    "  1 part water, hot",
    "  parts by: weight",
    "  keeps: 14 days chilled",
    "  steps:",
    "    Stir until it is clear, then cool.",
    "",
  ].join("\n");
}

function drinksText(country: string): string {
  const [spirit, sour, sweet] = inOunces(country) ? ["2 oz", "0.75 oz", "0.5 oz"] : ["50 ml", "22.5 ml", "15 ml"];
  return [
    "# A first spec. Point at its name for its figures, change an amount and see them change.",
    "",
    `drink ${firstDrink}`,
    "  family: sour",
    "  glass: coupe, chilled",
    "  method: shake 12 s; fine strain",
    "  garnish: lemon zest",
    "",
    `  ${spirit} gin`,
    `  ${sour} lemon juice`,
    `  ${sweet} honey syrup`,
    "",
    "# A riff names its parent and says only what is different.",
    `drink ${firstDrink}, Late`,
    `  from: ${firstDrink}`,
    "  swap gin for aged rum",
    "",
  ].join("\n");
}

const firstDrink = "First Ferry";

function menuText(country: string): string {
  const price = inOunces(country) ? "14.00" : "12.00";
  return ["menu Card", "  section To start", `  - ${firstDrink} ${price}`, `  - ${firstDrink}, Late ${price}`, ""].join("\n");
}
