/** A field that counts once, given twice. */
import { type EntryKind, entryKinds, findField } from "../../grammar/fields.ts";
import type { Entry } from "../../grammar/tree.ts";
import { fieldsIn } from "../house/entry.ts";
import type { Edit } from "../house/finding.ts";
import { placeOf } from "./places.ts";
import type { Rule } from "./rule.ts";
import { specimen } from "./specimen.ts";

export const repeatedField: Rule = {
  code: "repeated-field",
  severity: "warning",
  entries: entryKinds,
  docs: {
    title: "A field is given twice",
    why: "Only the first of the two counts, and whoever reads the second pours another drink.",
    bad: `${specimen(["50 ml gin"])}  glass: rocks\n`,
    good: specimen(["50 ml gin"]),
  },
  *check(_house, entry) {
    for (const [name, [first, ...others]] of fieldsIn(entry)) {
      const field = findField(name, entry.kind as EntryKind);
      if (!field || field.repeats) continue;
      for (const { line, field: again } of others) {
        yield {
          place: placeOf(line, again.name),
          what: `“${again.name.text}” stands here a second time; only the first one counts.`,
          todo: "Keep one of the two.",
          related: [{ entry, place: placeOf(first!.line, first!.field.name), what: "This one counts." }],
          fixes: () => [{ title: "Take this one out", safe: false, edits: fieldLines(entry, line).map((one) => lineOut(entry, one)) }],
        };
      }
    }
  },
};

/** The field's line and the lines that its text goes on over. */
function fieldLines(entry: Entry, line: number): number[] {
  let last = line;
  for (let next = line + 1; next < entry.lines.length; next++) {
    const { kind } = entry.lines[next]!.content;
    if (kind === "prose") last = next;
    else if (kind !== "blank") break;
  }
  return Array.from({ length: last - line + 1 }, (_, index) => line + index);
}

/** An end behind the line's text takes its line break with it. */
function lineOut(entry: Entry, line: number): Edit {
  return { entry, line, start: 0, end: entry.lines[line]!.text.length + 1, text: "" };
}
