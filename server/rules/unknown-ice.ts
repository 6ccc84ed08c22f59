/** An ice that nobody declares, in a field or in a step of the method. */
import type { Entry } from "../../grammar/tree.ts";
import type { Place } from "../house/document.ts";
import { findFieldIn } from "../house/entry.ts";
import type { House } from "../house/house.ts";
import { askFor, nearestNames } from "../house/nearest.ts";
import { namedIn } from "./named.ts";
import type { Rule } from "./rule.ts";
import { specimen } from "./specimen.ts";
import { stepsWritten } from "./steps.ts";

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
  const written = entry.kind === "drink" ? stepsWritten(house, entry) : undefined;
  for (const { item, technique, ice } of written?.steps ?? []) {
    const name = technique && !ice ? iceNamedIn(item.text) : undefined;
    if (!name) continue;
    const end = item.start + item.text.length;
    unknown.push({ place: { line: written!.method.line, start: end - name.length, end }, text: name, known: false });
  }
  return unknown;
}

/** `with 120 g crushed ice`: what is named at the end of a step, behind its weight, where it calls itself ice. */
function iceNamedIn(step: string): string | undefined {
  const named = /\b(?:with|over|on)\s+(.+)$/i.exec(step)?.[1];
  const name = named?.replace(/^(?:about\s+)?[\d.]+\s*(?:k?g|oz|lb)\s+/i, "").replace(/^(?:an?|one|fresh)\s+/i, "");
  return name && /\b(?:ice|cubes?)$/i.test(name) ? name : undefined;
}
