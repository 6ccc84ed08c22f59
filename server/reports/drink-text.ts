/** One drink with all its figures, in the order in which it is made. */
import { type Measure, showFigure, showMoney, showServe, showShare, showTemperature, showVolume, showWeight } from "../house/show.ts";
import { showCost } from "../house/show-cost.ts";
import { showService } from "../house/show-service.ts";
import { showStanding } from "../house/standing.ts";
import { showKeeping } from "../house/suitability-text.ts";
import type { DrinkReport, FigureReport } from "./assess-schema.ts";
import { explanationText } from "./explain-text.ts";
import { suitsLines } from "./guest-text.ts";
import { type Look, labelled, readable } from "./sheet.ts";

export function drinkText(drink: DrinkReport, measure: Measure, look: Look): string {
  const { before, dilution, after, glass, standing, findings } = drink;
  const volume = (figure: FigureReport) => showVolume(figure, measure);
  const content = (figure: FigureReport) => showFigure(figure, "g/100 ml");
  const strength = (figure: FigureReport) => showFigure(figure, "% vol");
  const lines: [label: string, text: string][] = [
    ...suitsLines(drink),
    ["Before the ice", `${volume(before.volumeMl)}, ${strength(before.strengthPct)}, ${showWeight(before.massG)}`],
    ["Water added", `${volume(dilution.waterMl)}, ${showShare(dilution.share)} of the volume before${coldInVessel(drink)}`],
    ["As served", `${volume(after.volumeMl)}, ${strength(after.strengthPct)}, ${showTemperature(after.temperatureC)}`],
    [
      "Sweet and sour",
      `sweetness ${content(after.sweetnessGPer100Ml)}, acid ${content(after.acidGPer100Ml)}, ratio ${showFigure(after.ratio)}`,
    ],
    ["Sugar and salt", `sugar ${content(after.sugarGPer100Ml)}, salt ${content(after.saltGPer100Ml)}`],
    ["One serve", showServe(drink.serve).join(", ")],
    ...(drink.service ? [["For service", showService(drink.service, measure)] as [string, string]] : []),
    ["Keeps", drink.keeps ? `${showKeeping(drink.keeps)}, the shortest that is stated` : "not stated"],
    [
      "Glass",
      glass.capacityMl.value === null
        ? (glass.capacityMl.because ?? []).join("; ")
        : `holds ${volume(glass.capacityMl)}, filled to ${showShare(glass.fillShare)}`,
    ],
    ...(standing.length > 0 ? [["On its ice", showStanding(standing, measure)] as [string, string]] : []),
    ...(drink.cost ? [["Cost", costText(drink.cost)] as [string, string]] : []),
    ...reasonsIn(drink).map((reason): [string, string] => ["Unknown", reason]),
    ...findings.map(({ severity, line, message, code }): [string, string] => [
      `${severity[0]!.toUpperCase()}${severity.slice(1)}`,
      `line ${line}: ${message} [${code}]`,
    ]),
  ];
  const where = [drink.family, `${drink.file}:${drink.line}`].filter(Boolean).join(", ");
  const title = `${look.strong(readable(drink.name))}  ${look.faint(readable(where))}`;
  const figures = [title, ...lines.map(([label, text]) => labelled(label, text, look))].join("\n");
  return drink.explanation ? `${figures}\n\n${explanationText(drink.explanation, measure, look)}` : figures;
}

/** How cold it was before the glass and what is poured after changed that. */
function coldInVessel({ dilution, after }: DrinkReport): string {
  const [then, served] = [dilution.temperatureC, after.temperatureC];
  const same = then.value === null || served.value === null || Math.abs(then.value - served.value) < 0.5;
  return same || !dilution.waterMl.value ? "" : `, ${showTemperature(then)} then`;
}

/** With what it is sold for, and what the house means it to take of that. */
function costText(cost: NonNullable<DrinkReport["cost"]>): string {
  const prices = cost.sales.map(({ menu, price, net }) => {
    const without = net === null || net === price ? "" : `, ${showMoney(net, cost.currency ?? undefined)} without tax`;
    return `${menu ?? "its own price"}: ${showMoney(price, cost.currency ?? undefined)}${without}`;
  });
  const target = cost.target !== null && cost.sales.length > 0 ? `the house means it to take ${showShare(cost.target)}` : "";
  return [showCost(cost), ...prices, target, ...(cost.perServe.because ?? [])].filter(Boolean).join("; ");
}

function reasonsIn({ before, dilution, after, glass, serve }: DrinkReport): string[] {
  const { counted: _, ...brings } = serve;
  const groups = [before, dilution, after, ...(glass.capacityMl.value === null ? [] : [glass]), brings];
  const figures = groups.flatMap((group): FigureReport[] => Object.values(group));
  return [...new Set(figures.flatMap(({ because }) => because ?? []))];
}
