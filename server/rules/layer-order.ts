/** A layer that is heavier than what it is laid on. */
import { difference } from "../engine/difference.ts";
import { isCyclic } from "../house/cycles.ts";
import { assessDrink } from "../house/drink.ts";
import { isAerated, type Layer, layersOf } from "../house/layers.ts";
import { showFigure } from "../house/show.ts";
import { headPlace, placeOf } from "./places.ts";
import type { Rule } from "./rule.ts";
import { specimen } from "./specimen.ts";
import { isDraft } from "./windows.ts";

export const layerOrder: Rule = {
  code: "layer-order",
  severity: "warning",
  entries: ["drink"],
  docs: {
    title: "A heavy layer on a light one",
    why: "What is poured over the back of a spoon stays on top only if a millilitre of it weighs less than a millilitre of what is below; otherwise it sinks, and the layers are one. Sugar makes heavy, alcohol makes light. Looked at are pours that are `, floated` and those of a drink with a `layer` step, in their order; what is beaten with air is left out.",
    bad: specimen(["20 ml brandy", "20 ml coffee liqueur"], { glass: "shot glass", method: "layer" }),
    good: specimen(["20 ml coffee liqueur", "20 ml brandy"], { glass: "shot glass", method: "layer" }),
  },
  *check(house, entry) {
    if (isCyclic(house, entry)) return;
    const layers = layersOf(assessDrink(house, entry));
    for (const [index, upper] of layers.entries()) {
      const lower = layers[index - 1];
      if (!lower || !upper.pour || isAerated(upper) || isAerated(lower) || !isHeavier(upper, lower)) continue;
      const { start, end } = upper.pour.ingredient.resolution;
      yield {
        ...(isDraft(entry) && { severity: "hint" as const }),
        place: upper.pour.entry === entry ? placeOf(upper.pour.line, { start, end }) : headPlace(entry),
        what: `The ${upper.name} is heavier than ${lower.pour ? `the ${lower.name}` : lower.name} below it, ${density(upper)} against ${density(lower)}: it sinks.`,
        todo: "Pour the heavier one first, or let them mix.",
      };
    }
  },
};

/** By more than twice the uncertainty; the plain values first, since they are at hand. */
function isHeavier(upper: Layer, lower: Layer): boolean {
  const [above, below] = [upper.outcome.value("densityGPerMl"), lower.outcome.value("densityGPerMl")];
  if (above === null || below === null || above <= below) return false;
  const { value, plusMinus } = difference(upper.outcome, lower.outcome, "densityGPerMl");
  return value! > 2 * plusMinus!;
}

function density({ outcome }: Layer): string {
  return showFigure(outcome.figure("densityGPerMl"), "g/ml", 3);
}
