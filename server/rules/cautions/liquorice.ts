/** The root that raises the blood pressure. */
import { specimen } from "../specimen.ts";
import { caution } from "./caution.ts";
import { anyOf, causesOf, isBitters, mentionsIn } from "./words.ts";

const words = anyOf(["liquorice", "licorice", "glycyrrhizin"]);

export const liquorice = caution({
  code: "liquorice",
  severity: "information",
  entries: ["drink"],
  advice: "Name it on the menu, for guests with high blood pressure; check your local code.",
  docs: {
    title: "Liquorice",
    why: "The root's sweet part, glycyrrhizin, raises the blood pressure of whoever has much of it. How much a syrup or an infusion holds cannot be computed from a recipe. Fennel, anise and star anise hold none.",
    source:
      "Regulation (EU) 1169/2011 Annex III (figures read in the UK's version, S.R. 2005 No. 198): from 10 mg/l a drink says that it contains liquorice; from 50 mg/l, or 300 mg/l above 1.2 % vol, it warns.",
    bad: `stock liquorice syrup\n  kind: syrup\n  abv: 0 %\n  sugar: 60 g/100 ml\n  acid: 0 g/100 ml\n\n${specimen(["50 ml rum", "20 ml liquorice syrup"])}`,
    good: `stock fennel syrup\n  kind: syrup\n  abv: 0 %\n  sugar: 60 g/100 ml\n  acid: 0 g/100 ml\n\n${specimen(["50 ml rum", "20 ml fennel syrup"])}`,
  },
  *causes(house, entry) {
    const mentions = [...mentionsIn(house, entry, words)].filter(({ held }) => !isBitters(held));
    yield* causesOf(mentions, ({ name }) => `The ${name} brings glycyrrhizin, which raises the blood pressure.`);
  },
});
