/** Quinine drawn from the bark by hand. */
import { caution } from "./caution.ts";
import { anyOf, causesOf, mentionsIn } from "./words.ts";

const words = anyOf(["cinchona", "quina bark", "quinine bark", "quinine powder", "quinine sul(?:ph|f)ate"]);
/** What is bought ready to pour was dosed by somebody who can measure it. */
const bought: ReadonlySet<string | undefined> = new Set(["mixer", "liqueur", "vermouth", "wine", "bitter aperitif", "bitters", "spirit"]);

export const cinchonaBark = caution({
  code: "cinchona-bark",
  severity: "information",
  entries: ["drink", "prep"],
  advice: "Pour a bought tonic or a measured extract instead, and check your local code.",
  docs: {
    title: "Cinchona bark",
    why: "The bark holds quinine and its sisters in amounts that differ severalfold, and nobody at a bar can tell how much went over. Too much makes the ears ring and the head swim, and upsets the heart. Some of the powder always stays in what is strained.",
    source: "21 CFR 172.575 (from memory): at most 83 parts per million of quinine in a carbonated drink, and it must be named.",
    bad: "stock cinchona bark\n  kind: spice\n\nprep bark syrup\n  500 g sugar\n  500 g water\n  20 g cinchona bark, strained out\n",
    good: "prep tonic reduction\n  500 g sugar\n  500 g tonic water\n",
  },
  *causes(house, entry) {
    const mentions = [...mentionsIn(house, entry, words)].filter(({ held }) => !bought.has(held.facts?.kind));
    yield* causesOf(mentions, ({ name }) => `Nobody can tell how much quinine the ${name} gives.`);
  },
});
