/** The steps of the method that an entry itself writes. */
import type { Entry } from "../../grammar/tree.ts";
import { assessDrink } from "../house/drink.ts";
import { type FieldAt, findFieldIn } from "../house/entry.ts";
import type { House } from "../house/house.ts";
import { readMethod, type Step } from "../house/method.ts";

/** A drink's are read once, with its figures; an inherited method is its parent's to answer for. */
export function stepsWritten(house: House, entry: Entry): { readonly method: FieldAt; readonly steps: readonly Step[] } | undefined {
  const method = findFieldIn(entry, "method");
  if (!method) return undefined;
  if (entry.kind === "drink") return { method, steps: assessDrink(house, entry).steps };
  return { method, steps: readMethod(house, house.scopeOf(entry), method.field) };
}
