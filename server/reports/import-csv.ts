/** From a table to entries in the language. Every cell is in the text: as it was meant, or in a comment, and then it is told. */
import { type EntryKind, findField } from "../../grammar/fields.ts";
import { read } from "../../grammar/read.ts";
import { plain } from "../house/names.ts";
import { showCount } from "../house/show.ts";
import { lineWords, type TableName } from "./columns.ts";
import { uncounted } from "./import-counts.ts";
import { commentLine, fieldLines, headLine, type Made, type PourTexts, pourLine, squeezed } from "./import-lines.ts";
import type { Misread } from "./import-schema.ts";
import { type Cell, readSheet, type SheetRow, shortened } from "./import-table.ts";
import { type Draft, type Imported, keptAsComment, linesIn, notUnderstood, textOfDrafts, type Unimportable } from "./imported.ts";

/** `as` says which table it is, where its columns do not. */
export function importCsv(text: string, as?: TableName): Imported | Unimportable {
  const sheet = readSheet(text, as);
  if ("problem" in sheet) return sheet;
  const work: Work = { drafts: [], misread: [], commas: 0, last: undefined, byKey: new Map(), said: new Map(), strange: new Map() };
  for (const row of sheet.rows) {
    if (sheet.name === "stock") stockRow(work, row);
    else specRow(work, row);
  }
  for (const [column, { first, count }] of work.strange) {
    const where = `${column}, ${showCount(count, "cell")} from row ${first.row} on`;
    tell(
      work,
      where,
      first.text,
      "The table has no such column, or has it twice.",
      count > 1 ? "They are kept as comments." : keptAsComment,
    );
  }
  const { drafts, misread, commas } = work;
  const made = textOfDrafts(drafts);
  return {
    text: made,
    entries: drafts.filter(({ head }) => head).length,
    misread: [...misread, ...uncounted(made)],
    remarks:
      commas > 0
        ? [`${showCount(commas, "decimal comma")} ${commas === 1 ? "is" : "are"} written as ${commas === 1 ? "a point" : "points"}.`]
        : [],
  };
}

interface Work {
  readonly drafts: Draft[];
  readonly misread: Misread[];
  commas: number;
  /** The entry of the row above; absent where that row belongs to none. */
  last: Named | undefined;
  /** Drinks and preps by kind and name. */
  readonly byKey: Map<string, Named>;
  /** What a draft's fields were said to be. */
  readonly said: Map<Draft, Map<string, Cell>>;
  /** Cells of columns that the table does not have: the first of each column, and how many. */
  readonly strange: Map<string, { readonly first: Cell; count: number }>;
}

type Named = Draft & { readonly kind: EntryKind };

function stockRow(work: Work, row: SheetRow): void {
  const draft = opened(work, "stock", row, row.cells.get("name"), row.cells.get("remark")?.text ?? "");
  if (!draft) return;
  addFields(work, draft, row, (name) => name === "name" || name === "remark" || name === "other lines");
  const others = row.cells.get("other lines");
  if (others) asWritten(work, draft, others);
  addStrange(work, draft, row);
}

function specRow(work: Work, row: SheetRow): void {
  const draft = draftOf(work, row);
  work.last = draft;
  if (!draft) return;
  addFields(work, draft, row, (name) => ownColumns.has(name));
  addLine(work, draft, row);
  addStrange(work, draft, row);
}

const ownColumns = new Set(["drink", "prep", "line", "how", "amount", "unit", "ingredient", "modifiers", "instead of", "remark"]);

/** The entry that a row belongs to. A row without a name goes on with the one above. */
function draftOf(work: Work, row: SheetRow): Named | undefined {
  const [drink, prep] = [row.cells.get("drink"), row.cells.get("prep")];
  const cell = drink ?? prep;
  if (!cell && work.last) return work.last;
  const kind = drink ? "drink" : "prep";
  const key = `${kind}|${plain(cell?.text ?? "")}`;
  const isHead = row.cells.get("line")?.text.toLowerCase() === "head";
  const remark = isHead ? (row.cells.get("remark")?.text ?? "") : "";
  const known = work.byKey.get(key);
  const draft = known ?? opened(work, kind, row, cell, remark);
  if (!draft) return undefined;
  if (known) known.lines.push(...commentLine(remark));
  work.byKey.set(key, draft);
  if (drink && prep) keep(work, draft, prep, "A row belongs to a drink or to a prep, and this one names both.");
  return draft;
}

/** A new entry; absent where the row has no name that reads: then all of it is kept in comments. */
function opened(work: Work, kind: EntryKind, row: SheetRow, cell: Cell | undefined, remark: string): Named | undefined {
  const [first = "", ...more] = linesIn(remark).map(squeezed);
  const head: Made = cell ? headLine(kind, cell.text, first) : { why: "The row has no name, so nobody knows what it belongs to." };
  if ("line" in head) {
    const draft = { kind, head: head.line, fields: [], lines: more.map((line) => `# ${line}`) };
    work.drafts.push(draft);
    return draft;
  }
  const lost: Draft = { fields: [], lines: [] };
  work.drafts.push(lost);
  for (const one of [...row.cells.values(), ...row.strange]) {
    keep(work, lost, one, one === cell || !cell ? head.why : "The row's name does not read, so nobody knows what it belongs to.");
  }
  return undefined;
}

