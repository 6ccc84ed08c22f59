/**
 * Some pours of a drink or a prep as a prep of their own, mixed beforehand: with the amounts as they stand,
 * and poured by the volume that they come to once mixed (less than their sum: ethanol and water contract).
 */
import type { Entry, Pour } from "../../../grammar/tree.ts";
import { findUnit, type Unit } from "../../../grammar/units.ts";
import { assessPrep } from "../../engine/prep.ts";
import { amountOf, sizeOf } from "../../house/amounts.ts";
import { stepFor } from "../../house/changeable.ts";
import { findFieldIn } from "../../house/entry.ts";
import type { House } from "../../house/house.ts";
import { type Ingredient, ingredientOf } from "../../house/ingredient.ts";
import { nearestMeasurable } from "../../house/measurable.ts";
import { flatPour } from "../../house/riff.ts";
import { type Settings, settingsOf } from "../../house/settings.ts";
import { showCount } from "../../house/show.ts";
import { isInert } from "../../house/stock.ts";
import { writtenName } from "../../house/write.ts";
import { isMeasured, writtenExactly } from "../conversions/units.ts";
import { addEntryBelow, commentBehind, hasAlternative, indentOf, isComment, removeLine, replaceLine, withComments } from "./lines.ts";
import { isOnlyMixed } from "./mixing.ts";
import { freshName } from "./names.ts";
import type { Refactoring, Spot } from "./refactoring.ts";
import { namedByRiff } from "./riffs.ts";
import { servesIn } from "./scaled.ts";
import { temperatureWord } from "./temperature.ts";

interface Taken {
  readonly line: number;
  readonly pour: Pour;
  readonly ingredient: Ingredient;
  /** `frozen`, `at -18 C`; empty for what is as warm as the room. */
  readonly temperature: string;
  readonly isBatched: boolean;
}

export const extractPrep: Refactoring = {
  name: "extractPrep",
  where: "Select two or more pours of one drink or prep that can be mixed ahead: no egg, no fizz, nothing with an alternative.",
  kind: "refactor.extract",
  offers(spot) {
    const { house, entry } = spot;
    const taken = takenAt(spot);
    const total = taken && totalOf(house, entry, taken);
    if (!total) return [];
    return [
      {
        title: `Take ${showCount(taken.length, "pour")} into a prep of their own`,
        edits() {
          const named = namedByRiff(
            house,
            entry,
            taken.map(({ ingredient }) => ingredient),
          );
          return named ?? extracted(house, entry, taken, total);
        },
      },
    ];
  },
};

/** The pours that are selected; absent where one of them cannot be mixed beforehand without the drink being another. */
function takenAt({ house, entry, first, last }: Spot): Taken[] | undefined {
  if (first === last || (entry.kind !== "drink" && entry.kind !== "prep") || findFieldIn(entry, "from")) return undefined;
  if (!entry.name?.text || (entry.kind === "prep" && !isOnlyMixed(house, entry))) return undefined;
  const taken: Taken[] = [];
  for (let line = first; line <= last; line++) {
    if (isComment(entry.lines[line])) continue;
    const { content } = entry.lines[line]!;
    const one = content.kind === "pour" ? takenFrom(house, entry, line, content.pour) : undefined;
    if (!one) return undefined;
    taken.push(one);
  }
  const [one] = taken;
  const isAlike = taken.every(({ temperature, isBatched }) => temperature === one!.temperature && isBatched === one!.isBatched);
  return taken.length > 1 && isAlike && !hasAlternative(entry, last) ? taken : undefined;
}

/** A plain amount of a liquid that goes in with the rest; in a prep of anything that stays in. */
function takenFrom(house: House, entry: Entry, line: number, pour: Pour): Taken | undefined {
  const { name, quantity, lead } = pour;
  if (!name || !quantity?.value || lead || quantity.upTo !== undefined || quantity.about || pour.turned) return undefined;
  const ingredient = ingredientOf(house, house.scopeOf(entry), name);
  const { facts, resolution } = ingredient;
  if (!resolution.found || (facts && isInert(facts)) || facts?.fizz || facts?.kind === "egg") return undefined;
  const dimension = quantity.unit?.unit.dimension;
  const isWeighed = dimension === "mass" && !quantity.unit!.unit.bar;
  if (!(dimension === "volume" || dimension === "part" || isWeighed) || (facts?.model.solid && !isWeighed)) return undefined;
  const temperature = temperatureWord(ingredient);
  const words = resolution.modifiers.map(({ text }) => text.toLowerCase()).filter((word) => word !== temperature);
  const isBatched = words.includes("batched");
  if (words.some((word) => word !== "batched")) return undefined;
  if (entry.kind === "drink" && flatPour(house, house.scopeOf(entry), entry, line, pour).stage === "after") return undefined;
  // Of a prep nothing is poured at a temperature.
  return { line, pour, ingredient, temperature: entry.kind === "drink" ? temperature : "", isBatched };
}

