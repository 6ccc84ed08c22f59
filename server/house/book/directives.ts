/**
 * What can be said in a book's text by a directive: a value in running prose, a spec, a part that is
 * put together from the whole book. Hover, completion, checks and the build read this table.
 */
import type { Directive } from "../../../grammar/tree.ts";
import type { NameClass } from "../names.ts";
import { valueRows } from "./values.ts";

export interface DirectiveRow {
  readonly name: string;
  readonly block: boolean;
  /** What the label names; empty where it takes none. */
  readonly of: readonly NameClass[];
  /** The attributes that it takes, each with what it does. */
  readonly attributes: readonly {
    readonly name: string;
    readonly doc: string;
    readonly needed?: boolean;
    readonly values?: readonly string[];
  }[];
  readonly doc: string;
  readonly example: string;
}

const recipes = ["drink", "ingredient"] as const;

const speaking: DirectiveRow["attributes"] = [
  { name: "words", doc: "Numbers in words: twenty-five millilitres." },
  { name: "figures", doc: "Numbers in figures: 25 ml." },
  { name: "units", doc: "In which units, other than the book's first.", values: ["metric", "US", "both"] },
];

const within: DirectiveRow["attributes"] = [{ name: "in", doc: "The drink or the prep that pours it.", needed: true }];

const inText: readonly DirectiveRow[] = [
  ...valueRows.map(
    ({ name, of, doc, example }): DirectiveRow => ({
      name,
      block: false,
      of,
      doc,
      example,
      attributes: name === "pour" ? [...within, ...speaking] : speaking,
    }),
  ),
  {
    name: "see",
    block: false,
    of: recipes,
    attributes: [{ name: "as", doc: "Other words to stand for the name." }],
    doc: "The name of a recipe of the book, as a link to it.",
    example: ":see[Lantern Sour]",
  },
];

const part = (name: string, doc: string, attributes: DirectiveRow["attributes"] = []): DirectiveRow => ({
  name,
  block: true,
  of: [],
  attributes,
  doc,
  example: `::${name}${attributes[0]?.values ? `{${attributes[0].name}=${attributes[0].values[0]}}` : ""}`,
});

const blocks: readonly DirectiveRow[] = [
  {
    name: "spec",
    block: true,
    of: recipes,
    attributes: [],
    doc: "A recipe that is written elsewhere, printed here.",
    example: "::spec[Lantern Sour]",
  },
  part("contents", "The table of contents."),
  part("index", "An index of the recipes.", [
    { name: "by", doc: "What it is sorted by.", needed: true, values: ["spirit", "family", "ingredient", "strength"] },
  ]),
  part("recipes", "A table of every recipe with its figures."),
  part("allergens", "A table of the recipes with the allergens in them."),
  part("equipment", "The glasses and tools that the book tells the reader to have."),
  part("units", "A note on the book's units."),
  part("responsible-service", "A note on responsible service."),
];

export const directiveRows: readonly DirectiveRow[] = [...inText, ...blocks];

/** The row that a directive means; absent for one that means nothing here. */
export function rowOf({ name, block }: Pick<Directive, "name" | "block">): DirectiveRow | undefined {
  return directiveRows.find((row) => row.name === name.text && row.block === block);
}

/** What an attribute says; an empty text for one without a value. */
export function attributeOf({ attributes }: Directive, name: string): string | undefined {
  const found = attributes.find((one) => one.name.text === name);
  return found && (found.value?.text ?? "");
}
