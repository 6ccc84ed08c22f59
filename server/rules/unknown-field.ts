/** A field that its entry does not take. */
import { type EntryKind, entryKinds, fieldsOf, findField } from "../../grammar/fields.ts";
import { linesOf } from "../house/entry.ts";
import { askFor, nearestOf } from "../house/nearest.ts";
import type { Rule } from "./rule.ts";
import { specimen } from "./specimen.ts";

export const unknownField: Rule = {
  code: "unknown-field",
  severity: "warning",
  entries: entryKinds,
  docs: {
    title: "A field that is not known here",
    why: "What a field of an unknown name says is kept, and counts for nothing: a glass that is misspelt is a drink without a glass.",
    bad: specimen(["50 ml gin"], { sesson: "winter" }),
    good: specimen(["50 ml gin"], { season: "winter" }),
  },
  *check(_house, entry) {
    const kind = entry.kind as EntryKind;
    for (const { line, content } of linesOf(entry, "field")) {
      const { name } = content;
      if (findField(name.text, kind)) continue;
      const takers = findField(name.text)?.entries ?? [];
      const near = nearestOf(
        name.text,
        fieldsOf(kind).map((field) => field.name),
        2,
      );
      const place = { line, start: name.start, end: name.end };
      yield {
        place,
        what: `A ${kind} takes no field “${name.text}”, so this line counts for nothing.`,
        todo:
          takers.length > 0
            ? `It belongs to a ${takers.join(" or a ")}.`
            : askFor(near, "Put it under `notes:`, or make it a comment with # and a space."),
        fixes: () => near.map((other) => ({ title: `Change to “${other}:”`, safe: false, edits: [{ entry, ...place, text: other }] })),
      };
    }
  },
};
