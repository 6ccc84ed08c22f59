/** The pours that an entry itself writes, in whatever line they stand. */
import type { Entry, Name, Pour } from "../../grammar/tree.ts";

export interface WrittenPour {
  readonly line: number;
  readonly pour: Pour;
  readonly name: Name;
}

/** Pours, alternatives, and what a swap puts in: everything that goes into the drink by this entry's own lines. */
export function* poursWritten(entry: Entry): Generator<WrittenPour> {
  for (const [line, { content }] of entry.lines.entries()) {
    const pour =
      content.kind === "pour"
        ? content.pour
        : content.kind === "or"
          ? content.pour
          : content.kind === "swap"
            ? content.readings[0]?.in
            : undefined;
    if (pour?.name) yield { line, pour, name: pour.name };
  }
}
