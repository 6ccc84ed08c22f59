/** A line of a kind that its entry does not take. */
import type { EntryKind } from "../../grammar/fields.ts";
import type { Content, Entry } from "../../grammar/tree.ts";
import { placeOfLine } from "../house/document.ts";
import { isFaulty } from "./places.ts";
import type { Rule } from "./rule.ts";
import { specimen } from "./specimen.ts";

type LineKind = Content["kind"];

/** The kinds of lines, besides fields, that an entry takes; those left out take none. */
const taken: Partial<Record<Entry["kind"], readonly LineKind[]>> = {
  drink: ["pour", "or", "swap", "without"],
  prep: ["pour", "or"],
  menu: ["section", "menu"],
};

const words: Partial<Record<LineKind, string>> = {
  pour: "pours",
  or: "alternatives",
  swap: "swaps",
  without: "lines that take something out",
  section: "sections",
  menu: "lines with a dash",
};

export const misplacedLine: Rule = {
  code: "misplaced-line",
  severity: "warning",
  entries: ["house", "stock", "prep", "drink", "menu", "family", "glass", "ice", "book"],
  docs: {
    title: "A line in the wrong entry",
    why: "A pour in a stock, or a menu's line in a drink, is computed nowhere. It is often the sign of a head that is missing above it.",
    bad: "stock gin\n  kind: spirit\n  50 ml vermouth\n",
    good: `stock gin\n  kind: spirit\n\n${specimen(["50 ml gin"])}`,
  },
  *check(_house, entry) {
    for (const [number, line] of entry.lines.entries()) {
      const { kind } = line.content;
      const what = words[kind];
      if (!what || isFaulty(line) || taken[entry.kind]?.includes(kind)) continue;
      const places = (Object.keys(taken) as EntryKind[]).filter((one) => taken[one]?.includes(kind));
      yield {
        place: placeOfLine(line, number),
        what: `A ${entry.kind} takes no ${what}, so this line counts for nothing.`,
        todo: `Put it in a ${places.join(" or a ")}, or make it a comment with # and a space.`,
      };
    }
  },
};
