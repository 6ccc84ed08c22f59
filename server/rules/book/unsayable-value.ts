/** A value that the text is to say and that nobody knows, and attributes that a directive does not take. */
import type { Attribute, Directive, Entry } from "../../../grammar/tree.ts";
import { type DirectiveRow, rowOf } from "../../house/book/directives.ts";
import { meaningOf, saidBy } from "../../house/book/saying.ts";
import { askFor, nearestOf } from "../../house/nearest.ts";
import { capital, showList } from "../../house/show.ts";
import type { Found, Rule } from "../rule.ts";
import { specimen } from "../specimen.ts";
import { chapter, directivesIn, fenced, labelPlace } from "./chapter.ts";

const spec = fenced(specimen(["50 ml gin", "100 ml soda water"]));

export const unsayableValue: Rule = {
  code: "unsayable-value",
  severity: "error",
  entries: ["text"],
  docs: {
    title: "A value that cannot be said",
    why: "A sentence with a hole in it is worse than none, and a number that nobody knows is never made up. An attribute that is not taken changes nothing, whatever the author meant by it.",
    bad: chapter(`It wants :pour[lemon juice]{in="Slip Water"} of lemon juice.\n\n${spec}`),
    good: chapter(`It wants :pour[soda water]{in="Slip Water"} of soda water.\n\n${spec}`),
  },
  *check(house, entry) {
    const scope = house.scopeOf(entry);
    for (const { line, directive } of directivesIn(house, entry)) {
      const row = rowOf(directive);
      if (!row) continue;
      yield* attributesOf(entry, line, directive, row);
      const meant = meaningOf(house, scope, directive);
      if (row.block || !("row" in meant)) continue;
      const said = saidBy(house, scope, directive);
      if ("text" in said) continue;
      yield {
        place: labelPlace(line, directive),
        what: `The book cannot say this: ${said.because}.`,
        todo: "State it in the recipe, or say something else here.",
      };
    }
  },
};

function* attributesOf(entry: Entry, line: number, directive: Directive, row: DirectiveRow): Generator<Found> {
  for (const attribute of directive.attributes) {
    const { name, value } = attribute;
    const known = row.attributes.find((one) => one.name === name.text);
    if (!known) yield unknownAttribute(entry, line, attribute, row);
    else if (known.values && !known.values.includes(value?.text ?? "")) {
      const { start, end } = value && value.end > value.start ? value : name;
      yield {
        place: { line, start, end },
        what: `“${name.text}” is one of ${showList(known.values)}, so this changes nothing.`,
        todo: "Write one of them.",
        fixes: () =>
          known.values!.map((one) => ({
            title: `Change to “${one}”`,
            safe: false,
            edits: [{ entry, line, start: name.start, end: value ? Math.max(value.end, name.end) : name.end, text: `${name.text}=${one}` }],
          })),
      };
    }
  }
  const absent =
    row.block && row.attributes.find(({ name, needed }) => needed && !directive.attributes.some((one) => one.name.text === name));
  if (!absent) return;
  yield {
    place: { line, start: directive.name.start, end: directive.name.end },
    what: `It does not say “${absent.name}”, so nothing can be put here. ${capital(absent.doc)}`,
    todo: `Write it as in \`${row.example}\`.`,
  };
}

function unknownAttribute(entry: Entry, line: number, { name }: Attribute, row: DirectiveRow): Found {
  const names = row.attributes.map((one) => one.name);
  const near = nearestOf(name.text, names);
  return {
    severity: "warning",
    place: { line, start: name.start, end: name.end },
    what: `“${row.name}” takes no “${name.text}”, so it changes nothing.`,
    todo: askFor(near, names.length > 0 ? `It takes ${showList(names)}.` : "Leave it out."),
    fixes: () =>
      near.map((other) => ({
        title: `Change to “${other}”`,
        safe: false,
        edits: [{ entry, line, start: name.start, end: name.end, text: other }],
      })),
  };
}
