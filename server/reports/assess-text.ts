/** Drinks and preps as a sheet that a bar can print and pin up. */
import { type Measure, mlIn, showCount, showFigure, showNumber } from "../house/show.ts";
import { cautions as cautionRules } from "../rules/cautions/all.ts";
import { partsOnly } from "./assess.ts";
import type { AssessReport, DrinkReport, FigureReport, PrepReport } from "./assess-schema.ts";
import { severityWords } from "./check-text.ts";
import { drinkText } from "./drink-text.ts";
import { type Column, type Look, noteIndent, type Row, readable, table, wrap } from "./sheet.ts";

export interface Sheet {
  /** Whose drinks these are; absent where they are of no one house. */
  readonly house?: string;
  readonly measure: Measure;
  /** Each drink with all its figures, instead of one row in a table. */
  readonly atLength: boolean;
  /** What may hurt a guest, with the names of the drinks that it holds for. */
  readonly cautions: ReadonlyMap<string, readonly string[]>;
}

/** A title, the drinks, the table of preps, the cautions, and what the figures are worth. */
export function assessText({ drinks: all, preps }: AssessReport, { house, measure, atLength, cautions }: Sheet, look: Look): string {
  const drinks = all.map(withoutCautions);
  const counts = [drinks.length > 0 && showCount(drinks.length, "drink"), preps.length > 0 && showCount(preps.length, "prep")];
  const title = counts.filter(Boolean).join(" and ") || "no drinks and no preps";
  const parts = [look.strong(house ? `${readable(house)}: ${title}` : title)];
  if (atLength) parts.push(...drinks.map((drink) => drinkText(drink, measure, look)));
  else if (drinks.length > 0) parts.push(drinkTable(drinks, measure, look));
  if (preps.length > 0) parts.push(prepTable(preps, measure, look));
  if (cautions.size > 0)
    parts.push([...cautions].map(([caution, names]) => wrap(`${caution} (${names.join("; ")})`, look.width, noteIndent, "! ")).join("\n"));
  const notes = [
    drinks.length > 0 && reading,
    preps.length > 0 && ofPreps,
    drinks.some(({ cost }) => cost) && costs,
    parts.some((part) => part.includes(dash)) && dashes,
  ]
    .filter(Boolean)
    .join(" ");
  if (notes) parts.push(look.faint(wrap(notes, look.width)));
  if (drinks.length + preps.length > 0) parts.push(look.faint(wrap(worth, look.width)));
  return `${parts.join("\n\n")}\n`;
}

const cautionCodes = new Set(cautionRules.map(({ code }) => code));

/** They stand below, once for all. */
function withoutCautions(drink: DrinkReport): DrinkReport {
  return { ...drink, findings: drink.findings.filter(({ code }) => !cautionCodes.has(code)) };
}

const ofPreps = "A prep is what is left of it after boiling and straining; its sugar, also to one of water, and its acid are by weight.";
const reading =
  "Sweetness is as sucrose, acid as citric, ratio the one divided by the other; dilution is the water added, of the volume before. Volumes are of all serves together.";
const costs = "Cost is of one serve, waste and garnish counted, without tax.";
const dashes = "A dash stands where there is nothing to tell: too little acid for a ratio, no glass, parts without a size.";
const dash = "–";
const worth =
  "± is one standard uncertainty, from the measures, the labels and the model of melting ice, which is set by published measurements and not by the ice of this bar. No laboratory has seen these drinks.";

/** A column of numbers. */
interface Cell<Of> {
  readonly column: Column;
  figure(of: Of): FigureReport;
  /** What the figure is multiplied by for the column's unit. */
  readonly scale?: number;
  /** Money: always so many decimals, and no uncertainty beside it. */
  readonly places?: number;
  /** More digits than these change nothing that anybody does; 2 where absent. */
  readonly decimals?: number;
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
    { column: ["Temp.", "°C"], figure: ({ after }) => after.temperatureC, decimals: 1 },
    { column: ["Fill", "%"], figure: ({ glass }) => glass.fillShare, scale: 100, idle: ({ glass }) => glass.capacityMl.value === null },
  ];
}

/** Only where something has a price. */
function costCell(drinks: readonly DrinkReport[]): Cell<DrinkReport>[] {
  const priced = drinks.find(({ cost }) => cost)?.cost;
  if (!priced) return [];
  return [
    { column: ["Cost", priced.currency ?? ""], figure: ({ cost }) => cost?.perServe ?? notPriced, places: 2, idle: ({ cost }) => !cost },
  ];
}
const notPriced: FigureReport = { value: null, plusMinus: null };

