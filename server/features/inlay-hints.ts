/** What a person would work out in their head, beside the text: what a drink comes to, what parts are, the other system's units. */
import type { InlayHint, Range } from "vscode-languageserver-types";
import type { Entry, Pour, Quantity } from "../../grammar/tree.ts";
import { entryAt, type SpecDocument } from "../house/document.ts";
import { type Assessment, assessDrink } from "../house/drink.ts";
import { pourOn } from "../house/entry.ts";
import type { House } from "../house/house.ts";
import { isPoured } from "../house/measurable.ts";
import type { FlatPour } from "../house/riff.ts";
import { perServe } from "../house/serve.ts";
import { type Settings, settingsOf } from "../house/settings.ts";
import { type Measure, showFigure, showNumber, showVolume, showWeight } from "../house/show.ts";
import { showBriefly } from "../house/show-brief.ts";
import { showInOtherUnits } from "../house/show-other-units.ts";
import { paragraphs } from "./markdown.ts";

/** The hints that there are; each can be switched off. */
export type HintKind = "figures" | "parts" | "otherUnits";

/** By what a hint is found again when its tooltip is asked for. */
interface HintData {
  readonly uri: string;
  readonly line: number;
  readonly kind: HintKind;
}

/** Of the lines that the range touches. `units` is the editor's own wish for amounts. */
export function inlayHints(
  house: House,
  document: SpecDocument,
  range: Range,
  wanted: Readonly<Record<HintKind, boolean>>,
  units?: Measure["units"],
): InlayHint[] {
  const { entries, starts } = document.tree;
  const hints: InlayHint[] = [];
  for (const [index, entry] of entries.entries()) {
    const start = starts[index]!;
    if (start > range.end.line || start + entry.lines.length <= range.start.line) continue;
    if (entry.kind !== "drink" && entry.kind !== "prep") continue;
    const measure = measureOf(house, entry, units);
    for (const { kind, line, character, label } of hintsIn(house, entry, wanted, measure)) {
      const position = { line: start + line, character };
      if (!isIn(position, range)) continue;
      const data: HintData = { uri: document.uri, line: position.line, kind };
      hints.push({ position, label, paddingLeft: true, data });
    }
  }
  return hints;
}

/** The hint with its tooltip; as it was where the text has changed since. */
export function resolveInlayHint(house: House, hint: InlayHint, units?: Measure["units"]): InlayHint {
  const { uri, line, kind } = hint.data as HintData;
  const document = house.document(uri);
  const found = document && entryAt(document, line);
  const value = found && tooltipOf(house, found.entry, found.line, kind, measureOf(house, found.entry, units));
  return value ? { ...hint, tooltip: { kind: "markdown", value } } : hint;
}

interface Hint {
  readonly kind: HintKind;
  readonly line: number;
  readonly character: number;
  readonly label: string;
}

function hintsIn(house: House, entry: Entry, wanted: Readonly<Record<HintKind, boolean>>, measure: Measure): Hint[] {
  return [
    ...(wanted.figures ? figuresOf(house, entry, measure) : []),
    ...(wanted.parts ? partsIn(house, entry, measure) : []),
    ...(wanted.otherUnits ? otherUnitsIn(house, entry) : []),
  ];
}

function figuresOf(house: House, entry: Entry, measure: Measure): Hint[] {
  if (entry.kind !== "drink" || !entry.name?.text) return [];
  const assessment = assessDrink(house, entry);
  if (assessment.flat.pours.length === 0) return [];
  const texts = showBriefly(assessment, measure);
  return texts.length > 0 ? [{ kind: "figures", line: 0, character: entry.name.end, label: texts.join(" · ") }] : [];
}

function partsIn(house: House, entry: Entry, measure: Measure): Hint[] {
  if (entry.kind !== "drink" || !entry.lines.some(({ content }) => isInParts(pourOn(content)?.quantity))) return [];
  const assessment = assessDrink(house, entry);
  if (assessment.proportional) return [];
  return assessment.pours.flatMap((pour, index): Hint[] => {
    const written = pour.entry === entry ? writtenOn(entry, pour) : undefined;
    const label = written && isInParts(written.quantity) && amountOf(assessment, index, measure);
    return label ? [{ kind: "parts", line: pour.line, character: written.end, label: `= ${label}` }] : [];
  });
}

