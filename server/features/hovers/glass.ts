/** A glass: how much it holds, and how much of that is poured. */
import type { Entry } from "../../../grammar/tree.ts";
import { findFieldIn } from "../../house/entry.ts";
import { findGlass } from "../../house/glass.ts";
import type { House } from "../../house/house.ts";
import { type Measure, showShare, showVolume } from "../../house/show.ts";
import { asText, bold, paragraphs } from "../markdown.ts";
import { proseOf } from "../prose.ts";

export function describeGlass(house: House, entry: Entry, measure: Measure): string {
  const glass = findGlass(house, entry);
  const stored = findFieldIn(entry, "stored")?.field.value?.text;
  const title = [bold(entry.name?.text ?? "A glass without a name"), "glass", stored && `from the ${asText(stored)}`];
  if (!glass) return paragraphs(title.filter(Boolean).join(" · "), "How much it holds is not stated: `holds:` would tell.");
  const { capacityMl, washline } = glass.plan;
  const washlineStated = findFieldIn(entry, "washline") !== undefined;
  return paragraphs(
    title.filter(Boolean).join(" · "),
    `Holds ${showVolume(capacityMl.value, measure)} to the brim; poured to ${showShare(washline)}${washlineStated ? "" : ", as is usual"}: ${showVolume(capacityMl.value * washline, measure)}.`,
    asText(proseOf(entry, "note")),
  );
}