function drinkTable(drinks: readonly DrinkReport[], measure: Measure, look: Look): string {
  const cells = [...drinkCells(measure), ...costCell(drinks)];
  const severalFiles = new Set(drinks.map(({ file }) => file)).size > 1;
  const rows = drinks.flatMap((drink, index): Row[] => {
    const heading = severalFiles && drink.file !== drinks[index - 1]?.file ? [{ heading: drink.file }] : [];
    return [
      ...heading,
      { name: drink.name, under: drink.family ?? "no family", numbers: cells.map((cell) => numberIn(cell, drink, look)) },
      ...findingNote(drink),
      ...unknownNote(cells, drink),
    ];
  });
  return table(
    ["Drink", "family"],
    cells.map(({ column }) => column),
    rows,
    look,
  );
}

function prepCells(measure: Measure): readonly Cell<PrepReport>[] {
  return [
    { column: ["Weight", "g"], figure: ({ massG }) => massG },
    { column: ["Volume", measure.units], figure: ({ volumeMl }) => volumeMl, scale: 1 / mlIn(measure) },
    { column: ["Density", "g/ml"], figure: ({ densityGPerMl }) => densityGPerMl, decimals: 3 },
    { column: ["Sugar", "°Bx"], figure: ({ brix }) => brix },
    { column: ["to water", "x : 1"], figure: ({ sugarToWater }) => sugarToWater, idle: ({ brix }) => brix.value !== null },
    { column: ["Strength", "% vol"], figure: ({ strengthPct }) => strengthPct },
    { column: ["Acid", "g/100 g"], figure: ({ acidGPer100G }) => acidGPer100G },
  ];
}

function prepTable(preps: readonly PrepReport[], measure: Measure, look: Look): string {
  const cells = prepCells(measure);
  const rows = preps.flatMap((prep): Row[] => [
    { name: prep.name, numbers: cells.map((cell) => numberIn(cell, prep, look)) },
    ...readingNote(prep),
    ...unknownNote(cells, prep),
  ]);
  return table(
    ["Prep"],
    cells.map(({ column }) => column),
    rows,
    look,
  );
}

/** The value and, below it, its uncertainty where that tells anything; `?` where it is unknown. */
function numberIn<Of>(cell: Cell<Of>, of: Of, look: Look): string {
  const { figure, scale = 1, decimals = 2 } = cell;
  const { value, plusMinus } = figure(of);
  if (value === null) return isIdle(cell, of) ? dash : "?";
  if (cell.places !== undefined) return value.toFixed(cell.places);
  const [number, spread] = showFigure({ value: value * scale, plusMinus: (plusMinus ?? 0) * scale })
    .split(" ± ")
    .map((text) => cut(text, decimals));
  return spread && /[1-9]/.test(spread) ? `${number}\n${look.faint(`± ${spread}`)}` : number!;
}

function isIdle<Of>({ figure, idle }: Cell<Of>, of: Of): boolean {
  return idle?.(of) || figure(of).because?.every((reason) => reason === partsOnly) === true;
}

/** A number's text with no more decimals than these. */
function cut(text: string, decimals: number): string {
  const written = text.split(".")[1]?.length ?? 0;
  return written > decimals ? Number(text.replace("−", "-")).toFixed(decimals).replace(/^-/, "−") : text;
}

/** `read 2026-03-01: 58 °Bx, pH 2.6`: those figures are as read, not as computed. */
function readingNote({ measured }: PrepReport): Row[] {
  const { on, brix, densityGPerMl, strengthPct, ph } = measured;
  const texts = [
    brix !== null && `${showNumber(brix)} °Bx`,
    densityGPerMl !== null && `${showNumber(densityGPerMl, 3)} g/ml`,
    strengthPct !== null && `${showNumber(strengthPct)} % vol`,
    ph !== null && `pH ${showNumber(ph)}`,
  ].filter(Boolean);
  return texts.length > 0 ? [{ note: `${on ? `read ${on}` : "read on a day that is not given"}: ${texts.join(", ")}` }] : [];
}

/** `2 warnings: unbalanced on line 12, no-garnish on line 14`. */
function findingNote({ findings }: DrinkReport): Row[] {
  const notes = severityWords.flatMap(([severity, one, many]) => {
    const found = findings.filter((finding) => finding.severity === severity);
    if (found.length === 0) return [];
    return [`${showCount(found.length, one, many)}: ${found.map(({ code, line }) => `${code} on line ${line}`).join(", ")}`];
  });
  return notes.length > 0 ? [{ note: notes.join("; ") }] : [];
}

function unknownNote<Of>(cells: readonly Cell<Of>[], of: Of): Row[] {
  const reasons = new Set(cells.flatMap((cell) => (isIdle(cell, of) ? [] : (cell.figure(of).because ?? []))));
  return reasons.size > 0 ? [{ note: `? ${[...reasons].join("; ")}` }] : [];
}
