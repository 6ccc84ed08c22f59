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

/**
 * The same for a table that is read in again: cells keep their line breaks, what a spreadsheet would take for a
 * date (`1/2`, `10-15`) is marked too, and every mark can be taken off (`withoutMark`).
 */
export function csvOfCells(head: readonly string[], rows: readonly (readonly string[])[]): string {
  return written(
    head,
    rows.map((row) => row.map((cell) => (misleading.test(cell) ? `'${cell}` : cell))),
    false,
  );
}

/** A cell without the apostrophe that marks it as text. */
export function withoutMark(cell: string): string {
  return cell.startsWith("'") && misleading.test(cell.slice(1)) ? cell.slice(1) : cell;
}

/** A formula as csv-stringify knows it, or a date, with any number of marks before it. */
const misleading = /^'*(?:[=+\-@\t\r\uFF1D\uFF0B\uFF0D\uFF20]|\d{1,4}(?:[/-]\d{1,4}){1,2}$)/;

function written(head: readonly string[], rows: readonly Row[], escapeFormulas = true): string {
  return stringify([[...head], ...rows], { record_delimiter: "\r\n", escape_formulas: escapeFormulas, quoted_match: /[\r\n]/ });
}

/** A terminal or a spreadsheet would obey control characters. */
function inOneLine(cell: string | number | null): string | number | null {
  return typeof cell === "string" ? cell.replace(/\p{Cc}+/gu, " ") : cell;
}
