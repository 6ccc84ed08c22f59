/** The forms of a pour, of what stands in its place, and of a riff's swap. */
import type { Content, Pour, Span } from "../../../grammar/tree.ts";
import { modifiers } from "../../house/modifiers.ts";
import { modifierTexts } from "../../house/scope.ts";
import { lineWords } from "../completion/words.ts";
import { code } from "../markdown.ts";
import { holds } from "../place.ts";
import { type Form, type Part, partAt } from "./form.ts";

const quantity: Part = { label: "QUANTITY", doc: "How much: `50`, `1 1/2`, `10 to 15`, `about 3`." };
const unit: Part = { label: "UNIT", doc: "A measure, a weight or a piece; none where things are counted." };
const poured: Part = { label: "INGREDIENT", doc: "A stock or a prep, or another drink." };
const how: Part = {
  label: "MODIFIERS",
  doc: `Split by commas: ${modifiers.map(({ word }) => code(word)).join(", ")}, or degrees, \`at -18 C\`. Anything else is a note.`,
};
const out: Part = { label: "OLD", doc: "What the parent pours." };
const put: Part = { label: "NEW", doc: "What is poured in its place; without an amount, as much of it." };

/** Absent for what is no pour, and for one that is written the other way round. */
export function pourForm(content: Content, text: string, column: number): Form | undefined {
  switch (content.kind) {
    case "pour":
      return content.pour.turned ? undefined : ofPour(content.pour, column);
    case "or":
      return { ...ofPour(content.pour, column, "or"), doc: `${lineWords.or!} Without an amount, as much of it.` };
    case "swap":
      return ofSwap(content.readings[0], content.word.end, text, column);
    default:
      return undefined;
  }
}

function ofPour(pour: Pour | undefined, column: number, word = pour?.lead?.text ?? ""): Form {
  // Nobody says how much `some` is, and what fills the glass needs no amount.
  const isBare = !pour?.quantity && (pour?.lead?.lead === "top" || pour?.lead?.lead === "some");
  const parts = [...(isBare ? [] : [quantity, unit]), poured, how];
  const spans = spansIn(pour, column);
  return {
    label: [word, isBare ? "" : "QUANTITY UNIT", "INGREDIENT, MODIFIERS"].filter(Boolean).join(" "),
    doc: lineWords[pour?.lead?.lead ?? ""] ?? "So much of this.",
    parts: parts.map((part) => (part === how ? withOwn(pour, column) : part)),
    active: partAt(isBare ? spans.slice(2) : spans, column),
  };
}

function ofSwap(reading: { readonly out: Pour; readonly in: Pour } | undefined, from: number, text: string, column: number): Form {
  const [, gone = ""] = /^\s+(.*?)(?:\sfor\s.*)?$/.exec(text.slice(from, Math.max(column, from))) ?? [];
  const isOut = !/\sfor\s/.test(text.slice(from, column));
  const spans = [isOut ? { start: from, end: column } : { start: from, end: from + gone.length }, ...spansIn(reading?.in, column)];
  return {
    label: "swap OLD for QUANTITY UNIT NEW, MODIFIERS",
    doc: lineWords.swap!,
    parts: [out, quantity, unit, put, withOwn(reading?.in, column)],
    active: isOut ? 0 : partAt(spans, column),
  };
}

/** Where a pour's number, unit, name and modifiers stand; what is not written yet is absent. */
function spansIn(pour: Pour | undefined, column: number): (Span | undefined)[] {
  const { quantity: amount, name } = pour ?? {};
  const comma = name?.quoted ? name.commas.find((at) => at >= name.quoted!.end) : name?.commas[0];
  const start = name?.quoted?.start ?? name?.start;
  const end = comma ?? name?.end;
  return [
    amount && { start: amount.start, end: amount.numeral.end },
    // What is counted has no unit: its name comes next.
    amount?.unit ?? (amount && name ? { start: -1, end: -1 } : undefined),
    start === undefined || end === undefined ? undefined : { start, end },
    comma === undefined ? undefined : { start: comma + 1, end: Math.max(name!.end, column) },
  ];
}

/** The modifier that the column is in says what it means. */
function withOwn(pour: Pour | undefined, column: number): Part {
  const typed = pour?.name && modifierTexts(pour.name, 0).find((one) => holds(one, column));
  const own = modifiers.find(({ word }) => word === typed?.text.toLowerCase());
  return own ? { ...how, doc: own.doc } : how;
}
