/** A drink in parts, and back to measured amounts. */
import type { Entry } from "../../../grammar/tree.ts";
import { findUnit } from "../../../grammar/units.ts";
import { sizeOf } from "../../house/amounts.ts";
import { assessDrink } from "../../house/drink.ts";
import { findFieldIn } from "../../house/entry.ts";
import type { Edit, Fix } from "../../house/finding.ts";
import type { House } from "../../house/house.ts";
import { isMeasurable } from "../../house/measurable.ts";
import { type Settings, settingsOf } from "../../house/settings.ts";
import { amountEdit, amountsIn, mayBeWeighed, type WrittenAmount } from "./pours.ts";
import { isMeasured, titleOf, write, writtenExactly } from "./units.ts";

/** To parts, with a `part:` that keeps the drink as large as it is; not for a riff, whose parent says what a part is. */
export function convertToParts(house: House, entry: Entry): Fix[] {
  if (entry.kind !== "drink" || findFieldIn(entry, "from")) return [];
  const amounts = amountsIn(house, entry);
  const settings = settingsOf(house, house.scopeOf(entry));
  const poured = amounts.filter((amount) => isPouredVolume(amount));
  if (poured.length < 2 || amounts.some(({ quantity }) => quantity.unit?.unit.dimension === "part") || hasSize(entry)) return [];
  const sizes = poured.map(({ quantity, ingredient }) => quantity.value! * sizeOf(quantity.unit!.unit, ingredient.facts, settings).value);
  const part = partOf(sizes, settings);
  const written = part && write([part, undefined], 1 / unitMl(settings), settings.units, settings, false);
  if (!written) return [];
  const edits = poured.map((amount, index) => {
    const share = sizes[index]! / part;
    return amountEdit(entry, amount, `${writtenExactly(share, "part")} ${share <= 1 ? "part" : "parts"}`);
  });
  return [
    {
      title: `Convert the drink to parts of ${written.text}`,
      safe: true,
      edits: [...edits, addField(entry, `part: ${written.text}`)],
    },
  ];
}

/** Back to the house's unit, where the size of a part is known. */
export function convertFromParts(house: House, entry: Entry): Fix[] {
  if (entry.kind !== "drink") return [];
  const parts = amountsIn(house, entry).filter(({ quantity }) => quantity.unit?.unit.dimension === "part" && quantity.value !== undefined);
  const size = partSize(house, entry);
  if (parts.length === 0 || !size) return [];
  const settings = settingsOf(house, house.scopeOf(entry));
  const target = size.weighed ? "g" : settings.units;
  const factor = size.weighed ? size.value : size.value / unitMl(settings);
  const edits: Edit[] = [];
  for (const amount of parts) {
    const written = write([amount.quantity.value!, amount.quantity.upTo], factor, target, settings, false);
    if (!written) return [];
    edits.push(amountEdit(entry, amount, written.text));
  }
  for (const name of ["part", "total", "parts by"]) edits.push(...takeOutField(entry, name));
  return [{ title: `Convert the parts to ${size.weighed ? "g" : titleOf(settings.units, settings)}`, safe: true, edits }];
}

/** Millilitres or grams of one part, as the drink's own figures take it; absent where the drink states no size. */
function partSize(house: House, entry: Entry): { value: number; weighed: boolean } | undefined {
  const { plan, pours, proportional } = assessDrink(house, entry);
  if (proportional) return undefined;
  for (const [index, { quantity }] of pours.entries()) {
    const amount = plan.pours[index]!.amount;
    if (quantity?.unit?.unit.dimension !== "part" || !quantity.value || !("ml" in amount || "g" in amount)) continue;
    const known = "ml" in amount ? amount.ml : amount.g;
    if ("because" in known) return undefined;
    return { value: known.value / ((quantity.value + (quantity.upTo ?? quantity.value)) / 2), weighed: "g" in amount };
  }
  return undefined;
}

/** Poured by volume as itself: what tops up, rinses, or is an estimate or a range is no share of the drink. */
function isPouredVolume(amount: WrittenAmount): boolean {
  const { quantity } = amount;
  const unit = quantity.unit?.unit;
  const plain = quantity.upTo === undefined && !quantity.about && (quantity.value ?? 0) > 0;
  return isMeasured(unit) && unit.dimension === "volume" && unit.spread === 0 && plain && mayBeWeighed(amount);
}

/**
 * The largest part, in ml, of which all amounts are whole numbers; where those grow past a dozen, one four
 * times as large, so that quarters are poured. Amounts on no common step are counted in the smallest.
 */
function partOf(sizes: readonly number[], settings: Settings): number {
  const smallest = Math.min(...sizes);
  for (const step of [settings.jiggerMl, settings.ounceMl / 8, 0.5, 0.05]) {
    if (!sizes.every((size) => isMeasurable(size, step))) continue;
    const common = sizes.map((size) => Math.round(size / step)).reduce(greatestCommonDivisor) * step;
    const most = Math.max(...sizes) / common;
    return most <= 12 ? common : most <= 48 ? 4 * common : smallest;
  }
  return smallest;
}

function greatestCommonDivisor(one: number, other: number): number {
  return other === 0 ? one : greatestCommonDivisor(other, one % other);
}

function hasSize(entry: Entry): boolean {
  return ["part", "total"].some((name) => findFieldIn(entry, name) !== undefined);
}

function unitMl({ units, ounceMl }: Settings): number {
  return units === "oz" ? ounceMl : findUnit(units)!.ml!;
}

/** A field on its own line after the last line above the pours that says anything. */
export function addField(entry: Entry, text: string): Edit {
  const firstPour = entry.lines.findIndex(({ content }) => content.kind === "pour");
  let above = firstPour - 1;
  while (above > 0 && isSilent(entry, above)) above--;
  const end = entry.lines[above]!.text.length;
  const indent = /^\s*/.exec(entry.lines[firstPour]!.text)![0];
  return { entry, line: above, start: end, end, text: `\n${indent}${text}` };
}

function isSilent(entry: Entry, line: number): boolean {
  const { kind } = entry.lines[line]!.content;
  return kind === "blank" || kind === "comment";
}

function takeOutField(entry: Entry, name: string): Edit[] {
  const at = findFieldIn(entry, name);
  // One past the end of the text is the line break: the whole line goes.
  return at ? [{ entry, line: at.line, start: 0, end: entry.lines[at.line]!.text.length + 1, text: "" }] : [];
}
