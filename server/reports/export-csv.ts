/** Stock, drinks and preps as tables: in the spec's own words, so that `import` reads them back. */
import { indentWidth } from "../../grammar/characters.ts";
import { findField } from "../../grammar/fields.ts";
import { type Content, type Entry, isOwnKind, type Line, type Name, type Pour } from "../../grammar/tree.ts";
import type { House } from "../house/house.ts";
import { plain } from "../house/names.ts";
import { unquoted } from "../house/scope.ts";
import { showCount } from "../house/show.ts";
import { showQuantity } from "../house/show-pour.ts";
import { writtenName } from "../house/write.ts";
import { columns, type LineWord, type TableName, tableOf } from "./columns.ts";
import { csvOfCells } from "./csv.ts";

export interface Table {
  readonly text: string;
  /** What the table does not hold of these entries, in sentences. */
  readonly leftOut: readonly string[];
}

type Cells = Readonly<Record<string, string>>;

/** The stock, or the drinks and preps, among these entries. */
export function exportTable(house: House, entries: readonly Entry[], name: TableName): Table {
  const rows: Cells[] = [];
  const leftOut: string[] = [];
  const seen = new Set<string>();
  let nameless = 0;
  let remarks = 0;
  for (const entry of entries) {
    if ((entry.kind !== "stock" && entry.kind !== "drink" && entry.kind !== "prep") || tableOf(entry.kind) !== name) continue;
    if (!entry.name) nameless++;
    const key = `${entry.kind}|${plain(entry.name?.text ?? "")}`;
    if (!entry.name || (name === "specs" && seen.has(key))) {
      if (entry.name) leftOut.push(`There is more than one ${entry.kind} “${entry.name.text}”: the table has the first.`);
      continue;
    }
    seen.add(key);
    const lines = withoutTail(entry);
    remarks += entry.lines.slice(lines.length).filter(({ content }) => content.kind === "comment").length;
    const parts = takeApart(entry, lines);
    rows.push(...(name === "stock" ? [stockRow(entry, parts)] : specRows(house, entry, parts)));
  }
  if (nameless > 0)
    leftOut.push(`${showCount(nameless, "entry", "entries")} without a name ${nameless === 1 ? "is" : "are"} not in the table.`);
  if (remarks > 0) leftOut.push(`${showCount(remarks, "comment")} between the entries ${remarks === 1 ? "is" : "are"} not in the table.`);
  const names = columns[name].map((column) => column.name);
  return {
    text: csvOfCells(
      names,
      rows.map((row) => names.map((column) => row[column] ?? "")),
    ),
    leftOut,
  };
}

/** Comments at the margin behind an entry are about what follows, or about the file. */
function withoutTail({ lines }: Entry): readonly Line[] {
  const last = lines.findLastIndex(
    ({ content, text }) => content.kind !== "blank" && !(content.kind === "comment" && indentWidth(text) === 0),
  );
  return lines.slice(0, last + 1);
}

interface Parts {
  /** Of the line with the entry's name. */
  readonly remark: string;
  /** Cells by the column's name. */
  readonly fields: Cells;
  /** Everything else, in its order: a line, and what it says with the lines that belong to it. */
  readonly others: readonly { readonly line: Line; readonly text: string }[];
}

function takeApart(entry: Entry, lines: readonly Line[]): Parts {
  const fields: Record<string, string> = {};
  const others: { line: Line; text: string }[] = [];
  for (const [index, line] of lines.entries()) {
    const { content } = line;
    if (index === 0 || content.kind === "blank" || content.kind === "prose") continue;
    const field = content.kind === "field" && isOwnKind(entry.kind) && findField(content.name.text, entry.kind);
    const isWhole = field && !line.problem && fields[field.name] === undefined && (content.value || field.shape === "prose");
    if (!isWhole) {
      others.push({ line, text: field && field.shape === "prose" ? block(lines, index) : line.text.trim() });
      continue;
    }
    if (field.shape === "prose") {
      fields[field.name] = prose(content.value?.text, lines, index);
      continue;
    }
    // An allowance on the line above goes with its line.
    const above = others.at(-1);
    const allows = above && above.line === lines[index - 1] && above.line.comment?.allow && !line.comment;
    if (allows) others.pop();
    const comment = line.comment?.text ?? (allows ? above.text : "");
    fields[field.name] = `${content.value!.text}${comment && ` ${comment}`}`;
  }
  return { remark: remarkOf(lines[0]!), fields, others };
}

