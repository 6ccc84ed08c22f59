/** The glass that a drink is served in. */
import type { Entry } from "../../grammar/tree.ts";
import type { GlassPlan, Uncertain } from "../engine/plan.ts";
import { findFieldIn } from "./entry.ts";
import type { House } from "./house.ts";
import type { Step } from "./method.ts";
import { has, temperatureIn } from "./modifiers.ts";
import type { FlatDrink } from "./riff.ts";
import type { Scope } from "./scope.ts";
import type { Settings } from "./settings.ts";
import { isWrong, readPercent, readQuantity, spreadOf, times } from "./values.ts";

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

/** A glass from a hot cupboard, or rinsed with hot water. */
const warmGlassC: Uncertain = { value: 50, u: 8, why: "a warmed glass, practice", assumed: true };

/**
 * How warm the drink's glass is when it is poured into: as the drink says (`glass: coupe, chilled`), as a
 * step of the method makes it (`warm the mug`), as the glass is `stored:`, else as the back bar. Absent
 * where no glass is named.
 */
export function glassTemperature(
  house: House,
  scope: Scope,
  flat: FlatDrink,
  steps: readonly Step[],
  settings: Settings,
): Uncertain | undefined {
  const [named, ...words] = flat.field("glass")?.field.items[0]?.parts ?? [];
  if (!named) return undefined;
  const own = temperatureIn(words) ?? placeIn((word) => has(words, word), settings);
  if (own) return own;
  const step = steps.findLast(({ toGlass }) => toGlass);
  if (step) return step.temperatureC ?? placeIn((word) => wordOf[step.technique!.brings!] === word, settings);
  const entry = house.lookup(scope, "glass", named.text)[0]?.entry;
  return (entry && storedAt(entry, settings)) ?? settings.ambientC;
}

/** Where an entry says that a glass stands; absent for the back bar and for no word of it. */
export function storedAt(entry: Entry, settings: Settings): Uncertain | undefined {
  const stored = findFieldIn(entry, "stored")?.field.value?.text.toLowerCase();
  return placeIn((word) => word === stored, settings);
}

/** What a step without a temperature makes of a glass. */
const wordOf = { stated: "warm", fridge: "fridge", freezer: "freezer" } as const;

function placeIn(is: (word: string) => boolean, { fridgeC, freezerC }: Settings): Uncertain | undefined {
  if (is("chilled") || is("fridge")) return fridgeC;
  if (is("frozen") || is("freezer")) return freezerC;
  return is("warm") || is("hot") ? warmGlassC : undefined;
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
        capacityMl: times(spread, ml),
        washline: share && !isWrong(share) ? share.value.value / 100 : usualWashline,
      },
    };
  });
}
