/** A measure of something that is weighed. */
import type { Unit } from "../../grammar/units.ts";
import { liquidOf } from "../engine/composition.ts";
import { sizeOf } from "../house/amounts.ts";
import { settingsOf } from "../house/settings.ts";
import { showWeight } from "../house/show.ts";
import { poursNamed } from "./pours.ts";
import type { Rule } from "./rule.ts";
import { shaken, specimen } from "./specimen.ts";

export const volumeOfSolid: Rule = {
  code: "volume-of-solid",
  severity: "information",
  entries: ["drink", "prep"],
  docs: {
    title: "A measure of something that is weighed",
    why: "How much a spoon of sugar or salt weighs hangs on its grain and on the hand: a tenth more or less is usual, and in a syrup it is tasted. A scale has no such doubt. Dashes, pinches and barspoons are not looked at.",
    bad: specimen(["60 ml rum", "22.5 ml lime juice", "15 ml sugar"], shaken),
    good: specimen(["60 ml rum", "22.5 ml lime juice", "13 g sugar"], shaken),
  },
  *check(house, entry) {
    for (const { line, pour, ingredient } of poursNamed(house, entry)) {
      const { quantity } = pour;
      const unit = quantity?.unit?.unit;
      if (!quantity?.value || !unit || !isVolume(unit)) continue;
      const { facts, model, resolution } = ingredient;
      if (!facts?.model.solid || model !== facts.model) continue;
      const settings = settingsOf(house, house.scopeOf(entry));
      const grams = facts.model.densityGPerMl && quantity.value * sizeOf(unit, facts, settings).value * liquidOf(model).gPerMl;
      const text = grams && showWeight(Number(grams.toPrecision(2)));
      yield {
        place: { line, start: quantity.start, end: quantity.end },
        what: `${resolution.text[0]!.toUpperCase()}${resolution.text.slice(1)} is a solid, and how much of it ${quantity.numeral.text} ${quantity.unit!.text} is differs from hand to hand.`,
        todo: text ? `Weigh it: this is about ${text}.` : "Weigh it.",
        fixes: () =>
          text && quantity.upTo === undefined
            ? [{ title: `Write ${text}`, safe: false, edits: [{ entry, line, start: quantity.numeral.start, end: quantity.end, text }] }]
            : [],
      };
    }
  },
};

function isVolume({ dimension, bar }: Unit): boolean {
  return dimension === "volume" && !bar;
}
