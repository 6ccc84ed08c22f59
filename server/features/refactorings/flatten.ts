/** A riff written out as a drink of its own: what it inherits stands in it, and its parent may change or go. */
import { readLine } from "../../../grammar/line.ts";
import type { Entry, Quantity } from "../../../grammar/tree.ts";
import { fieldsIn, findFieldIn } from "../../house/entry.ts";
import type { Edit } from "../../house/finding.ts";
import type { House } from "../../house/house.ts";
import { type Alternative, type FlatDrink, type FlatPour, flatPour, flatten, inherited, sameIngredient } from "../../house/riff.ts";
import { addBelow, commentBehind, indentOf, isComment, ownEnd, removeLine, replaceLine, withComments } from "./lines.ts";
import type { Refactoring } from "./refactoring.ts";

export const flattenRiff: Refactoring = {
  name: "flattenRiff",
  where: "Put the cursor in a riff: a drink that names its parent with `from:`.",
  kind: "refactor.inline",
  offers({ house, entry }) {
    const edits = entry.kind === "drink" && findFieldIn(entry, "from") ? flattened(house, entry) : undefined;
    return edits ? [{ title: "Flatten into a drink of its own", edits: () => edits }] : [];
  },
};

/** Absent where a line of the riff changes nothing, or where a pour would mean something else in the riff's own text. */
function flattened(house: House, entry: Entry): readonly Edit[] | undefined {
  const flat = flatten(house, entry);
  if (!flat.parent || flat.problems.length > 0 || fieldsIn(entry).get("from")!.length > 1) return undefined;
  const pours = flat.pours.map((pour) => linesOf(house, entry, pour));
  if (!pours.every((lines) => lines !== undefined)) return undefined;
  return edited(entry, flat, pours.flat());
}

/** What it inherits stands where `from:` stood, the pours where its first change stood; what else is written among those stays. */
function edited(entry: Entry, flat: FlatDrink, pours: readonly string[]): Edit[] {
  const { line } = findFieldIn(entry, "from")!;
  const fields = fieldTexts(entry, flat, line);
  const [first, ...rest] = changesOf(entry, flat);
  // A line that goes and what is added below it would be one edit across another.
  if (first === undefined && ownEnd(entry) === line) return [replaceLine(entry, line, [...fields, ...pours].join("\n"))];
  const instead = (at: number, lines: readonly string[]) =>
    lines.length > 0 ? replaceLine(entry, at, lines.join("\n")) : removeLine(entry, at);
  const below = pours.length > 0 ? [addBelow(entry, ownEnd(entry), ["", ...pours])] : [];
  return [instead(line, fields), ...(first === undefined ? below : [instead(first, pours)]), ...rest.map((one) => removeLine(entry, one))];
}

function fieldTexts(entry: Entry, flat: FlatDrink, from: number): string[] {
  const taken = [...inherited].flatMap((name) => flat.statedField(name) ?? []).filter((at) => at.entry !== entry);
  const texts = taken.map((at) => at.entry.lines[at.line]!.text.trim());
  const { comment, text } = entry.lines[from]!;
  return [...(comment ? [text.slice(comment.start)] : []), ...texts].map((one) => indentOf(entry) + one);
}

/** The lines that change the parent, and the comments that go along with the pours on them. */
function changesOf(entry: Entry, { pours }: FlatDrink): number[] {
  const kept = new Set(pours.flatMap((pour) => [pour, ...pour.alternatives]).map((pour) => (pour.entry === entry ? pour.line : -1)));
  const changes = entry.lines.flatMap(({ content }, line) => (changing.has(content.kind) ? [line] : []));
  const gone = new Set(changes);
  for (const line of changes.filter((one) => kept.has(one))) {
    for (let above = withComments(entry, line); above < line; above++) gone.add(above);
  }
  return [...gone].sort((one, other) => one - other);
}
const changing: ReadonlySet<string> = new Set(["pour", "or", "swap", "without"]);

