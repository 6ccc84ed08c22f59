/** A directive that says nothing this language knows. */
import type { Rule } from "../rule.ts";
import { specimen } from "../specimen.ts";
import { chapter, chapterFaults, fenced } from "./chapter.ts";

const spec = fenced(specimen(["50 ml gin", "100 ml soda water"]));

export const unknownDirective: Rule = {
  code: "unknown-directive",
  severity: "error",
  entries: ["text"],
  docs: {
    title: "A directive that says nothing",
    why: "What stands in the chapter as `:name[…]` is put in its place when the book is built. A name that is not known would be printed with its colon and its brackets. Only the chapters of a `book` are looked at: elsewhere another tool may know the name.",
    bad: chapter(`It is :strenght[Slip Water] strong.\n\n${spec}`),
    good: chapter(`It is :strength[Slip Water] strong.\n\n${spec}`),
  },
  check: (house, entry) => chapterFaults(house, entry, "unknown-directive"),
};
