/** A second house in one folder. */
import { headPlace } from "./places.ts";
import type { Rule } from "./rule.ts";

export const duplicateHouse: Rule = {
  code: "duplicate-house",
  severity: "error",
  entries: ["house"],
  docs: {
    title: "Two houses in one folder",
    why: "The house in a folder sets its units, jigger, prices and temperatures, and only one of them can. The first by file name and line counts, the other is not looked at.",
    bad: "house The Slip\n  jigger: 2.5 ml\n\nhouse The Quay\n  jigger: 5 ml\n",
    good: "house The Slip\n  jigger: 2.5 ml\n",
  },
  *check(house, entry) {
    house.noteSettings();
    const governing = house.scopeOf(entry).houses[0];
    if (!governing || governing === entry) return;
    const uri = house.getDocumentOf(governing).uri;
    yield {
      place: headPlace(entry),
      what: `This folder already has a house, in ${uri.slice(uri.lastIndexOf("/") + 1)}; what this one sets counts for nothing.`,
      todo: "Keep one of the two, or move this one to a folder of its own.",
      related: [{ entry: governing, place: headPlace(governing), what: "This house counts." }],
    };
  },
};
