/** The steps of the method that an entry itself writes. */
import type { Entry } from "../../grammar/tree.ts";
import { type FieldAt, findFieldIn } from "../house/entry.ts";
import type { House } from "../house/house.ts";
import { type Step, stepsOf } from "../house/method.ts";

/** An inherited method is its parent's to answer for. */
export function stepsWritten(house: House, entry: Entry): { readonly method: FieldAt; readonly steps: readonly Step[] } | undefined {
  const method = findFieldIn(entry, "method");
  return method && { method, steps: stepsOf(house, method) };
}
