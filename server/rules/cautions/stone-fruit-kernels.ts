/** What is inside the stones of fruit. */
import { caution } from "./caution.ts";
import { anyOf, causesOf, mentionsAnywhere } from "./words.ts";

/** A bought extract of bitter almonds is free of it by law. */
const words = anyOf([
  "(?:apricot|peach|nectarine|cherry|plum|damson|sloe) (?:kernel|stone|pit|pip)",
  "bitter almonds?(?! (?:extract|essence|oil|aroma|liqueur))",
  "noyaux?",
]);

export const stoneFruitKernels = caution({
  code: "stone-fruit-kernels",
  severity: "warning",
  entries: ["drink", "prep"],
  advice: "Leave them out, or buy a product that is tested for it; check your local code.",
  docs: {
    title: "Stone-fruit kernels",
    why: "Kernels of apricot, peach, cherry and plum, and bitter almonds, give off cyanide when they are crushed, chewed or steeped, and how much differs tenfold from tree to tree. Three small apricot kernels can be more than an adult should have at once.",
    source:
      "EFSA Journal 2016;14(4):4424 (read): at once no more than 20 µg of cyanide for each kg of body weight. Spirit drinks and flavourings have a limit for it: Regulation (EC) 1334/2008 Annex III (from memory).",
    bad: "stock apricot kernels\n  kind: spice\n\nprep apricot spirit\n  700 ml brandy\n  20 g apricot kernels, strained out\n",
    good: "prep apricot spirit\n  500 ml brandy\n  200 ml apricot liqueur\n",
  },
  causes: (house, entry) =>
    causesOf(mentionsAnywhere(house, entry, words), ({ name }) => `The ${name} can give off cyanide when crushed or steeped.`),
});