function addFields(work: Work, draft: Named, row: SheetRow, isOwn: (name: string) => boolean): void {
  const { kind } = draft;
  const said = work.said.get(draft) ?? new Map<string, Cell>();
  work.said.set(draft, said);
  for (const [name, cell] of row.cells) {
    if (isOwn(name)) continue;
    const field = findField(name, kind);
    const before = said.get(name);
    if (before?.text === cell.text) continue;
    if (!field) keep(work, draft, cell, `A ${kind} has no \`${name}\`.`);
    else if (before) keep(work, draft, cell, `Row ${before.row} says “${shortened(before.text)}” for the same ${kind}.`);
    else {
      said.set(name, cell);
      const made = fieldLines(field, kind, cell.text);
      if ("why" in made) keep(work, draft, cell, made.why);
      else {
        draft.fields.push(...made.lines);
        work.commas += made.commas;
      }
    }
  }
}

function addLine(work: Work, draft: Named, row: SheetRow): void {
  const texts = pourTexts(row);
  const remark = row.cells.get("remark");
  const line = row.cells.get("line")?.text.toLowerCase() ?? "";
  const poured = [...pourColumns, "instead of"].flatMap((name) => row.cells.get(name) ?? []);
  if (line === "" && poured.length === 0) {
    if (remark) draft.lines.push(...commentLine(remark.text));
    return;
  }
  if (line === "head" || line === "comment" || line === "as written") {
    if (!remark) keep(work, draft, row.cells.get("line")!, "Such a row says something in the column `remark`, and nothing stands there.");
    else if (line === "comment") draft.lines.push(...commentLine(remark.text));
    else if (line === "as written") asWritten(work, draft, remark);
    for (const cell of poured) keep(work, draft, cell, `A row that is \`${line}\` has only a remark.`);
    return;
  }
  const [first = "", ...more] = linesIn(remark?.text ?? "").map(squeezed);
  const before = beforePour(line, row.cells.get("instead of")?.text);
  const made: Made = typeof before === "string" ? pourLine(before, texts, first) : before;
  if ("line" in made) {
    draft.lines.push(made.line, ...more.map((text) => `# ${text}`));
    work.commas += made.commas;
    if (made.remark) tell(work, `row ${row.row}`, texts.ingredient, made.remark, "It is written all the same.");
    return;
  }
  const said = [row.cells.get("line"), ...poured, remark].flatMap((cell) => (cell ? [cell.text] : [])).join(" | ");
  draft.lines.push(...notUnderstood(`row ${row.row}`, said));
  tell(work, `row ${row.row}`, said, made.why, keptAsComment);
}

const pourColumns = ["how", "amount", "unit", "ingredient", "modifiers"] as const;

function pourTexts(row: SheetRow): PourTexts {
  return Object.fromEntries(pourColumns.map((name) => [name, squeezed(row.cells.get(name)?.text ?? "")])) as unknown as PourTexts;
}

/** What goes before the pour on its line. */
function beforePour(line: string, insteadOf: string | undefined): string | { readonly why: string } {
  if (line === "swap")
    return insteadOf ? `swap ${squeezed(insteadOf)} for ` : { why: "A swap needs the column `instead of`: what goes out." };
  if (insteadOf) return { why: "Only a row that is a `swap` puts something in the place of something else." };
  if (line === "" || line === "pour") return "";
  if (line === "or" || line === "without" || line === "without all") return `${line} `;
  return { why: `“${shortened(line)}” is no kind of line. Known: ${lineWords.join(", ")}.` };
}

/** Lines that are taken over as they stand, each told where it does not read. */
function asWritten(work: Work, draft: Named, cell: Cell): void {
  const written = linesIn(cell.text).map((line) => line.trimEnd());
  const { entries } = read([`${draft.kind} name`, ...written.map((line) => `  ${line}`)].join("\n"));
  for (const { problem, text } of entries[0]!.lines) {
    if (problem)
      tell(work, `row ${cell.row}, column ${cell.column}`, text, `${problem.what} ${problem.todo}`, "It is written as it stands.");
  }
  draft.lines.push(...written);
}

/** A table may have thousands of cells in a column that nobody knows: each is kept, the column is told once. */
function addStrange(work: Work, draft: Draft, { strange }: SheetRow): void {
  for (const cell of strange) {
    draft.lines.push(...commentOf(cell));
    const column = `column ${cell.column}`;
    const there = work.strange.get(column);
    if (there) there.count++;
    else work.strange.set(column, { first: cell, count: 1 });
  }
}

function keep(work: Work, draft: Draft, cell: Cell, why: string): void {
  draft.lines.push(...commentOf(cell));
  tell(work, `row ${cell.row}, column ${cell.column}`, cell.text, why, keptAsComment);
}

function commentOf({ column, text }: Cell): string[] {
  return notUnderstood(column.replace(/^“(.*)”$/u, "$1"), text);
}

function tell(work: Work, where: string, text: string, why: string, done: string): void {
  work.misread.push({ where, text: squeezed(text), why, done });
}
