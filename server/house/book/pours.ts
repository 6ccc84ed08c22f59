/** What a recipe pours, in the order of print, each with its amount as it is measured. */
import type { Entry, Pour } from "../../../grammar/tree.ts";
import { measuringOf } from "../drink.ts";
import type { House } from "../house.ts";
import { type Ingredient, ingredientOf } from "../ingredient.ts";
import { fold } from "../names.ts";
import { isPouredInOrder, type Order, rankIn } from "../order.ts";
import { type FlatPour, flatten } from "../riff.ts";
import { settingsOf } from "../settings.ts";
import type { Poured } from "./amount.ts";

export interface RecipePour extends Poured {
  readonly ingredient: Ingredient;
  readonly stage: FlatPour["stage"];
  readonly alternatives: readonly (Poured & { readonly ingredient: Ingredient })[];
}

/** As they are written, with what a riff inherits. */
export function poursOf(house: House, entry: Entry): readonly RecipePour[] {
  return house.recall(entry, "printed pours", () => (entry.kind === "drink" ? poursOfDrink(house, entry) : poursOfPrep(house, entry)));
}

/** The same sorted by kind. Nothing crosses a stage, and what is poured in its order stays in it. */
export function inOrder(house: House, entry: Entry, order: Order | undefined): readonly RecipePour[] {
  const pours = poursOf(house, entry);
  if (!order || entry.kind !== "drink" || isPouredInOrder(house, entry)) return pours;
  const rank = ({ ingredient, stage }: RecipePour) => rankIn(house, order, ingredient) + (stage === "after" ? late : 0);
  return pours.toSorted((one, other) => rank(one) - rank(other));
}
/** More than there are kinds. */
const late = 1000;

/** The pour of a drink or a prep that a name means; absent where it pours none. */
export function pouredAs(house: House, entry: Entry, name: string): RecipePour | undefined {
  const scope = house.scopeOf(entry);
  const declared = (["ingredient", "drink"] as const).flatMap((nameClass) => house.find(scope, nameClass, name)?.entry ?? [])[0];
  return poursOf(house, entry).find(({ ingredient: { resolution } }) =>
    declared ? resolution.found?.entry === declared : fold(resolution.text) === fold(name),
  );
}

function poursOfDrink(house: House, entry: Entry): readonly RecipePour[] {
  const flat = flatten(house, entry);
  const { measuring, proportional } = measuringOf(flat, settingsOf(house, house.scopeOf(entry)));
  const part = proportional ? undefined : sizeOf(measuring.part);
  return flat.pours.map((pour) => ({
    ...asPoured(pour, part),
    ingredient: pour.ingredient,
    stage: pour.stage,
    alternatives: pour.alternatives.map((one) => ({ ...asPoured(one, part), ingredient: one.ingredient })),
  }));
}

function sizeOf(part: ReturnType<typeof measuringOf>["measuring"]["part"]): Poured["part"] {
  if ("ml" in part) return "value" in part.ml ? { ml: part.ml.value } : undefined;
  return "g" in part && "value" in part.g ? { g: part.g.value } : undefined;
}

function asPoured({ lead, quantity }: Pick<Pour, "lead" | "quantity">, part?: Poured["part"]): Poured {
  return { ...(lead && { lead }), ...(quantity && { quantity }), ...(part && { part }) };
}

/** An option is printed, though no figure counts it. */
function poursOfPrep(house: House, entry: Entry): readonly RecipePour[] {
  const scope = house.scopeOf(entry);
  const pours: RecipePour[] = [];
  for (const { content } of entry.lines) {
    if (content.kind !== "pour" && content.kind !== "or") continue;
    const { pour } = content;
    if (!pour?.name) continue;
    const ingredient = ingredientOf(house, scope, pour.name);
    const above = pours.at(-1);
    if (content.kind === "pour") pours.push({ ...asPoured(pour), ingredient, stage: "vessel", alternatives: [] });
    else if (above) {
      const { quantity = above.quantity } = pour;
      const other = { ...asPoured({ ...pour, ...(quantity && { quantity }) }), ingredient };
      pours[pours.length - 1] = { ...above, alternatives: [...above.alternatives, other] };
    }
  }
  return pours;
}
