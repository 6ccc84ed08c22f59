/** A drink at a glance: at most fifteen lines that a bartender reads between two orders, then the sums for who has the time. */

import type { Entry } from "../../../grammar/tree.ts";
import type { Figure, FigureName, Model } from "../../engine/plan.ts";
import { type Assessment, assessDrink } from "../../house/drink.ts";
import { type Family, familyOf, type WindowField } from "../../house/family.ts";
import { glassOf } from "../../house/glass.ts";
import type { House } from "../../house/house.ts";
import { perServe } from "../../house/serve.ts";
import { serviceSpecOf } from "../../house/service-spec.ts";
import { type Measure, showFigure, showList, showShare, showTemperature, showValue, showVolume, showWindow } from "../../house/show.ts";
import { besideTexts, showService } from "../../house/show-service.ts";
import { showStanding, standingOf } from "../../house/standing.ts";
import { describeCautions } from "../cautions.ts";
import { asText, bold, lineBreak, paragraphs, table } from "../markdown.ts";
import { describeBatch } from "./cold.ts";
import { costRow } from "./cost.ts";
import { describeSums } from "./explain.ts";
import { describeAllergens, describeServe } from "./guest.ts";
import { describeMissing } from "./out.ts";
import { describeChanges, parentColumn } from "./riff.ts";

const mostLines = 12;

export function describeDrink(house: House, entry: Entry, measure: Measure): string {
  const assessment = assessDrink(house, entry);
  const family = familyOf(house, assessment.flat);
  const rows = rowsOf(house, assessment, family, measure);
  const compared = family.name !== "" || rows.some(([, , window]) => window);
  const parent = parentColumn(house, assessment, measure);
  const head = compared || parent ? ["", "in the glass", asText(family.name)] : ["", "in the glass"];
  if (parent) head.push(`${asText(assessment.flat.parent?.entry.name?.text ?? "its parent")} (the change)`);
  const urgent = urgentOf(house, entry, assessment);
  const changes = describeChanges(house, assessment);
  const left = mostLines - rows.length - urgent.length - (changes ? 1 : 0);
  const notes = notesOf(house, assessment, rows, measure).slice(0, left).join(lineBreak);
  const serve = [...describeServe(house, assessment), notes].filter(Boolean).join(lineBreak);
  return paragraphs(
    [titleOf(house, entry, assessment), ...urgent, ...(changes ? [changes] : [])].join(lineBreak),
    table(
      head,
      rows.map((row) => (parent ? [...row, parent(row[0])] : row)),
    ),
    serve,
    describeSums(house, assessment, measure),
  );
}

/** What must be seen without scrolling: whether it can be poured, and what can hurt whom. */
function urgentOf(house: House, entry: Entry, { flat }: Assessment): string[] {
  const allergens = flat.pours.length > 0 && describeAllergens(house, entry);
  return [describeMissing(house, entry), allergens, describeCautions(house, entry)].flatMap((line) => line || []);
}

function titleOf(house: House, entry: Entry, { flat }: Assessment): string {
  const glass = flat.field("glass")?.field.items[0]?.parts[0]?.text;
  const parent = flat.parent?.entry.name?.text;
  const serves = servesOf(house, entry);
  return [
    bold(entry.name?.text ?? "A drink without a name"),
    glass && asText(glass),
    parent && `riff of ${asText(parent)}`,
    serves > 1 && `for ${serves}, figures for one`,
  ]
    .filter(Boolean)
    .join(" · ");
}

type Row = readonly [label: string, value: string, window: string];

function rowsOf(house: House, assessment: Assessment, family: Family, measure: Measure): Row[] {
  const { outcome, proportional, flat } = assessment;
  const serves = assessment.plan.serves;
  const figure = (name: FigureName) => outcome.figure(name);
  const each = (name: FigureName): Figure => perServe(figure(name), serves);
  const window = (field: WindowField) => windowOf(family, field, outcome.value(figureOf(family, field)));
  const rows: Row[] = [["strength", strengthOf(assessment), window("strength")]];

  const water = outcome.value("waterMl");
  const added = proportional
    ? showShare(figure("dilutionShare"))
    : `${showVolume(each("waterMl"), measure)} water, ${showShare(outcome.value("dilutionShare") ?? 0)}`;
  rows.push(["dilution", water === null ? "unknown" : water > 0 ? added : "none", window("dilution")]);
  const temperature = showTemperature(figure("temperatureC"));
  if (proportional) rows.push(["temperature", temperature, ""]);
  else {
    const glass = glassOf(house, house.scopeOf(flat.entry), flat);
    const fill = outcome.value("fillShare");
    const full = glass && fill !== null ? `, ${showShare(fill)} of ${showVolume(glass.plan.capacityMl.value, measure)}` : "";
    const volume = each("afterVolumeMl");
    rows.push(["volume", volume.value === null ? "unknown" : `${showVolume(volume, measure)} at ${temperature}${full}`, ""]);
  }
  rows.push(["sugar", sugarOf(assessment), window("sugar")]);
  rows.push(["acid", per100(figure("acidGPer100Ml")), window("acid")]);
  const ratio = figure("ratio");
  if (ratio.value !== null || family.windows.has("ratio")) rows.push(["ratio", showFigure(ratio, "", 1), window("ratio")]);
  const salt = outcome.value("saltGPer100Ml") ?? 0;
  if (salt >= saltWorthALine || family.windows.has("salt")) rows.push(["salt", per100(figure("saltGPer100Ml")), window("salt")]);
  const cost = costRow(house, flat.entry);
  if (cost) rows.push(cost);
  return rows;
}

