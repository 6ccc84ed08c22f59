/** Drinks that do not say how they are made, what they are served in, or what goes on top: `none` is an answer. */
import { findFieldIn } from "../house/entry.ts";
import { flatten } from "../house/riff.ts";
import { headPlace } from "./places.ts";
import type { Rule } from "./rule.ts";
import { isDraft } from "./windows.ts";

/** A rule that asks for a field, the drink's own or an inherited one. A drink that pours nothing yet is not asked. */
export function missingField(
  field: string,
  rule: Omit<Rule, "check" | "entries">,
  what: string,
  todo: string,
  answers: readonly string[],
): Rule {
  return {
    ...rule,
    entries: ["drink"],
    *check(house, entry) {
      const flat = flatten(house, entry);
      if (flat.pours.length === 0 || flat.statedField(field)) return;
      // A riff of a drink that is not there: what it would have inherited is not known.
      if (findFieldIn(entry, "from") && !flat.parent) return;
      yield {
        ...(isDraft(entry) && { severity: "hint" as const }),
        place: headPlace(entry),
        what,
        todo,
        fixes: () =>
          answers.map((answer) => {
            const end = entry.lines[0]!.text.length;
            return {
              title: `Add “${field}: ${answer}”`,
              safe: false,
              edits: [{ entry, line: 0, start: end, end, text: `\n  ${field}: ${answer}` }],
            };
          }),
      };
    },
  };
}
