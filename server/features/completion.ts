/** What could stand at the cursor, judged by the line up to it; the house's own before the larder's. */
import { type CompletionItem, CompletionItemKind, type Position, type Range } from "vscode-languageserver-types";
import { entryKinds, type Field, fieldsOf, findField } from "../../grammar/fields.ts";
import { readLine } from "../../grammar/line.ts";
import type { Entry, FieldLine, Pour } from "../../grammar/tree.ts";
import { units } from "../../grammar/units.ts";
import { techniques } from "../engine/techniques.ts";
import type { SpecDocument } from "../house/document.ts";
import { findFieldIn } from "../house/entry.ts";
import type { House } from "../house/house.ts";
import { modifiers } from "../house/modifiers.ts";
import { type NameClass, plain } from "../house/names.ts";
import { flatten } from "../house/riff.ts";
import type { Scope } from "../house/scope.ts";
import { entryWords } from "./entry-words.ts";
import { namedIn } from "./mentions.ts";
import { cursorAt } from "./place.ts";

export function completion(house: House, document: SpecDocument, position: Position): CompletionItem[] {
  const cursor = cursorAt(document, position);
  if (!cursor || cursor.content.kind === "prose") return [];
  const before = cursor.text.text.slice(0, cursor.column);
  const asked: Asked = { house, scope: house.scopeOf(document), entry: cursor.entry, before, line: position.line };
  if (/^\S*$/.test(before)) return offer(asked, 0, entryRows);
  const { content, comment } = readLine(before);
  if (comment) return [];
  switch (content.kind) {
    case "blank":
      return offerBodyStart(asked, before.length);
    case "field":
      return offerValue(asked, content);
    case "pour":
      return offerInPour(asked, content.pour, () => namesOf(asked, ["ingredient", "drink"]));
    case "or":
      return offerInPour(asked, content.pour, () => namesOf(asked, ["ingredient", "drink"]));
    case "swap":
      return offerInSwap(asked, content.readings.at(-1)?.in);
    case "without":
      return offer(asked, afterWord(before, content.all ?? content.word), parentPours(asked));
    case "menu":
      return offer(asked, afterWord(before, content.dash), namesOf(asked, ["drink"]));
    case "unread":
    case "entry":
      return offerBodyStart(asked, content.kind === "unread" ? content.start : before.length);
    default:
      return [];
  }
}

interface Asked {
  readonly house: House;
  readonly scope: Scope;
  readonly entry: Entry;
  /** The line up to the cursor. */
  readonly before: string;
  readonly line: number;
}

/** One thing to offer. `text`: what is written, where that is not the label; `rank`: what is nearer comes first. */
interface Row {
  readonly label: string;
  readonly doc: string;
  readonly kind: CompletionItemKind;
  readonly text?: string;
  readonly rank?: number;
}

/** Rows as items that replace the line from a column on: names hold blanks, which an editor's own word does not. */
function offer({ before, line }: Asked, start: number, rows: readonly Row[]): CompletionItem[] {
  const range: Range = { start: { line, character: start }, end: { line, character: before.length } };
  return rows.map(({ label, doc, kind, text, rank = 5 }) => ({
    label,
    kind,
    detail: doc,
    filterText: label,
    sortText: `${rank}${plain(label)}`,
    textEdit: { range, newText: text ?? label },
  }));
}

const entryRows: readonly Row[] = entryKinds.map((kind) => ({
  label: kind,
  doc: entryWords[kind],
  kind: CompletionItemKind.Class,
  text: `${kind} `,
}));

// The start of a body line

function offerBodyStart(asked: Asked, start: number): CompletionItem[] {
  const { entry } = asked;
  if (entry.kind === "unknown" || entry.kind === "preamble") return [];
  const fields = fieldsOf(entry.kind).filter((field) => field.repeats || !findFieldIn(entry, field.name));
  const rows = fields.map(
    (field): Row => ({ label: field.name, doc: field.doc, kind: CompletionItemKind.Field, text: `${field.name}: `, rank: 3 }),
  );
  return offer(asked, start, [...rows, ...(bodyWords[entry.kind] ?? [])]);
}

const word = (label: string, doc: string): Row => ({ label, doc, kind: CompletionItemKind.Keyword, text: `${label} `, rank: 4 });
const bodyWords: Partial<Record<Entry["kind"], readonly Row[]>> = {
  drink: [
    word("or", "Something else in place of the pour above."),
    word("swap", "In a riff: `swap this for that`."),
    word("without", "In a riff: leaves a pour of the parent out."),
    word("top", "Fills the glass up, last."),
    word("rinse", "Coats the glass."),
  ],
  prep: [word("to", "Makes the prep up to a total: `to 100 g water`.")],
  menu: [word("section", "A heading on the card."), word("-", "A drink on the card, with its price.")],
};

