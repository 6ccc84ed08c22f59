/** How something is written: its form in words, and which part of it the cursor is in. */
import type { Span } from "../../../grammar/tree.ts";

export interface Part {
  /** As it stands in the form: once, for that is how an editor finds it there. */
  readonly label: string;
  /** Markdown. */
  readonly doc: string;
}

export interface Form {
  /** The parts' labels with what stands between them. */
  readonly label: string;
  /** Markdown. */
  readonly doc: string;
  readonly parts: readonly Part[];
  readonly active: number;
}

/** The part whose text the column is in; else the first that is not written yet, for that comes next; else the last. */
export function partAt(spans: readonly (Span | undefined)[], column: number): number {
  const inside = spans.findLastIndex((span) => span && span.start <= column && column <= span.end);
  if (inside >= 0) return inside;
  const next = spans.indexOf(undefined);
  return next >= 0 ? next : spans.length - 1;
}
