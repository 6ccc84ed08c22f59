/** A glass that nobody declares. */
import { findFieldIn } from "../house/entry.ts";
import { askFor, nearestNames } from "../house/nearest.ts";
import { namedIn } from "./named.ts";
import type { Rule } from "./rule.ts";
import { specimen } from "./specimen.ts";

export const unknownGlass: Rule = {
  code: "unknown-glass",
  severity: "warning",
  entries: ["drink"],
  docs: {
    title: "A glass that is not known",
    why: "Without the glass's size nobody can say whether the drink fits, nor how much tops it up.",
    bad: specimen(["50 ml gin"], { glass: "hihgball" }),
    good: specimen(["50 ml gin"], { glass: "highball" }),
  },
  *check(house, entry) {
    const named = namedIn(house, entry, findFieldIn(entry, "glass"), "glass");
    if (!named || named.known) return;
    const near = nearestNames(house, house.scopeOf(entry), "glass", named.text);
    yield {
      place: named.place,
      what: `“${named.text}” is no glass of the house or the larder, so how full it is poured is unknown.`,
      todo: askFor(near, "Declare it as a `glass` with what it `holds:`, or correct the name."),
      fixes: () => near.map((other) => ({ title: `Change to “${other}”`, safe: false, edits: [{ entry, ...named.place, text: other }] })),
    };
  },
};
