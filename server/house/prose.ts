/** A prose field of an entry, as one paragraph or as those that blank lines part. */
import type { Entry } from "../../grammar/tree.ts";
import { findFieldIn } from "./entry.ts";

/** The field's text with its further lines; empty where the entry has none. */
export function proseOf(entry: Entry, name: string): string {
  return paragraphsOf(entry, name).join(" ");
}

/** The same, a text for each paragraph. */
export function paragraphsOf(entry: Entry, name: string): readonly string[] {
  const at = findFieldIn(entry, name);
  if (!at) return [];
  const paragraphs: string[][] = [at.field.value ? [at.field.value.text] : []];
  for (let line = at.line + 1; ; line++) {
    const content = entry.lines[line]?.content;
    if (content?.kind === "prose") paragraphs.at(-1)!.push(content.text);
    else if (content?.kind === "blank") paragraphs.push([]);
    else break;
  }
  return paragraphs.flatMap((texts) => texts.join(" ").trim() || []);
}