// Values of fields

function offerValue(asked: Asked, { name, value, items }: FieldLine): CompletionItem[] {
  const { entry, before } = asked;
  const field = entry.kind === "unknown" || entry.kind === "preamble" ? undefined : findField(name.text, entry.kind);
  if (!field) return [];
  const item = items.at(-1);
  // Behind a comma a glass is chilled, not named.
  if (namedIn[field.name] && (item?.parts.length ?? 0) > 1) return [];
  const fresh = /[;,:]\s*$/.test(before);
  const start = fresh || !value ? before.length : field.shape === "name" ? value.start : (item?.parts.at(-1)?.start ?? value.start);
  return offer(asked, start, valuesOf(asked, field));
}

function valuesOf(asked: Asked, field: Field): Row[] {
  const closed = (label: string): Row => ({ label, doc: field.doc, kind: CompletionItemKind.EnumMember });
  if (field.choices) return field.choices.map(closed);
  if (field.shape === "yesno") return ["yes", "no"].map(closed);
  if (field.shape === "steps") return techniques.map(({ words, doc }) => ({ label: words[0]!, doc, kind: CompletionItemKind.Function }));
  const classes = namedIn[field.name];
  return classes ? namesOf(asked, classes) : [];
}

// Pours

function offerInPour(asked: Asked, pour: Pour | undefined, names: () => Row[]): CompletionItem[] {
  const { before } = asked;
  const name = pour?.name;
  const lastComma = name?.commas.at(-1);
  if (lastComma !== undefined) {
    const gap = /^\s*/.exec(before.slice(lastComma + 1))![0].length;
    return offer(asked, lastComma + 1 + gap, modifierRows);
  }
  if (pour?.quantity?.unit && name) return offer(asked, name.start, names());
  if (pour?.quantity?.unit)
    return /\s$/.test(before) ? offer(asked, before.length, names()) : offer(asked, pour.quantity.unit.start, unitRows);
  // A bare number counts things, or its unit is still to come.
  if (pour?.quantity) return offer(asked, name?.start ?? before.length, [...unitRows, ...names()]);
  if (pour?.lead) return offer(asked, name?.start ?? before.length, names());
  return name ? offerBodyStart(asked, name.start) : [];
}

function offerInSwap(asked: Asked, into: Pour | undefined): CompletionItem[] {
  if (into) return offerInPour(asked, into, () => namesOf(asked, ["ingredient", "drink"]));
  const start = /^\s*\S+\s*/.exec(asked.before)![0].length;
  return offer(asked, start, parentPours(asked));
}

const modifierRows: readonly Row[] = modifiers.map(({ word: label, doc }) => ({ label, doc, kind: CompletionItemKind.Keyword }));
const pourUnits = new Set(["volume", "mass", "part", "piece"]);
const unitRows: readonly Row[] = units
  .filter(({ dimension }) => pourUnits.has(dimension))
  .map(({ id, doc }) => ({ label: id, doc, kind: CompletionItemKind.Unit, rank: 1 }));

/** What a riff can take out. */
function parentPours({ house, entry }: Asked): Row[] {
  const parent = entry.kind === "drink" ? flatten(house, entry).parent : undefined;
  return (parent?.pours ?? []).map(({ ingredient }) => ({
    label: ingredient.resolution.text,
    doc: `poured in ${parent?.entry.name?.text ?? "the parent"}`,
    kind: CompletionItemKind.Value,
  }));
}

// Names

function namesOf({ house, scope, entry }: Asked, classes: readonly NameClass[]): Row[] {
  const rows = new Map<string, Row>();
  for (const nameClass of classes) {
    for (const { name, alias, entry: declared } of house.declarations(scope, nameClass)) {
      if (declared === entry || rows.has(plain(name))) continue;
      const rank = (house.isLarder(declared) ? 8 : 6) + (alias ? 1 : 0);
      rows.set(plain(name), { label: name, doc: inOneLine(declared, alias), kind: CompletionItemKind.Value, rank });
    }
  }
  return [...rows.values()];
}

function inOneLine(entry: Entry, alias: boolean): string {
  const value = (name: string) => findFieldIn(entry, name)?.field.value?.text;
  const facts = [alias && `= ${entry.name?.text ?? ""}`, value("kind") ?? entry.kind, value("abv") ?? value("holds") ?? value("family")];
  return facts.filter(Boolean).join(", ");
}

function afterWord(before: string, { end }: { readonly end: number }): number {
  return end + /^\s*/.exec(before.slice(end))![0].length;
}
