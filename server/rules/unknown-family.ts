/** A family that nobody declares. */
import { findFieldIn } from "../house/entry.ts";
import { askFor, nearestNames } from "../house/nearest.ts";
import { namedIn } from "./named.ts";
import type { Rule } from "./rule.ts";
import { specimen } from "./specimen.ts";

export const unknownFamily: Rule = {
  code: "unknown-family",
  severity: "warning",
  entries: ["drink"],
  docs: {
    title: "A family that is not known",
    why: "The family holds the windows that a drink is weighed against; without it nothing is said of its balance.",
    bad: specimen(["50 ml gin", "150 ml ginger beer"], { family: "sweet hihgball" }),
    good: specimen(["50 ml gin", "150 ml ginger beer"], { family: "sweet highball" }),
  },
  *check(house, entry) {
    const named = namedIn(house, entry, findFieldIn(entry, "family"), "family");
    if (!named || named.known) return;
    const near = nearestNames(house, house.scopeOf(entry), "family", named.text);
    yield {
      place: named.place,
      what: `“${named.text}” is no family of the house or the larder, so this drink is weighed against nothing.`,
      todo: askFor(near, "Name one that is known, or declare it as a `family` with its windows."),
      fixes: () => near.map((other) => ({ title: `Change to “${other}”`, safe: false, edits: [{ entry, ...named.place, text: other }] })),
    };
  },
};
