/** A table as CSV (RFC 4180) for a spreadsheet. What it would run as a formula is marked as text. */
import { stringify } from "csv-stringify/sync";

type Row = readonly (string | number | null)[];

/** Numbers stand as they are; a text that starts like a formula gets an apostrophe before it, nothing is an empty cell. */
export function csvText(head: readonly string[], rows: readonly Row[]): string {
  return written(
    head,
    rows.map((row) => row.map((cell) => inOneLine(cell))),
  );
}

/** The same for a table that is read in again: cells keep their line breaks, and every mark can be taken off (`withoutMark`). */
export function csvOfCells(head: readonly string[], rows: readonly (readonly string[])[]): string {
  return written(
    head,
    rows.map((row) => row.map((cell) => (marked.test(cell) ? `'${cell}` : cell))),
  );
}

/** A cell without the apostrophe that marks it as text. */
export function withoutMark(cell: string): string {
  return marked.test(cell) ? cell.slice(1) : cell;
}

/** Begins with an apostrophe as a mark does: what csv-stringify marks, its full-width forms too. */
const marked = /^'+[=+\-@\t\r\uFF1D\uFF0B\uFF0D\uFF20]/;

function written(head: readonly string[], rows: readonly Row[]): string {
  return stringify([[...head], ...rows], { record_delimiter: "\r\n", escape_formulas: true, quoted_match: /[\r\n]/ });
}

/** A terminal or a spreadsheet would obey control characters. */
function inOneLine(cell: string | number | null): string | number | null {
  return typeof cell === "string" ? cell.replace(/\p{Cc}+/gu, " ") : cell;
}
