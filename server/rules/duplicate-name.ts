/** Two entries of one class and one house that go by the same name. */
import type { Entry } from "../../grammar/tree.ts";
import { namesOf } from "../house/declarations.ts";
import type { Place } from "../house/document.ts";
import { fold } from "../house/names.ts";
import { isBefore } from "./order.ts";
import { headPlace, placeOf } from "./places.ts";
import type { Rule } from "./rule.ts";
import { specimen } from "./specimen.ts";

export const duplicateName: Rule = {
  code: "duplicate-name",
  severity: "warning",
  entries: ["stock", "prep", "drink", "menu", "family", "glass", "ice", "book"],
  docs: {
    title: "Two things of one name",
    why: "A name that two entries go by means the first of them, wherever it is written, and nobody sees which one that is. Accents and plurals do not tell names apart. A house may give a name of the larder, or of the house above it, a meaning of its own: that is no fault.",
    bad: `${specimen(["50 ml gin"])}\n${specimen(["40 ml gin"])}`,
    good: `${specimen(["50 ml gin"])}\n${specimen(["40 ml gin"], {}, "Slip Water, Short")}`,
  },
  *check(house, entry) {
    const scope = house.scopeOf(entry);
    const seen = new Set<string>();
    for (const name of namesOf(entry)) {
      const key = fold(name);
      const nameClass =
        entry.kind === "stock" || entry.kind === "prep"
          ? "ingredient"
          : (entry.kind as "drink" | "menu" | "family" | "glass" | "ice" | "book");
      // The look-up is what makes the finding go when the other one goes; the scope alone knows every entry of the name.
      house.lookup(scope, nameClass, name);
      const others = scope.names.get(`${nameClass}|${key}`) ?? [];
      const before = others.filter((other) => other.entry !== entry && isBefore(house, other.entry, entry));
      const first = before.sort((one, other) => (isBefore(house, one.entry, other.entry) ? -1 : 1))[0];
      if (!first || seen.has(key)) continue;
      seen.add(key);
      const uri = house.getDocumentOf(first.entry).uri;
      const where = uri === house.getDocumentOf(entry).uri ? "above" : `in ${uri.slice(uri.lastIndexOf("/") + 1)}`;
      yield {
        place: placeOfName(entry, name),
        what: `“${name}” is already the name of a ${first.entry.kind} ${where}, so it never means this one.`,
        todo: "Give one of the two another name.",
        related: [{ entry: first.entry, place: placeOfName(first.entry, first.name), what: "The name is taken here." }],
      };
    }
  },
};

function placeOfName(entry: Entry, name: string): Place {
  if (entry.name?.text === name) return headPlace(entry);
  for (const [line, { content }] of entry.lines.entries()) {
    if (content.kind !== "field" || content.name.text.toLowerCase() !== "aka") continue;
    const item = content.items.find(({ text }) => text === name);
    if (item) return placeOf(line, item);
  }
  return headPlace(entry);
}
