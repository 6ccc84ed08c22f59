/** More alcohol in one serve than the house means to pour. */
import { assessDrink } from "../../house/drink.ts";
import { perServe } from "../../house/serve.ts";
import { settingsOf } from "../../house/settings.ts";
import { showWeight } from "../../house/show.ts";
import { headPlace } from "../places.ts";
import { specimen } from "../specimen.ts";
import { caution } from "./caution.ts";

export const largeServe = caution({
  code: "large-serve",
  severity: "information",
  entries: ["drink"],
  advice: "Pour less, or serve it for two; check your local code.",
  docs: {
    title: "Much alcohol in one serve",
    why: "A guest counts glasses, not grams. What one serve holds is held against the house's `serve limit:`, 32 g where the house sets none; `serve limit: none` looks at nothing. A drink for several counts per serve.",
    source: "No source: a house's own choice. The usual 32 g are four UK units of 8 g.",
    bad: specimen(["90 ml navy strength gin", "15 ml dry vermouth"], { glass: "double rocks" }),
    good: specimen(["60 ml navy strength gin", "15 ml dry vermouth"], { glass: "double rocks" }),
  },
  *causes(house, entry) {
    const limit = settingsOf(house, house.scopeOf(entry)).serveLimitG;
    const { outcome, plan, proportional } = assessDrink(house, entry);
    const plain = outcome.value("ethanolG");
    if (limit === undefined || proportional || plain === null || plain / plan.serves <= limit) return;
    const each = perServe(outcome.figure("ethanolG"), plan.serves);
    if (each.value! - limit <= 2 * each.plusMinus!) return;
    yield {
      entry,
      place: headPlace(entry),
      what: `One serve holds ${showWeight(each)} of alcohol, and the limit here is ${showWeight(limit)}.`,
    };
  },
});