/** A prose field's text, line by line, as deep as its lines stand to each other. */
function prose(first: string | undefined, lines: readonly Line[], at: number): string {
  const rest = proseBelow(lines, at);
  const least = Math.min(...rest.filter((text) => text.trim() !== "").map(indentWidth));
  return [...(first ? [first] : []), ...rest.map((text) => " ".repeat(Math.max(0, indentWidth(text) - least)) + text.trim())].join("\n");
}

/** A field with the lines below it, as they are written. */
function block(lines: readonly Line[], at: number): string {
  return [lines[at]!.text.trim(), ...proseBelow(lines, at).map((text) => `  ${text.trim()}`)].join("\n");
}

function proseBelow(lines: readonly Line[], at: number): string[] {
  const below = lines.slice(at + 1);
  const end = below.findIndex(({ content }) => content.kind !== "prose" && content.kind !== "blank");
  const texts = (end < 0 ? below : below.slice(0, end)).map(({ text }) => text);
  while (texts.length > 0 && texts.at(-1)!.trim() === "") texts.pop();
  return texts;
}

function remarkOf({ comment }: Line): string {
  return comment ? comment.text.slice(1).trim() : "";
}

function stockRow(entry: Entry, { remark, fields, others }: Parts): Cells {
  return { name: unquoted(entry.name!), ...fields, remark, "other lines": others.map(({ text }) => text).join("\n") };
}

function specRows(house: House, entry: Entry, { remark, fields, others }: Parts): Cells[] {
  const rows = others.map(({ line, text }) => lineCells(house, entry, line, text));
  if (remark) rows.unshift({ line: "head", remark });
  const [first = {}, ...more] = rows;
  const named = { [entry.kind]: unquoted(entry.name!) };
  return [{ ...named, ...first, ...fields }, ...more.map((row) => ({ ...named, ...row }))];
}

function lineCells(house: House, entry: Entry, line: Line, text: string): Cells {
  const remark = remarkOf(line);
  const { content } = line;
  const cells = line.problem ? undefined : pourCells(house, entry, content, line.text);
  if (cells) return { ...cells, remark };
  return content.kind === "comment" ? { line: "comment", remark } : { line: "as written", remark: text };
}

/** Absent for what has no cells of its own: it stands as it is written. */
function pourCells(house: House, entry: Entry, content: Content, text: string): Cells | undefined {
  const of = (line: LineWord | "", pour: Pour | undefined, more: Cells = {}): Cells | undefined =>
    pour?.name && !pour.turned && !isOddlyQuoted(pour.name)
      ? { line, ...amountCells(pour), ...nameCells(house, entry, pour.name), ...more }
      : undefined;
  if (content.kind === "pour") return of("", content.pour);
  if (content.kind === "or") return of("or", content.pour);
  if (content.kind === "without") return of(content.all ? "without all" : "without", content.pour);
  // With more than one ` for ` the house decides what goes out.
  if (content.kind !== "swap" || content.readings.length !== 1) return undefined;
  const [{ out, in: into }] = content.readings as [{ out: Pour; in: Pour }];
  return of("swap", into, { "instead of": text.slice(out.start, out.end) });
}

function amountCells({ lead, quantity }: Pour): Cells {
  const { unit, ...count } = quantity ?? {};
  return { how: lead?.text ?? "", amount: quantity ? showQuantity(count as typeof quantity) : "", unit: unit?.text ?? "" };
}

/** Something other than a comma stands behind the closing quote. */
function isOddlyQuoted(name: Name): boolean {
  const behind = name.text.slice(unquoted(name).length).trim();
  return name.quoted !== undefined && behind !== "" && !behind.startsWith(",");
}

/** The name, and what stands behind it. */
function nameCells(house: House, entry: Entry, name: Name): Cells {
  const bare = unquoted(name);
  if (name.quoted) {
    // Quotes that it does not read without are put back when it is read in.
    const behind = name.text
      .slice(bare.length)
      .replace(/^\s*,\s*/, "")
      .trim();
    return { ingredient: writtenName(bare) === bare ? `"${bare}"` : bare, modifiers: behind };
  }
  const { text } = house.resolve(house.scopeOf(entry), ["ingredient", "drink"], name);
  if (!name.text.startsWith(text)) return { ingredient: name.text };
  return {
    ingredient: text,
    modifiers: name.text
      .slice(text.length)
      .replace(/^\s*,\s*/, "")
      .trim(),
  };
}
