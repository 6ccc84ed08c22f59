/** Service cards as a page of its own that prints: four to a sheet, nothing fetched, the same bytes for the same drinks. */

import { type Face, facesOf } from "./card-fit.ts";
import type { PaperName } from "./card-paper.ts";
import { type Fact, isCaptioned } from "./card-pieces.ts";
import type { Card, CardPour, CardReport } from "./card-schema.ts";
import { type CardStyle, cardsCss } from "./cards-css.ts";
import { fillPicture } from "./fill-picture.ts";
import { escapeHtml } from "./html.ts";

export interface Printing {
  readonly paper: PaperName;
  readonly ink: CardStyle;
}

const onSheet = 4;

export function cardsHtml({ cards }: CardReport, { paper, ink }: Printing): string {
  const faces = cards.flatMap((card) => facesOf(card, paper));
  const sheets: string[] = [];
  for (let at = 0; at < faces.length; at += onSheet) sheets.push(sheetOf(faces.slice(at, at + onSheet), at));
  const names = [...new Set(cards.map(({ house }) => house ?? ""))].filter(Boolean).join(", ");
  const title = escapeHtml(["Service cards", names].filter(Boolean).join(": "));
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${title}</title>
<style>
${cardsCss(paper, ink)}
</style>
</head>
<body>
<main>
<h1 class="hidden">${title}</h1>
${sheets.join("\n")}
</main>
</body>
</html>
`;
}

function sheetOf(faces: readonly Face[], start: number): string {
  const cards = faces.map((face, index) => cardOf(face, `card${start + index + 1}`));
  return `<div class="sheet">\n${cards.join("\n")}\n<p class="foot">${escapeHtml(footOf(faces))}</p>\n</div>`;
}

function footOf(faces: readonly Face[]): string {
  const ounces = [...new Set(faces.map(({ card }) => card.ounce))].join(" or ");
  return `1 oz is ${ounces}; ≈ is rounded. Fill and strength are computed; the dashed line is the washline. Local codes decide on allergens and cautions.`;
}

function cardOf(face: Face, id: string): string {
  const { card, title, size, number, of, strength, names, warnings, service, pours, facts, beside, picture } = face;
  const part = of > 1 ? ` <span class="part">(${number} of ${of})</span>` : "";
  const inFull = table(pours, "pours", card, fullCaption(card));
  const making = [
    factList(facts, "facts"),
    picture ? `<div class="beside">${factList(beside, "facts")}${fillPicture(card, `${id}fill`)}</div>` : factList(beside, "facts"),
  ];
  const blocks = [
    `<h2 id="${id}">${escapeHtml(title)}${part}</h2>`,
    strength && `<p class="strength">${escapeHtml(strength)}</p>`,
    factList(names, "facts"),
    factList(warnings, "warnings"),
    ...(card.service ? [table(service, "service", card, "From the bottle"), ...making, inFull] : [inFull, ...making]),
    number < of ? `<p class="more">Continued on card ${number + 1} of ${of}.</p>` : "",
  ];
  return `<article class="card size${size.text * 10}" aria-labelledby="${id}">\n${blocks.filter(Boolean).join("\n")}\n</article>`;
}

function fullCaption({ service, serves }: Card): string {
  const of = serves === 1 ? "" : `for ${serves} serves`;
  if (service === null) return of === "" ? "Pours" : `F${of.slice(1)}`;
  return ["In full", of].filter(Boolean).join(", ");
}

function factList(facts: readonly Fact[], kind: string): string {
  if (facts.length === 0) return "";
  const rows = facts.map(({ label, text }) =>
    label === ""
      ? `<div><dt class="hidden">and</dt><dd>${escapeHtml(text)}</dd></div>`
      : `<div><dt>${label}</dt> <dd>${escapeHtml(text)}</dd></div>`,
  );
  return `<dl class="${kind}">${rows.join("")}</dl>`;
}

function table(pours: readonly CardPour[], kind: string, card: Card, caption: string): string {
  if (pours.length === 0) return "";
  const seen = isCaptioned(card) ? "" : ` class="hidden"`;
  const head = `<thead class="hidden"><tr><th scope="col">Amount</th><th scope="col">In the other units</th><th scope="col">Pour</th></tr></thead>`;
  return `<table class="${kind}"><caption><span${seen}>${escapeHtml(caption)}</span></caption><colgroup><col class="amount"><col class="other"><col></colgroup>${head}<tbody>${pours.map(row).join("")}</tbody></table>`;
}

function row({ amount, other, name, notes, or }: CardPour): string {
  const amounts =
    other === null
      ? `<td colspan="2" class="amount">${escapeHtml(amount)}</td>`
      : `<td class="amount">${escapeHtml(amount)}</td><td class="other">${escapeHtml(other)}</td>`;
  const noted = notes.length > 0 ? `, <span class="note">${escapeHtml(notes.join(", "))}</span>` : "";
  const others = or.map((one) => `<tr class="or"><td></td><th scope="row" colspan="2">or ${escapeHtml(one)}</th></tr>`).join("");
  return `<tr>${amounts}<th scope="row">${escapeHtml(name)}${noted}</th></tr>${others}`;
}
