/** Where the figures of a stock stand: as its entry gives them, or the larder, with the source noted beside the line. */

import type { FieldAt } from "../../house/entry.ts";
import type { House } from "../../house/house.ts";
import type { Ingredient } from "../../house/ingredient.ts";
import { fold } from "../../house/names.ts";
import { showList } from "../../house/show.ts";
import type { StockFacts } from "../../house/stock.ts";
import { asText } from "../markdown.ts";

/** The fields that figures are computed from. One row each. */
const figureFields = [
  { field: "abv", label: "strength", unit: "vol" },
  { field: "sugar", label: "sugar", unit: "" },
  { field: "brix", label: "sugar", unit: "°Bx" },
  { field: "acid", label: "acid", unit: "" },
  { field: "salt", label: "salt", unit: "" },
  { field: "solids", label: "other solids", unit: "" },
  { field: "caffeine", label: "caffeine", unit: "" },
  { field: "density", label: "density", unit: "" },
] as const;

export interface Source {
  readonly label: string;
  readonly value: string;
  /** The house states it itself. */
  readonly stated: boolean;
  /** `stated here`, `the larder's lime juice`, `the larder's any juice`. */
  readonly from: string;
  /** The comment beside the line, where the larder notes its source. */
  readonly note?: string;
}

export function sourcesOf(house: House, facts: StockFacts): Source[] {
  const found: Source[] = [];
  for (const { field, label, unit } of figureFields) {
    const at = facts.field(field);
    if (!at || (field === "brix" && facts.field("sugar"))) continue;
    const text = at.field.value?.text ?? "";
    if (!text) continue;
    const note = at.entry.lines[at.line]?.comment?.text.replace(/^#\s*/, "");
    found.push({
      label,
      value: unit && /[\d%]$/.test(text) && !text.endsWith(unit) ? `${text} ${unit}` : text,
      stated: isStated(house, at),
      from: sourceOf(house, facts, at),
      ...(note && { note }),
    });
  }
  return found;
}

/** One line: what the house states of an ingredient, and what is assumed and from where. What is none is not worth a word. */
export function sourcesInBrief(house: House, { facts, resolution }: Ingredient): string | undefined {
  const entry = resolution.found?.entry;
  if (!facts) return entry?.kind === "prep" ? "Made here: computed from its own pours." : undefined;
  const sources = sourcesOf(house, facts).filter((source) => !isNothing(source));
  const stated = sources.filter((source) => source.stated).map(({ label, value }) => `${label} ${asText(value)}`);
  const assumed = new Map<string, string[]>();
  for (const { stated, from, label } of sources) if (!stated) assumed.set(from, [...(assumed.get(from) ?? []), label]);
  const parts = stated.length > 0 ? [`Stated: ${stated.join(", ")}.`] : [];
  const assumptions = [...assumed].map(([from, labels]) => `${showList(labels, 6)} (${asText(from)})`);
  if (assumptions.length > 0) parts.push(`Assumed: ${assumptions.join(", ")}.`);
  return parts.join(" ") || undefined;
}

/** Whether the figure says that there is none of it. */
export function isNothing({ value }: Source): boolean {
  return value === "none" || (/^0(?: |$)/.test(value) && !/\d (?:to|-) \d/.test(value));
}

function isStated(house: House, at: FieldAt): boolean {
  return !house.isLarder(at.entry);
}

function sourceOf(house: House, facts: StockFacts, at: FieldAt): string {
  if (at.entry === facts.entry) return house.isLarder(at.entry) ? "the larder" : "stated here";
  const name = at.entry.name?.text ?? "";
  if (!house.isLarder(at.entry)) return `${name} in the house above`;
  return fold(name) === fold(facts.name) ? `the larder's ${name}` : `the larder's figure for any ${name}`;
}
