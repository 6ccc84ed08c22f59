/** A batch in words: how it is put together, how it takes the cold, how it is served, and what stands on its label. */
import type { Batch, Compared } from "./batch.ts";
import { isSolid } from "./frozen.ts";
import type { House } from "./house.ts";
import { has } from "./modifiers.ts";
import { serveOf } from "./serve.ts";
import { capital, showCount, showList, showNumber, showShare, showTemperature, showValue, showVolume } from "./show.ts";
import { showStrengthBriefly, showVolumeBriefly } from "./show-brief.ts";
import { besideTexts, showService } from "./show-service.ts";
import { suitabilityOf } from "./suitability.ts";
import { showAllergens } from "./suitability-text.ts";

/** `2 bottles of 700 ml`. */
export function showBottles({ bottles: { sizeMl, count }, settings }: Batch): string {
  return count === null ? `bottles of ${showVolume(sizeMl, settings)}` : `${showCount(count, "bottle")} of ${showVolume(sizeMl, settings)}`;
}

/** What to do, in this order. */
export function workOf(batch: Batch): string[] {
  const { pours, water, bottles, settings } = batch;
  const solid = pours.filter(({ pour: { ingredient } }) => ingredient.model.type === "stock" && ingredient.model.solid);
  const poured = pours.filter((one) => !solid.includes(one)).sort((one, other) => one.exact - other.exact);
  const names = (those: typeof pours) =>
    showList(
      those.map(({ pour, measured }) => `${measured.text} ${pour.ingredient.resolution.text}`),
      99,
    );
  const wet = water.measured ? `${water.measured.text} water` : "";
  const first =
    solid.length > 0
      ? [`Dissolve ${names(solid)} in ${wet ? `the water, ${wet}` : "the weakest of what is poured"}, until nothing is left to see.`]
      : [];
  const last = wet && solid.length === 0 ? [`Add ${wet} last, and taste: the ice is a model's word.`] : [];
  return [
    "Clean the bottles and a jug that holds all of it.",
    ...first,
    ...(poured.length > 0 ? [`Into the jug, the smallest first, so that a slip costs least: ${names(poured)}.`] : []),
    ...last,
    "Stir from the bottom up until no streaks are seen.",
    `Fill ${showBottles(batch)}, ${showShare(bottles.headspace)} of each left empty at the neck (${showVolumeBriefly({ value: bottles.sizeMl * bottles.headspace, plusMinus: 1 }, settings)}).`,
    "Close, turn over, label, and put in the cold.",
  ];
}

/** Whether it freezes where the house keeps its bottles cold. */
export function coldOf({ cold, settings }: Batch): string {
  const { freezingC, iceShare } = cold;
  if (freezingC.value === null || iceShare.value === null) {
    return `Whether it freezes is unknown: ${showList(freezingC.because ?? [])}. Keep it in the fridge.`;
  }
  const start = `It starts to freeze at ${showTemperature(freezingC)}`;
  const at = showTemperature(settings.freezerC.value);
  const share = showShare({ value: iceShare.value, plusMinus: iceShare.plusMinus });
  if (isSolid(cold)) return `${start}; in the freezer, at ${at}, ${share} of it is ice, and it does not pour. Keep it in the fridge.`;
  if (iceShare.value > 0.005) {
    return `${start}; in the freezer, at ${at}, ${share} of it is ice: slush, which may not pour. Keep it in the fridge, or shake it loose.`;
  }
  const near = freezingC.value > settings.freezerC.value - 2 * (freezingC.plusMinus ?? 0) - 2 * settings.freezerC.u;
  return `${start}; in the freezer, at ${at}, it stays liquid${near ? ", but only just: look after the first night" : ""}.`;
}

/** What one serve takes, what is then done with it, and who cannot take it. */
export function serviceOf(house: House, batch: Batch): string[] {
  const { assessment, apart, serveMl, jiggerMl, settings } = batch;
  const { flat, plan } = assessment;
  const beside = apart.flatMap((one) => (one.beside ? [one.beside] : []));
  const texts = besideTexts({ batchMl: serveMl, jiggerMl, batched: [], beside, waterMl: 0 }, plan.serves, settings);
  const garnish = flat.field("garnish")?.field.value?.text;
  const { contains, notStated } = showAllergens(suitabilityOf(house, flat.entry), settings.country);
  return [
    `For one: ${showService({ batchMl: serveMl, jiggerMl, beside: texts }, settings)}.`,
    ...finishing(batch),
    ...(garnish ? [`Garnish${plan.serves === 1 ? "" : `, for ${plan.serves}`}: ${garnish}.`] : []),
    `As served: ${[contains, notStated].filter(Boolean).join(" ")}`,
  ];
}

