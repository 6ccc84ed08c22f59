/** The forms of fields whose values have more than one part: by entry and field, by field, or by shape. */
import { type EntryKind, type Field, findField, type Shape } from "../../../grammar/fields.ts";
import type { FieldLine } from "../../../grammar/tree.ts";
import { acidKinds, sugarNames } from "../../engine/plan.ts";
import { severities } from "../../house/settings.ts";
import { showList } from "../../house/show.ts";
import { glassWords } from "../completion/glass-words.ts";
import { code, paragraphs } from "../markdown.ts";
import { type Form, type Part, partAt } from "./form.ts";

interface Row {
  /** What stands behind the field's name. */
  readonly label: string;
  readonly parts: readonly Part[];
  /** Reads any beginning of an item; its groups are the parts. */
  readonly reads: RegExp;
}

/** A content that says of what it is. */
const content = (label: string, doc: string): Row => ({
  label: `AMOUNT ${label}`,
  parts: [
    { label: "AMOUNT", doc: "By weight, `g/100 g`, or by volume, `g/100 ml`." },
    { label, doc },
  ],
  reads: /^([^\p{L}]*(?:m?g\/(?:100 ?(?:ml|g)|l))?)(?:\s+(\p{L}.*)?)?/du,
});

const byShape: Partial<Record<Shape, Row>> = {
  window: {
    label: "LOW to HIGH",
    parts: [
      { label: "LOW", doc: "The lower end." },
      { label: "HIGH", doc: "The upper end, with the unit of both." },
    ],
    reads: /^([\d.]*)(?:\s*(?:\bto\b|[-–])\s*(.*))?/du,
  },
  temperature: {
    label: "DEGREES SCALE",
    parts: [
      { label: "DEGREES", doc: "With a minus in front below zero." },
      { label: "SCALE", doc: "`C` or `F`." },
    ],
    reads: /^([-−]?[\d.]*)(?:\s*(°?[CF].*))?/du,
  },
  price: {
    label: "AMOUNT per QUANTITY",
    parts: [
      { label: "AMOUNT", doc: "In the house's currency, or with a sign or a code of its own." },
      { label: "QUANTITY", doc: "What that buys: a volume, a weight, packs as in `6 x 200 ml`, or a number of pieces." },
    ],
    reads: /^((?:[A-Z]{3}\s+|\p{Sc}\s*)?[\d.]*(?:\s?(?:\p{Sc}|[A-Z]{3}\b))?)(?:\s*(?:\bper\b|\/)\s*(.*))?/du,
  },
  date: {
    label: "YEAR-MONTH-DAY",
    parts: [
      { label: "YEAR", doc: "In four digits." },
      { label: "MONTH", doc: "In two digits." },
      { label: "DAY", doc: "In two digits." },
    ],
    reads: /^(\d*)(?:-(\d*))?(?:-(\d*))?/d,
  },
  severity: {
    label: "RULE SEVERITY",
    parts: [
      { label: "RULE", doc: "Its code, as a finding shows it." },
      { label: "SEVERITY", doc: `One of: ${severities.map(code).join(", ")}.` },
    ],
    reads: /^(\S*)(?:\s+(\S*))?/d,
  },
};

/** By entry and field, or by field; `null` where the field's shape says too much. */
const byName: Readonly<Record<string, Row | null>> = {
  // A drink is sold whole.
  "drink price": null,
  "stock acid": content("ACID", `Titrated: \`as citric\`. Weighed, the acid: ${showList(acidKinds.map(code), acidKinds.length)}.`),
  "stock sugar": content("SUGAR", `Which one, where that is known: ${showList(sugarNames.map(code), sugarNames.length)}.`),
  keeps: {
    label: "TIME PLACE",
    parts: [
      { label: "TIME", doc: "Days, weeks or months." },
      { label: "PLACE", doc: "`chilled` or `frozen`, where it has to be." },
    ],
    reads: /^(\d*\s*\p{L}*)(?:\s+(\p{L}*))?/du,
  },
  each: {
    label: "FORM AMOUNT",
    parts: [
      { label: "FORM", doc: "The piece that is counted; left out where it is the whole." },
      { label: "AMOUNT", doc: "What one weighs or holds." },
    ],
    reads: /^(\p{L}[\p{L} ]*?)?\s*(\d.*)?$/du,
  },
  garnish: {
    label: "COUNT NAME, NOTE",
    parts: [
      { label: "COUNT", doc: "How many; left out where it is one." },
      { label: "NAME", doc: "A stock or a prep costs money and carries its allergens; any other words are kept and printed." },
      { label: "NOTE", doc: "How it is put on." },
    ],
    reads: /^([\d./½¼¾⅓⅔]+(?=\s|$))?\s*([^,]*)(?:,(.*))?/du,
  },
  glass: {
    label: "GLASS, HOW",
    parts: [
      { label: "GLASS", doc: "One that is declared: its size counts." },
      { label: "HOW", doc: `How it comes: ${glassWords.map(({ word }) => (word === "at" ? "`at -8 C`" : code(word))).join(", ")}.` },
    ],
    reads: /^([^,]*)(?:,(.*))?/d,
  },
};

/** The form of a field's value at a column; absent where it says no more than the field's name does. */
export function fieldForm(line: FieldLine, kind: EntryKind, text: string, column: number): Form | undefined {
  const field = findField(line.name.text, kind);
  const row = field && rowOf(field, kind);
  if (!row) return undefined;
  const { start, item } = itemAt(line, text, column);
  const indices = row.reads.exec(item)?.indices ?? [];
  const spans = row.parts.map((_part, index) => {
    const at = indices[index + 1];
    return at && { start: start + at[0], end: start + at[1] };
  });
  return {
    label: `${field.name}: ${row.label}`,
    doc: paragraphs(field.doc, `Example: ${code(`${field.name}: ${field.example}`)}`),
    parts: row.parts,
    active: partAt(spans, column),
  };
}

function rowOf({ name, shape }: Field, kind: EntryKind): Row | null | undefined {
  const own = byName[`${kind} ${name}`];
  return own === undefined ? (byName[name] ?? byShape[shape]) : own;
}

/** The item that a column of a field's line is in, up to its `;`, from where it says something on. */
export function itemAt({ name, value }: FieldLine, text: string, column: number): { readonly start: number; readonly item: string } {
  const from = text.indexOf(":", name.end) + 1;
  const first = Math.max(from, text.lastIndexOf(";", column - 1) + 1);
  const [whole = ""] = text.slice(first, Math.max(value?.end ?? from, column)).split(";");
  const item = whole.trimStart();
  return { start: Math.min(first + whole.length - item.length, column), item };
}
