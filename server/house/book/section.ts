/** What a section of a chapter is about: the text from a heading to the next, and the recipes printed there. */
import type { Entry } from "../../../grammar/tree.ts";
import type { House } from "../house.ts";
import { specOf } from "./printed.ts";
import { proseOn } from "./prose.ts";

export interface Section {
  /** The one drink that the heading names or that is printed below it. */
  readonly drink: Entry;
  /** What else is printed there. */
  readonly others: readonly Entry[];
}

/** The section that a text entry stands in; absent where it is not plainly about one drink. */
export function sectionOf(house: House, entry: Entry): Section | undefined {
  const entries = entriesAround(house, entry);
  const heading = entries[0]?.lines[0];
  if (heading?.content.kind !== "text" || heading.content.level === undefined) return undefined;
  const scope = house.scopeOf(entry);
  const printed = new Set(
    entries.flatMap((one): Entry[] => {
      if (one.kind === "drink" || one.kind === "prep") return one.name ? [one] : [];
      return one.lines.flatMap(({ content }) =>
        content.kind === "text" ? content.directives.flatMap((directive) => specOf(house, scope, directive) ?? []) : [],
      );
    }),
  );
  // What is computed from a recipe depends on all that its name depends on.
  for (const { kind, name } of printed) house.lookup(scope, kind === "drink" ? "drink" : "ingredient", name!.text);
  const named = house.find(scope, "drink", titleOf(proseOn(heading)))?.entry;
  const drinks = [...printed].filter(({ kind }) => kind === "drink");
  const drink = named && (drinks.length === 0 || drinks.includes(named)) ? named : drinks.length === 1 ? drinks[0] : undefined;
  return drink && { drink, others: [...printed].filter((one) => one !== drink) };
}

/** The entries from the heading above an entry to the next heading. */
function entriesAround(house: House, entry: Entry): readonly Entry[] {
  const { entries } = house.noteText(entry).tree;
  const at = house.getIndexOf(entry);
  const start = entries.findLastIndex((one, index) => index <= at && isHeaded(one));
  const end = entries.findIndex((one, index) => index > at && isHeaded(one));
  return start < 0 ? [] : entries.slice(start, end < 0 ? undefined : end);
}

function isHeaded({ lines }: Entry): boolean {
  const content = lines[0]?.content;
  return content?.kind === "text" && content.level !== undefined;
}

function titleOf(heading: string): string {
  return heading
    .replace(/^[\s>]*#{1,6}\s/, "")
    .replace(/\s#+\s*$/, "")
    .trim();
}