/** With its water in the bottle only what follows the ice is left of the method. */
function finishing({ assessment: { flat, steps, outcome }, water }: Batch): string[] {
  if (!water.measured) {
    const method = flat.field("method")?.field.value?.text;
    return method ? [`Then as the spec has it: ${method}.`] : [];
  }
  const last = steps.findLastIndex(({ technique }) => technique?.chill);
  const over = steps.slice(last + 1).flatMap(({ over, item }) => (over ? [item.text] : []));
  const iced = outcome.figure("vesselTemperatureC");
  const asIced = iced.value !== null && last >= 0 ? ` (ice would have brought it to ${showTemperature(iced)})` : "";
  const cold = `Pour it from the bottle as cold as it can be${asIced}, without any ice in between`;
  return [over.length > 0 ? `${cold}; then as the spec has it: ${over.join("; ")}.` : `${cold}.`];
}

/** What a bottle of it calls for, whatever is in the glass later. */
export function cautionsOfBottle(house: House, { assessment, strengthPct, volumeMl, pours, water }: Batch): string[] {
  if (strengthPct.value === null || volumeMl.value === null) return [];
  const { counted } = serveOf(house, assessment);
  const drinks = (volumeMl.value * strengthPct.value * ethanolGPerMl) / 100 / counted.grams;
  const number = showNumber(drinks, drinks < 10 ? 1 : 0);
  const plain = `${number} ${counted.word}${number === "1" ? "" : "s"}`;
  const much = drinks >= 1 ? [`All of it holds ${plain}: keep it closed, labelled and out of reach, and count what is poured.`] : [];
  const weak =
    strengthPct.value < keepsItselfPct
      ? ["At this strength alcohol does not keep it: cold, closed, and no longer than is stated for what is in it."]
      : [];
  const [only, ...others] = pours;
  const alone =
    others.length === 0 && !water.measured
      ? [`Nothing but ${only?.pour.ingredient.resolution.text} can go in: pour it from its own bottle, there is nothing to mix.`]
      : [];
  return [...much, ...weak, ...alone];
}
/** At 20 °C: OIML R 22. */
const ethanolGPerMl = 0.78924;
/** Fortified wine is made about as strong so that it keeps; below that nothing is to be expected of it. Practice, no source. */
const keepsItselfPct = 20;

/** How far the drink from this batch lies from the spec's own: the rounding, and nothing else. */
export function showRounding(served: readonly Compared[]): string {
  const far = served.map(({ figure, own, batch }) => {
    const { label, unit } = rows[figure];
    const [one, other] = [own, batch].map((value) => showNumber(value, 2));
    return one === other ? `${label} ${one} ${unit}` : `${label} ${other} ${unit} (${one} in the spec)`;
  });
  return far.length > 0 ? `${capital(far.join(", "))}.` : "What the drink comes to is unknown.";
}
const rows = {
  strengthPct: { label: "strength", unit: "% vol" },
  sugarGPer100Ml: { label: "sugar", unit: "g/100 ml" },
  acidGPer100Ml: { label: "acid", unit: "g/100 ml" },
} as const;

/** `2026-12-12, by what is stated: 14 days chilled (sugar syrup).`, with what is not stated. */
export function showUseBy({ date, by, notStated }: { date: string | null; by: string | null; notStated: readonly string[] }): string {
  if (!date || !by) return "Nobody states how long anything in it keeps.";
  return `${date}, by what is stated: ${by}.${notStated.length > 0 ? ` Not stated for ${showList(notStated, 6)}.` : ""}`;
}

/** A line each. */
export function labelOf(batch: Batch): string[] {
  const { assessment, made, strengthPct, serveMl, jiggerMl, settings, allergens, useBy } = batch;
  const said = showAllergens(allergens, settings.country);
  const serve = jiggerMl === null ? showVolumeBriefly(serveMl, settings) : showVolume(jiggerMl, settings);
  return [
    `${assessment.flat.entry.name?.text ?? ""}, ${isReady(batch) ? "ready to serve" : "to be finished at the bar"}`,
    `Made ${made}. ${useBy.date ? `Use by ${useBy.date}.` : "Use by ________."}`,
    `${showStrengthBriefly(strengthPct) ?? "Strength unknown"}. ${serveMl.value === null ? "" : `One serve: ${serve}.`}`.trim(),
    // A label is read alone, and its lines one by one.
    ...[said.contains, said.notStated.replace(/^Not/, "Allergens not")].filter(Boolean),
  ];
}

/** Whether nothing is left to do but to pour it: what is optional, and what goes on the glass, may be missing. */
function isReady({ water, apart }: Batch): boolean {
  return water.measured !== undefined && apart.every(({ beside }) => !beside || has(beside.pour.modifiers, "optional"));
}

/** `12 serves`, `9.6 serves`. */
export function showServes(serves: number): string {
  return `${showNumber(serves)} ${serves === 1 ? "serve" : "serves"}`;
}

/** `+0.6 %`, `−1.2 %`, `exact`. */
export function showOff(off: number): string {
  if (Math.abs(off) < 0.0005) return "exact";
  return `${off > 0 ? "+" : "−"}${showValue(Math.abs(off) * 100, 1)} %`;
}
