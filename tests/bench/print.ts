/** Writes generated houses out: as specs, and as JSON documents of the same content with their schema. */
import type { Entry, Pour } from "./house.ts";

export function printSpecs(entries: readonly Entry[]): string {
  return entries.map(printSpec).join("\n");
}

export function printJson(entries: readonly Entry[]): string {
  return `${JSON.stringify({ entries: entries.map(jsonOf) }, null, 2).replace(pourLines, (lines) => lines.replace(/\s+/g, " "))}\n`;
}

/** What the JSON server checks the documents against: as much as a schema can say of the language. */
export function schemaFor(shared: readonly Entry[], entries: readonly Entry[]): object {
  const ingredients = shared.filter(({ kind }) => kind === "stock" || kind === "prep").map(({ name }) => name);
  const fields = [...new Set(entries.flatMap((entry) => entry.fields.map(([name]) => name)))];
  const value = { anyOf: [{ type: "string" }, { type: "array", items: { type: "string" } }] };
  const object = (properties: object, ...required: string[]) => ({ type: "object", properties, required, additionalProperties: false });
  const list = (items: object) => ({ type: "array", items });
  const ingredient = { enum: ingredients };
  return object(
    {
      entries: list(
        object(
          {
            kind: { enum: ["house", "stock", "prep", "glass", "drink", "menu"] },
            name: { type: "string", minLength: 1 },
            ...Object.fromEntries(fields.map((name) => [name, value])),
            pours: list(
              object(
                {
                  amount: { type: "number", minimum: 0, maximum: 500 },
                  unit: { enum: ["ml", "dashes", "part", "parts", ""] },
                  of: ingredient,
                  notes: list({ type: "string" }),
                },
                "amount",
                "unit",
                "of",
              ),
            ),
            swaps: list(object({ out: ingredient, in: ingredient }, "out", "in")),
            listed: list(object({ name: { type: "string" }, price: { type: "string", pattern: "^\\d+\\.\\d\\d$" } }, "name", "price")),
          },
          "kind",
          "name",
        ),
      ),
    },
    "entries",
  );
}

/** Where a pour in ml can be edited: offsets into a printed text. */
export interface PourSpot {
  /** Before the first digit of the amount. */
  readonly number: number;
  /** After the last letter of the ingredient's name. */
  readonly name: number;
}

/** Pours of 10 ml and more: a digit too many makes them larger than any glass. */
export function findPours(text: string, format: "specs" | "json"): PourSpot[] {
  const pattern =
    format === "specs" ? /^( {2})\d{2,3}(?:\.5)? ml ([a-z ]+)/gm : /(\{ "amount": )\d{2,3}(?:\.5)?, "unit": "ml", "of": "([a-z ]+)/g;
  return Array.from(text.matchAll(pattern), (match) => ({
    number: match.index + match[1]!.length,
    name: match.index + match[0].length,
  }));
}

function printSpec(entry: Entry): string {
  const lines = [`${entry.kind} ${entry.name}`];
  for (const [name, value] of entry.fields)
    if (typeof value === "string") lines.push(`  ${name}: ${value}`);
    else lines.push(`  ${name}:`, ...value.map((line) => `    ${line}`));
  for (const pour of entry.pours ?? []) lines.push(printPour(pour));
  for (const swap of entry.swaps ?? []) lines.push(`  swap ${swap.out} for ${swap.in}`);
  for (const { name, price } of entry.listed ?? []) lines.push(`  - ${name} ${price}`);
  return `${lines.join("\n")}\n`;
}

function printPour({ amount, unit, of, notes = [] }: Pour): string {
  return `  ${[amount, unit, of].filter((word) => word !== "").join(" ")}${notes.map((note) => `, ${note}`).join("")}`;
}

/** The innermost objects on one line each, as a person lays out such a list. */
const pourLines = /\{\s*"(?:amount|out|name": "[^"]*",\s*"price)"[^{}]*\}/g;

function jsonOf({ kind, name, fields, pours, swaps, listed }: Entry): object {
  const inOrder = pours?.map(({ amount, unit, of, notes }) => ({ amount, unit, of, notes }));
  return { kind, name, ...Object.fromEntries(fields), pours: inOrder, swaps, listed };
}
