/** What one entry pours and writes, as it stands there: names and amounts as text, whatever they mean. */
import type { Entry, Item, Pour, Quantity } from "../../grammar/tree.ts";
import { pourOn } from "./entry.ts";
import { unitText } from "./measurable.ts";
import { fold } from "./names.ts";
import { candidates, unquoted } from "./scope.ts";

/** What a riff is of is found apart from what it pours. */
export const fromKey = "from|";

/** What one entry says that is counted. */
export interface Written {
  readonly pours: readonly { readonly key: string; readonly name: string; readonly amount: string }[];
  readonly words: readonly { readonly field: string; readonly text: string }[];
  readonly units: readonly string[];
}

const remembered = new WeakMap<Entry, Written>();

/** Found out once for each entry. */
export function writtenIn(entry: Entry): Written {
  let written = remembered.get(entry);
  if (!written) {
    written = readEntry(entry);
    remembered.set(entry, written);
  }
  return written;
}

/** The fields whose texts are counted: under which word, and what of them. One row each. */
const writtenFields: Readonly<Record<string, Readonly<Record<string, "value" | "items" | "qualifiers" | "parts" | "per">>>> = {
  season: { season: "value" },
  credit: { credit: "value" },
  origin: { origin: "value" },
  keeps: { keeps: "items" },
  method: { method: "items" },
  garnish: { garnish: "items", "garnish,": "qualifiers" },
  rim: { rim: "items", "rim,": "qualifiers" },
  tags: { tags: "parts" },
  price: { "price per": "per" },
};

function readEntry(entry: Entry): Written {
  const pours: Written["pours"][number][] = [];
  const words: Written["words"][number][] = [];
  const units: string[] = [];
  const pouring = entry.kind === "drink" || entry.kind === "prep";
  for (const { content, problem } of entry.lines) {
    if (content.kind === "section" && content.title) words.push({ field: "section", text: content.title.text });
    else if (content.kind === "field") {
      const field = content.name.text.toLowerCase();
      words.push({ field: "fields", text: field });
      if (field === "from" && content.value && pouring)
        pours.push({ key: fromKey + fold(content.value.text), name: content.value.text, amount: "" });
      for (const [as, what] of Object.entries(writtenFields[field] ?? {})) {
        for (const text of textsOf(what, content.items, content.value?.text)) words.push({ field: as, text });
      }
    } else if (pouring) {
      const pour = pourOn(content);
      if (!pour?.name) continue;
      const unit = pour.quantity?.unit?.unit.id;
      if (unit) units.push(unit);
      const amount = problem ? "" : amountOf(pour);
      const names = pour.name.quoted ? [unquoted(pour.name)] : [...candidates(pour.name)].map(({ text }) => text);
      for (const name of names) pours.push({ key: fold(name), name, amount });
    }
  }
  return { pours, words, units };
}

function textsOf(what: "value" | "items" | "qualifiers" | "parts" | "per", items: readonly Item[], value = ""): string[] {
  if (value.toLowerCase() === "none") return [];
  if (what === "value") return value ? [value] : [];
  if (what === "items") return items.map(({ text }) => text);
  if (what === "per") return /\bper\s.+$/i.exec(value)?.slice(0, 1) ?? [];
  return items.flatMap(({ parts }) => (what === "parts" ? parts : parts.slice(1)).map(({ text }) => text));
}

function amountOf({ lead, quantity, turned }: Pour): string {
  if (turned) return quantity ? quantityText(quantity) : "";
  return [lead?.text.toLowerCase(), quantity && quantityText(quantity)].filter(Boolean).join(" ");
}

/** An amount as it is written, in one spelling: empty where it cannot be computed. */
export function quantityText({ about, numeral, unit, value }: Quantity): string {
  if (value === undefined) return "";
  const amount = unit ? ` ${unitText(unit.unit, unit.text, value)}` : "";
  return `${about ? `${about.text} ` : ""}${numeral.text}${amount}`;
}
