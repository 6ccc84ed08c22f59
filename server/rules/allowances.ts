/** `# allow CODE: reason` lets one finding stand, on its own line or on the next line that is no comment. */
import type { Entry } from "../../grammar/tree.ts";

export interface Allowance {
  readonly code: string;
  /** The comment's line within the entry. */
  readonly line: number;
  readonly start: number;
  readonly end: number;
  /** The line whose findings it lets stand; behind the entry's last line it is the next entry's first. */
  readonly covers: number;
}

/** The allowances of an entry that give a reason; one without a reason allows nothing. */
export function allowancesIn(entry: Entry): Allowance[] {
  return entry.lines.flatMap(({ comment, content }, line) => {
    const allow = comment?.allow;
    if (!allow?.reason) return [];
    const covers = content.kind === "comment" ? nextLine(entry, line) : line;
    return [{ code: allow.code.text, line, start: comment!.start, end: comment!.end, covers }];
  });
}

function nextLine(entry: Entry, line: number): number {
  let next = line + 1;
  while (entry.lines[next]?.content.kind === "comment") next++;
  return next;
}
