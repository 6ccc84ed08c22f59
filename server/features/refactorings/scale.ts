/**
 * A drink for so many serves, or of so much; a prep of so much. Every amount of it times one factor, what
 * its riffs change of it too. What is meant for each serve anyway stays: time, the ice in a glass, what fills it up.
 */
import { readLine } from "../../../grammar/line.ts";
import type { Entry } from "../../../grammar/tree.ts";
import { entryAt, type SpecDocument } from "../../house/document.ts";
import { assessDrink } from "../../house/drink.ts";
import { findFieldIn, linesOf } from "../../house/entry.ts";
import type { Fix } from "../../house/finding.ts";
import type { House } from "../../house/house.ts";
import { assessPrepEntry, isProportional } from "../../house/prep.ts";
import { prepSteps } from "../../house/prep-steps.ts";
import { settingsOf } from "../../house/settings.ts";
import { showCount, showNumber, showVolume } from "../../house/show.ts";
import { onlyPart } from "../../house/values.ts";
import { writtenExactly } from "../conversions/units.ts";
import { rounded } from "./amounts.ts";
import { isOnHeadOrField, type Offer, type Refactoring, type Spot } from "./refactoring.ts";
import { riffsOf } from "./riffs.ts";
import { scaled, servesIn } from "./scaled.ts";

/** What it is scaled to. */
export type Size = { readonly serves: number } | { readonly ml: number };

export const scale: Refactoring = {
  name: "scale",
  where: "Put the cursor in a drink or a prep that states its amounts.",
  kind: "refactor.rewrite",
  offers(spot) {
    const { house, entry } = spot;
    if (!isOnHeadOrField(spot) || whyNot(house, entry)) return [];
    if (entry.kind === "prep") return [offer(spot, [], { ml: 1000 })];
    const riffs = riffsOf(house, entry);
    const now = servesIn(entry);
    // For a couple, a table and a party; and back to one.
    const serves = [1, 2, 4, 8].filter((one) => one !== now && (one > 1 || now > 1));
    return [
      ...serves.map((one) => offer(spot, riffs, { serves: one })),
      offer(spot, riffs, { ml: settingsOf(house, house.scopeOf(entry)).bottleMl }),
    ];
  },
};

/** The same for whatever a person typed: `8`, `8 serves`, `700 ml`. A problem is said in plain words. */
export function scaleAt(house: House, document: SpecDocument, line: number, typed: string): Fix | { readonly problem: string } {
  const entry = entryAt(document, line)?.entry;
  if (entry?.kind !== "drink" && entry?.kind !== "prep") return { problem: "Put the cursor in a drink or a prep first." };
  const reason = whyNot(house, entry);
  if (reason) return { problem: reason };
  const size = readSize(house, entry, typed);
  if ("problem" in size) return size;
  const { title, edits } = offer({ house, entry }, entry.kind === "drink" ? riffsOf(house, entry) : [], size);
  const made = edits();
  return "because" in made ? { problem: made.because } : { title, safe: false, edits: made };
}

/** `8`, `8 serves`, `700 ml`, as a person types it. */
export function readSize(house: House, entry: Entry, typed: string): Size | { readonly problem: string } {
  const example = entry.kind === "prep" ? "`1 l`" : "`8` serves or `700 ml`";
  const text = typed.trim().replace(/\s*serves?$/i, "");
  const { content } = readLine(`  serves: ${text}`);
  const quantity = content.kind === "field" ? onlyPart(content)?.quantity : undefined;
  const isWhole = quantity !== undefined && content.kind === "field" && quantity.end === content.value?.end;
  const value = quantity?.value;
  if (!isWhole || value === undefined || quantity!.upTo !== undefined)
    return { problem: `“${typed.trim()}” is no size. Write one, such as ${example}.` };
  if (!(value > 0)) return { problem: `Nothing can be scaled to ${showNumber(value)}. Write how much there is to be, such as ${example}.` };
  const unit = quantity!.unit?.unit;
  if (!unit && entry.kind === "drink")
    return value <= mostServes ? { serves: value } : { problem: `That is more than a bar pours: write up to ${mostServes} serves.` };
  const { ounceMl } = settingsOf(house, house.scopeOf(entry));
  const ml = unit?.id === "oz" ? value * ounceMl : unit?.bar ? undefined : unit?.ml && value * unit.ml;
  if (!ml)
    return {
      problem: `“${typed.trim()}” is no volume${entry.kind === "drink" ? " and no number of serves" : ""}. Write one, such as ${example}.`,
    };
  return ml <= mostMl ? { ml } : { problem: `That is more than a bar mixes: write up to ${showNumber(mostMl / 1000)} l.` };
}
const mostServes = 10_000;
const mostMl = 1_000_000;

