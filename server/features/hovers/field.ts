/** A field: what it says, how it is written, which words it takes. */
import { type EntryKind, type Field, findField } from "../../../grammar/fields.ts";
import { bold, code, paragraphs } from "../markdown.ts";

/** Absent for a field that no entry of this kind takes: that is a rule's business. */
export function describeField(name: string, kind: EntryKind): string | undefined {
  const field = findField(name, kind);
  return field && paragraphs(`${bold(field.name)} · ${field.doc}`, wordsOf(field), `Example: ${code(`${field.name}: ${field.example}`)}`);
}

function wordsOf({ choices, repeats }: Field): string | undefined {
  const words = choices && `One of: ${choices.map(code).join(", ")}.`;
  return [words, repeats && "May stand more than once."].filter(Boolean).join(" ") || undefined;
}
