/** A menu that says nothing of what some of its guests cannot take. */
import type { Entry } from "../../../grammar/tree.ts";
import { linesOf } from "../../house/entry.ts";
import type { House } from "../../house/house.ts";
import { menuEntryOf } from "../../house/menu.ts";
import { settingsOf } from "../../house/settings.ts";
import { showList } from "../../house/show.ts";
import { suitabilityOf, usAllergens } from "../../house/suitability.ts";
import { headPlace } from "../places.ts";
import { shaken, specimen } from "../specimen.ts";
import { caution } from "./caution.ts";

/** More names of drinks are not read at a glance. */
const mostNames = 3;

const flip = specimen(["60 ml port", "30 ml cream"], shaken);

export const unnamedAllergens = caution({
  code: "unnamed-allergens",
  severity: "information",
  entries: ["menu"],
  advice: "Name them on the card, or say in `allergens:` where a guest reads them; check your local code.",
  docs: {
    title: "Allergens not named",
    why: "A guest who cannot take milk, egg or nuts orders by the card. In many places whoever serves food must be able to tell them in writing. A menu that has an `allergens:` line, or says anywhere that allergens are told, is left alone. What is listed is what somebody states: a stock of which nobody states anything is in no list, and may hold them all.",
    source:
      "Regulation (EU) 1169/2011 Annex II (read), the fourteen, and Art. 44 (from memory): they are told for food that is not packed too, how is each country's choice. In a house of the US the nine of 21 U.S.C. 321(qq) (read).",
    bad: `${flip}\nmenu Card\n  - Slip Water 9.50\n`,
    good: `${flip}\nmenu Card\n  allergens: a list lies at the bar\n  - Slip Water 9.50\n`,
  },
  *causes(house, entry) {
    if (entry.lines.some(({ text }) => /allerg/i.test(text))) return;
    const drinks = drinksByAllergen(house, entry);
    if (drinks.size === 0) return;
    const named = [...drinks].map(([allergen, names]) => `${allergen} (${showList(names, mostNames)})`);
    yield {
      entry,
      place: headPlace(entry),
      what: `This menu says nothing of allergens, and its drinks hold ${showList(named, named.length)}.`,
    };
  },
});

/** The allergens that the country counts, each with the drinks of the menu that hold it. */
function drinksByAllergen(house: House, menu: Entry): Map<string, string[]> {
  const scope = house.scopeOf(menu);
  const american = settingsOf(house, scope).country === "US";
  const found = new Map<string, string[]>();
  for (const { content } of linesOf(menu, "menu")) {
    const drink = menuEntryOf(house, scope, content)?.entry;
    for (const { allergen } of drink ? suitabilityOf(house, drink).contains : []) {
      const name = american ? usAllergens[allergen] : allergen;
      if (name) found.set(name, [...(found.get(name) ?? []), drink?.name?.text ?? ""]);
    }
  }
  return found;
}
