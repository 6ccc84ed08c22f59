/** A drink in parts, and back to measured amounts. */
import type { Entry } from "../../../grammar/tree.ts";
import { sizeOf } from "../../house/amounts.ts";
import { assessDrink } from "../../house/drink.ts";
import { findFieldIn } from "../../house/entry.ts";
import type { Edit, Fix } from "../../house/finding.ts";
import type { House } from "../../house/house.ts";
import { isMeasurable } from "../../house/measurable.ts";
import { flatten } from "../../house/riff.ts";
import { type Settings, settingsOf } from "../../house/settings.ts";
import { mlIn, showCount } from "../../house/show.ts";
import { riffsOf } from "../refactorings/riffs.ts";
import { amountEdit, amountsIn, amountsOut, mayBeWeighed, type WrittenAmount } from "./pours.ts";
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
  const written = part && write([part, undefined], 1 / mlIn(settings), settings.units, settings, false);
  if (!written) return [];
  const toParts = (of: Entry, amount: WrittenAmount) => {
    const share = (amount.quantity.value! * sizeOf(amount.quantity.unit!.unit, amount.ingredient.facts, settings).value) / part;
    return amountEdit(of, amount, `${writtenExactly(share, "part")} ${share <= 1 ? "part" : "parts"}`);
  };
  const riffs = riffsOf(house, entry);
  // What a riff inherits in parts would be of its own size.
  if (riffs.some(hasSize)) return [];
  // What a riff swaps or leaves out is told apart by its amount, as it is written here.
  const outs = riffs.flatMap((riff) =>
    amountsOut(house, riff)
      .filter(isPouredVolume)
      .map((amount) => toParts(riff, amount)),
  );
  return [
    {
      title: `Convert the drink to parts of ${written.text}${along(outs)}`,
      safe: true,
      edits: [...poured.map((amount) => toParts(entry, amount)), ...outs, addField(entry, `part: ${written.text}`)],
    },
  ];
}

/** Back to the house's unit, where the size of a part is known. */
export function convertFromParts(house: House, entry: Entry): Fix[] {
  if (entry.kind !== "drink") return [];
  const parts = amountsIn(house, entry).filter(isInParts);
  const size = partSize(house, entry);
  if (parts.length === 0 || !size) return [];
  const settings = settingsOf(house, house.scopeOf(entry));
  const target = size.weighed ? "g" : settings.units;
  const factor = size.weighed ? size.value : size.value / mlIn(settings);
  const riffs = riffsOf(house, entry);
  // What a riff inherits may be of its own size, and of a total that it shares out anew.
  const isShared = findFieldIn(entry, "total") !== undefined;
  if (
    riffs.some((riff) => hasSize(riff) || findFieldIn(riff, "parts by") || (isShared && sharesOf(house, riff) !== sharesOf(house, entry)))
  )
    return [];
  const edits: Edit[] = [];
  const inRiffs = riffs.flatMap((riff) => [...amountsIn(house, riff), ...amountsOut(house, riff)].map((amount) => ({ of: riff, amount })));
  for (const { of, amount } of [...parts.map((amount) => ({ of: entry, amount })), ...inRiffs.filter(({ amount }) => isInParts(amount))]) {
    const written = write([amount.quantity.value!, amount.quantity.upTo], factor, target, settings, false);
    if (!written) return [];
    edits.push(amountEdit(of, amount, written.text));
  }
  const title = `Convert the parts to ${size.weighed ? "g" : titleOf(settings.units, settings)}${along(edits.filter((edit) => edit.entry !== entry))}`;
  for (const name of ["part", "total", "parts by"]) edits.push(...takeOutField(entry, name));
  return [{ title, safe: true, edits }];
}

/** What is changed in other drinks too is said. */
function along(inRiffs: readonly Edit[]): string {
  const count = new Set(inRiffs.map(({ entry }) => entry)).size;
  return count > 0 ? `, with its ${showCount(count, "riff")}` : "";
}

/** How many parts a drink pours, with what it inherits. */
function sharesOf(house: House, entry: Entry): number {
  const shares = flatten(house, entry).pours.map(({ quantity }) => (quantity?.unit?.unit.dimension === "part" ? (quantity.value ?? 0) : 0));
  return shares.reduce((sum, one) => sum + one, 0);
}

function isInParts({ quantity }: WrittenAmount): boolean {
  return quantity.unit?.unit.dimension === "part" && quantity.value !== undefined;
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
  return largestPart(sizes, [settings.jiggerMl, settings.ounceMl / 8, 0.5, 0.05]);
}

/** The same by steps of any measure, the coarsest first. */
export function largestPart(sizes: readonly number[], steps: readonly number[]): number {
  const smallest = Math.min(...sizes);
  for (const step of steps) {
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

export function takeOutField(entry: Entry, name: string): Edit[] {
  const at = findFieldIn(entry, name);
  // One past the end of the text is the line break: the whole line goes.
  return at ? [{ entry, line: at.line, start: 0, end: entry.lines[at.line]!.text.length + 1, text: "" }] : [];
}
