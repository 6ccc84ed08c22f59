/** A remark behind a name that is one slip away from a word that means something. */
import { nearModifier } from "../house/modifiers.ts";
import { poursNamed } from "./pours.ts";
import type { Rule } from "./rule.ts";
import { shaken, specimen } from "./specimen.ts";

export const misspeltModifier: Rule = {
  code: "misspelt-modifier",
  severity: "warning",
  entries: ["drink", "prep"],
  docs: {
    title: "A word behind a name is misspelt",
    why: "A few words behind a comma change what is computed: what is `frozen` melts less ice, what is poured `after` is not shaken. Any other word is a remark and changes nothing; so a slip of one letter changes the drink without a sound.",
    bad: specimen(["60 ml gin, frozn"], shaken),
    good: specimen(["60 ml gin, frozen"], shaken),
  },
  *check(house, entry) {
    for (const { line, ingredient } of poursNamed(house, entry)) {
      for (const { text, start, end } of ingredient.resolution.modifiers) {
        const near = nearModifier(text);
        if (!near) continue;
        yield {
          place: { line, start, end },
          what: `“${text}” is read as a remark, so it changes no figure.`,
          todo: `Did you mean “${near}”?`,
          fixes: () => [{ title: `Change to “${near}”`, safe: false, edits: [{ entry, line, start, end, text: near }] }],
        };
      }
    }
  },
};
