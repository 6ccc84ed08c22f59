/** An entry by its name, wherever that stands. */
import type { Entry } from "../../../grammar/tree.ts";
import { linesOf } from "../../house/entry.ts";
import type { House } from "../../house/house.ts";
import type { Measure } from "../../house/show.ts";
import { bold } from "../markdown.ts";
import { describeDrink } from "./drink.ts";
import { describeFamily } from "./family.ts";
import { describeGlass } from "./glass.ts";
import { describeHouse } from "./house.ts";
import { describeIce } from "./ice.ts";
import { describePrep } from "./prep.ts";
import { describeStock } from "./stock.ts";

export function describeEntry(house: House, entry: Entry, measure: Measure): string | undefined {
  switch (entry.kind) {
    case "drink":
      return describeDrink(house, entry, measure);
    case "prep":
      return describePrep(house, entry, measure);
    case "stock":
      return describeStock(house, entry);
    case "family":
      return describeFamily(house, entry);
    case "glass":
      return describeGlass(house, entry, measure);
    case "ice":
      return describeIce(house, entry);
    case "house":
      return describeHouse(house, entry);
    case "menu":
      return `${bold(entry.name?.text ?? "A menu without a name")} · menu · ${[...linesOf(entry, "menu")].length} drinks`;
    default:
      return undefined;
  }
}
