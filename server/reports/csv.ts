/** A table as CSV (RFC 4180) for a spreadsheet. What it would run as a formula is marked as text. */
import { stringify } from "csv-stringify/sync";

/** Numbers stand as they are; a text that starts like a formula gets an apostrophe before it, nothing is an empty cell. */
export function csvText(head: readonly string[], rows: readonly (readonly (string | number | null)[])[]): string {
  return stringify([[...head], ...rows.map((row) => row.map(inOneLine))], { record_delimiter: "\r\n", escape_formulas: true });
}

/** A terminal or a spreadsheet would obey control characters. */
function inOneLine(cell: string | number | null): string | number | null {
  return typeof cell === "string" ? cell.replace(/\p{Cc}+/gu, " ") : cell;
}
