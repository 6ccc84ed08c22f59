/** A prep: how much it makes of what goes in, and what it is by weight and by volume. */
import type { Entry } from "../../../grammar/tree.ts";
import type { PrepFigureName, PrepOutcome } from "../../engine/plan.ts";
import type { House } from "../../house/house.ts";
import type { Step } from "../../house/method.ts";
import { assessPrepEntry, isSizeless, prepModel } from "../../house/prep.ts";
import { prepSteps } from "../../house/prep-steps.ts";
import { type Reading, readingsIn, readOn } from "../../house/readings.ts";
import { type Measure, showFigure, showList, showNumber, showSugarToWater, showVolume, showWeight } from "../../house/show.ts";
import { describeCautions } from "../cautions.ts";
import { asText, bold, lineBreak, paragraphs, table } from "../markdown.ts";
import { showFreezing } from "./cold.ts";
import { describeAllergens } from "./guest.ts";
import { describeOut } from "./out.ts";

export function describePrep(house: House, entry: Entry, measure: Measure): string {
  const outcome = assessPrepEntry(house, entry);
  return paragraphs(
    [
      `${bold(entry.name?.text ?? "A prep without a name")} · made here`,
      describeOut(house, entry),
      describeAllergens(house, entry),
      describeCautions(house, entry),
    ]
      .filter(Boolean)
      .join(lineBreak),
    table(["", ""], [...rowsOf(house, entry, outcome, measure), ...freezingRow(house, entry)]),
    because(outcome),
  );
}

function rowsOf(house: House, entry: Entry, outcome: PrepOutcome, measure: Measure): string[][] {
  const rows: string[][] = [];
  const readings = readingsIn(entry);
  const day = readOn(entry);
  const read = (field: Reading["field"]) => (readings.some((one) => one.field === field) ? `, as read${day ? ` ${day}` : ""}` : "");
  const add = (label: string, name: PrepFigureName, unit: string, least = 0, after = "") => {
    const figure = outcome.figure(name);
    if (figure.value === null || figure.value >= least) rows.push([label, `${showFigure(figure, unit)}${after}`]);
  };
  if (!isSizeless(house, entry)) {
    const sizes = [showVolume(outcome.figure("volumeMl"), measure), showWeight(outcome.figure("massG"))];
    rows.push(["makes", [...new Set(sizes)].join(", ")]);
    const lost = lostIn(outcome);
    if (lost) rows.push(["of", lost]);
  }
  const perVolume = outcome.figure("sugarGPer100Ml");
  add("sugar", "brix", "°Bx", 0.05, `${read("brix")}${perVolume.value === null ? "" : `, ${showFigure(perVolume, "g/100 ml")}`}`);
  const ratio = outcome.figure("sugarToWater");
  if (ratio.value !== null) rows.push(["sugar : water", `${showSugarToWater(ratio)} by weight`]);
  add("acid", "acidGPer100Ml", "g/100 ml as citric", 0.005);
  add("strength", "strengthPct", "% vol", 0.05, read("abv"));
  const foams = prepSteps(house, entry).some(({ does }) => does.foams);
  add("density", "densityGPerMl", "g/ml", 0, `${read("density")}${foams ? ", without the gas in it" : ""}`);
  const ph = readings.find(({ field }) => field === "ph");
  if (ph) rows.push(["pH", `${showNumber(ph.value.value)}${read("ph")}`]);
  return rows;
}

function freezingRow(house: House, entry: Entry): string[][] {
  const freezing = showFreezing(house, entry, prepModel(house, entry));
  return freezing ? [["freezes", freezing]] : [];
}

/** `500 g: 100 g boils off, 20 ± 5 g stays behind`; absent where nothing that counts is lost. */
function lostIn(outcome: PrepOutcome): string | undefined {
  const ways = [
    ["boiledOffG", "boils off"],
    ["leftBehindG", "stays behind"],
  ] as const;
  const texts = ways.flatMap(([name, how]) => {
    const figure = outcome.figure(name);
    return figure.value !== null && figure.value >= leastLostG ? [`${showWeight(figure)} ${how}`] : [];
  });
  return texts.length > 0 ? `${showWeight(outcome.figure("massInG"))} that goes in: ${showList(texts)}` : undefined;
}

const leastLostG = 0.5;

/** A step of a prep's method: what the table says of it, and what goes off or stays behind here. */
export function describePrepStep(house: House, entry: Entry, { technique }: Step): string | undefined {
  if (!technique?.process) return undefined;
  const { boils, strains } = technique.process;
  const figure = boils ? "boiledOffG" : strains ? "leftBehindG" : undefined;
  const lost = figure && !isSizeless(house, entry) ? assessPrepEntry(house, entry).figure(figure) : undefined;
  if (!lost?.value || lost.value < leastLostG) return undefined;
  return `Here ${showWeight(lost)} ${boils ? "boils off" : "stays behind, with all that is strained out of it"}.`;
}

function because(outcome: PrepOutcome): string | undefined {
  const reasons = (["volumeMl", "brix", "strengthPct", "acidGPer100Ml"] as const).flatMap((name) => outcome.figure(name).because ?? []);
  return reasons.length > 0 ? `Unknown, because ${asText(showList([...new Set(reasons)], 3))}.` : undefined;
}
