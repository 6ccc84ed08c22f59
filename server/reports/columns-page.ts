/** The part of the command line's page that lists the columns of its tables. */
import { columns, type TableName } from "./columns.ts";
import { printBetween, printTable } from "./markers.ts";

const tables: readonly TableName[] = ["stock", "specs"];

export function columnsPage(page: string): string {
  return tables.reduce((text, table) => printBetween(text, `columns ${table}`, listOf(table)), page);
}

function listOf(table: TableName): string {
  return printTable(
    ["column", "holds", "such as"],
    columns[table].map(({ name, doc, example }) => [name, doc.replaceAll("|", "\\|"), `\`${example}\``]),
  );
}
