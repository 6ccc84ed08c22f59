/** `# allow CODE: reason` lets one finding stand, on its own line or on the one below it. */
import type { Entry } from "../../grammar/tree.ts";
import type { Finding } from "../house/finding.ts";

export interface Allowance {
  readonly code: string;
  /** The comment's line within the entry. */
  readonly line: number;
  readonly start: number;
  readonly end: number;
  /** The lines whose findings it lets stand. */
  readonly covers: readonly number[];
}

/** The allowances of an entry that give a reason; one without a reason allows nothing. */
export function allowancesIn(entry: Entry): Allowance[] {
  return entry.lines.flatMap(({ comment, content }, line) => {
    const allow = comment?.allow;
    if (!allow?.reason) return [];
    const covers = content.kind === "comment" ? [line + 1] : [line];
    return [{ code: allow.code.text, line, start: comment!.start, end: comment!.end, covers }];
  });
}

/** An allowance that allows nothing hides the next mistake of that kind. */
export function unusedAllowance(entry: Entry, { code, line, start, end }: Allowance): Finding {
  return {
    code: "unused-allowance",
    severity: "information",
    entry,
    place: { line, start, end },
    what: `Nothing here is found by “${code}”, so this allows nothing, and would hide the next one.`,
    todo: "Take the comment out, or correct the code.",
    fixes: () => [{ title: "Take out the allowance", safe: true, edits: [{ entry, line, start, end, text: "" }] }],
  };
}
