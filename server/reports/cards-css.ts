/** How service cards look on paper, and on a screen before they are printed. */
import { afterColumn, cardSize, columns, layout, lineHeight, type PaperName, papers, sizes } from "./card-paper.ts";
import { pictureMm } from "./fill-picture.ts";
import { hiddenCss } from "./html.ts";

export const cardStyles = ["light", "saving"] as const;
/** `light` has a tint and rules of one colour; `saving` is black on white and fills nothing. */
export type CardStyle = (typeof cardStyles)[number];

interface Colours {
  readonly ink: string;
  readonly soft: string;
  readonly rule: string;
  readonly tint: string;
  readonly liquid: string;
}

const colours: Readonly<Record<CardStyle, Colours>> = {
  light: { ink: "#16212b", soft: "#44525d", rule: "#0d5a66", tint: "#eaf2f1", liquid: "#b9d9d8" },
  saving: { ink: "#000", soft: "#000", rule: "#000", tint: "none", liquid: "none" },
};

export function cardsCss(paper: PaperName, style: CardStyle): string {
  const { ink, soft, rule, tint, liquid } = colours[style];
  const { width, height } = cardSize(paper);
  const sheet = papers[paper];
  const { margin, gap, foot, padding, rule: edge, band, line, between, row, block } = layout;
  return `@page { size: ${sheet.width}mm ${sheet.height}mm; margin: 0; }
:root { color-scheme: light; print-color-adjust: exact; -webkit-print-color-adjust: exact; }
* { box-sizing: border-box; }
body { margin: 0; color: ${ink}; background: #fff; font-family: "Helvetica Neue", Arial, "Liberation Sans", "DejaVu Sans Condensed", sans-serif; line-height: ${lineHeight}; overflow-wrap: anywhere; }
.sheet { width: ${sheet.width}mm; min-height: ${sheet.height - 0.1}mm; padding: ${margin}mm ${margin}mm 0; display: grid; gap: ${gap}mm; grid-template-columns: repeat(2, ${width}mm); grid-template-rows: repeat(2, minmax(${height}mm, auto)) ${foot - gap + margin}mm; background: #fff; }
.sheet:not(:last-child) { break-after: page; }
.foot { grid-column: 1 / -1; grid-row: 3; margin: ${-gap + 1}mm 0 0; font-size: 8pt; color: ${soft}; }
.card { break-inside: avoid; padding: ${padding}mm; border: ${edge}mm solid ${rule}; border-radius: 2mm; border-top-width: ${style === "light" ? band : edge}mm; }
${sizes.map(({ text, title }) => `.size${text * 10} { font-size: ${text}pt; } .size${text * 10} h2 { font-size: ${title}pt; }`).join("\n")}
h2 { margin: 0 0 ${block}mm; font-weight: 700; line-height: ${lineHeight}; letter-spacing: -0.01em; }
.card:has(.strength) h2 { margin-bottom: 0; }
.strength { margin: 0 0 ${block}mm; color: ${soft}; }
.part { font-weight: 400; color: ${soft}; }
dl, dd, dt { margin: 0; }
dl div { padding-bottom: ${row}mm; }
dt, dd { display: inline; }
dt { font-weight: 700; }
.facts dt { color: ${rule}; }
.facts { margin-bottom: ${block}mm; }
.warnings { margin-bottom: ${block}mm; padding: ${row}mm ${block}mm 0; background: ${tint}; border-left: 1mm solid ${rule}; }
table { width: 100%; table-layout: fixed; border-collapse: collapse; margin-bottom: ${block}mm; }
caption { text-align: left; font-weight: 700; color: ${rule}; }
th, td { padding: ${row}mm 0; vertical-align: baseline; text-align: left; font-weight: 400; border-top: ${line}mm solid ${style === "light" ? "#b4c3c6" : "#000"}; }
td { font-variant-numeric: tabular-nums; }
.or td, .or th { border-top: 0; padding-top: 0; color: ${soft}; }
col.amount { width: ${columns.amount}em; }
col.other { width: ${columns.other}em; }
td { padding-right: ${afterColumn}mm; }
td.amount { font-weight: 700; }
td.other { color: ${soft}; }
.note, .more { color: ${soft}; }
.more { margin: 0; font-style: italic; }
.card > :last-child, .beside .facts { margin-bottom: 0; }
.beside { display: grid; gap: ${between}mm; grid-template-columns: 1fr ${pictureMm.width}mm; }
.picture { width: ${pictureMm.width}mm; height: ${pictureMm.height}mm; }
.picture path { fill: none; stroke: ${ink}; stroke-width: 0.5; stroke-linecap: round; }
.picture .liquid { fill: ${liquid}; stroke: none; }
.picture .level { stroke-width: 0.9; stroke: ${rule}; }
.picture .wash { stroke-width: 0.35; stroke-dasharray: 1.2 1.2; }
.picture text { font-size: 4.2px; font-weight: 700; text-anchor: middle; fill: ${ink}; }
.picture .unknown { font-size: 10px; }
${hiddenCss}
@media screen { body { background: #c9d1d3; } .sheet { margin: 5mm auto; box-shadow: 0 0.5mm 2mm #0006; } }`;
}
