/** Pages that are partly printed: what stands between two markers comes from a table, the rest is written by hand. */

/** The page with new text between its markers `<!-- NAME -->` and `<!-- /NAME -->`. Throws where the page lacks one of them. */
export function printBetween(page: string, name: string, text: string): string {
  const [opening, closing] = [`<!-- ${name} -->\n`, `<!-- /${name} -->`];
  const start = page.indexOf(opening);
  const end = page.indexOf(closing);
  if (start < 0 || end < start) throw new Error(`The page has no markers for “${name}”.`);
  return `${page.slice(0, start + opening.length)}\n${text.trim()}\n\n${page.slice(end)}`;
}

/** A Markdown table with its columns aligned, as the formatter leaves it. */
export function printTable(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const widths = head.map((title, column) => Math.max(title.length, ...rows.map((row) => row[column]!.length)));
  const line = (cells: readonly string[]) => `| ${cells.map((cell, column) => cell.padEnd(widths[column]!)).join(" | ")} |`;
  return [line(head), line(widths.map((width) => "-".repeat(width))), ...rows.map(line)].join("\n");
}

/** A text as a fenced block of plain text, whatever fences it holds itself. */
export function fencedText(text: string): string {
  const longest = Math.max(2, ...[...text.matchAll(/`+/g)].map(([ticks]) => ticks.length));
  const fence = "`".repeat(longest + 1);
  return `${fence}text\n${text.trimEnd()}\n${fence}`;
}
