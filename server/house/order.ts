/** In which order pours are written, by the kind of what is poured. */
import type { StockKind } from "../../grammar/fields.ts";
import type { Entry } from "../../grammar/tree.ts";
import { isCyclic } from "./cycles.ts";
import type { House } from "./house.ts";
import type { Ingredient } from "./ingredient.ts";
import { stepsOf } from "./method.ts";
import { has } from "./modifiers.ts";
import { prepPours } from "./prep.ts";
import { proseOf } from "./prose.ts";
import { type FlatPour, flatten } from "./riff.ts";

/** Kinds of one row stay as they are written. */
export type Order = readonly (readonly StockKind[])[];

/**
 * From the strongest to what fills up, as specs are usually written: practice, no source. A house's `order:`
 * goes before it.
 */
export const usualOrder: Order = [
  ["spirit"],
  ["fortified wine", "vermouth", "bitter aperitif", "wine"],
  ["liqueur"],
  ["bitters"],
  ["juice", "puree", "acid", "vinegar", "fruit", "vegetable"],
  ["syrup", "sugar", "honey"],
  ["coffee", "tea", "sauce", "salt", "spice", "herb", "other"],
  ["egg", "dairy", "plant milk"],
  ["water", "mixer", "sparkling wine", "beer", "cider"],
];

/** Where something that is poured stands. A kind that the order leaves out comes behind those that it names, in the usual order. */
export function rankIn(house: House, order: Order, { resolution, facts }: Pick<Ingredient, "resolution" | "facts">): number {
  const kind = kindOf(house, resolution.found?.entry, facts?.kind);
  const rank = order.findIndex((kinds) => kinds.includes(kind));
  return rank >= 0 ? rank : order.length + usualOrder.findIndex((kinds) => kinds.includes(kind));
}

/** A stock's own; a prep and a drink that is poured go by what they name first, where sugar makes a syrup. */
function kindOf(house: House, entry: Entry | undefined, kind: StockKind | undefined): StockKind {
  if (kind) return kind;
  if (!entry || isCyclic(house, entry)) return "other";
  const first = (entry.kind === "drink" ? flatten(house, entry).pours : prepPours(house, entry)).at(0)?.ingredient;
  const made = first ? kindOf(house, first.resolution.found?.entry, first.facts?.kind) : "other";
  return made === "sugar" || made === "honey" ? "syrup" : made;
}

/** Whether a drink is put together in the order in which its pours stand: in layers, or because it says so. */
export function isPouredInOrder(house: House, entry: Entry): boolean {
  const flat = flatten(house, entry);
  const method = flat.field("method");
  const steps = method ? stepsOf(house, method) : [];
  const says = `${method?.field.value?.text} ${proseOf(entry, "steps")}`;
  return /\border\b/i.test(says) || steps.some(({ technique }) => technique?.id === "layer") || flat.pours.some(isFloated);
}

function isFloated({ modifiers }: FlatPour): boolean {
  return has(modifiers, "floated");
}
