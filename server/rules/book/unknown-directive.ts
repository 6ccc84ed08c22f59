/** A directive that says nothing this language knows. */
import type { Directive, Entry } from "../../../grammar/tree.ts";
import { directiveRows, rowOf } from "../../house/book/directives.ts";
import type { Fix } from "../../house/finding.ts";
import { askFor, nearestOf } from "../../house/nearest.ts";
import type { Rule } from "../rule.ts";
import { specimen } from "../specimen.ts";
import { chapter, directivesIn, fenced } from "./chapter.ts";

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
  *check(house, entry) {
    for (const { line, directive } of directivesIn(house, entry)) {
      if (rowOf(directive)) continue;
      const { name, block } = directive;
      const turned = rowOf({ name, block: !block });
      const near = nearestOf(
        name.text,
        directiveRows.filter((row) => row.block === block).map((row) => row.name),
      );
      yield {
        place: { line, start: name.start, end: name.end },
        what: turned
          ? `“${name.text}” ${block ? "is said within a sentence, with one colon" : "stands on a line of its own, with two colons"}, so nothing would be put here.`
          : `Nothing that a book can say is called “${name.text}”, so it would be printed as it stands.`,
        todo: turned ? howOf(turned.example) : askFor(near, "Correct the name, or put a backslash before the colon to print it so."),
        fixes: () =>
          turned && block ? [withOneColon(entry, line, directive)] : near.map((other) => renamed(entry, line, directive, other)),
      };
    }
  },
};

function howOf(example: string): string {
  return `Write it as in \`${example}\`.`;
}

function renamed(entry: Entry, line: number, { name }: Directive, other: string): Fix {
  return { title: `Change to “${other}”`, safe: false, edits: [{ entry, line, start: name.start, end: name.end, text: other }] };
}

function withOneColon(entry: Entry, line: number, { start }: Directive): Fix {
  return { title: "Say it with one colon", safe: false, edits: [{ entry, line, start, end: start + 1, text: "" }] };
}
