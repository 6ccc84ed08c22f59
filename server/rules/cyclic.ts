/** A prep or a riff that is made, by way of others, from itself. */
import type { Entry } from "../../grammar/tree.ts";
import { cycleThrough } from "../house/cycles.ts";
import { placeOfLine } from "../house/document.ts";
import { isBefore } from "./order.ts";
import type { Rule } from "./rule.ts";

export const cyclic: Rule = {
  code: "cyclic",
  severity: "error",
  entries: ["prep", "drink"],
  docs: {
    title: "Made from itself",
    why: "What is made from itself can never be made, and nothing about it can be computed. The finding stands on the line that closes the circle.",
    bad: "prep first water\n  100 g second water\n\nprep second water\n  100 g first water\n",
    good: "prep first water\n  100 g water\n\nprep second water\n  100 g first water\n",
  },
  *check(house, entry) {
    const path = cycleThrough(house, entry);
    if (!path || path.some(({ by }) => by !== entry && isBefore(house, entry, by))) return;
    const { line, entry: used } = path[0]!.use;
    const way = [...path.map(({ by }) => nameOf(by)), nameOf(entry)].map((name) => `“${name}”`).join(" from ");
    yield {
      place: placeOfLine(entry.lines[line]!, line),
      what: `This closes a circle, so nothing of it can be computed: ${way}.`,
      todo: used === entry ? "Name another thing here." : "Take one of these out of the other.",
      related: path.slice(1).map(({ by, use }) => ({
        entry: by,
        place: placeOfLine(by.lines[use.line]!, use.line),
        what: `“${nameOf(by)}” is made from “${nameOf(use.entry)}” here.`,
      })),
    };
  },
};

function nameOf(entry: Entry): string {
  return entry.name?.text ?? "";
}