/** Salt is tasted from about here on, g/100 ml: practice, no source. */
const saltWorthALine = 0.1;

function strengthOf({ outcome }: Assessment): string {
  const after = outcome.figure("strengthPct");
  const before = outcome.figure("beforeStrengthPct");
  const same = before.value === null || after.value === null || Math.abs(before.value - after.value) < 0.05;
  return same ? showFigure(after, "% vol", 1) : `${showFigure(after, "% vol", 1)}, ${showValue(before, 1)} before`;
}

/** Sugars by weight; how sweet they taste where that differs. */
function sugarOf({ outcome }: Assessment): string {
  const sugar = outcome.figure("sugarGPer100Ml");
  const sweetness = outcome.figure("sweetnessGPer100Ml");
  const apart = sugar.value !== null && sweetness.value !== null ? Math.abs(sweetness.value - sugar.value) : 0;
  return apart > 0.05 * Math.max(1, sugar.value ?? 0) ? `${per100(sugar)}, as sweet as ${showValue(sweetness, 1)}` : per100(sugar);
}

function windowOf(family: Family, field: WindowField, value: number | null): string {
  const found = family.windows.get(field);
  if (!found || value === null) return "";
  const scale = field === "dilution" ? 100 : 1;
  const text = showWindow(value * scale, found.low * scale, found.high * scale) + (field === "dilution" ? " %" : "");
  return text.startsWith("inside") ? text : `**${text}**`;
}

function figureOf(family: Family, field: WindowField): FigureName {
  return family.windows.get(field)?.figure ?? "ratio";
}

function per100(figure: Figure): string {
  return showFigure(figure, "g/100 ml", 2);
}

/** What to know besides the figures, what matters most first. */
function notesOf(house: House, assessment: Assessment, rows: readonly Row[], measure: Measure): string[] {
  const notes = [];
  if (rows.some(([, value]) => value.startsWith("unknown"))) {
    const reasons = reasonsOf(assessment);
    if (reasons.length > 0) notes.push(`Unknown, because ${asText(showList(reasons, 3))}.`);
  }
  if (assessment.proportional) notes.push("In parts without a size, so only shares are known: `total:` or `part:` would tell how much.");
  const service = serviceSpecOf(house, assessment);
  if (service) {
    const beside = besideTexts(service, assessment.plan.serves, measure);
    notes.push(`For service: ${asText(showService({ ...service, beside }, measure))}.`);
  }
  const standing = standingOf(assessment);
  if (standing.length > 0) notes.push(`On its ice it takes up ${showStanding(standing, measure)}.`);
  const batch = describeBatch(house, assessment);
  if (batch) notes.push(batch);
  const assumed = assumedIn(assessment);
  if (assumed.length > 0) notes.push(`Assumed from the larder: ${asText(showList(assumed))}.`);
  return notes;
}

const shown = ["strengthPct", "waterMl", "afterVolumeMl", "sugarGPer100Ml", "acidGPer100Ml"] as const;

function reasonsOf({ outcome }: Assessment): string[] {
  return [...new Set(shown.flatMap((name) => outcome.figure(name).because ?? []))];
}

/** The stocks for which a figure that counts is not the house's own. */
function assumedIn({ plan }: Assessment): string[] {
  const names = new Set<string>();
  for (const pour of plan.pours) collectAssumed(pour.of, names);
  return [...names];
}

function collectAssumed(model: Model, names: Set<string>): void {
  if (model.type === "prep") {
    for (const part of model.parts) collectAssumed(part.of, names);
    return;
  }
  const figures = [model.abvPct, model.densityGPerMl, ...[...model.sugars, ...model.acids, model.salt].map((content) => content.amount)];
  if (figures.some((figure) => figure && !("because" in figure) && figure.assumed && figure.value > 0)) names.add(model.name);
}

function servesOf(house: House, entry: Entry): number {
  return assessDrink(house, entry).plan.serves;
}
