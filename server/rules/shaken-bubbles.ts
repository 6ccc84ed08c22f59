/** Something that bubbles, written as if it went into the shaker. */
import { isCyclic } from "../house/cycles.ts";
import { assessDrink } from "../house/drink.ts";
import type { Fix } from "../house/finding.ts";
import { has } from "../house/modifiers.ts";
import type { FlatPour } from "../house/riff.ts";
import { placeOf } from "./places.ts";
import type { Rule } from "./rule.ts";
import { shaken, specimen } from "./specimen.ts";

export const shakenBubbles: Rule = {
  code: "shaken-bubbles",
  severity: "warning",
  entries: ["drink"],
  docs: {
    title: "Bubbles in the shaker",
    why: "What bubbles loses its gas in a shaker, and may open it. The figures take it as poured after the ice; whoever reads the spec from top to bottom puts it in the tin, unless the line says `top` or `, after`.",
    bad: specimen(["60 ml soda water", "50 ml gin", "25 ml lemon juice", "20 ml plain syrup"], shaken),
    good: specimen(["50 ml gin", "25 ml lemon juice", "20 ml plain syrup", "60 ml soda water, after"], shaken),
  },
  *check(house, entry) {
    if (isCyclic(house, entry)) return;
    const { pours, steps } = assessDrink(house, entry);
    const vessel = steps.find(({ technique }) => technique?.chill && !technique.iceInGlass)?.technique;
    if (!vessel || !pours.some((pour) => pour.stage === "vessel")) return;
    for (const pour of pours) {
      if (pour.entry !== entry || !pour.ingredient.facts?.fizz || saysLate(pour)) continue;
      const { end, start, text } = pour.ingredient.resolution;
      const fix: Fix = { title: "Add “, after”", safe: true, edits: [{ entry, line: pour.line, start: end, end, text: ", after" }] };
      yield {
        place: placeOf(pour.line, { start, end }),
        what: `The ${text} bubbles, and this reads as if it went in with what you ${vessel.words[0]}; it is computed as poured after.`,
        todo: "Write “, after” behind it, or `top` before it.",
        fixes: () => [fix],
      };
    }
  },
};

function saysLate({ lead, modifiers }: FlatPour): boolean {
  return lead?.lead === "top" || lead?.lead === "rinse" || ["after", "floated", "to rim"].some((word) => has(modifiers, word));
}
