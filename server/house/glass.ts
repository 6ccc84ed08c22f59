/** The glass that a drink is served in. */
import type { Entry } from "../../grammar/tree.ts";
import type { GlassPlan } from "../engine/plan.ts";
import { findFieldIn } from "./entry.ts";
import type { House } from "./house.ts";
import type { FlatDrink } from "./riff.ts";
import type { Scope } from "./scope.ts";
import { isWrong, readPercent, readQuantity, spreadOf } from "./values.ts";

export interface Glass {
  readonly entry: Entry;
  readonly name: string;
  readonly plan: GlassPlan;
}

/** Poured this full where the glass says nothing: common practice, no source. */
const usualWashline = 0.9;

/** The drink's glass; absent where none is named, the name is not declared, or the glass has no size. */
export function glassOf(house: House, scope: Scope, flat: FlatDrink): Glass | undefined {
  const name = flat.field("glass")?.field.items[0]?.parts[0]?.text;
  const entry = name ? house.lookup(scope, "glass", name)[0]?.entry : undefined;
  return entry && findGlass(house, entry);
}

/** What an entry says of a glass; absent where it states no size. */
export function findGlass(house: House, entry: Entry): Glass | undefined {
  return house.recall(entry, "glass", () => {
    const holds = findFieldIn(entry, "holds");
    const read = holds && readQuantity(holds.field, "240 ml");
    if (!read || isWrong(read)) return undefined;
    const ml = read.value.unit?.unit.ml ?? 1;
    const spread = spreadOf(read.value, (value) => 0.02 * value, "the size of the glass")!;
    const washline = findFieldIn(entry, "washline");
    const share = washline && readPercent(washline.field, "90 %", "the washline");
    return {
      entry,
      name: entry.name?.text ?? "",
      plan: {
        capacityMl: { ...spread, value: spread.value * ml, u: spread.u * ml },
        washline: share && !isWrong(share) ? share.value.value / 100 : usualWashline,
      },
    };
  });
}
