/** The drinks and preps of some texts of a house with all their figures. */
import type { Entry } from "../../grammar/tree.ts";
import { type Figure, type FigureName, figures, type PrepFigureName, type Uncertain } from "../engine/plan.ts";
import { type Assessment, assessDrink } from "../house/drink.ts";
import { explain } from "../house/explain.ts";
import { familyOf } from "../house/family.ts";
import { messageOf } from "../house/finding.ts";
import type { House } from "../house/house.ts";

import { assessPrepEntry, isSizeless } from "../house/prep.ts";
import { type Reading, readingsIn, readOn } from "../house/readings.ts";
import { costOfDrink } from "../house/sales.ts";
import { type Serve, serveOf } from "../house/serve.ts";
import { serviceSpecOf } from "../house/service-spec.ts";
import { settingsOf } from "../house/settings.ts";
import { besideTexts } from "../house/show-service.ts";
import { standingOf } from "../house/standing.ts";
import type { Rule } from "../rules/rule.ts";
import { findingsOf, type Report } from "../rules/run.ts";
import type { AssessReport, DrinkReport, ExplanationReport, FigureReport, PrepReport } from "./assess-schema.ts";
import { guestReport } from "./guest.ts";

export interface Assessing {
  readonly rules: readonly Rule[];
  /** How a text is named to the reader. */
  pathOf(uri: string): string;
  /** With the sum behind every figure. */
  readonly explained?: boolean;
  /** Told when a rule fails; the others go on. */
  readonly report: Report;
  /** Told before each entry. */
  progress?(done: number): void;
}

/** In the order given; entries that are no drinks and no preps, or have no name yet, are passed over. */
export function assessEntries(house: House, entries: readonly Entry[], assessing: Assessing): AssessReport {
  const drinks: DrinkReport[] = [];
  const preps: PrepReport[] = [];
  for (const [done, entry] of entries.entries()) {
    assessing.progress?.(done);
    if (entry.name && entry.kind === "drink") drinks.push(drinkReport(house, entry, assessing));
    if (entry.name && entry.kind === "prep") preps.push(prepReport(house, entry));
  }
  return { drinks, preps };
}

/** What a prep written in parts without a size does not say: only its shares are known. */
const prepsNeedSize: ReadonlySet<PrepFigureName> = new Set(["massG", "volumeMl", "boiledOffG", "leftBehindG"]);
/** The reason why they are not there. */
export const partsOnly = "it is written in parts without a size, so only its shares are known";

function drinkReport(house: House, entry: Entry, { rules, report, pathOf, explained }: Assessing): DrinkReport {
  const start = house.getLineOf(entry);
  const assessment = assessDrink(house, entry);
  const { flat, outcome, plan, proportional } = assessment;
  const figure = (name: FigureName) => figureReport(outcome.figure(name), proportional && Boolean(figures[name].grows));
  return {
    name: entry.name!.text,
    file: pathOf(house.getDocumentOf(entry).uri),
    line: start + 1,
    family: familyOf(house, flat).name || null,
    ...guestReport(house, entry),
    serve: serveReport(serveOf(house, assessment), proportional),
    before: { volumeMl: figure("beforeVolumeMl"), massG: figure("beforeMassG"), strengthPct: figure("beforeStrengthPct") },
    dilution: { waterMl: figure("waterMl"), share: figure("dilutionShare"), temperatureC: figure("vesselTemperatureC") },
    after: {
      volumeMl: figure("afterVolumeMl"),
      strengthPct: figure("strengthPct"),
      sugarGPer100Ml: figure("sugarGPer100Ml"),
      sweetnessGPer100Ml: figure("sweetnessGPer100Ml"),
      acidGPer100Ml: figure("acidGPer100Ml"),
      ratio: figure("ratio"),
      saltGPer100Ml: figure("saltGPer100Ml"),
      temperatureC: figure("temperatureC"),
    },
    glass: { capacityMl: capacityOf(plan.glass?.capacityMl, flat.field("glass")?.field.value?.text), fillShare: figure("fillShare") },
    service: serviceReport(house, assessment),
    standing: standingOf(assessment).map(({ minutes, lowMl, highMl }) => ({ minutes, lowMl: rounded(lowMl), highMl: rounded(highMl) })),
    cost: costReport(house, entry),
    findings: findingsOf(house, entry, rules, report).map((finding) => ({
      code: finding.code,
      severity: finding.severity,
      line: start + finding.place.line + 1,
      message: messageOf(finding),
    })),
    ...(explained && { explanation: explanationReport(house, assessment) }),
  };
}

