/** The reference page of the language: its lists, printed from the tables that the server reads. */
import { entryKinds, type Field, fieldsOf, type Shape } from "../../grammar/fields.ts";
import { type Dimension, units } from "../../grammar/units.ts";
import { strained } from "../engine/processes.ts";
import { clingingByKind, techniques } from "../engine/techniques.ts";
import { type DirectiveRow, directiveRows } from "../house/book/directives.ts";
import { modifiers } from "../house/modifiers.ts";
import { showNumber } from "../house/show.ts";
import { printBetween, printTable } from "./markers.ts";

/** The page with its lists of fields, units, modifiers, techniques, ice, what is strained out and directives printed anew; the rest stays as it is. */
export function languagePage(page: string): string {
  const lists = {
    fields: fieldLists(),
    units: unitLists(),
    modifiers: modifierList(),
    techniques: techniqueList(),
    ice: iceLists(),
    strained: strainedList(),
    directives: directiveLists(),
  };
  return Object.entries(lists).reduce((done, [name, list]) => printBetween(done, name, list), page);
}

function fieldLists(): string {
  return entryKinds.map((kind) => `### In a ${code(kind)}\n\n${fieldTable(fieldsOf(kind))}`).join("\n\n");
}

/** More words than this stand below the table, which would be wider than any page. */
const mostWordsInTable = 5;

function fieldTable(rows: readonly Field[]): string {
  if (rows.length === 0) return "No fields.";
  const table = printTable(
    ["field", "holds", "example", "what it says"],
    rows.map((field) => [code(field.name), holds(field), code(field.example), field.doc]),
  );
  const long = rows.filter((field) => wordsOf(field).length > mostWordsInTable);
  return [table, ...long.map((field) => `Words of ${code(field.name)}: ${wordsOf(field).map(code).join(", ")}.`)].join("\n\n");
}

function wordsOf(field: Field): readonly string[] {
  return field.choices ?? [];
}

/** What a value of this shape is, in a few words. */
const shapes: Record<Shape, string> = {
  prose: "text, over several lines",
  text: "text",
  name: "a name",
  words: "words",
  choice: "one word",
  items: "a list",
  steps: "steps",
  quantity: "an amount",
  window: "a window",
  percent: "per cent",
  temperature: "a temperature",
  price: "a price",
  content: "a content",
  date: "a date",
  yesno: "`yes` or `no`",
  severity: "a rule and how loud",
};

function holds(field: Field): string {
  const words = wordsOf(field);
  const listed = words.length > 0 && words.length <= mostWordsInTable ? `: ${words.map(code).join(", ")}` : "";
  return `${shapes[field.shape]}${listed}${field.repeats ? "; may repeat" : ""}`;
}

const dimensions: readonly (readonly [Dimension, string])[] = [
  ["volume", "Volumes"],
  ["mass", "Weights"],
  ["part", "Shares of the whole"],
  ["piece", "Pieces"],
  ["temperature", "Temperatures"],
  ["time", "Times"],
  ["share", "Shares"],
  ["other", "Others"],
];

function unitLists(): string {
  return dimensions
    .map(([dimension, title]) => {
      const rows = units.filter((unit) => unit.dimension === dimension);
      return `### ${title}\n\n${printTable(
        ["unit", "also read", "what it is"],
        rows.map((unit) => [code(unit.id), unit.also.map(code).join(", "), unit.doc]),
      )}`;
    })
    .join("\n\n");
}

function modifierList(): string {
  return printTable(
    ["modifier", "what it does"],
    modifiers.map(({ word, doc }) => [code(word), doc]),
  );
}

function techniqueList(): string {
  return printTable(
    ["step", "also read", "what it does", "figures from"],
    techniques.map(({ words: [first, ...also], doc, source }) => [code(first!), also.map(code).join(", "), doc, source]),
  );
}

/** What each technique does with its ice, and each sort of ice with its water. */
function iceLists(): string {
  const chilling = techniques.flatMap(({ words, chill }) => (chill ? [[words[0]!, chill] as const] : []));
  const steps = printTable(
    ["step", "of the way to freezing", "in, s", "time constant, s", "usual time, s", "usual ice, g", "vessel, J/K", "water, ±"],
    chilling.map(([word, chill]) => [
      code(word),
      `${Math.round(chill.alpha * 100)} %`,
      String(chill.settledS ?? chill.usualS),
      String(chill.timeConstantS),
      String(chill.usualS),
      String(chill.iceG),
      String(chill.vesselJPerK),
      `${Math.round(chill.spread * 100)} %`,
    ]),
  );
  const kinds = printTable(
    ["ice", "water that clings to it, beside cubes"],
    Object.entries(clingingByKind).map(([kind, times]) => [kind, `${times} times`]),
  );
  return `${steps}\n\n${kinds}`;
}

/** What a gram of each sort of solid holds back, and what of it goes over that nobody knows. */
function strainedList(): string {
  const rows = Object.entries(strained).map(([sort, { holdsG, gives, watery }]) => [
    sort,
    `${showNumber(holdsG.value - 2 * holdsG.u)} to ${showNumber(holdsG.value + 2 * holdsG.u)} g`,
    [...gives, ...(watery ? ["the water that lowers a strength"] : [])].join(", ") || "nothing that is counted",
  ]);
  return printTable(["strained out", "a gram of it holds back", "leaves an unknown amount of"], rows);
}

/** What stands in running text, and what on a line of its own. */
function directiveLists(): string {
  const list = (block: boolean) =>
    printTable(
      ["directive", "takes", "what it prints"],
      directiveRows
        .filter((row) => row.block === block)
        .map(({ example, attributes, doc }) => [code(example), attributes.map(attributeText).join(", "), doc]),
    );
  return `### In a sentence\n\n${list(false)}\n\n### On a line of its own\n\n${list(true)}`;
}

function attributeText({ name, values, needed }: DirectiveRow["attributes"][number]): string {
  return `${code(values ? `${name}=${values.join("\\|")}` : name)}${needed ? " (needed)" : ""}`;
}

function code(text: string): string {
  return `\`${text}\``;
}