/** How much of the mix is poured, as it is written: parts and weights add up, volumes are what they mix to. */
function totalOf(house: House, entry: Entry, taken: readonly Taken[]): string | undefined {
  const units = taken.map(({ pour }) => pour.quantity!.unit!.unit);
  const sum = taken.reduce((all, { pour }) => all + pour.quantity!.value!, 0);
  const isAll = (dimension: Unit["dimension"]) => units.every((unit) => unit.dimension === dimension);
  if (isAll("part")) return findFieldIn(entry, "parts by") ? undefined : `${writtenExactly(sum, "part")} ${sum <= 1 ? "part" : "parts"}`;
  const settings = settingsOf(house, house.scopeOf(entry));
  if (isAll("mass")) {
    const grams = taken.reduce((all, { pour: { quantity } }) => all + quantity!.value! * quantity!.unit!.unit.g!, 0);
    const unit = units.every((one) => one === units[0]) ? units[0]! : findUnit("g")!;
    return `${writtenExactly(grams / unit.g!, "ml")} ${unit.id}`;
  }
  return units.every(({ dimension }) => dimension === "volume") ? mixedText(entry, taken, units, settings) : undefined;
}

/** To what the bar measures, where that is near; absent where nobody knows what it mixes to. */
function mixedText(entry: Entry, taken: readonly Taken[], units: readonly Unit[], settings: Settings): string | undefined {
  const measuring = { settings, jigger: true, part: { because: "no parts are poured" } };
  const parts = taken.map(({ pour, ingredient }) => ({ of: ingredient.model, amount: amountOf(pour.quantity!, ingredient, measuring) }));
  const mixedMl = assessPrep({ type: "prep", name: "", parts }).value("volumeMl");
  if (!mixedMl) return undefined;
  const measured = units.filter(isMeasured);
  const unit = measured.length > 0 && measured.every((one) => one === measured[0]) ? measured[0]! : findUnit(settings.units)!;
  const amount = mixedMl / sizeOf(unit, undefined, settings).value;
  const step = entry.kind === "drink" ? stepFor(unit, settings, servesIn(entry)) : undefined;
  const near = step && nearestMeasurable(amount, step);
  const isNear = near !== undefined && Math.abs(near / amount - 1) <= nearEnough;
  return `${writtenExactly(isNear ? near! : Number(amount.toPrecision(4)), unit.id === "oz" ? "oz" : "ml")} ${unit.id}`;
}
/** What a jigger is poured right to, as a share: practice, no source. */
const nearEnough = 0.02;

function extracted(house: House, entry: Entry, taken: readonly Taken[], total: string) {
  const name = writtenName(freshName(house, house.scopeOf(entry), `${entry.name!.text} mix`));
  const [{ line: first, temperature, isBatched }] = taken as [Taken];
  const indent = /^\s*/.exec(entry.lines[first]!.text)![0];
  const poured = [`${indent}${total} ${name}`, temperature, isBatched ? "batched" : ""].filter(Boolean).join(", ");
  const from = withComments(entry, first);
  const last = taken.at(-1)!.line;
  const gone = Array.from({ length: last - from }, (_, index) => from + 1 + index);
  const lines = taken.flatMap((one) => mixLines(entry, one));
  const below = addEntryBelow(entry, [`prep ${name}`, ...lines.map((line) => indentOf(entry) + line)]);
  const isLast = below.line === last;
  // What is added below a line that goes would be one edit across another.
  return [
    replaceLine(entry, from, poured),
    ...gone.filter((line) => !(isLast && line === last)).map((line) => removeLine(entry, line)),
    isLast ? { ...below, start: 0, text: below.text.replace(/^\n/, "") } : below,
  ];
}

/** As it stands, without what is said of the pour in its drink; the comments above it go along. */
function mixLines(entry: Entry, { line, pour, ingredient }: Taken): string[] {
  const { text } = entry.lines[line]!;
  const own = entry.kind === "drink" ? text.slice(pour.start, ingredient.resolution.end) : text.slice(pour.start, pour.end);
  const comments = entry.lines.slice(withComments(entry, line), line).map((comment) => comment.text.trim());
  return [...comments, own + commentBehind(entry.lines[line]!)];
}
