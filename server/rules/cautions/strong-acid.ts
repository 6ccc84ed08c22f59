/** Acid strong enough to hurt whoever weighs it or pours it. */
import { liquidOf } from "../../engine/composition.ts";
import { at } from "../../engine/liquid.ts";
import type { Ingredient } from "../../house/ingredient.ts";
import { pouredIn } from "../../house/poured.ts";
import { showNumber } from "../../house/show.ts";
import { caution } from "./caution.ts";

/**
 * g/100 g from which a mixture with an eye irritant such as citric acid is classed as one: Regulation
 * (EC) 1272/2008 Annex I, table 3.3.3, from memory.
 */
const irritatesFrom = 10;
const pureFrom = 95;

export const strongAcid = caution({
  code: "strong-acid",
  severity: "information",
  entries: ["drink", "prep"],
  advice: "Shield eyes and hands, put the acid into the water, and label the bottle with its strength.",
  docs: {
    title: "Concentrated acid",
    why: `Powdered acids and strong solutions hurt eyes, skin and breath. Looked at is whatever is poured or weighed out with ${irritatesFrom} g of acid or more in 100 g; a solution as sour as lemon juice is not.`,
    source:
      "Regulation (EC) 1272/2008 Annex I part 3: 10 % of an eye irritant (from memory); citric acid is one by Regulation (EU) 2021/849 (read). Lactic and phosphoric acid are classed more strictly.",
    bad: "prep strong sour\n  20 g citric acid\n  to 100 g water\n",
    good: "prep sour water\n  30 ml lemon juice\n  to 100 g water\n",
  },
  *causes(house, entry) {
    for (const { ingredient, ...brought } of pouredIn(house, entry)) {
      const grams = acidIn(ingredient);
      const strength = grams >= pureFrom ? "pure acid" : `about ${showNumber(grams, 0)} % acid by weight`;
      const what = `The ${ingredient.resolution.text} is ${strength}: it hurts eyes, skin and breath.`;
      if (isStrongAcid(ingredient)) yield { ...brought, what };
    }
  },
});

/** Whether the usual caution holds for whoever weighs it. */
export function isStrongAcid(ingredient: Ingredient): boolean {
  return acidIn(ingredient) >= irritatesFrom;
}

/** Grams in 100 g; 0 where it is unknown. Ascorbic acid irritates nobody. */
function acidIn({ model }: Ingredient): number {
  if (model.type === "stock" && model.acids.every(({ acid }) => acid === "ascorbic")) return 0;
  const { perGram, reasons } = liquidOf(model);
  return reasons.acid.length === 0 ? 100 * perGram[at.acid]! : 0;
}
