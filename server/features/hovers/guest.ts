/** What a guest may ask of a drink, a prep or a stock: what is in it that hurts some people, and what one serve brings. */
import type { Entry } from "../../../grammar/tree.ts";
import type { Assessment } from "../../house/drink.ts";
import type { House } from "../../house/house.ts";
import { shortestKeeping } from "../../house/keeping.ts";
import { serveOf } from "../../house/serve.ts";
import { settingsOf } from "../../house/settings.ts";
import { capital, showServe } from "../../house/show.ts";
import { suitabilityOf } from "../../house/suitability.ts";
import { showAllergens, showDiets, showKeeping } from "../../house/suitability-text.ts";
import { asText, bold } from "../markdown.ts";

/** One line: `**Contains egg.** Not stated for clove bitters.` */
export function describeAllergens(house: House, entry: Entry): string {
  const suitability = suitabilityOf(house, entry);
  const { contains, notStated } = showAllergens(suitability, settingsOf(house, house.scopeOf(entry)).country);
  return [suitability.contains.length > 0 ? bold(contains) : asText(contains), asText(notStated)].filter(Boolean).join(" ");
}

/** At most two lines: alcohol, energy and caffeine of one serve; diets and the shortest stated keeping. */
export function describeServe(house: House, assessment: Assessment): string[] {
  const { entry } = assessment.flat;
  const brings = assessment.proportional ? [] : showServe(serveOf(house, assessment));
  const keeping = shortestKeeping(house, entry);
  const suits = [...showDiets(suitabilityOf(house, entry).diets), ...(keeping ? [`keeps ${showKeeping(keeping)}`] : [])];
  return [brings, suits].map((words) => asText(capital(words.join(" · ")))).filter(Boolean);
}
