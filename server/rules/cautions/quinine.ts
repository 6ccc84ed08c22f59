/** What some guests were told to leave alone. */
import { specimen } from "../specimen.ts";
import { caution } from "./caution.ts";
import { anyOf, causesOf, isBitters, mentionsIn } from "./words.ts";

const words = anyOf(["tonic", "quinine", "quinquina", "cinchona", "bitter lemon"]);

export const quinine = caution({
  code: "quinine",
  severity: "information",
  entries: ["drink"],
  advice: "Name it on the menu; in pregnancy or with heart medicines a guest asks a pharmacist first.",
  docs: {
    title: "Quinine",
    why: "Tonic water, bitter lemon and some wine aperitifs hold quinine. A glass does most people no harm; some are told to leave it, in pregnancy, with medicines for the heart, or because they bore it badly before. They can only if it is named.",
    source:
      "Directive 2002/67/EC, now Regulation (EU) 1169/2011 Annex VII (read in summary): quinine is named among the ingredients. 21 CFR 172.575 (from memory): at most 83 parts per million, and declared. Pregnancy and medicines: German BfR, assessment of 2005 (from memory).",
    bad: specimen(["50 ml gin", "150 ml tonic water"]),
    good: specimen(["50 ml gin", "150 ml soda water"]),
  },
  *causes(house, entry) {
    const mentions = [...mentionsIn(house, entry, words)].filter(({ held }) => !isBitters(held));
    yield* causesOf(mentions, ({ name }) => `The ${name} brings quinine.`);
  },
});
