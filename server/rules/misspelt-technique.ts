/** A step of a method that starts with a word one slip away from a technique. */
import { techniques } from "../engine/techniques.ts";
import { nearestOf } from "../house/nearest.ts";
import type { Rule } from "./rule.ts";
import { shaken, specimen } from "./specimen.ts";
import { stepsWritten } from "./steps.ts";

const words = techniques.flatMap((technique) => technique.words);

export const misspeltTechnique: Rule = {
  code: "misspelt-technique",
  severity: "warning",
  entries: ["drink", "prep"],
  docs: {
    title: "A technique is misspelt",
    why: "A step that no table knows is kept and printed, and changes no figure. A shake that is misspelt adds no water, and the drink is computed as if it had never met ice.",
    bad: specimen(["60 ml gin"], { ...shaken, method: "shaek 12 s; fine strain" }),
    good: specimen(["60 ml gin"], shaken),
  },
  *check(house, entry) {
    const written = stepsWritten(house, entry);
    if (!written) return;
    const { method } = written;
    for (const { item, technique } of written.steps) {
      const start = technique ? undefined : stepWords.exec(item.text)?.[1];
      const near = start ? nearestOf(start, words, 1)[0] : undefined;
      if (!start || !near) continue;
      const place = { line: method.line, start: item.start, end: item.start + start.length };
      yield {
        place,
        what: `“${start}” is no technique that is known here, so the step changes no figure.`,
        todo: `Did you mean “${near}”?`,
        fixes: () => [{ title: `Change to “${near}”`, safe: false, edits: [{ entry, ...place, text: near }] }],
      };
    }
  },
};

/** A step that is written like a technique: a word or two, then nothing, an amount, or what it is done with. */
const stepWords = /^([\p{L}-]+(?: [\p{L}-]+)?)(?=$|\s+(?:\d|with\b|over\b|on\b|for\b|until\b|to\b))/iu;
