/** What holds in a house: its own settings and, where it sets nothing, the usual ones. */
import type { Entry } from "../../../grammar/tree.ts";
import { standardDrinkOf } from "../../engine/standard-drinks.ts";
import type { House } from "../../house/house.ts";
import { settingsOf } from "../../house/settings.ts";
import { showNumber, showTemperature, showWeight } from "../../house/show.ts";
import { bold, paragraphs, table } from "../markdown.ts";

export function describeHouse(house: House, entry: Entry): string {
  const { country, units, ounceMl, jiggerMl, scaleG, freezerC, fridgeC, ambientC, hotC } = settingsOf(house, house.scopeOf(entry));
  const counted = standardDrinkOf(country);
  const rows = [
    ["units", units],
    ["one ounce", `${showNumber(ounceMl)} ml`],
    ["jigger, scale", `to ${showNumber(jiggerMl)} ml, to ${showNumber(scaleG)} g`],
    ["back bar, fridge", `${showTemperature(ambientC.value)}, ${showTemperature(fridgeC.value)}`],
    ["freezer, hot", `${showTemperature(freezerC.value)}, ${showTemperature(hotC.value)}`],
    ["counts alcohol in", `${counted.word}s of ${showWeight(counted.grams)}`],
  ];
  return paragraphs(`${bold(entry.name?.text ?? "A house without a name")} · house`, table(["", "holds here"], rows));
}
