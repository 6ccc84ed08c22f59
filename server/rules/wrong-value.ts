/** A field whose value does not read. */
import { type EntryKind, entryKinds, findField } from "../../grammar/fields.ts";
import { linesOf } from "../house/entry.ts";
import { findWrong } from "./field-values.ts";
import { isFaulty, placeOf } from "./places.ts";
import type { Rule } from "./rule.ts";

export const wrongValue: Rule = {
  code: "wrong-value",
  severity: "warning",
  entries: entryKinds,
  docs: {
    title: "A value that does not read",
    why: "A value that does not read counts as not given, and what is computed from it is unknown or assumed. A bare per cent of sugar or acid is such a value: by weight and by volume differ by more than a quarter in a syrup.",
    bad: "stock fennel syrup\n  kind: syrup\n  sugar: 60 %\n",
    good: "stock fennel syrup\n  kind: syrup\n  sugar: 60 g/100 g\n",
  },
  *check(_house, entry) {
    const kind = entry.kind as EntryKind;
    for (const { line, content } of linesOf(entry, "field")) {
      const field = findField(content.name.text, kind);
      if (!field || isFaulty(entry.lines[line]!)) continue;
      const wrong = findWrong(field, content, kind);
      if (!wrong) continue;
      yield {
        place: placeOf(line, wrong),
        what: `${wrong.wrong} ${wrong.counts ?? "It counts as not given."}`,
        todo: wrong.todo,
        fixes: () =>
          (wrong.instead ?? []).map((text) => ({
            title: `Write “${text}”`,
            safe: false,
            edits: [{ entry, line, start: wrong.start, end: wrong.end, text }],
          })),
      };
    }
  },
};
