/** A target and the ways to it as a person reads them: now and then, what is left over, and the line that changes. */
import { offText } from "../house/left-over.ts";
import { capital, type Measure, showFigure, showNumber, showShare, showVolume, showWeight } from "../house/show.ts";
import type { AdjustReport, WayReport } from "./adjust-schema.ts";
import type { FigureReport } from "./assess-schema.ts";
import { type Look, noteIndent, type Row, readable, table, wrap } from "./sheet.ts";

/** One way at length; several as a table. Ends in a line break. */
export function adjustText(report: AdjustReport, measure: Measure, look: Look): string {
  const { name, target, file, line, family, ways } = report;
  const where = [family, `${file}:${line}`].filter(Boolean).join(", ");
  const title = `${look.strong(readable(`${name}: ${target.asked}`))}  ${look.faint(readable(where))}`;
  const parts = ways.length === 1 ? oneWay(report, ways[0]!, measure, look) : severalWays(report, measure, look);
  return `${[title, ...parts].join("\n\n")}\n`;
}

type Name = keyof AdjustReport["now"];
type Reached = NonNullable<WayReport["reached"]>;

const rows: Readonly<Record<Name, { label: string; show(figure: FigureReport, measure: Measure): string }>> = {
  ratio: { label: "Ratio", show: (figure) => showFigure(figure) },
  strengthPct: { label: "Strength", show: (figure) => showFigure(figure, "% vol") },
  sweetnessGPer100Ml: { label: "Sweetness", show: (figure) => showFigure(figure, "g/100 ml") },
  acidGPer100Ml: { label: "Acid", show: (figure) => showFigure(figure, "g/100 ml") },
  saltGPer100Ml: { label: "Salt", show: (figure) => showFigure(figure, "g/100 ml") },
  afterVolumeMl: { label: "Volume", show: showVolume },
  fillShare: { label: "Glass full to", show: (figure) => showShare(figure) },
  brix: { label: "Sugar", show: (figure) => showFigure(figure, "°Bx") },
  acidGPer100G: { label: "Acid by weight", show: (figure) => showFigure(figure, "g/100 g") },
  saltGPer100G: { label: "Salt by weight", show: (figure) => showFigure(figure, "g/100 g") },
  massG: { label: "Weight", show: (figure) => showWeight(figure) },
  volumeMl: { label: "Volume", show: showVolume },
};

function oneWay(report: AdjustReport, way: WayReport, measure: Measure, look: Look): string[] {
  const { reached } = way;
  if (!reached) return [wrap(way.problem ?? "", look.width)];
  const { change } = reached;
  return [
    wrap(`${capital(readable(way.with))}: ${amountIn(way)}. ${reached.says}`, look.width),
    comparison(report, reached.after, measure, look),
    ...(way.caution ? [wrap(way.caution, look.width, noteIndent, "! ")] : []),
    ...(change
      ? [changed(report, change, look), report.written ? "Written." : "Nothing was written. Add `--write` to change the file."]
      : []),
  ];
}

function amountIn({ present, reached }: WayReport): string {
  const { text, change } = reached!;
  if (!present) return `${text}, new`;
  if (text === present) return `${text}, as it is, comes nearest`;
  return `${text} in place of ${present}${change ? "" : "; write it by hand, for here a line would mean the other pour of it"}`;
}

/** What is there, before and after, and where it is usual. */
function comparison({ target, now, usual, family }: AdjustReport, after: AdjustReport["now"], measure: Measure, look: Look): string {
  const says = (name: Name) => name === target.figure || [now[name], after[name]].some((figure) => figure?.value);
  const compared = (Object.keys(now) as Name[]).filter(says);
  const held = compared.some((name) => usual[name]);
  const window = (name: Name) => (usual[name] ? `${showNumber(usual[name].low)} to ${showNumber(usual[name].high)}` : "");
  return table(
    [""],
    [["Now"], ["Then"], ...(held ? [[family ? `Usual for “${readable(family)}”` : "Usual"] as const] : [])],
    compared.map((name): Row => {
      const { label, show } = rows[name];
      return { name: label, numbers: [show(now[name]!, measure), show(after[name]!, measure), ...(held ? [window(name)] : [])] };
    }),
    look,
  );
}

function changed({ file }: AdjustReport, { line, before, after }: NonNullable<Reached["change"]>, look: Look): string {
  const lines = [look.faint(readable(`${file}:${line}`)), ...(before === null ? [] : [`- ${readable(before)}`]), `+ ${readable(after)}`];
  return lines.join("\n");
}

function severalWays({ ways, target, now }: AdjustReport, measure: Measure, look: Look): string[] {
  const { show, label } = rows[target.figure];
  const met = ways.flatMap(({ with: name, present, reached }): Row[] => {
    if (!reached) return [];
    const figure = reached.after[target.figure]!;
    const off = offText(reached.leftOver, figure, (value) => show({ value, plusMinus: null }, measure)) ?? "nothing";
    return [{ name: readable(name), numbers: [present ?? "", reached.text, show(figure, measure), off] }];
  });
  const missed = new Set(ways.flatMap(({ problem }) => problem ?? []));
  const present = now[target.figure];
  const parts = present ? [`${label} is ${show(present, measure)} now.`] : [];
  if (met.length > 0) parts.push(table(["One of"], [["Now"], ["Then"], [label], ["Left over"]], met, look));
  else parts.push("None of its pours brings it there.");
  if (missed.size > 0) parts.push([...missed].map((text) => wrap(text, look.width, noteIndent, "! ")).join("\n"));
  parts.push(look.faint(wrap("Name one with `--with` to see what else changes; something new can be named too.", look.width)));
  return parts;
}
