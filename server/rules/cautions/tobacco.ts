/** Tobacco, in whatever form. */
import { caution } from "./caution.ts";
import { anyOf, causesOf, mentionsAnywhere } from "./words.ts";

const words = anyOf(["tobacco", "nicotine", "cigar", "snuff"]);

export const tobacco = caution({
  code: "tobacco",
  severity: "warning",
  entries: ["drink", "prep"],
  advice: "Leave it out, and check your local code.",
  docs: {
    title: "Tobacco",
    why: "Alcohol and water draw nicotine out of the leaf. How much is in it nobody at a bar can measure, and very little makes a person ill. It is no food.",
    source: "EFSA, statement on nicotine in mushrooms, 2009 (from memory): at once no more than 0.0008 mg for each kg of body weight.",
    bad: "stock tobacco leaf\n  kind: spice\n\nprep tobacco syrup\n  500 g sugar\n  500 g water\n  4 g tobacco leaf, strained out\n",
    good: "prep smoked tea syrup\n  500 g sugar\n  500 g smoked tea\n",
  },
  causes: (house, entry) =>
    causesOf(mentionsAnywhere(house, entry, words), ({ name }) => `The ${name} gives off nicotine, of which little is too much.`),
});
