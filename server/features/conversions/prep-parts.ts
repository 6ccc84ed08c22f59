/** A prep in parts, as what can be made of any size, and back to a batch of a kilogram or a litre. */
import type { Entry } from "../../../grammar/tree.ts";
import { sizeOf } from "../../house/amounts.ts";
import { findFieldIn, linesOf } from "../../house/entry.ts";
import type { Edit, Fix } from "../../house/finding.ts";
import type { House } from "../../house/house.ts";
import { prepSteps } from "../../house/prep-steps.ts";
import { settingsOf } from "../../house/settings.ts";
import { mlIn } from "../../house/show.ts";
import { largestPart, takeOutField } from "./parts.ts";
import { amountEdit, amountsIn, type WrittenAmount } from "./pours.ts";
import { isMeasured, write, writtenExactly } from "./units.ts";

/** Where all of it is weighed, or all of it measured; not where a field says how much of it there is. */
export function convertPrepToParts(house: House, entry: Entry): Fix[] {
  const amounts = plainAmounts(house, entry);
  const settings = settingsOf(house, house.scopeOf(entry));
  if (amounts.length < 2 || isSized(house, entry) || !amounts.every(({ quantity }) => isMeasured(quantity.unit?.unit))) return [];
  const weighed = amounts.filter(({ quantity }) => quantity.unit!.unit.dimension === "mass").length;
  const isMixed = weighed > 0 && weighed < amounts.length;
  if (isMixed || (weighed === 0 && amounts.some(({ ingredient }) => ingredient.facts?.model.solid))) return [];
  const sizes = amounts.map(({ quantity, ingredient }) => quantity.value! * sizeOf(quantity.unit!.unit, ingredient.facts, settings).value);
  const part = largestPart(sizes, weighed ? [100, 10, 1, 0.1, 0.01] : [100, 10, settings.jiggerMl, 0.5, 0.05]);
  const edits = amounts.map((amount, index) => amountEdit(entry, amount, partsText(sizes[index]! / part)));
  const by = weighed ? "weight" : "volume";
  return [{ title: `Convert the prep to parts by ${by}`, safe: true, edits: [...edits, addBelowPours(entry, `parts by: ${by}`)] }];
}

/** To a batch of a kilogram where the parts are weighed, else of a litre. */
export function convertPrepFromParts(house: House, entry: Entry): Fix[] {
  const amounts = plainAmounts(house, entry);
  const by = findFieldIn(entry, "parts by")?.field.value?.text.toLowerCase();
  const isLoose = by === undefined && amounts.some(({ ingredient }) => ingredient.facts?.model.solid);
  if (amounts.length === 0 || isLoose || isSized(house, entry) || amounts.some(({ quantity }) => quantity.unit?.unit.dimension !== "part"))
    return [];
  const settings = settingsOf(house, house.scopeOf(entry));
  const target = by === "weight" ? "g" : settings.units;
  const poured = amounts.filter(({ line }) => entry.lines[line]!.content.kind === "pour");
  const parts = poured.reduce((sum, { quantity }) => sum + quantity.value!, 0);
  const factor = batch / parts / (by === "weight" ? 1 : mlIn(settings));
  const texts = amounts.map(
    ({ quantity }) => write([Number((quantity.value! * factor).toPrecision(5)), undefined], 1, target, settings, false)?.text,
  );
  if (!texts.every((text) => text !== undefined)) return [];
  const edits = amounts.map((amount, index) => amountEdit(entry, amount, texts[index]!));
  const whole = by === "weight" ? "1 kg" : "1 l";
  return [{ title: `Convert the parts to ${target}, ${whole} in all`, safe: true, edits: [...edits, ...takeOutField(entry, "parts by")] }];
}
/** Grams or millilitres. */
const batch = 1000;

/** Every amount that is poured; none where one of them is no plain number of its unit. */
function plainAmounts(house: House, entry: Entry): WrittenAmount[] {
  if (entry.kind !== "prep") return [];
  const amounts = amountsIn(house, entry);
  const isPlain = ({ quantity, pour }: WrittenAmount) =>
    quantity.value !== undefined && quantity.value > 0 && quantity.upTo === undefined && !quantity.about && !pour.lead && !pour.turned;
  const poured = amounts.filter(({ line }) => entry.lines[line]!.content.kind === "pour");
  return amounts.every(isPlain) && poured.length === [...linesOf(entry, "pour")].length ? amounts : [];
}

function isSized(house: House, entry: Entry): boolean {
  return findFieldIn(entry, "yield") !== undefined || prepSteps(house, entry).some(({ to }) => to && !("share" in to));
}

function partsText(share: number): string {
  return `${writtenExactly(share, "part")} ${share <= 1 ? "part" : "parts"}`;
}

function addBelowPours(entry: Entry, text: string): Edit {
  const line = entry.lines.findLastIndex(({ content }) => content.kind === "pour" || content.kind === "or");
  const end = entry.lines[line]!.text.length;
  const first = entry.lines.find(({ content }) => content.kind === "pour")!;
  return { entry, line, start: end, end, text: `\n${/^\s*/.exec(first.text)![0]}${text}` };
}