/** Why an entry cannot be scaled by its amounts; absent where it can. */
function whyNot(house: House, entry: Entry): string | undefined {
  const name = entry.name?.text || "This";
  if (entry.kind !== "drink" && entry.kind !== "prep") return "Only drinks and preps are scaled.";
  if (findFieldIn(entry, "from")) return `${name} is a riff, whose amounts stand in its parent. Scale that one, or flatten this one first.`;
  const quantities = [...linesOf(entry, "pour")].flatMap(({ content }) => content.pour.quantity ?? []);
  if (quantities.length === 0) return `${name} states no amounts that could be scaled.`;
  const inTwoWays = quantities.find(({ value }) => value === undefined);
  if (inTwoWays) return `“${inTwoWays.numeral.text}” can be read in two ways; write that amount in one first.`;
  if (entry.kind === "drink") {
    const isLoose =
      quantities.some(({ unit }) => unit?.unit.dimension === "part") && !["part", "total"].some((field) => findFieldIn(entry, field));
    return isLoose ? `${name} is in parts without a size; give it a \`total:\` or a \`part:\` first.` : undefined;
  }
  if (isProportional(entry)) return `${name} is in parts without a size: whatever is made of it is in proportion already.`;
  const boiled = prepSteps(house, entry).some(({ to }) => to && !("share" in to));
  return boiled ? `The method of ${name} says how much it comes to; that and the pours have to be scaled by hand.` : undefined;
}

function offer({ house, entry }: Pick<Spot, "house" | "entry">, riffs: readonly Entry[], size: Size): Offer {
  const along = riffs.length > 0 ? `, with its ${showCount(riffs.length, "riff")}` : "";
  const settings = settingsOf(house, house.scopeOf(entry));
  if ("serves" in size) {
    const title = `Scale to ${size.serves === 1 ? "1 serve" : `${writtenExactly(size.serves, "ml")} serves`}${along}`;
    return { title, edits: () => scaled(house, [entry, ...riffs], { factor: size.serves / servesIn(entry) }, size.serves) };
  }
  const isDrink = entry.kind === "drink";
  const litres = settings.units !== "oz" && size.ml >= 1000;
  const shown = litres ? `${showNumber(size.ml / 1000)} l` : showVolume(size.ml, settings);
  return {
    title: `Scale to ${shown}${isDrink ? " before ice" : ""}${along}`,
    edits() {
      const outcome = isDrink
        ? assessDrink(house, entry).outcome.figure("beforeVolumeMl")
        : assessPrepEntry(house, entry).figure("volumeMl");
      if (outcome.value === null) return { because: `How much there is of it is unknown: ${outcome.because?.join("; ")}.` };
      if (!(outcome.value > 0)) return { because: "Nothing of it meets the ice, so it cannot be scaled by what does." };
      const factor = size.ml / outcome.value;
      return scaled(
        house,
        [entry, ...riffs],
        { factor, digits: 5 },
        isDrink ? rounded(servesIn(entry) * factor, { factor, digits: 4 }) : undefined,
      );
    },
  };
}
