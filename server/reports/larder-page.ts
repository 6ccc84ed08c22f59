/** The reference page of the larder: every built-in entry with its figures, their ranges and their sources. */
import { type EntryKind, stockKinds } from "../../grammar/fields.ts";
import type { Entry } from "../../grammar/tree.ts";
import { findFieldIn, linesOf } from "../house/entry.ts";
import type { House } from "../house/house.ts";
import { fold } from "../house/names.ts";
import { assessPrepEntry } from "../house/prep.ts";
import { showFigure } from "../house/show.ts";
import { readLarder } from "../larder/larder.ts";
import { printBetween, printTable } from "./markers.ts";

/** The page with its lists printed anew from the larder's own texts; the rest stays as it is. */
export function larderPage(page: string, house: House): string {
  const entries = readLarder().flatMap(({ tree }) => tree.entries);
  const of = (kind: EntryKind) => entries.filter((entry) => entry.kind === kind);
  const lists = {
    count: countOf(of("stock"), of("prep")),
    stocks: stockKinds.map((kind) => stockList(kind, of("stock"))).join("\n\n"),
    preps: prepList(of("prep"), house),
    families: plainList(of("family"), ["strength", "sugar", "acid", "ratio", "salt"]),
    glasses: plainList(of("glass"), ["holds", "washline", "stored"]),
    ice: plainList(of("ice"), ["kind", "weight", "temperature"]),
  };
  return Object.entries(lists).reduce((done, [name, list]) => printBetween(done, name, list), page);
}

function countOf(stocks: readonly Entry[], preps: readonly Entry[]): string {
  return `${stocks.length} ingredients of ${stockKinds.length} kinds, and ${preps.length} that a bar makes itself.`;
}

/** The figures that have a column; those after them share one. */
const columns = [
  ["abv", "strength"],
  ["sugar", "sugar"],
  ["brix", "sugar"],
  ["acid", "acid"],
] as const;
const others = ["salt", "solids", "fat", "caffeine", "density", "dash", "drop", "each", "yield", "fizz"] as const;
const words = ["allergens", "diet"] as const;

function stockList(kind: string, stocks: readonly Entry[]): string {
  const isGeneric = (entry: Entry) => fold(entry.name?.text ?? "") === fold(kind);
  const ofKind = stocks.filter((entry) => textIn(entry, "kind") === kind);
  const rows = [...ofKind.filter(isGeneric), ...ofKind.filter((entry) => !isGeneric(entry))].map(stockRow);
  return `### ${kind}\n\n${printTable(["ingredient", "strength", "sugar", "acid", "more", "allergens; diet", "from"], rows)}`;
}

function stockRow(entry: Entry): string[] {
  const sugar = textIn(entry, "sugar") ?? (textIn(entry, "brix") ? `${textIn(entry, "brix")} °Bx` : "");
  const more = others.flatMap((name) => labelled(entry, name));
  return [
    nameOf(entry),
    textIn(entry, "abv") ?? "",
    sugar,
    textIn(entry, "acid") ?? "",
    more.join("; "),
    words
      .map((name) => textIn(entry, name) ?? "")
      .filter(Boolean)
      .join("; "),
    sourcesOf(entry, [...columns, ...others.map((name) => [name, name] as const), ...words.map((name) => [name, name] as const)]),
  ];
}

function labelled(entry: Entry, name: string): string[] {
  const text = textIn(entry, name);
  return text === undefined || /^0 /.test(text) ? [] : [`${name} ${text}`];
}

/** Which figures stand on which source, as noted beside their lines. */
function sourcesOf(entry: Entry, fields: readonly (readonly [field: string, label: string])[]): string {
  const bySource = new Map<string, string[]>();
  for (const [field, label] of fields) {
    const at = findFieldIn(entry, field);
    const source = at && entry.lines[at.line]?.comment?.text.replace(/^#\s*/, "");
    if (source) bySource.set(source, [...(bySource.get(source) ?? []), label]);
  }
  return [...bySource].map(([source, labels]) => `${labels.join(", ")}: ${source}`).join(" · ");
}

function prepList(preps: readonly Entry[], house: House): string {
  const rows = preps.map((entry) => {
    const outcome = assessPrepEntry(house, entry);
    const by = textIn(entry, "parts by");
    const parts = [...linesOf(entry, "pour")].map(({ content }) => entry.lines.find((line) => line.content === content)!.text.trim());
    const figures = [
      `${showFigure(outcome.figure("brix"))} °Bx`,
      showFigure(outcome.figure("sugarGPer100Ml"), "g sugar/100 ml"),
      showFigure(outcome.figure("acidGPer100G"), "g acid/100 g"),
      showFigure(outcome.figure("densityGPerMl"), "g/ml"),
    ];
    return [nameOf(entry), parts.join("; ") + (by ? `, by ${by}` : ""), figures.filter((text) => !text.startsWith("0 ")).join("; ")];
  });
  return printTable(["prep", "made of", "computed"], rows);
}

function plainList(entries: readonly Entry[], fields: readonly string[]): string {
  const rows = entries.map((entry) => [
    nameOf(entry),
    ...fields.map((name) => textIn(entry, name) ?? ""),
    sourcesOf(
      entry,
      fields.map((name) => [name, name]),
    ) ||
      (textIn(entry, "note") ?? ""),
  ]);
  return printTable(["name", ...fields, "from"], rows);
}

/** Its name, and what else it is called. */
function nameOf(entry: Entry): string {
  const also = textIn(entry, "aka");
  return `**${entry.name?.text}**${also ? ` (${also})` : ""}`;
}

function textIn(entry: Entry, field: string): string | undefined {
  return findFieldIn(entry, field)?.field.value?.text.replaceAll("|", "/");
}
