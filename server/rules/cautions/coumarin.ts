/** Tonka bean and woodruff. */
import { specimen } from "../specimen.ts";
import { caution } from "./caution.ts";
import { anyOf, causesOf, isBitters, mentionsIn } from "./words.ts";

const words = anyOf(["tonka", "woodruff", "coumarin"]);

export const coumarin = caution({
  code: "coumarin",
  severity: "information",
  entries: ["drink", "prep"],
  advice: "Check your local code before you pour it: some set limits, some do not allow it at all.",
  docs: {
    title: "Coumarin",
    why: "Tonka bean and woodruff smell of coumarin, which harms the liver of some people in amounts that an infusion reaches. No recipe tells how much went over.",
    source:
      "21 CFR 189.130 (read): in the United States food with tonka bean or its extract is adulterated. Regulation (EC) 1334/2008 Annex III (from memory): limits in some foods of the EU.",
    bad: specimen(["50 ml rum"], { garnish: "grated tonka bean" }),
    good: specimen(["50 ml rum"], { garnish: "grated nutmeg" }),
  },
  *causes(house, entry) {
    const mentions = [...mentionsIn(house, entry, words)].filter(({ held }) => !isBitters(held));
    yield* causesOf(mentions, ({ name }) => `The ${name} brings coumarin.`);
  },
});
