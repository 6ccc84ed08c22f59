/** An ice: how cold it is, what a piece weighs, how much water clings to it. */
import type { Entry } from "../../../grammar/tree.ts";
import { fusionHeat, iceContent } from "../../engine/heat.ts";
import { clingingByKind } from "../../engine/techniques.ts";
import type { House } from "../../house/house.ts";
import { iceFacts } from "../../house/method.ts";
import { proseOf } from "../../house/prose.ts";
import { showNumber, showTemperature, showWeight } from "../../house/show.ts";
import { asText, bold, paragraphs } from "../markdown.ts";

export function describeIce(house: House, entry: Entry): string {
  const name = entry.name?.text ?? "";
  const facts = name ? iceFacts(house, house.scopeOf(entry), name) : undefined;
  if (!facts) return `${bold(name || "An ice without a name")} · ice`;
  const { kind, temperatureC } = facts.plan;
  const clinging = clingingByKind[kind];
  const cling =
    clinging === 1 ? undefined : `${showNumber(clinging)} times the water clings to it that clings to cubes of its weight (practice).`;
  const melts = `A gram takes ${showNumber(-iceContent(Math.min(0, temperatureC.value)))} J to melt, ${showNumber(fusionHeat)} of them at 0 °C.`;
  return paragraphs(
    [bold(name), "ice", kind, showTemperature(temperatureC.value), facts.pieceG && `${showWeight(facts.pieceG.value)} a piece`]
      .filter(Boolean)
      .join(" · "),
    melts,
    cling,
    asText(proseOf(entry, "note")),
  );
}
