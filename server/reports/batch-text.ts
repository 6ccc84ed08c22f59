/** A batch for the kitchen wall: the amounts first, then the work, the label and what can go wrong. */

import type { Measure } from "../house/show.ts";
import { showCount, showFigure, showVolume } from "../house/show.ts";
import { showOff, showRounding, showServes, showUseBy } from "../house/show-batch.ts";
import type { BatchReport } from "./batch-schema.ts";
import { type Look, labelled, type Row, readable, table, wrap } from "./sheet.ts";

/** Ends in a line break. */
export function batchText(report: BatchReport, measure: Measure, look: Look): string {
  const { name, serves, made, file, line, house, bottles, volumeMl, work, service, label, apart, freezer, cautions, served } = report;
  const title = `${look.strong(readable(`${name}: a batch for ${showServes(serves)}`))}  ${look.faint(readable([house, `${file}:${line}`].filter(Boolean).join(", ")))}`;
  const size = showVolume(bottles.sizeMl, measure);
  const inAll = volumeMl.value === null ? "an unknown volume" : showVolume(volumeMl, measure);
  const comes = [
    inAll,
    report.strengthPct.value === null ? "strength unknown" : showFigure(report.strengthPct, "% vol"),
    bottles.count === null ? "" : `${showCount(bottles.count, "bottle")} of ${size}`,
  ];
  const parts = [
    title,
    amounts(report, measure, look),
    [
      labelled("Comes to", comes.filter(Boolean).join(", "), look),
      labelled("As served", showRounding(served), look),
      labelled("In the cold", freezer.says, look),
      labelled("Use by", `${showUseBy(report.useBy)} Made ${made}.`, look),
    ].join("\n"),
    section(
      "Not in the bottle",
      apart.map((one) => `${one.name}: ${one.why}`),
      "- ",
      look,
    ),
    section(
      "Work",
      work.map((text, index) => `${index + 1}. ${text}`),
      "",
      look,
    ),
    section("At the bar", service, "- ", look),
    section("Label", label, "| ", look),
    section("Mind", [...doubts(report), ...cautions, localCodes], "! ", look),
  ];
  return `${parts.filter(Boolean).join("\n\n")}\n`;
}

/** Of `1. `, which stands before a step. */
const numberWidth = 3;

const localCodes = "How long a mixed bottle may be kept, how cold, and what its label has to say, local codes decide.";

function amounts({ pours, water }: BatchReport, measure: Measure, look: Look): string {
  const rows = pours.map(({ name, measured, weighed }): Row => {
    const byWeight = weighed?.text ?? (measured.way === "scale" ? measured.text : "");
    return { name: readable(name), numbers: [measured.text, byWeight, showOff(measured.off)] };
  });
  const { measured } = water;
  if (measured) rows.push({ name: "water for the ice", numbers: [measured.text, `${measured.amount} g`, showOff(measured.off)] });
  const melt = measured ? `, ${showVolume({ value: water.exactMl, plusMinus: water.plusMinusMl }, measure)}` : "";
  rows.push({ note: `Water: ${water.why}${melt}.` });
  return table(["In the bottle"], [["Measure"], ["or weigh"], ["Rounding"]], rows, look);
}

function doubts({ pours }: BatchReport): string[] {
  return pours.flatMap(({ name, doubt }) => (doubt ? [`${name} is marked \`batched\`, though: ${doubt}.`] : []));
}

function section(heading: string, lines: readonly string[], lead: string, look: Look): string {
  if (lines.length === 0) return "";
  const indent = " ".repeat(lead.length || numberWidth);
  return [look.strong(heading), ...lines.map((text) => wrap(readable(text), look.width, indent, lead))].join("\n");
}
