/** CSV as spreadsheets write it: commas, semicolons or tabs, with or without a byte order mark. */
import { CsvError, parse } from "csv-parse/sync";
import { type Column, columns, type TableName } from "./columns.ts";
import { withoutMark } from "./csv.ts";
import type { Unimportable } from "./imported.ts";

export interface Cell {
  /** The row's number in a spreadsheet, from 1. */
  readonly row: number;
  /** Told to the reader: `“abv”`, or its number where it has no name. */
  readonly column: string;
  /** Trimmed, never empty. */
  readonly text: string;
}

export interface SheetRow {
  readonly row: number;
  /** By the column's name. */
  readonly cells: ReadonlyMap<string, Cell>;
  /** Of columns that the table does not have, that have no name, or that come a second time. */
  readonly strange: readonly Cell[];
}

export interface Sheet {
  readonly name: TableName;
  /** Rows that say nothing are left out. */
  readonly rows: readonly SheetRow[];
}

const delimiters = [",", ";", "\t"] as const;

/** `as` says which table it is; otherwise the names of the columns do. */
export function readSheet(whole: string, as?: TableName): Sheet | Unimportable {
  const text = whole.replace(/^\uFEFF/, "");
  // Some spreadsheets say on the first line what parts the cells.
  const stated = /^"?sep=([,;\t])"?(?:\r\n|[\r\n])/i.exec(text);
  const table = stated ? text.slice(stated[0].length) : text;
  const delimiter = stated?.[1] ?? likeliest(table);
  const records = readRecords(table, { delimiter });
  if ("problem" in records) return records;
  const from = stated ? 1 : 0;
  const headAt = records.findIndex((record) => record.some((cell) => cell.trim() !== ""));
  if (headAt < 0)
    return { problem: "There is nothing in this file.", todo: "The first row names the columns; `mutchkin export stock` shows which." };
  const head = records[headAt]!.map(columnName);
  const name = as ?? tableNamed(head);
  if (!name || !head.some((column) => columns[name].some((one) => one.name === column))) return noTable(records[headAt]!);
  const known = head.map((column, index) =>
    head.indexOf(column) === index ? columns[name].find((one) => one.name === column) : undefined,
  );
  const rows = records.slice(headAt + 1).map((record, index) => sheetRow(record, from + headAt + index + 2, known, records[headAt]!));
  return { name, rows: rows.filter(({ cells, strange }) => cells.size + strange.length > 0) };
}

/** Names of columns are compared without case, and `_` and `-` count as blanks. */
function columnName(text: string): string {
  return withoutMark(text.trim())
    .replace(/[\s_-]+/g, " ")
    .trim()
    .toLowerCase();
}

function tableNamed(head: readonly string[]): TableName | undefined {
  if (head.includes("drink") || head.includes("prep")) return "specs";
  return head.includes("name") ? "stock" : undefined;
}

function noTable(head: readonly string[]): Unimportable {
  const there = head
    .filter((cell) => cell.trim())
    .slice(0, 8)
    .map((cell) => `“${shortened(cell)}”`);
  return {
    problem: `The first row names no table: ${there.join(", ")}.`,
    todo: "A table of stock has the column `name`, one of specs `drink` or `prep`. Rename yours, or say `--as stock` or `--as specs`.",
  };
}

/** The one that finds the most columns that a table has, and among those the most cells. */
function likeliest(text: string): string {
  const known = new Set(Object.values(columns).flatMap((table) => table.map(({ name }) => name)));
  let best: { delimiter: string; score: number } = { delimiter: ",", score: -1 };
  for (const delimiter of delimiters) {
    const records = readRecords(text, { delimiter, to: 1 });
    if ("problem" in records) continue;
    const [head = []] = records;
    const score = head.filter((cell) => known.has(columnName(cell))).length * 1000 + head.length;
    if (score > best.score) best = { delimiter, score };
  }
  return best.delimiter;
}

function readRecords(text: string, options: { delimiter: string; to?: number }): string[][] | Unimportable {
  try {
    return parse(text, { ...options, relax_column_count: true, relax_quotes: true, record_delimiter: ["\r\n", "\n", "\r"] });
  } catch (cause) {
    if (!(cause instanceof CsvError)) throw cause;
    return {
      problem: `This does not read as CSV from line ${cause.lines ?? 1} on: a quotation mark is opened and never closed.`,
      todo: "Close it, or write a quotation mark inside a cell twice. Nothing was imported.",
    };
  }
}

function sheetRow(record: readonly string[], row: number, known: readonly (Column | undefined)[], head: readonly string[]): SheetRow {
  const cells = new Map<string, Cell>();
  const strange: Cell[] = [];
  for (const [index, written] of record.entries()) {
    const text = withoutMark(written.trim()).trim();
    if (text === "") continue;
    const column = known[index];
    const named = head[index]?.trim();
    const cell = { row, column: named ? `“${shortened(named)}”` : `number ${index + 1}`, text };
    if (column) cells.set(column.name, cell);
    else strange.push(cell);
  }
  return { row, cells, strange };
}

/** In one line, and not too long a one. */
export function shortened(text: string): string {
  const line = text.replace(/[\s\p{Cc}]+/gu, " ").trim();
  return line.length > 60 ? `${line.slice(0, 59)}…` : line;
}
