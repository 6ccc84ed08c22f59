/** A glass: how much it holds, and how much of that is poured. */
import type { Entry } from "../../../grammar/tree.ts";
import { glassHeat } from "../../engine/glass.ts";
import { findFieldIn } from "../../house/entry.ts";
import { findGlass, storedAt } from "../../house/glass.ts";
import type { House } from "../../house/house.ts";
import { proseOf } from "../../house/prose.ts";
import { settingsOf } from "../../house/settings.ts";
import { type Measure, showNumber, showShare, showTemperature, showVolume } from "../../house/show.ts";
import { asText, bold, paragraphs } from "../markdown.ts";

export function describeGlass(house: House, entry: Entry, measure: Measure): string {
  const glass = findGlass(house, entry);
  const stored = findFieldIn(entry, "stored")?.field.value?.text;
  const title = [bold(entry.name?.text ?? "A glass without a name"), "glass", stored && `from the ${asText(stored)}`];
  const settings = settingsOf(house, house.scopeOf(entry));
  const warmth = `Poured into at ${showTemperature(storedAt(entry, settings) ?? settings.ambientC)} unless the drink says otherwise; without ice in it, it takes or gives about ${showNumber(glassHeat.value)} J for each K and each ml of drink (practice).`;
  if (!glass) return paragraphs(title.filter(Boolean).join(" · "), "How much it holds is not stated: `holds:` would tell.", warmth);
  const { capacityMl, washline } = glass.plan;
  const washlineStated = findFieldIn(entry, "washline") !== undefined;
  return paragraphs(
    title.filter(Boolean).join(" · "),
    `Holds ${showVolume(capacityMl.value, measure)} to the brim; poured to ${showShare(washline)}${washlineStated ? "" : ", as is usual"}: ${showVolume(capacityMl.value * washline, measure)}.`,
    warmth,
    asText(proseOf(entry, "note")),
  );
}
