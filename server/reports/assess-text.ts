/** Drinks and preps as a sheet that a bar can print and pin up. */
import { type Measure, showFigure } from "../house/show.ts";
import type { AssessReport, DrinkReport, FigureReport, PrepReport } from "./assess-schema.ts";
import { severityWords } from "./check-text.ts";
import { type Column, counted, type Look, type Row, table, wrap } from "./sheet.ts";

export interface Heading {
  /** Whose drinks these are; absent where they are of no one house. */
  readonly house?: string;
  readonly measure: Measure;
}

/** A title, the table of drinks, the table of preps, and what the figures are worth. */
export function assessText(report: AssessReport, { house, measure }: Heading, look: Look): string {
  const { drinks, preps } = report;
  const counts = [drinks.length > 0 && counted(drinks.length, "drink"), preps.length > 0 && counted(preps.length, "prep")];
  const title = counts.filter(Boolean).join(" and ") || "no drinks and no preps";
  const parts = [look.strong(house ? `${house}: ${title}` : title)];
  if (drinks.length > 0) parts.push(drinkTable(drinks, measure, look));
  if (preps.length > 0) parts.push(prepTable(preps, measure, look));
  if (drinks.length + preps.length > 0) parts.push(look.faint(wrap(footnote(report), look.width)));
  return `${parts.join("\n\n")}\n`;
}

/** A column of numbers. */
interface Cell<Of> {
  readonly column: Column;
  figure(of: Of): FigureReport;
  /** What the figure is multiplied by for the column's unit. */
  readonly scale?: number;
  /** No figure is missing here: there is nothing that it could say. */
  idle?(of: Of): boolean;
}

const perVolume = "g/100 ml";

function drinkCells(measure: Measure): readonly Cell<DrinkReport>[] {
  return [
    { column: ["Strength", "% vol"], figure: ({ after }) => after.strengthPct },
    { column: ["Volume", measure.units], figure: ({ after }) => after.volumeMl, scale: 1 / mlIn(measure) },
    { column: ["Dilution", "%"], figure: ({ dilution }) => dilution.share, scale: 100 },
    { column: ["Sweetness", perVolume], figure: ({ after }) => after.sweetnessGPer100Ml },
    { column: ["Acid", perVolume], figure: ({ after }) => after.acidGPer100Ml },
    { column: ["Ratio"], figure: ({ after }) => after.ratio, idle: ({ after }) => after.acidGPer100Ml.value !== null },
    { column: ["Temp.", "°C"], figure: ({ after }) => after.temperatureC },
    { column: ["Fill", "%"], figure: ({ glass }) => glass.fillShare, scale: 100, idle: ({ glass }) => glass.capacityMl.value === null },
  ];
}

function drinkTable(drinks: readonly DrinkReport[], measure: Measure, look: Look): string {
  const cells = drinkCells(measure);
  const severalFiles = new Set(drinks.map(({ file }) => file)).size > 1;
  const rows = drinks.flatMap((drink, index): Row[] => {
    const name = `${look.strong(drink.name)}\n${look.faint(drink.family ?? "no family")}`;
    const heading = severalFiles && drink.file !== drinks[index - 1]?.file ? [look.faint(drink.file)] : [];
    return [...heading, [name, ...cells.map((cell) => numberIn(cell, drink, look))], ...findingNote(drink), ...unknownNote(cells, drink)];
  });
  return table([["Drink", "family"], ...cells.map(({ column }) => column)], rows, look);
}

function prepCells(measure: Measure): readonly Cell<PrepReport>[] {
  return [
    { column: ["Weight", "g"], figure: ({ massG }) => massG },
    { column: ["Volume", measure.units], figure: ({ volumeMl }) => volumeMl, scale: 1 / mlIn(measure) },
    { column: ["Density", "g/ml"], figure: ({ densityGPerMl }) => densityGPerMl },
    { column: ["Sugar", "°Bx"], figure: ({ brix }) => brix },
    { column: ["Strength", "% vol"], figure: ({ strengthPct }) => strengthPct },
    { column: ["Acid", "g/100 g"], figure: ({ acidGPer100G }) => acidGPer100G },
  ];
}

function prepTable(preps: readonly PrepReport[], measure: Measure, look: Look): string {
  const cells = prepCells(measure);
  const rows = preps.flatMap((prep): Row[] => [
    [look.strong(prep.name), ...cells.map((cell) => numberIn(cell, prep, look))],
    ...unknownNote(cells, prep),
  ]);
  return table([["Prep"], ...cells.map(({ column }) => column)], rows, look);
}

/** The value and, below it, its uncertainty where that tells anything; `?` where it is unknown, a dash where there is nothing to know. */
function numberIn<Of>({ figure, scale = 1, idle }: Cell<Of>, of: Of, look: Look): string {
  const { value, plusMinus } = figure(of);
  if (value === null) return idle?.(of) ? "–" : "?";
  const [number, spread] = showFigure({ value: value * scale, plusMinus: (plusMinus ?? 0) * scale }).split(" ± ");
  return spread ? `${number}\n${look.faint(`± ${spread}`)}` : number!;
}

/** `2 warnings: unbalanced on line 12, no-garnish on line 14`. */
function findingNote({ findings }: DrinkReport): string[] {
  const notes = severityWords.flatMap(([severity, one, many]) => {
    const found = findings.filter((finding) => finding.severity === severity);
    if (found.length === 0) return [];
    return [`${counted(found.length, one, many)}: ${found.map(({ code, line }) => `${code} on line ${line}`).join(", ")}`];
  });
  return notes.length > 0 ? [notes.join("; ")] : [];
}

function unknownNote<Of>(cells: readonly Cell<Of>[], of: Of): string[] {
  const reasons = new Set(cells.flatMap(({ figure, idle }) => (idle?.(of) ? [] : (figure(of).because ?? []))));
  return reasons.size > 0 ? [`? ${[...reasons].join("; ")}`] : [];
}

function footnote({ drinks }: AssessReport): string {
  const reading = "Sweetness is as sucrose, acid as citric, ratio the one divided by the other; dilution is water added to what went in.";
  const worth =
    "± is one standard uncertainty, from the measures, the labels and the model of melting ice, which is set by published measurements and not by your own ice. No laboratory has seen these drinks.";
  return drinks.length > 0 ? `${reading} ${worth}` : worth;
}

function mlIn({ units, ounceMl }: Measure): number {
  return units === "oz" ? ounceMl : units === "cl" ? 10 : 1;
}