function isInParts(quantity: Quantity | undefined): boolean {
  return quantity?.unit?.unit.dimension === "part";
}

/** The pour on the line that this one was made from; absent where the line states no amount of its own. */
function writtenOn(entry: Entry, { line, name, quantity }: FlatPour): Pour | undefined {
  const content = entry.lines[line]?.content;
  const pour = content?.kind === "swap" ? content.readings.find((reading) => reading.in.name === name)?.in : pourOn(content);
  return pour?.quantity && pour.quantity === quantity ? pour : undefined;
}

/** What a pour in parts was taken as; absent where that is unknown. */
function amountOf({ plan }: Assessment, index: number, measure: Measure): string | undefined {
  const { amount } = plan.pours[index]!;
  const known = "ml" in amount ? amount.ml : "g" in amount ? amount.g : undefined;
  if (!known || "because" in known) return undefined;
  return "ml" in amount ? showVolume(known.value, measure) : showWeight(known.value);
}

function otherUnitsIn(house: House, entry: Entry): Hint[] {
  const settings = settingsOf(house, house.scopeOf(entry));
  return entry.lines.flatMap(({ content }, line): Hint[] => {
    const pour = pourOn(content);
    const label = pour?.quantity && inOtherUnits(pour.quantity, settings);
    return label ? [{ kind: "otherUnits", line, character: pour.end, label }] : [];
  });
}

/** Only what a jigger measures: spoons and cups are kept as they are. */
function inOtherUnits(quantity: Quantity, settings: Settings): string | undefined {
  return quantity.unit && isPoured(quantity.unit.unit) ? showInOtherUnits(quantity, settings) : undefined;
}

// Tooltips

function tooltipOf(house: House, entry: Entry, line: number, kind: HintKind, measure: Measure): string | undefined {
  if (kind === "otherUnits") {
    const { ounceMl } = settingsOf(house, house.scopeOf(entry));
    return `One ounce is ${showNumber(ounceMl)} ml here.`;
  }
  if (entry.kind !== "drink") return undefined;
  const assessment = assessDrink(house, entry);
  return kind === "figures" ? aboutFigures(assessment, measure) : aboutPart(assessment, entry, line);
}

function aboutFigures({ outcome, plan }: Assessment, measure: Measure): string {
  const volume = perServe(outcome.figure("afterVolumeMl"), plan.serves);
  const ratio = outcome.figure("ratio");
  const served = plan.serves > 1 ? "One serve of it, in the glass" : "In the glass";
  return paragraphs(
    `${served}: ${showFigure(outcome.figure("strengthPct"), "% vol", 1)}, ${showVolume(volume, measure)}.`,
    ratio.value !== null && `Sweetness ÷ acid is ${showFigure(ratio, "", 1)}.`,
    "The ± is one standard uncertainty.",
  );
}

function aboutPart({ flat, pours }: Assessment, entry: Entry, line: number): string | undefined {
  const pour = pours.find((one) => one.entry === entry && one.line === line);
  const size = flat.field("part") ?? flat.field("total");
  if (!pour || !size) return undefined;
  return `By \`${size.field.name.text.toLowerCase()}: ${size.field.value?.text ?? ""}\`.`;
}

function measureOf(house: House, entry: Entry, units: Measure["units"] | undefined): Measure {
  const settings = settingsOf(house, house.scopeOf(entry));
  return { units: units ?? settings.units, ounceMl: settings.ounceMl };
}

function isIn({ line, character }: InlayHint["position"], { start, end }: Range): boolean {
  const isAfterStart = line > start.line || (line === start.line && character >= start.character);
  return isAfterStart && (line < end.line || (line === end.line && character <= end.character));
}
