/** More liquid and ice than the glass holds. */
import { isCyclic } from "../house/cycles.ts";
import { assessDrink } from "../house/drink.ts";
import { glassOf } from "../house/glass.ts";
import { settingsOf } from "../house/settings.ts";
import { showShare, showVolume } from "../house/show.ts";
import { headPlace, valuePlace } from "./places.ts";
import type { Rule } from "./rule.ts";
import { shaken, specimen } from "./specimen.ts";
import { isDraft } from "./windows.ts";

export const glassTooSmall: Rule = {
  code: "glass-too-small",
  severity: "warning",
  entries: ["drink"],
  docs: {
    title: "More than the glass holds",
    why: "A drink larger than its glass is spilled on the tray, or poured short without anyone deciding to. What counts is the drink after melt, with the ice that it is served over.",
    bad: specimen(["60 ml gin", "60 ml dry vermouth"], { ...shaken, glass: "shot glass", method: "stir 30 s; strain" }),
    good: specimen(["60 ml gin", "60 ml dry vermouth"], { ...shaken, glass: "coupe", method: "stir 30 s; strain" }),
  },
  *check(house, entry) {
    if (isCyclic(house, entry)) return;
    const { flat, outcome, proportional, plan } = assessDrink(house, entry);
    const share = outcome.value("fillShare");
    if (proportional || share === null || share <= 1) return;
    const figure = outcome.figure("fillShare");
    const glass = glassOf(house, house.scopeOf(entry), flat);
    if (!glass || share - 1 <= 2 * (figure.plusMinus ?? 0)) return;
    const settings = settingsOf(house, house.scopeOf(entry));
    const liquid = (outcome.value("afterVolumeMl") ?? 0) / plan.serves;
    const capacity = glass.plan.capacityMl.value;
    const own = flat.field("glass");
    const over =
      liquid < capacity ? `With its ice this fills the ${glass.name} to ${showShare(share)}` : `This is ${showVolume(liquid, settings)}`;
    yield {
      ...(isDraft(entry) && { severity: "hint" as const }),
      place: own && own.entry === entry ? valuePlace(own) : headPlace(entry),
      what: `${over}, and the ${glass.name} holds ${showVolume(capacity, settings)}: it spills.`,
      todo: "Choose a larger glass, or scale the pours down.",
    };
  },
};
