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
