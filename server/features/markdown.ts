/** Markdown for hovers: what a person typed never turns into markup. */

/** A text as it stands, in Markdown. */
export function asText(text: string): string {
  return text.replace(/[\\`*_{}[\]<>#|~!]/g, "\\$&").replace(/\s+/g, " ");
}

export function bold(text: string): string {
  return `**${asText(text)}**`;
}

export function code(text: string): string {
  return `\`${text.replaceAll("`", "'")}\``;
}

/** A table with a head; the first column to the left, numbers read best so too beside their unit. Cells are Markdown already. */
export function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]) => `| ${head.map((_, index) => cells[index] ?? "").join(" | ")} |`;
  return [line(head), `|${" :-- |".repeat(head.length)}`, ...rows.map(line)].join("\n");
}

/** Lines close together: an editor shows only so much of a hover at once. */
export const lineBreak = "  \n";

/** Parts one under the other, each its own paragraph; what is empty is left out. */
export function paragraphs(...parts: readonly (string | undefined | false)[]): string {
  return parts.filter(Boolean).join("\n\n");
}

/** The same for who shows no Markdown: without its marks, tables as columns. It knows the marks that are made here. */
export function withoutMarks(markdown: string): string {
  const lines = markdown.split("\n").map((line) => line.trimEnd());
  const plain: string[] = [];
  for (let index = 0; index < lines.length; index++) {
    const rows: string[][] = [];
    for (; lines[index]?.startsWith("| "); index++) rows.push(lines[index]!.slice(2, -1).split(" | ").map(unmarked));
    plain.push(...inColumns(rows));
    const line = lines[index];
    if (line !== undefined) plain.push(unmarked(line));
  }
  return plain.join("\n");
}

function unmarked(text: string): string {
  return text.replace(/`([^`]*)`|\\([\\`*_{}[\]<>#|~!])|\*+/g, (_, code?: string, escaped?: string) => code ?? escaped ?? "").trimEnd();
}

function inColumns(rows: readonly string[][]): string[] {
  const shown = rows.filter((row) => !row.every((cell) => cell === ":--"));
  const widths = shown.reduce<number[]>((most, row) => row.map((cell, index) => Math.max(most[index] ?? 0, [...cell].length)), []);
  const padded = (cell: string, index: number) => cell + " ".repeat((widths[index] ?? 0) - [...cell].length);
  return shown.map((row) => row.map(padded).join("  ").trimEnd());
}
