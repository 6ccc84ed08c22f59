/** A severity for a rule that is not there. */
import { fieldsIn } from "../house/entry.ts";
import { askFor, nearestOf } from "../house/nearest.ts";
import { isNone } from "../house/values.ts";
import type { Rule } from "./rule.ts";

/** The codes are handed in, since this is one of the rules itself. */
export function unknownRule(codes: () => readonly string[]): Rule {
  return {
    code: "unknown-rule",
    severity: "warning",
    entries: ["house"],
    docs: {
      title: "A rule that is not there",
      why: "A `severity:` for a code that is misspelt changes nothing: what was meant to be quiet stays loud, and what was meant to be loud stays quiet.",
      bad: "house The Slip\n  severity: glass-to-small off\n",
      good: "house The Slip\n  severity: glass-too-small off\n",
    },
    *check(_house, entry) {
      for (const { line, field } of fieldsIn(entry).get("severity") ?? []) {
        const code = field.value?.text.split(/\s/)[0]?.toLowerCase();
        if (!field.value || !code || isNone(field) || codes().includes(code)) continue;
        const near = nearestOf(code, codes());
        const place = { line, start: field.value.start, end: field.value.start + code.length };
        yield {
          place,
          what: `There is no rule “${code}”, so this changes nothing.`,
          todo: askFor(near, "Take the code that stands behind the finding."),
          fixes: () => near.map((other) => ({ title: `Change to “${other}”`, safe: false, edits: [{ entry, ...place, text: other }] })),
        };
      }
    },
  };
}
