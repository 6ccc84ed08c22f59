/** All measured amounts of a drink, a prep or a file in another unit. */
import type { Entry } from "../../../grammar/tree.ts";
import { findUnit, type Unit } from "../../../grammar/units.ts";
import { findFieldIn } from "../../house/entry.ts";
import type { Edit, Fix } from "../../house/finding.ts";
import type { House } from "../../house/house.ts";
import { type Settings, settingsOf } from "../../house/settings.ts";
import { onlyPart } from "../../house/values.ts";
import { amountEdit, amountsIn, mayBeWeighed, type WrittenAmount } from "./pours.ts";
import { convert, isMeasured, stepTitle, type TargetId, targetIds, titleOf } from "./units.ts";

/** `what` names the entries in the title: "the drink", "the whole file". */
export function convertEntries(house: House, entries: readonly Entry[], what: string): Fix[] {
  const whole = entries.filter(({ kind }) => kind === "drink" || kind === "prep");
  const first = whole[0];
  if (!first) return [];
  const settings = settingsOf(house, house.scopeOf(first));
  const written = whole.map((entry): Written => ({ entry, amounts: amountsIn(house, entry) }));
  const fixes: Fix[] = [];
  for (const target of targetIds) {
    const exact = editsTo(written, target, settings, false);
    if (!exact) continue;
    const rounded = editsTo(written, target, settings, true);
    const differs = rounded && JSON.stringify(rounded.map(({ text }) => text)) !== JSON.stringify(exact.map(({ text }) => text));
    if (exact.length > 0) fixes.push({ title: `Convert ${what} to ${titleOf(target, settings)}, exactly`, safe: true, edits: exact });
    if (rounded && differs) fixes.push({ title: roundedTitle(what, target, settings, exact.length > 0), safe: false, edits: rounded });
  }
  return fixes;
}

interface Written {
  readonly entry: Entry;
  readonly amounts: readonly WrittenAmount[];
}

function roundedTitle(what: string, target: TargetId, settings: Settings, converts: boolean): string {
  const step = stepTitle(target, settings);
  return converts ? `Convert ${what} to ${titleOf(target, settings)}, rounded to ${step}` : `Round ${what} to ${step}`;
}

/** Absent where one of the amounts cannot be told in the unit: a drink in two systems is worse than in the other one. */
function editsTo(written: readonly Written[], target: TargetId, settings: Settings, round: boolean): Edit[] | undefined {
  const edits: Edit[] = [];
  for (const { entry, amounts } of written) {
    for (const amount of amounts) {
      if (!isMeant(amount, target)) continue;
      const unit = amount.quantity.unit!.unit;
      const exact = convert(amount.quantity, amount.ingredient, target, settings, false);
      const converted = (round ? convert(amount.quantity, amount.ingredient, target, settings, true) : undefined) ?? exact;
      if (converted) edits.push(amountEdit(entry, amount, converted.text));
      else if (unit.id !== target) return undefined;
    }
    edits.push(...sizesTo(entry, target, settings));
  }
  return edits;
}

/** What a whole drink leaves as it is: dashes and counts, spoons, what is weighed because it is solid, and what fills up where the target is a weight. */
function isMeant(amount: WrittenAmount, target: TargetId): boolean {
  const unit = amount.quantity.unit?.unit;
  if (!isMeasured(unit) || unit.spread > 0 || amount.quantity.value === undefined) return false;
  const { model } = amount.ingredient;
  if (isSameDimension(unit, target)) return true;
  return mayBeWeighed(amount) && !(model.type === "stock" && model.solid);
}

/** `total:` and `part:` of a drink follow its pours. */
function sizesTo(entry: Entry, target: TargetId, settings: Settings): Edit[] {
  return ["total", "part"].flatMap((name) => {
    const at = findFieldIn(entry, name);
    const quantity = at && onlyPart(at.field)?.quantity;
    const unit = quantity?.unit?.unit;
    if (!at || !unit || !isSameDimension(unit, target)) return [];
    const converted = convert(quantity, waterLike, target, settings, false);
    return converted ? [amountEdit(entry, { line: at.line, quantity }, converted.text)] : [];
  });
}

function isSameDimension(unit: Unit, target: TargetId): boolean {
  return unit.dimension === findUnit(target)!.dimension;
}

/** Within one dimension no ingredient matters. */
const waterLike = { resolution: { text: "", start: 0, end: 0, modifiers: [] }, model: { type: "prep", name: "", parts: [] } } as const;
