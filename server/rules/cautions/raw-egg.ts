/** Egg that was neither cooked nor pasteurised. */
import { shaken, specimen } from "../specimen.ts";
import { caution } from "./caution.ts";
import { type Held, heldIn } from "./held.ts";

export const rawEgg = caution({
  code: "raw-egg",
  severity: "information",
  entries: ["drink"],
  advice: "Tell the guest, and check your local code.",
  docs: {
    title: "Raw egg",
    why: "A raw egg can carry salmonella, and neither acid nor alcohol makes it safe in the time of a drink. It matters most in pregnancy, to the very young, the old and the ill. If yours is pasteurised, say `pasteurised: yes` on the stock or the prep, or “pasteurised” in the pour; a powder is taken to be.",
    source:
      "UK Food Standards Agency, advice of 11 October 2017 (as reported): eggs of an assured scheme may be eaten raw, others should be cooked. US FDA Food Code 3-302.13 (from memory): pasteurised egg where it is not cooked.",
    bad: specimen(["50 ml rum", "22.5 ml lemon juice", "20 ml plain syrup", "1 egg white"], shaken),
    good: specimen(["50 ml rum", "22.5 ml lemon juice", "20 ml plain syrup", "1 pasteurised egg white"], shaken),
  },
  *causes(house, entry) {
    for (const held of heldIn(house, entry)) {
      if (held.facts?.kind !== "egg" || isSafe(held)) continue;
      const { through, facts } = held;
      yield { ...held, what: through ? `The ${facts.name} in the ${through} is raw.` : `The ${facts.name} is raw.` };
    }
  },
});

/** By law a powder is pasteurised in the EU and the US, from memory. */
function isSafe({ name, names, pasteurised, facts }: Held): boolean {
  if (pasteurised !== undefined) return pasteurised;
  // Only what is written or declared here: the larder's plain egg white also goes by the name of the pasteurised one.
  const [written] = names.split("\n");
  return [name, written!, facts?.name ?? ""].some((text) => /(?<!un|not |non-)pasteuri[sz]ed|\bpowder|\bdried\b/i.test(text));
}
