/** An allowance that allows nothing. */
import type { Entry } from "../../grammar/tree.ts";
import type { Allowance } from "./allowances.ts";
import type { Found, Rule } from "./rule.ts";
import { specimen } from "./specimen.ts";

export const unusedAllowance: Rule = {
  code: "unused-allowance",
  severity: "information",
  entries: ["house", "stock", "prep", "drink", "menu", "family", "glass", "ice", "book", "preamble"],
  docs: {
    title: "Something is allowed that is not there",
    why: "An allowance that is no longer needed says something untrue of the line below it, and would hide the next mistake of that kind.",
    bad: specimen(["50 ml gin  # allow unmeasurable: our thimble"]),
    good: specimen(["51 ml gin  # allow unmeasurable: our thimble"]),
  },
  /** Found by the runner, which alone knows what was allowed. */
  check: () => [],
};

export function foundUnused(entry: Entry, { code, line, start, end }: Allowance): Found {
  return {
    place: { line, start, end },
    what: `Nothing here is found by “${code}”, so this allows nothing, and would hide the next one.`,
    todo: "Take the comment out, or correct the code.",
    fixes: () => [
      { title: "Take out the allowance", safe: true, edits: [{ entry, ...withoutComment(entry, line, start, end), text: "" }] },
    ],
  };
}

/** The comment with the blanks before it; a line that holds nothing else goes whole, with its line break. */
function withoutComment(entry: Entry, line: number, start: number, end: number) {
  const { text } = entry.lines[line]!;
  const before = text.slice(0, start).trimEnd().length;
  return before === 0 ? { line, start: 0, end: text.length + 1 } : { line, start: before, end };
}
