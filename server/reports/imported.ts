/** What `import` makes of a file: a text in the language, and everything in the file that was not understood. */
import type { EntryKind } from "../../grammar/fields.ts";
import { formatEntry } from "../../grammar/format.ts";
import { read } from "../../grammar/read.ts";
import type { Misread } from "./import-schema.ts";

export interface Imported {
  /** Empty where the file says nothing that can be written. */
  readonly text: string;
  /** How many entries the text holds. */
  readonly entries: number;
  readonly misread: readonly Misread[];
  /** What was changed though it was understood, in sentences. */
  readonly remarks: readonly string[];
}

/** A file that nothing is made of, and why. */
export interface Unimportable {
  readonly problem: string;
  readonly todo: string;
}

/** An entry that is being put together, or lines between entries, which have no head. */
export interface Draft {
  readonly kind?: EntryKind;
  readonly head?: string;
  /** The lines of its fields, and of the rest, without the indentation of the whole. */
  readonly fields: string[];
  readonly lines: string[];
}

export const keptAsComment = "It is kept as a comment.";

/** Lines that keep a text which was not understood. */
export function notUnderstood(what: string, text: string): string[] {
  return linesIn(text).map((line) => `# not understood, ${what}: ${line.trim()}`);
}

/** A text's lines, without those that say nothing. */
export function linesIn(text: string): string[] {
  return text.split(/\r\n|[\r\n]/).filter((line) => line.trim() !== "");
}

/** The entries below each other, in canonical form. */
export function textOfDrafts(drafts: readonly Draft[]): string {
  const texts = drafts.map(({ head, fields, lines }) => {
    if (!head) return [...fields, ...lines].map((line) => `${line}\n`).join("");
    const gap = fields.length > 0 && lines.length > 0 ? [""] : [];
    return [head, ...[...fields, ...gap, ...lines].map((line) => (line ? `  ${line}` : ""))].map((line) => `${line}\n`).join("");
  });
  const { entries } = read(texts.join("\n"));
  return entries.flatMap((entry) => formatEntry(entry).map((line, index) => line + entry.lines[index]!.eol)).join("");
}
