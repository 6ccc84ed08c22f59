/** What became of a drink's pours, as changes that are worded like those of a riff. */
import { fold } from "../names.ts";
import type { FlatDrink, FlatPour } from "../riff.ts";
import type { PourChange } from "../riff-changes.ts";
import { writtenPour } from "./written.ts";

export interface PoursCompared {
  readonly changes: readonly PourChange[];
  /** What both pour stands in another order. */
  readonly reordered: boolean;
}

const nameOf = ({ ingredient }: FlatPour) => fold(ingredient.resolution.text);

/** In the order of the later drink, what was left out last. */
export function comparePours(before: FlatDrink, after: FlatDrink): PoursCompared {
  const left = [...before.pours];
  const matches = new Map<FlatPour, FlatPour>();
  const takeBy = (isSame: (one: FlatPour, other: FlatPour) => boolean) => {
    for (const pour of after.pours) {
      if (matches.has(pour)) continue;
      const index = left.findIndex((old) => isSame(old, pour));
      if (index >= 0) matches.set(pour, left.splice(index, 1)[0]!);
    }
  };
  takeBy((old, pour) => writtenPour(old) === writtenPour(pour));
  takeBy((old, pour) => nameOf(old) === nameOf(pour));
  const kept = after.pours.flatMap((pour) => matches.get(pour) ?? []).map((old) => before.pours.indexOf(old));
  const changes = after.pours.flatMap((pour, index): PourChange[] => {
    const old = matches.get(pour);
    if (old) return writtenPour(old) === writtenPour(pour) ? [] : [{ how: "changed", before: old, after: pour }];
    const swapped = swappedFor(before, left, pour, index);
    return [swapped ? { how: "swapped", before: swapped, after: pour } : { how: "added", after: pour }];
  });
  return {
    changes: [...changes, ...left.map((old): PourChange => ({ how: "left out", before: old }))],
    reordered: kept.some((place, index) => index > 0 && place < kept[index - 1]!),
  };
}

/** What a new pour stands in the place of: of the same kind, else on the same line of the drink. Taken out of what is left. */
function swappedFor(before: FlatDrink, left: FlatPour[], pour: FlatPour, index: number): FlatPour | undefined {
  const kind = pour.ingredient.facts?.kind;
  const alike = left.findIndex((old) => old.stage === pour.stage && kind !== undefined && old.ingredient.facts?.kind === kind);
  const there = left.findIndex((old) => old.stage === pour.stage && before.pours.indexOf(old) === index);
  const found = alike >= 0 ? alike : there;
  return found < 0 ? undefined : left.splice(found, 1)[0];
}
