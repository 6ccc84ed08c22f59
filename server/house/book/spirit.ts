/** By which spirit a recipe is looked up: that of which it pours the most, also where it is poured in something made here. */
import type { Entry } from "../../../grammar/tree.ts";
import type { Amount } from "../../engine/plan.ts";
import { isCyclic } from "../cycles.ts";
import { assessDrink } from "../drink.ts";
import type { House } from "../house.ts";
import type { Ingredient } from "../ingredient.ts";
import { prepPours } from "../prep.ts";

/** The name of the stock; absent where no spirit is poured. */
export function spiritOf(house: House, entry: Entry): string | undefined {
  return house.recall(entry, "spirit", () => {
    if (isCyclic(house, entry)) return undefined;
    return poured(house, entry)
      .flatMap(({ ingredient, size }) => {
        const name = spiritIn(house, ingredient);
        return name ? [{ name, size }] : [];
      })
      .sort((one, other) => other.size - one.size)[0]?.name;
  });
}

function spiritIn(house: House, { facts, resolution }: Ingredient): string | undefined {
  if (facts) return facts.kind === "spirit" ? facts.name : undefined;
  const made = resolution.found?.entry;
  return made && spiritOf(house, made);
}

function poured(house: House, entry: Entry): { ingredient: Ingredient; size: number }[] {
  if (entry.kind !== "drink") return prepPours(house, entry).map(({ ingredient, part }) => ({ ingredient, size: sizeOf(part.amount) }));
  const { pours, plan } = assessDrink(house, entry);
  return pours.map(({ ingredient }, index) => ({ ingredient, size: sizeOf(plan.pours[index]!.amount) }));
}

/** A gram is taken as a millilitre: it only has to tell the larger of two spirits. */
function sizeOf(amount: Amount | object): number {
  const known = "ml" in amount ? amount.ml : "g" in amount ? amount.g : undefined;
  return known && typeof known === "object" && "value" in known ? (known.value as number) : 0;
}
