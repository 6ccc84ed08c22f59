/**
 * A pour of a prep as the pours that it is made of, in proportion. Only of a prep that is nothing but them
 * mixed: what is infused, strained, boiled down or fermented is another thing than its pours, and so is
 * what was measured, or of which the house states more than its pours tell.
 */
import type { Entry, Pour } from "../../../grammar/tree.ts";
import { findUnit } from "../../../grammar/units.ts";
import type { Amount, Known } from "../../engine/plan.ts";
import { processes } from "../../engine/processes.ts";
import { sizeOf } from "../../house/amounts.ts";
import { isCyclic } from "../../house/cycles.ts";
import { findFieldIn } from "../../house/entry.ts";
import type { House } from "../../house/house.ts";
import { ingredientOf } from "../../house/ingredient.ts";
import { nearestMeasurable, stepOf } from "../../house/measurable.ts";
import { has } from "../../house/modifiers.ts";
import { computedPrep, type PrepPour, prepPours } from "../../house/prep.ts";
import { proseOf } from "../../house/prose.ts";
import { sameIngredient } from "../../house/riff.ts";
import { type Settings, settingsOf } from "../../house/settings.ts";
import { isMeasured, type TargetId, writtenExactly } from "../conversions/units.ts";
import { commentBehind, hasAlternative, replaceLine } from "./lines.ts";
import { isOnlyMixed, mixing } from "./mixing.ts";
import type { Refactoring } from "./refactoring.ts";
import { namedByRiff } from "./riffs.ts";
import { isTemperature } from "./temperature.ts";

export const inlinePrep: Refactoring = {
  name: "inlinePrep",
  where: "Put the cursor on a pour of something made here, of which only mixing makes it what it is.",
  kind: "refactor.inline",
  offers({ house, entry, first, last }) {
    const content = entry.lines[first]!.content;
    const isMade = entry.kind === "drink" || entry.kind === "prep";
    if (!isMade || first !== last || content.kind !== "pour" || findFieldIn(entry, "from")) return [];
    const { pour } = content;
    const prep = pour.name && ingredientOf(house, house.scopeOf(entry), pour.name).resolution.found?.entry;
    if (prep?.kind !== "prep" || !isPlain(pour) || hasAlternative(entry, first) || !isOnlyPours(house, prep)) return [];
    const lines = inlined(house, entry, first, pour, prep);
    if (!lines) return [];
    return [
      {
        title: `Write what ${prep.name!.text} is made of in its place`,
        edits() {
          const ingredients = prepPours(house, prep).map(({ ingredient }) => ingredient);
          const named = namedByRiff(house, entry, [ingredientOf(house, house.scopeOf(entry), pour.name!), ...ingredients]);
          return named ?? [replaceLine(entry, first, lines.join("\n"))];
        },
      },
    ];
  },
};

function isPlain({ quantity, lead, turned }: Pour): boolean {
  return quantity?.value !== undefined && quantity.value > 0 && quantity.upTo === undefined && !quantity.about && !lead && !turned;
}

/** Whether a prep is its pours mixed, and no more is said of it than they tell. */
function isOnlyPours(house: House, prep: Entry): boolean {
  if (!prep.name?.text || isCyclic(house, prep) || ownFacts.some((name) => findFieldIn(prep, name))) return false;
  return isOnlyMixed(house, prep) && !changes.test(proseOf(prep, "steps"));
}
const ownFacts = ["abv", "brix", "density", "ph", "yield", "allergens", "diet", "pasteurised"];
/** A process that the sentences of `steps` tell to do, not one that they warn of. */
const changes = new RegExp(
  `(?<!\\b(?:not|never|without|no) )\\b(?:${processes
    .filter(({ id }) => !mixing.has(id))
    .flatMap(({ words }) => words)
    .join("|")}|strain)`,
  "i",
);

/** The lines that stand for the pour; absent where one of them cannot be told, or would mean something else here. */
function inlined(house: House, entry: Entry, line: number, pour: Pour, prep: Entry): string[] | undefined {
  const scope = house.scopeOf(entry);
  const settings = settingsOf(house, scope);
  const parts = prepPours(house, prep);
  const factor = factorOf(house, entry, pour, prep, parts, settings);
  // What is optional in it, and what else it may be made with, would be lost.
  const isWhole =
    parts.length > 0 && prep.lines.filter(({ content }) => content.kind === "pour" || content.kind === "or").length === parts.length;
  if (!factor || !isWhole || !parts.every(staysIn)) return undefined;
  const indent = /^\s*/.exec(entry.lines[line]!.text)![0];
  const said = ingredientOf(house, scope, pour.name!).resolution.modifiers.map((modifier) => modifier.text);
  const lines: string[] = [];
  for (const part of parts) {
    const amount = amountOf(part, parts);
    const written = amount && amountText(amount, factor, pour, part, settings);
    if (!written || !sameIngredient(part, ingredientOf(house, scope, part.pour.name!))) return undefined;
    lines.push(indent + [`${written} ${nameIn(prep, part)}`, ...wordsOf(entry, part, said)].join(", "));
  }
  return lines.map((one, index) => (index === 0 ? one + commentBehind(entry.lines[line]!) : one));
}

