/** Whether the method of a prep does no more than mix it. */
import type { Entry } from "../../../grammar/tree.ts";
import { findFieldIn } from "../../house/entry.ts";
import type { House } from "../../house/house.ts";
import { stepsOf } from "../../house/method.ts";

/** The techniques that leave a prep what its pours are. */
export const mixing: ReadonlySet<string> = new Set(["mix", "stir", "heat"]);

/** A step that no table knows may do anything. */
export function isOnlyMixed(house: House, prep: Entry): boolean {
  const method = findFieldIn(prep, "method");
  return !method || stepsOf(house, method).every(({ technique }) => technique && mixing.has(technique.id));
}
