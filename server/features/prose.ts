/** A prose field of an entry as one paragraph. */
import type { Entry } from "../../grammar/tree.ts";
import { findFieldIn } from "../house/entry.ts";

/** The field's text with its further lines; empty where the entry has none. */
export function proseOf(entry: Entry, name: string): string {
  const at = findFieldIn(entry, name);
  if (!at) return "";
  const texts = at.field.value ? [at.field.value.text] : [];
  for (let line = at.line + 1; ; line++) {
    const content = entry.lines[line]?.content;
    if (content?.kind === "prose") texts.push(content.text);
    else if (content?.kind !== "blank") break;
  }
  return texts.join(" ").trim();
}
