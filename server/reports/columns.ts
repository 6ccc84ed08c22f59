/** The columns of the tables that `export` writes and `import` reads: one row each. The fields' own come from the table of fields. */
import { type EntryKind, type Field, fields, fieldsOf } from "../../grammar/fields.ts";

export interface Column {
  readonly name: string;
  readonly doc: string;
  readonly example: string;
  /** Its cells are the values of a field. */
  readonly field?: Field;
}

export type TableName = "stock" | "specs";

const own = (name: string, example: string, doc: string): Column => ({ name, example, doc });
const ofField = (field: Field): Column => ({ name: field.name, example: field.example, doc: field.doc, field });

/** What most entries have comes first, the rest as in the table of fields. */
function inOrder(first: readonly string[]): (one: Field, other: Field) => number {
  const place = ({ name }: Field) => (first.includes(name) ? first.indexOf(name) : first.length);
  return (one, other) => place(one) - place(other);
}

/** What a line of a drink or a prep may be, as the column `line` says it; an empty cell is a pour. */
export const lineWords = ["pour", "or", "swap", "without", "without all", "comment", "head", "as written"] as const;
export type LineWord = (typeof lineWords)[number];

const stockColumns: readonly Column[] = [
  own("name", "aged rum", "What it is called. Of a row without one only comments are made."),
  ...[...fieldsOf("stock")]
    .sort(inOrder(["kind", "abv", "sugar", "acid", "price", "keeps", "stored", "allergens", "diet", "status"]))
    .map(ofField),
  own("remark", "the open bottle", "The comment behind the name."),
  own(
    "other lines",
    "# by the case",
    "Whatever else the entry says, as it is written, a line each: comments, and fields that no column has.",
  ),
];

const specColumns: readonly Column[] = [
  own("drink", "Lantern Sour", "The drink that the row belongs to. Rows of one name are one drink, wherever they stand."),
  own("prep", "sugar syrup", "Or the prep. A row with neither goes on with the one above."),
  own("line", "or", `What the row is: ${lineWords.map((word) => `\`${word}\``).join(", ")}. An empty cell is a pour.`),
  own("how", "top", "A word before the amount: `top`, `top to`, `to`, `rinse`, `some`."),
  own("amount", "22.5", "The number: `50`, `1 1/2`, `10 to 15`, `about 3`."),
  own("unit", "ml", "Its unit; a count has none."),
  own("ingredient", "lemon juice", "What is poured, or taken out."),
  own("modifiers", "frozen, muddled", "What stands behind its comma."),
  own("instead of", "aged rum", "In a `swap`: what goes out."),
  own("remark", "to taste in June", "The comment behind the line; all of a `comment`, and of a line `as written`."),
  ...fields
    .filter(({ entries }) => entries.includes("drink") || entries.includes("prep"))
    .sort(
      inOrder(["from", "family", "glass", "ice", "method", "garnish", "rim", "serves", "parts by", "yield", "keeps", "price", "status"]),
    )
    .map(ofField),
];

/** In the order in which they are written; read in any. */
export const columns: Readonly<Record<TableName, readonly Column[]>> = {
  stock: stockColumns,
  specs: specColumns.filter((column, index) => specColumns.findIndex(({ name }) => name === column.name) === index),
};

/** The table that an entry of this kind goes into. */
export function tableOf(kind: EntryKind): TableName {
  return kind === "stock" ? "stock" : "specs";
}
