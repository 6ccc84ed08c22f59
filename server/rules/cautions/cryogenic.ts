/** Something colder than anything that may touch a mouth. */
import { specimen } from "../specimen.ts";
import { caution } from "./caution.ts";
import { anyOf, causesOf, mentionsAnywhere } from "./words.ts";

const words = anyOf(["dry ice", "solid carbon dioxide", "liquid nitrogen", "cryogen"]);

export const cryogenic = caution({
  code: "cryogenic",
  severity: "warning",
  entries: ["drink", "prep"],
  advice: "Leave none in what is served; only with training and fresh air, and check your local code.",
  docs: {
    title: "Dry ice or liquid nitrogen",
    why: "Either burns skin, throat and stomach at a touch, bursts a closed bottle, and fills a low room with gas that nobody can breathe. People have been badly hurt by a glass from which it had not gone yet.",
    source:
      "UK Food Standards Agency, statement of October 2012; US FDA, safety alert of 30 August 2018 and Food Code interpretation of 31 October 2018 (all as reported).",
    bad: specimen(["50 ml gin"], { garnish: "a chip of dry ice" }),
    good: specimen(["50 ml gin"]),
  },
  causes: (house, entry) =>
    causesOf(
      mentionsAnywhere(house, entry, words),
      ({ word }) => `${capital(word)} burns skin and throat, and its gas takes the place of air.`,
    ),
});

function capital(word: string): string {
  return word.slice(0, 1).toUpperCase() + word.slice(1).toLowerCase();
}
