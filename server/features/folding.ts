/** What can be folded: entries, prose that goes on over several lines, runs of comment lines. */
import { type FoldingRange, FoldingRangeKind } from "vscode-languageserver-types";
import type { Entry } from "../../grammar/tree.ts";
import type { SpecDocument } from "../house/document.ts";
import { lastLineOf } from "./place.ts";

export function foldingRanges(document: SpecDocument): FoldingRange[] {
  const { entries, starts } = document.tree;
  return entries.flatMap((entry, index) => [...rangesIn(entry, starts[index]!)]);
}

function* rangesIn(entry: Entry, firstLine: number): Generator<FoldingRange> {
  const last = lastLineOf(entry);
  if (entry.kind !== "preamble" && entry.kind !== "text" && last > 0) yield { startLine: firstLine, endLine: firstLine + last };
  yield* runsOf(entry, firstLine, "prose", 1);
  yield* runsOf(entry, firstLine, "comment", 0);
}

/** Runs of lines of one kind; prose hangs under its field's line, `above` lines before it, and blanks inside it count. */
function* runsOf(entry: Entry, firstLine: number, kind: "prose" | "comment", above: number): Generator<FoldingRange> {
  let start = -1;
  let end = -1;
  for (let line = 0; line <= entry.lines.length; line++) {
    const at = entry.lines[line]?.content.kind;
    if (at === kind) {
      if (start < 0) start = line - above;
      end = line;
    } else if (!(at === "blank" && kind === "prose") && start >= 0) {
      if (end > start)
        yield { startLine: firstLine + start, endLine: firstLine + end, ...(kind === "comment" && { kind: FoldingRangeKind.Comment }) };
      start = -1;
    }
  }
}
