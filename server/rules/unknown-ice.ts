/** An ice that nobody declares, in a field or in a step of the method. */
import type { Entry } from "../../grammar/tree.ts";
import type { Place } from "../house/document.ts";
import { findFieldIn } from "../house/entry.ts";
import type { House } from "../house/house.ts";
import { readMethod } from "../house/method.ts";
import { askFor, nearestNames } from "../house/nearest.ts";
import { namedIn } from "./named.ts";
import type { Rule } from "./rule.ts";
import { specimen } from "./specimen.ts";

export const unknownIce: Rule = {
  code: "unknown-ice",
  severity: "warning",
  entries: ["drink", "house"],
  docs: {
    title: "An ice that is not known",
    why: "Crushed ice brings more water than cubes. Of an ice that is not known the house's usual ice is computed instead.",
    bad: specimen(["50 ml gin"], { method: "build over crushd ice" }),
    good: specimen(["50 ml gin"], { method: "build over crushed ice" }),
  },
  *check(house, entry) {
    for (const { place, text } of unknownIn(house, entry)) {
      const near = nearestNames(house, house.scopeOf(entry), "ice", text);
      yield {
        place,
        what: `“${text}” is no ice of the house or the larder, so the usual ice is computed instead.`,
        todo: askFor(near, "Declare it as an `ice`, or correct the name."),
        fixes: () => near.map((other) => ({ title: `Change to “${other}”`, safe: false, edits: [{ entry, ...place, text: other }] })),
      };
    }
  },
};

function unknownIn(house: House, entry: Entry): { place: Place; text: string }[] {
  const named = namedIn(house, entry, findFieldIn(entry, "ice"), "ice");
  const unknown = named && !named.known ? [named] : [];
  const method = findFieldIn(entry, "method");
  if (!method || entry.kind !== "drink") return unknown;
  for (const { item, technique, ice } of readMethod(house, house.scopeOf(entry), method.field)) {
    const match = technique && !ice ? named_.exec(item.text) : null;
    if (!match) continue;
    const start = item.start + match.index + match[0].length - match[1]!.length;
    unknown.push({ place: { line: method.line, start, end: start + match[1]!.length }, text: match[1]!, known: false });
  }
  return unknown;
}

/** `with 120 g crushed ice`: what is named after the weight, where it calls itself ice. */
const named_ = /\b(?:with|over|on)\s+(?:about\s+)?(?:[\d.]+\s*(?:k?g|oz|lb)\s+)?(?:an?\s+|one\s+|fresh\s+)?(\S.*\bice|\S*\s*cubes?)$/i;
