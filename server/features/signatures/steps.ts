/** The form of a step of a method: what its technique may be told, in any order. Read off the table of techniques. */
import { findField } from "../../../grammar/fields.ts";
import type { FieldLine, Item, Quantity, Span } from "../../../grammar/tree.ts";
import type { Technique } from "../../engine/technique.ts";
import { techniques } from "../../engine/techniques.ts";
import { iceNamedIn, techniqueOf } from "../../house/method.ts";
import { showNumber, showWeight } from "../../house/show.ts";
import { describeTechnique } from "../hovers/step.ts";
import { code, paragraphs } from "../markdown.ts";
import { itemAt } from "./fields.ts";
import { type Form, type Part, partAt } from "./form.ts";

interface Row {
  readonly label: string;
  /** In front of the label. */
  readonly word?: string;
  readonly takenBy: (technique: Technique) => boolean;
  readonly doc: (technique: Technique) => string;
  readonly find: (item: Item, quantities: readonly Quantity[]) => Span | undefined;
}

const isIce = (technique: Technique) => technique.chill !== undefined || technique.process?.strains === true;

/** In the order in which they read best. One row each. */
const told: readonly Row[] = [
  {
    label: "TIME",
    takenBy: ({ chill }) => chill !== undefined,
    doc: ({ chill }) =>
      `How long${chill?.roundS ? ", or so many times: `6 times`" : ""}; ${usualTime(chill!.usualS)} where nothing is said.`,
    find: (_item, all) => all.find(({ unit }) => unit?.unit.dimension === "time" || unit?.unit.id === "times"),
  },
  {
    label: "SHARE",
    takenBy: ({ dilutes }) => dilutes === true,
    doc: () => "Of its volume: `25 %`.",
    find: (_item, all) => all.find(({ unit }) => unit?.unit.id === "%"),
  },
  {
    label: "VOLUMES",
    word: "to",
    takenBy: ({ id }) => id === "carbonate",
    doc: () => "Of gas in one of it: `3 vol`.",
    find: (_item, all) => all.find(({ unit }) => unit?.unit.id === "vol"),
  },
  {
    label: "AMOUNT",
    word: "to",
    takenBy: (technique) => technique.process?.boils === true,
    doc: () => "What is left: `300 ml`, `250 g`; or `by half` in its place.",
    find: ({ start, text }, all) =>
      all.find(({ unit }) => unit?.unit.dimension === "volume" || unit?.unit.dimension === "mass") ??
      spanOf(/\bby\s+\S+/i.exec(text), start),
  },
  {
    label: "TEMPERATURE",
    word: "at",
    takenBy: ({ brings }) => brings !== undefined,
    doc: ({ brings }) => `In \`C\` or \`F\`${brings === "stated" ? "." : `; that of the ${brings} where nothing is said.`}`,
    find: (_item, all) => all.find(({ unit }) => unit?.unit.dimension === "temperature"),
  },
  {
    label: "ICE",
    takenBy: isIce,
    doc: ({ chill }) =>
      `By its name, with its weight where that is known: \`120 g crushed ice\`.${chill ? ` Without a weight ${showWeight(chill.iceG)}${chill.drunk ? ", and all of it is drunk" : ""}.` : ""}`,
    find: (item) => iceNamedIn(item),
  },
];

/** Absent for a technique that is told nothing, and for what no table knows. */
export function stepForm(line: FieldLine, text: string, column: number): Form | undefined {
  const { start, item: typed } = itemAt(line, text, column);
  const technique = techniqueOf(typed);
  if (!technique) return techniques.some(({ words }) => words.some((one) => one.startsWith(typed.toLowerCase()))) ? anyStep() : undefined;
  const rows = told.filter(({ takenBy }) => takenBy(technique));
  if (rows.length === 0) return undefined;
  const item = line.items.find((one) => one.start <= start && start <= one.end);
  const quantities = item?.parts.flatMap((part) => part.quantities) ?? [];
  return {
    label: [technique.words[0], ...rows.flatMap((row) => [wordOf(row, technique), row.label])].filter(Boolean).join(" "),
    doc: describeTechnique({ technique }),
    parts: rows.map(({ label, doc }): Part => ({ label, doc: doc(technique) })),
    active: partAt(
      rows.map(({ find }) => item && find(item, quantities)),
      column,
    ),
  };
}

/** Ice that the drink is made with, or that it goes over. */
function wordOf({ label, word }: Row, technique: Technique): string | undefined {
  return label === "ICE" ? (technique.iceInGlass || technique.process ? "over" : "with") : word;
}

/** Before a technique is there. */
function anyStep(): Form {
  const { name, example, doc } = findField("method")!;
  return {
    label: "TECHNIQUE TIME with ICE; NEXT",
    doc: paragraphs(doc, `Example: ${code(`${name}: ${example}`)}`),
    parts: [
      { label: "TECHNIQUE", doc: "How it is done; what no table knows is kept, printed, and changes no number." },
      { label: "TIME", doc: "And what else the technique is told." },
      { label: "ICE", doc: "By its name." },
      { label: "NEXT", doc: "The next step." },
    ],
    active: 0,
  };
}

function usualTime(seconds: number): string {
  return `${showNumber(seconds)} s`;
}

function spanOf(match: RegExpExecArray | null, offset: number): Span | undefined {
  return match ? { start: offset + match.index, end: offset + match.index + match[0].length } : undefined;
}
