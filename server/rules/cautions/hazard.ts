/** Something that is poison, or makes people ill, whatever is done with it. */
import { specimen } from "../specimen.ts";
import { caution } from "./caution.ts";
import { anyOf, causesOf, mentionsAnywhere } from "./words.ts";

/** One row each, no plurals: common knowledge, no source. Not complete, and no lexicon of poisons. */
const hazards: readonly { readonly words: readonly string[]; readonly because: string }[] = [
  { words: ["methanol", "denatured alcohol", "isopropyl alcohol", "methylated spirit"], because: "is poison and no drink" },
  {
    words: [
      ...["foxglove", "oleander", "hemlock", "yew", "nightshade", "belladonna", "lily of the valley", "monkshood", "wolfsbane"],
      ...["datura", "angel's trumpet", "laburnum", "ragwort", "rhubarb lea(?:f|ve)"],
    ],
    because: "is poisonous",
  },
  { words: ["raw elderberr(?:y|ie)", "elder lea(?:f|ve)", "elder bark"], because: "makes people ill unless it is cooked through" },
  { words: ["activated charcoal"], because: "takes medicines out of the body that somebody relies on" },
];

export const hazard = caution({
  code: "hazard",
  severity: "warning",
  entries: ["drink", "prep"],
  advice: "Leave it out, or ask somebody licensed before it is served, and check your local code.",
  docs: {
    title: "Poison, or nearly",
    why: "A few things that turn up in drinks do harm by themselves. This is the usual caution and no more: it knows a few words, it is no lexicon of poisons, and where it is silent nothing is proved safe.",
    source: "Common knowledge, no source.",
    bad: specimen(["50 ml gin"], { garnish: "a foxglove flower" }),
    good: specimen(["50 ml gin"], { garnish: "a borage flower" }),
  },
  causes: (house, entry) =>
    causesOf(mentionsAnywhere(house, entry, all), ({ word }) => {
      const { because } = hazards.find(({ words }) => anyOf(words).test(word))!;
      return `“${word.toLowerCase()}” ${because}.`;
    }),
});

const all = anyOf(hazards.flatMap(({ words }) => words));
