/** A prep: how much it makes, and what it is by weight and by volume. */
import type { Entry } from "../../../grammar/tree.ts";
import { liquidOf } from "../../engine/composition.ts";
import { at, sugarOf } from "../../engine/liquid.ts";
import type { PrepFigureName, PrepOutcome } from "../../engine/plan.ts";
import type { House } from "../../house/house.ts";
import { assessPrepEntry, isProportional, prepModel } from "../../house/prep.ts";
import { type Measure, showFigure, showList, showNumber, showVolume, showWeight } from "../../house/show.ts";
import { asText, bold, paragraphs, table } from "../markdown.ts";

export function describePrep(house: House, entry: Entry, measure: Measure): string {
  const outcome = assessPrepEntry(house, entry);
  return paragraphs(
    `${bold(entry.name?.text ?? "A prep without a name")} · made here`,
    table(["", ""], rowsOf(house, entry, outcome, measure)),
    because(outcome),
  );
}

function rowsOf(house: House, entry: Entry, outcome: PrepOutcome, measure: Measure): string[][] {
  const rows: string[][] = [];
  const add = (label: string, name: PrepFigureName, unit: string, least = 0) => {
    const figure = outcome.figure(name);
    if (figure.value === null || figure.value >= least) rows.push([label, showFigure(figure, unit)]);
  };
  if (!isProportional(entry))
    rows.push(["makes", `${showVolume(outcome.figure("volumeMl"), measure)}, ${showWeight(outcome.figure("massG"))}`]);
  add("sugar", "brix", "°Bx", 0.05);
  const ratio = sugarToWater(house, entry, outcome);
  if (ratio) rows.push(["sugar : water", `${ratio} by weight`]);
  add("sugar", "sugarGPer100Ml", "g/100 ml", 0.05);
  add("acid", "acidGPer100Ml", "g/100 ml as citric", 0.005);
  add("strength", "strengthPct", "% vol", 0.05);
  add("density", "densityGPerMl", "g/ml");
  return rows;
}

/** What a syrup is called by: `2 : 1`. Absent where there is little sugar, or it is unknown. */
function sugarToWater(house: House, entry: Entry, outcome: PrepOutcome): string | undefined {
  const brix = outcome.value("brix");
  if (brix === null || brix < sugary) return undefined;
  const { perGram } = liquidOf(prepModel(house, entry));
  const water = perGram[at.water]!;
  return water > 0 ? `${showNumber(sugarOf(perGram) / water, 2)} : 1` : undefined;
}

/** From here on, °Bx, it is spoken of as a syrup. */
const sugary = 20;

function because(outcome: PrepOutcome): string | undefined {
  const reasons = (["volumeMl", "brix", "strengthPct", "acidGPer100Ml"] as const).flatMap((name) => outcome.figure(name).because ?? []);
  return reasons.length > 0 ? `Unknown, because ${asText(showList([...new Set(reasons)], 3))}.` : undefined;
}
