/** A fruit that changes what a medicine does. */
import { specimen } from "../specimen.ts";
import { caution } from "./caution.ts";
import { anyOf, causesOf, mentionsIn } from "./words.ts";

const words = anyOf(["grapefruit", "pomelo", "seville orange", "bitter orange", "tangelo"]);
/** A zest, and what is distilled or dosed in dashes, bring next to none of the juice. */
const harmless: ReadonlySet<string | undefined> = new Set(["herb", "spice", "spirit", "liqueur", "bitters", "bitter aperitif"]);
const notTheJuice = /\b(?:zest|peel|twist|oil|bitters|liqueur)s?\b/i;

export const grapefruit = caution({
  code: "grapefruit",
  severity: "information",
  entries: ["drink"],
  advice: "Name it on the menu; a guest who takes medicines asks a pharmacist.",
  docs: {
    title: "Grapefruit with medicines",
    why: "Grapefruit, pomelo and Seville orange change how the body takes up a number of common medicines, for a day and more. Which ones, a pharmacist knows; that it is in the glass, only the menu can say. A zest on top does not count.",
    source: "US FDA, consumer update on grapefruit juice and drugs (as reported).",
    bad: specimen(["50 ml tequila", "120 ml grapefruit juice"]),
    good: specimen(["50 ml tequila", "120 ml orange juice"]),
  },
  *causes(house, entry) {
    const mentions = [...mentionsIn(house, entry, words)].filter(
      ({ held }) => !held.onTop && !harmless.has(held.facts?.kind) && !notTheJuice.test(held.name),
    );
    yield* causesOf(mentions, ({ name }) => `The ${name} changes how some medicines work.`);
  },
});
