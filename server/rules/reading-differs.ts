/** A measured value that speaks against the pours. */

import { isCyclic } from "../house/cycles.ts";
import { computedPrep } from "../house/prep.ts";
import { contradicted, type Reading, readingsIn } from "../house/readings.ts";
import { showFigure } from "../house/show.ts";
import { valuePlace } from "./places.ts";
import type { Rule } from "./rule.ts";

const syrup = (brix: string) => `prep slip syrup\n  500 g white sugar\n  500 g water\n  brix: ${brix}\n  measured: 2026-03-01\n`;

export const readingDiffers: Rule = {
  code: "reading-differs",
  severity: "information",
  entries: ["prep"],
  docs: {
    title: "A reading speaks against the pours",
    why: "What is measured goes before what is computed, so a wrong reading makes every drink wrong that the prep goes into; and a right one says that the batch was not made as it is written. It is found where the two lie further apart than twice the uncertainty of both. A °Brix may lie anywhere between the sugar and all that is dissolved, since a refractometer sees acid, salt and other solids too. A pH is not held against anything: it does not follow from the acid alone.",
    bad: syrup("58"),
    good: syrup("50"),
  },
  *check(house, entry) {
    if (isCyclic(house, entry)) return;
    for (const reading of readingsIn(entry)) {
      const computed = contradicted(reading, computedPrep(house, entry));
      if (!computed) continue;
      const { unit, causes } = words[reading.field as keyof typeof words];
      const strong = (computedPrep(house, entry).value("strengthPct") ?? 0) > leastStrengthPct;
      yield {
        place: valuePlace(reading.at),
        what: `${showFigure(reading.value, unit)} was read, and the pours make ${showFigure(computed, unit)}. ${causes(strong)}`,
        todo: "Read it again, or put the pours right; until then the figures go by what was read.",
      };
    }
  },
};

/** From here on, % vol, an instrument for sugar does not read sugar. */
const leastStrengthPct = 0.5;

const words: Readonly<Record<Exclude<Reading["field"], "ph">, { unit: string; causes(strong: boolean): string }>> = {
  brix: {
    unit: "°Bx",
    causes: (strong) =>
      strong
        ? "There is alcohol in it, which makes a refractometer read high and a hydrometer low: neither reads sugar."
        : "Water that boiled off, something weighed wrong, sugar not quite dissolved, or a warm sample would do that.",
  },
  density: {
    unit: "g/ml",
    causes: () => "Air or bubbles in the sample, a warm sample, or something weighed wrong would do that.",
  },
  abv: {
    unit: "% vol",
    causes: () => "Alcohol that went off, water out of fruit or ice, or a hydrometer in something sweet, which reads low, would do that.",
  },
};
