/** A prep with plants in it that is kept longer than it is safe without acid, sugar or alcohol. */

import type { Entry } from "../../../grammar/tree.ts";
import { liquidOf } from "../../engine/composition.ts";
import { at } from "../../engine/liquid.ts";
import { assessPrep } from "../../engine/prep.ts";
import { findFieldIn } from "../../house/entry.ts";
import type { House } from "../../house/house.ts";
import { secondsIn } from "../../house/method.ts";
import { type Poured, pouredIn } from "../../house/poured.ts";
import { prepModel } from "../../house/prep.ts";
import { isWrong, readQuantity } from "../../house/values.ts";
import { caution } from "./caution.ts";
import { doneIn } from "./held.ts";
import { anyOf } from "./words.ts";

/** Days at 5 °C that food which can grow something may be kept: FDA Food Code 3-501.17, from memory. */
const mostDays = 7;
/** Nothing grows toxin at or below it: 21 CFR 114.3, from memory. */
const mostPh = 4.6;
/** g/100 g as citric; where no pH is stated, so much acid is taken to bring it below 4.6: practice, no source. */
const enoughAcid = 0.3;
/**
 * °Bx and % vol from which a chilled prep is left alone. The strains that grow in a fridge need a water
 * activity of 0.97, which sugar goes below at about 40 °Bx: FDA, Fish and Fishery Products Hazards and
 * Controls, Appendix 4, from memory; the alcohol is practice, no source.
 */
const enoughSugar = 45;
const enoughAlcohol = 10;

const moist: ReadonlySet<string | undefined> = new Set(["herb", "vegetable", "fruit"]);
const plants: ReadonlySet<string | undefined> = new Set([...moist, "spice", "juice", "puree"]);
const freshPlant = anyOf(["garlic", "ginger", "chilli", "chili", "mushroom", "onion", "shallot", "herb"]);
const oil = /(?<!essential )\boil$/i;

export const lowAcidInfusion = caution({
  code: "low-acid-infusion",
  severity: "warning",
  entries: ["prep"],
  advice: `Keep it cold and ${mostDays} days at most, or sour, with a measured \`ph:\` of ${mostPh} or less; check your local code.`,
  docs: {
    title: "An infusion kept without acid",
    why: `Herbs, roots and vegetables bring spores of the germ of botulism from the soil. Under oil, or in water that is neither sour, sweet nor strong, they can make their poison in weeks, cold or not, without smell or taste. Looked at are preps with plants under oil, and preps that state \`keeps:\` beyond ${mostDays} days or not in the cold. A stated \`ph:\` is believed; a ferment, which makes its own acid, and what cannot be computed are not looked at.`,
    source: `pH ${mostPh}: 21 CFR 114; water activity: FDA, Fish and Fishery Products Hazards and Controls, Appendix 4; ${mostDays} days: FDA Food Code 3-501.17 (all from memory). Oil: university extension services, which name 4 days to 3 weeks in the cold (read).`,
    bad: "prep carrot water\n  300 g carrot juice\n  100 g water\n  keeps: 21 days chilled\n",
    good: "prep carrot water\n  300 g carrot juice\n  100 g water\n  keeps: 3 days chilled\n",
  },
  *causes(house, entry) {
    const keeps = keptIn(entry);
    if (keeps?.cold && keeps.days <= mostDays) return;
    const ph = phOf(entry);
    if (ph !== undefined && ph <= mostPh) return;
    if (ph === undefined && doneIn(house, entry).some(({ text }) => /ferment/i.test(text))) return;
    const poured = pouredIn(house, entry);
    const plant = poured.find(({ ingredient, name }) => plants.has(ingredient.facts?.kind) || freshPlant.test(name.text));
    if (!plant) return;
    const underOil = poured.some(({ ingredient }) => oil.test(ingredient.resolution.text));
    const name = plant.ingredient.resolution.text;
    if (underOil && !poured.some(isStrong) && isMoist(plant)) {
      yield { ...plant, what: `Botulism can grow in the ${name} under oil, without smell or taste.` };
    } else if (keeps && isWeak(house, entry, ph)) {
      const how = keeps.cold ? `${keeps.text}` : `${keeps.text}, and not in the cold`;
      yield { ...plant, what: `This is not sour, sweet or strong enough to keep ${how}: botulism can grow from the ${name}.` };
    }
  },
});

function isMoist({ ingredient, name }: Poured): boolean {
  return moist.has(ingredient.facts?.kind) || freshPlant.test(name.text);
}

function isStrong({ ingredient: { model } }: Poured): boolean {
  const { perGram, reasons } = liquidOf(model);
  return reasons.ethanol.length === 0 && perGram[at.ethanol]! >= enoughAlcohol / 100;
}

/** Known to be neither sour nor sweet nor strong, by what stays in it and what was measured. */
function isWeak(house: House, entry: Entry, ph: number | undefined): boolean {
  const model = prepModel(house, entry);
  if (model.type !== "prep") return false;
  const { steps: _none, ...prep } = model;
  const outcome = assessPrep({ ...prep, parts: prep.parts.filter(({ discarded }) => !discarded) });
  const below = (value: number | null, enough: number) => value !== null && value < enough;
  const sour = ph === undefined && !below(outcome.value("acidGPer100G"), enoughAcid);
  return !sour && below(outcome.value("brix"), enoughSugar) && below(outcome.value("strengthPct"), enoughAlcohol);
}

const secondsADay = 86_400;

/** How long it is said to keep, the longest where there are several; absent where nothing is said. */
function keptIn(entry: Entry): { days: number; cold: boolean; text: string } | undefined {
  const line = findFieldIn(entry, "keeps")?.field;
  const stored = findFieldIn(entry, "stored")?.field.value?.text ?? "";
  let longest: { days: number; cold: boolean; text: string } | undefined;
  for (const item of line?.items ?? []) {
    const time = item.parts.flatMap(({ quantities }) => quantities).find(({ unit }) => unit?.unit.dimension === "time");
    const days = Math.max(time?.value ?? 0, time?.upTo ?? 0) * ((secondsIn[time?.unit?.unit.id ?? ""] ?? 0) / secondsADay);
    if (!time || (longest && days <= longest.days)) continue;
    const cold = /\b(?:chilled|cold|fridge|frozen|freezer)\b/i.test(`${item.text} ${stored}`);
    longest = { days: /\b(?:frozen|freezer)\b/i.test(item.text) ? 0 : days, cold, text: `${time.numeral.text} ${time.unit!.text}` };
  }
  return longest;
}

function phOf(entry: Entry): number | undefined {
  const line = findFieldIn(entry, "ph")?.field;
  const read = line && readQuantity(line, "2.6");
  return read && !isWrong(read) ? read.value.value : undefined;
}
