/** Gas in something closed. */
import { specimen } from "../specimen.ts";
import { caution } from "./caution.ts";
import { anyOf, causesOf, mentionsInSteps } from "./words.ts";

const words = anyOf([
  "(?:force[- ])?carbonate[sd]?",
  "carbonating",
  "siphon",
  "cream charger",
  "nitrous oxide",
  "whipper",
  "ferment(?:ed|s|ing)?",
]);

export const pressure = caution({
  code: "pressure",
  severity: "information",
  entries: ["drink", "prep"],
  advice: "Only in bottles and siphons that are made for the pressure, undamaged, and cold when they are opened.",
  docs: {
    title: "Pressure",
    why: "A bottle that was not made for it can burst from the gas that is put in, or from the gas that a ferment goes on making after it was closed. Square and thin glass goes first; a siphon with a worn thread can throw its head.",
    source: "Common practice, no source: no text of a food authority was found.",
    bad: specimen(["50 ml gin", "100 ml water"], { method: "carbonate to 3 vol" }),
    good: specimen(["50 ml gin", "100 ml soda water"]),
  },
  causes: (house, entry) => causesOf(mentionsInSteps(house, entry, words), ({ word }) => `Pressure builds up where it says “${word}”.`),
});
