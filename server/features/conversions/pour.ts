/** One pour in another unit. */

import type { Entry } from "../../../grammar/tree.ts";
import { findUnit } from "../../../grammar/units.ts";
import type { Fix } from "../../house/finding.ts";
import type { House } from "../../house/house.ts";
import { settingsOf } from "../../house/settings.ts";
import { amountAt, amountEdit, mayBeWeighed } from "./pours.ts";
import { convert, stepTitle, targetIds, titleOf } from "./units.ts";

/** For each unit the exact amount; beside it the measurable one where that differs, which says what it rounds. */
export function convertPour(house: House, entry: Entry, line: number): Fix[] {
  const amount = amountAt(house, entry, line);
  if (!amount) return [];
  const settings = settingsOf(house, house.scopeOf(entry));
  const { quantity, ingredient } = amount;
  const fixes: Fix[] = [];
  for (const target of targetIds) {
    const sameDimension = findUnit(target)!.dimension === quantity.unit?.unit.dimension;
    if (!sameDimension && !mayBeWeighed(amount)) continue;
    const [exact, measured] = [false, true].map((round) => convert(quantity, ingredient, target, settings, round));
    // Between volume and weight a density stands, which is not known to eight digits: only what can be measured is offered.
    for (const converted of sameDimension ? [exact, measured] : [measured ?? exact]) {
      if (!converted) continue;
      const round = converted === measured;
      const to = `${quantity.unit?.unit.id === target ? "Round" : `Convert to ${titleOf(target, settings)}`}`;
      const { text, roundedFrom } = converted;
      // To a reader's digits the two may be the same.
      const instead = roundedFrom === text ? "" : ` instead of ${roundedFrom}`;
      const title = round
        ? `${to}${to === "Round" ? "" : ", rounded"} to ${stepTitle(target, settings)}: ${text}${instead}`
        : `${to}: ${text}`;
      fixes.push({ title, safe: !round, edits: [amountEdit(entry, amount, text)] });
    }
  }
  return fixes;
}