/** A pour with the comments above it, then its alternatives. */
function linesOf(house: House, entry: Entry, pour: FlatPour): string[] | undefined {
  const indent = indentOf(entry);
  const text = pourText(house, entry, pour);
  const alternatives = pour.alternatives.map((one) => alternativeText(house, entry, pour, one));
  if (text === undefined || !alternatives.every((one) => one !== undefined)) return undefined;
  return [
    ...commentsAbove(pour).map((comment) => indent + comment),
    indent + text,
    ...pour.alternatives.flatMap((one, index) => [...commentsAbove(one), alternatives[index]!].map((line) => `${indent}  ${line}`)),
  ];
}

function commentsAbove({ entry, line }: Pick<FlatPour, "entry" | "line">): string[] {
  return entry.lines
    .slice(withComments(entry, line), line)
    .filter(isComment)
    .map(({ text }) => text.trim());
}

/** As it stands on its line, where it says all of it there; else put together from what the lines of the path say. */
function pourText(house: House, entry: Entry, pour: FlatPour): string | undefined {
  const line = pour.entry.lines[pour.line]!;
  const written = line.text.trim();
  if (line.content.kind === "pour" && isSame(house, entry, pour, written)) return written;
  const parts = [pour.lead?.text, pour.quantity && quantityText(pour.quantity), nameText(pour)];
  const text = [parts.filter(Boolean).join(" "), ...pour.modifiers.map((modifier) => modifier.text)].join(", ");
  return [text, `${text}, after`].map((one) => one + commentBehind(line)).find((one) => isSame(house, entry, pour, one));
}

/** Whether a line of the entry would be that pour. */
function isSame(house: House, entry: Entry, pour: FlatPour, text: string): boolean {
  const { content } = readLine(`  ${text}`);
  if (content.kind !== "pour" || !content.pour.name) return false;
  const read = flatPour(house, house.scopeOf(entry), entry, 0, content.pour);
  const words = (one: FlatPour) => one.modifiers.map((modifier) => modifier.text.toLowerCase()).filter((word) => word !== "after");
  return (
    read.stage === pour.stage &&
    sameIngredient(read, pour.ingredient) &&
    read.lead?.lead === pour.lead?.lead &&
    isSameAmount(read.quantity, pour.quantity) &&
    words(read).join() === words(pour).join()
  );
}

function alternativeText(house: House, entry: Entry, pour: FlatPour, one: Alternative): string | undefined {
  const line = one.entry.lines[one.line]!;
  const own = line.content.kind === "or" ? line.content.pour : undefined;
  if (!own || !sameIngredient(one, flatPour(house, house.scopeOf(entry), entry, 0, own).ingredient)) return undefined;
  if (own.quantity || isSameAmount(one.quantity, pour.quantity)) return line.text.trim();
  // It took the amount of what its pour was when it was written; of none there is nothing to write.
  if (!one.quantity) return undefined;
  const name = line.text.slice(own.name!.quoted?.start ?? own.name!.start, own.end);
  return `or ${quantityText(one.quantity)} ${name}${commentBehind(line)}`;
}

function isSameAmount(one: Quantity | undefined, other: Quantity | undefined): boolean {
  const key = (quantity: Quantity | undefined) =>
    quantity && [Boolean(quantity.about), quantity.numeral.text, quantity.value, quantity.upTo, quantity.unit?.unit.id].join("|");
  return key(one) === key(other);
}

function quantityText({ about, numeral, unit }: Quantity): string {
  return [about?.text, numeral.text, unit?.text].filter(Boolean).join(" ");
}

function nameText({ entry, line, name, ingredient }: Pick<FlatPour, "entry" | "line" | "name" | "ingredient">): string {
  return entry.lines[line]!.text.slice(name.quoted?.start ?? name.start, ingredient.resolution.end);
}
