/** Something that the drink pours is out. */
import { findFieldIn } from "../house/entry.ts";
import { isRetired, missingIn, showMissing } from "../house/out.ts";
import { headPlace, placeOf, valuePlace } from "./places.ts";
import type { Rule } from "./rule.ts";
import { specimen } from "./specimen.ts";
import { isDraft } from "./windows.ts";

const cordial = (status: string) => `stock harbour cordial\n  kind: syrup\n${status}\n`;
const pours = ["50 ml gin", "20 ml harbour cordial", "100 ml soda water"];

export const outOfStock: Rule = {
  code: "out-of-stock",
  severity: "information",
  entries: ["drink"],
  docs: {
    title: "Something is out",
    why: "A stock or a prep that says `status: out` takes its drinks off, and so does a prep that is made of it, unless that says `status: in`. An `or` line is something to fall back on. `mutchkin check --out` lists what is off tonight.",
    bad: `${cordial("  status: out\n")}${specimen(pours)}`,
    good: `${cordial("")}${specimen(pours)}`,
  },
  *check(house, entry) {
    if (isRetired(entry)) return;
    for (const { pour, out, through, instead } of missingIn(house, entry)) {
      const { start, end } = pour.ingredient.resolution;
      const status = findFieldIn(out, "status");
      const missing = `The ${showMissing({ out: out.name?.text ?? "stock", ...(through && { through }) })}`;
      yield {
        ...(isDraft(entry) && { severity: "hint" as const }),
        place: pour.entry === entry ? placeOf(pour.line, { start, end }) : headPlace(entry),
        what: instead ? `${missing}: ${instead.ingredient.resolution.text} stands in for it.` : `${missing}: this drink is off tonight.`,
        todo: instead
          ? "Pour that, and tell the guest what changes."
          : "Take it off the card, or add an `or` line with what may stand in for it.",
        ...(status && { related: [{ entry: out, place: valuePlace(status), what: "It is out here." }] }),
      };
    }
  },
};