function nameIn(prep: Entry, { line, pour: { name }, ingredient }: PrepPour): string {
  return prep.lines[line]!.text.slice(name!.quoted?.start ?? name!.start, ingredient.resolution.end);
}

/** At the temperature that the prep was poured at, not at that which it was made at. */
function wordsOf(entry: Entry, { ingredient }: PrepPour, said: readonly string[]): string[] {
  const kept = ingredient.resolution.modifiers.filter((one) => !(entry.kind === "drink" && isTemperature(one)));
  return [...kept.map(({ text }) => text), ...said.filter((one) => !has(kept, one.toLowerCase()))];
}

/** Whether all of it goes along, at the same stage. */
function staysIn({ part, ingredient: { facts } }: PrepPour): boolean {
  return !part.discarded && !part.sets && !facts?.fizz && !(facts?.kind && ["herb", "spice"].includes(facts.kind));
}

/** The share of a batch that is poured, by weight or by volume; parts are shares as they are poured, whatever they mix to. */
function factorOf(
  house: House,
  entry: Entry,
  { quantity }: Pour,
  prep: Entry,
  parts: readonly PrepPour[],
  settings: Settings,
): number | undefined {
  const unit = quantity!.unit?.unit;
  if (unit?.dimension === "part") {
    const poured = parts.map(({ part }) => ("ml" in part.amount ? (numberIn(part.amount.ml) ?? Number.NaN) : Number.NaN));
    return entry.kind === "drink" ? quantity!.value! / poured.reduce((sum, ml) => sum + ml, 0) : undefined;
  }
  if (unit?.dimension !== "mass" && unit?.dimension !== "volume") return undefined;
  const whole = computedPrep(house, prep).value(unit.dimension === "mass" ? "massG" : "volumeMl");
  return whole ? (quantity!.value! * sizeOf(unit, undefined, settings).value) / whole : undefined;
}

/** What makes a prep up to so many grams is what the others leave of them. */
function amountOf({ part: { amount } }: PrepPour, parts: readonly PrepPour[]): Amount | undefined {
  if (!("upToG" in amount || "upToMl" in amount)) return amount;
  const others = parts
    .filter(({ part }) => part.amount !== amount)
    .map(({ part }) => ("g" in part.amount ? numberIn(part.amount.g) : undefined));
  const upTo = "upToG" in amount ? numberIn(amount.upToG) : undefined;
  if (upTo === undefined || !others.every((one) => one !== undefined)) return undefined;
  const left = others.reduce((rest, one) => rest - one, upTo);
  return left > 0 ? { g: { value: left, u: 0, why: "" } } : undefined;
}

function amountText(amount: Amount, factor: number, { quantity }: Pour, { pour }: PrepPour, settings: Settings): string | undefined {
  const isVolume = "ml" in amount;
  const value = numberIn(isVolume ? amount.ml : amount.g);
  if (value === undefined || pour.quantity?.upTo !== undefined || pour.quantity?.about) return undefined;
  if (quantity!.unit!.unit.dimension === "part") return isVolume ? inUnit(value * factor, "part", undefined) : undefined;
  // Less than a scale shows is written as people say it.
  if (!isVolume && value * factor < leastG) return `${writtenExactly(Number((1000 * value * factor).toPrecision(4)), "ml")} mg`;
  const own = quantity!.unit!.unit;
  const id = !isVolume ? "g" : isMeasured(own) && ["ml", "cl", "oz"].includes(own.id) ? (own.id as TargetId) : settings.units;
  const unit = findUnit(id)!;
  return inUnit((value * factor) / sizeOf(unit, undefined, settings).value, id, stepOf(unit, settings));
}

const leastG = 0.1;

/** In four digits, or as the bar measures where that is as good as the same. */
function inUnit(amount: number, id: TargetId | "part", step: number | undefined): string {
  const near = step && nearestMeasurable(amount, step);
  const written = near && Math.abs(near / amount - 1) <= nearEnough ? near : Number(amount.toPrecision(4));
  return `${writtenExactly(written, id === "part" || id === "oz" ? id : "ml")} ${id === "part" && written > 1 ? "parts" : id}`;
}
/** Well below what a jigger or a scale tells apart, as a share: practice, no source. */
const nearEnough = 0.005;

function numberIn(known: Known): number | undefined {
  return "because" in known ? undefined : known.value;
}
