/** What a guest may ask of a drink or a prep, for the report. */
import type { Entry } from "../../grammar/tree.ts";
import type { House } from "../house/house.ts";
import { shortestKeeping } from "../house/keeping.ts";
import { suitabilityOf } from "../house/suitability.ts";
import type { DrinkReport } from "./assess-schema.ts";

export function guestReport(house: House, entry: Entry): Pick<DrinkReport, "allergens" | "diets" | "keeps"> {
  const { contains, notStated, diets } = suitabilityOf(house, entry);
  const keeping = shortestKeeping(house, entry);
  return {
    allergens: { contains: contains.map((one) => ({ ...one, names: [...one.names] })), notStated: [...notStated] },
    diets: diets.map(({ diet, suits = null, assumed = false, because }) => ({ diet, suits, assumed, because: [...because] })),
    keeps: keeping ? { text: keeping.text, name: keeping.name } : null,
  };
}