function serveReport({ counted, ...figures }: Serve, proportional: boolean): DrinkReport["serve"] {
  return {
    ethanolG: figureReport(figures.ethanolG, proportional),
    standardDrinks: figureReport(figures.standardDrinks, proportional),
    counted: { ...counted, grams: rounded(counted.grams) },
    energyKJ: figureReport(figures.energyKJ, proportional),
    energyKcal: figureReport(figures.energyKcal, proportional),
    caffeineMg: figureReport(figures.caffeineMg, proportional),
  };
}

/** Amounts in words are in the house's own units, whatever the reader asked for elsewhere. */
function serviceReport(house: House, assessment: Assessment): DrinkReport["service"] {
  const service = serviceSpecOf(house, assessment);
  if (!service) return null;
  return {
    batchMl: figureReport(service.batchMl, false),
    jiggerMl: roundedIf(service.jiggerMl),
    batched: service.batched.map(({ ingredient }) => ingredient.resolution.text),
    beside: besideTexts(service, assessment.plan.serves, settingsOf(house, house.scopeOf(assessment.flat.entry))),
  };
}

/** Numbers to six digits, as everywhere in the report. */
function explanationReport(house: House, assessment: Assessment): ExplanationReport {
  const { brought, sums, assumptions } = explain(house, assessment);
  return {
    brought: brought.map((one) => ({
      name: one.name,
      g: rounded(one.g),
      ml: roundedIf(one.ml),
      waterG: roundedIf(one.waterG),
      ethanolG: roundedIf(one.ethanolG),
      sugarG: roundedIf(one.sugarG),
      sweetnessG: roundedIf(one.sweetnessG),
      acidG: roundedIf(one.acidG),
      saltG: roundedIf(one.saltG),
      caffeineMg: roundedIf(one.caffeineMg),
    })),
    sums: sums.map((sum) => ({
      ...sum,
      result: figureReport(sum.result, assessment.proportional && Boolean(figures[sum.figure].grows)),
      doubts: sum.doubts.map(({ what, share }) => ({ what, share: rounded(share) })),
    })),
    assumptions: [...assumptions],
  };
}

function costReport(house: House, entry: Entry): DrinkReport["cost"] {
  const cost = costOfDrink(house, entry);
  if (!cost) return null;
  return {
    currency: cost.currency ?? null,
    perServe: figureReport(cost.perServe, false),
    pricedPerServe: rounded(cost.pricedPerServe),
    without: [...cost.without],
    target: cost.target ?? null,
    sales: cost.sales.map(({ menu, price, net, share }) => ({
      menu: menu?.name?.text ?? null,
      price,
      net: roundedIf(net),
      share: figureReport(share, false),
    })),
  };
}

function prepReport(house: House, entry: Entry): PrepReport {
  const outcome = assessPrepEntry(house, entry);
  const sizeless = isSizeless(house, entry);
  const figure = (name: PrepFigureName) => figureReport(outcome.figure(name), sizeless && prepsNeedSize.has(name));
  const read = (field: Reading["field"]) => readingsIn(entry).find((reading) => reading.field === field)?.value.value ?? null;
  return {
    name: entry.name!.text,
    massG: figure("massG"),
    volumeMl: figure("volumeMl"),
    densityGPerMl: figure("densityGPerMl"),
    brix: figure("brix"),
    sugarToWater: figure("sugarToWater"),
    strengthPct: figure("strengthPct"),
    acidGPer100G: figure("acidGPer100G"),
    boiledOffG: figure("boiledOffG"),
    leftBehindG: figure("leftBehindG"),
    ...guestReport(house, entry),
    measured: { on: readOn(entry) ?? null, brix: read("brix"), densityGPerMl: read("density"), strengthPct: read("abv"), ph: read("ph") },
  };
}

/** What a glass holds, or why nobody knows. */
export function capacityOf(capacityMl: Uncertain | undefined, named: string | undefined): FigureReport {
  if (capacityMl) return figureReport({ value: capacityMl.value, plusMinus: capacityMl.u }, false);
  return { value: null, plusMinus: null, because: [named ? `nothing says how much “${named}” holds` : "no glass is named"] };
}

export function figureReport({ value, plusMinus, because = [] }: Figure, unsized: boolean): FigureReport {
  if (unsized) return { value: null, plusMinus: null, because: [...because, partsOnly] };
  return value === null
    ? { value, plusMinus, because: [...because] }
    : { value: rounded(value), plusMinus: plusMinus && rounded(plusMinus) };
}

/** Six digits: beyond them a figure says nothing, and differs from one machine to the next. */
export function rounded(value: number): number {
  return Number(value.toPrecision(6));
}

function roundedIf(value: number | null): number | null {
  return value === null ? null : rounded(value);
}
