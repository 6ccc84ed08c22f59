/** A family: the windows that its drinks are held against. */
import type { Entry } from "../../../grammar/tree.ts";
import { findFieldIn } from "../../house/entry.ts";
import { windowFields } from "../../house/family.ts";
import type { House } from "../../house/house.ts";
import { proseOf } from "../../house/prose.ts";
import { isNone } from "../../house/values.ts";
import { asText, bold, paragraphs, table } from "../markdown.ts";

export function describeFamily(house: House, entry: Entry): string {
  const rows = windowFields.flatMap(({ field }) => {
    const at = findFieldIn(entry, field);
    if (!at?.field.value) return [];
    return [[field, isNone(at.field) ? "not weighed" : asText(at.field.value.text)]];
  });
  return paragraphs(
    `${bold(entry.name?.text ?? "A family without a name")} · family of drinks, after the ice`,
    rows.length > 0 && table(["", "window"], rows),
    asText(proseOf(entry, "note") || (house.isLarder(entry) ? "Common practice, from memory, no source." : "")),
  );
}
