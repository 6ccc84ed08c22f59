/** A measured value without its day. */
import { findFieldIn } from "../house/entry.ts";
import { readingsIn } from "../house/readings.ts";
import { valuePlace } from "./places.ts";
import type { Rule } from "./rule.ts";

const syrup = (day: string) => `prep slip syrup\n  500 g white sugar\n  500 g water\n  brix: 50\n${day}`;

export const readingUndated: Rule = {
  code: "reading-undated",
  severity: "hint",
  entries: ["prep"],
  docs: {
    title: "A reading has no day",
    why: "A reading is of one batch. A year later nobody knows whether it was taken before or after the recipe was changed, and it goes before everything that is computed.",
    bad: syrup(""),
    good: syrup("  measured: 2026-03-01\n"),
  },
  *check(_house, entry) {
    const [first] = readingsIn(entry);
    if (!first || findFieldIn(entry, "measured")) return;
    yield {
      place: valuePlace(first.at),
      what: "This was read on a day that is not given, and it goes before what the pours make.",
      todo: "Write the day below it, such as `measured: 2026-03-01`.",
    };
  },
};
