/** `mutchkin diff` as a page of its own, to be handed over: nothing is fetched, it prints, and it reads aloud in order. */
import { capital } from "../house/show.ts";
import { diffCss } from "./diff-css.ts";
import {
  allOf,
  brokenLine,
  concernsOf,
  drinkLines,
  groupsOf,
  headings,
  howOf,
  menuLines,
  rewrittenLine,
  summaryOf,
  thingLines,
} from "./diff-lines.ts";
import type { DiffDrink, DiffReport } from "./diff-schema.ts";
import { costParts, figureParts, type Parts } from "./diff-words.ts";
import { escapeHtml } from "./html.ts";

export function diffHtml(report: DiffReport): string {
  const { told, moved, rewritten } = groupsOf(report);
  const name = `${report.before} → ${report.after}`;
  const parts = [
    `<header>\n<p class="kind">${headings.page}</p>\n<h1>${text(name)}</h1>\n<p class="lead">${text(`${capital(summaryOf(report))}.`)}</p>\n</header>`,
    warning(
      "Not compared",
      report.broken.map((one) => brokenLine(one)),
    ),
    summaryTable(report.drinks),
    ...section(
      headings.changed,
      told.map((drink) => drinkPart(drink, idOf(report.drinks, drink))),
    ),
    ...section(
      headings.moved,
      moved.map((drink) => drinkPart(drink, idOf(report.drinks, drink))),
    ),
    ...section(
      headings.things,
      report.things.map((thing) => {
        const { said, through } = thingLines(thing);
        return part(`${thing.kind} ${thing.name}`, [thing.how, ...through].join("; "), [list(said)]);
      }),
    ),
    ...section(
      headings.menus,
      report.menus.map((menu) => part(menu.name, menu.how, [list(menuLines(menu))])),
    ),
    ...(rewritten.length > 0 ? [`<p class="note">${text(rewrittenLine(rewritten))}</p>`] : []),
  ];
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${text(`${headings.page}: ${name}`)}</title>
<style>
${diffCss}
</style>
</head>
<body>
<main>
${parts.filter(Boolean).join("\n")}
</main>
</body>
</html>
`;
}

function idOf(drinks: readonly DiffDrink[], drink: DiffDrink): string {
  return `drink${drinks.indexOf(drink) + 1}`;
}

/** What to look at, in the order in which it matters; the rest of the page is the proof of it. */
function summaryTable(drinks: readonly DiffDrink[]): string {
  const told = drinks.filter(({ how }) => how !== "rewritten");
  if (told.length === 0) return "";
  const rows = told.map((drink) => {
    const { grave, others } = concernsOf(drink);
    const concerns = [...grave.map((line) => `<span class="grave">${text(capital(line))}</span>`), text(capital(others.join(", ")))];
    const of = (parts: Parts | undefined) => (parts ? text(`${parts.before} → ${parts.after}`) : "");
    const strength = drink.effects?.figures.find(({ figure }) => figure === "strengthPct");
    const name = `<th scope="row"><a href="#${idOf(drinks, drink)}">${text(drink.name)}</a></th>`;
    const words = [text(howOf(drink)), concerns.filter(Boolean).join("<br>")].map((cell) => `<td>${cell}</td>`);
    const figures = [of(drink.effects?.cost ? costParts(drink.effects.cost)[0] : undefined), of(strength && figureParts(strength, true))];
    return `<tr>${name}${words.join("")}${figures.map((cell) => `<td class="figure">${cell}</td>`).join("")}</tr>`;
  });
  const heads = ["Drink", "Change", "Look at", "Cost, or share", "Strength"].map((head) => `<th scope="col">${head}</th>`).join("");
  return `<section class="scrolls" aria-label="At a glance" tabindex="0">
<table>
<caption>At a glance</caption>
<thead><tr>${heads}</tr></thead>
<tbody>
${rows.join("\n")}
</tbody>
</table>
</section>`;
}

function drinkPart(drink: DiffDrink, id: string): string {
  const { hurt, changed, rest, through } = drinkLines(drink);
  const figures = [
    ...(drink.effects?.cost ? costParts(drink.effects.cost) : []),
    ...(drink.effects?.figures ?? []).map((one) => figureParts(one)),
  ];
  const under = [howOf(drink), ...(drink.menus.length > 0 ? [`on ${allOf(drink.menus)}`] : []), ...through].join("; ");
  return part(drink.name, under, [warning("Allergens", hurt), list(changed), figureTable(figures), list(rest)], id);
}

function part(name: string, under: string, blocks: readonly string[], id?: string): string {
  const head = `<div>\n<h3>${text(name)}</h3>\n<p class="how">${text(capital(under))}</p>\n</div>`;
  return `<article${id ? ` id="${id}"` : ""}>\n${head}\n<div>\n${blocks.filter(Boolean).join("\n")}\n</div>\n</article>`;
}

function figureTable(figures: readonly Parts[]): string {
  if (figures.length === 0) return "";
  const rows = figures.map(({ label, before, after, note }) => {
    const cells = [before, [after, note].filter(Boolean).join(", ")].map((cell) => `<td>${text(cell)}</td>`);
    return `<tr><th scope="row">${text(capital(label))}</th>${cells.join("")}</tr>`;
  });
  const heads = ["Figure", "Before", "After"].map((head) => `<th scope="col">${head}</th>`).join("");
  return `<table>\n<thead><tr>${heads}</tr></thead>\n<tbody>\n${rows.join("\n")}\n</tbody>\n</table>`;
}

/** The word says what it is; the colour only repeats it. */
function warning(word: string, lines: readonly string[]): string {
  if (lines.length === 0) return "";
  return `<div class="warning">\n<strong>${word}</strong>\n<ul>${lines.map((line) => `<li>${text(capital(line))}</li>`).join("")}</ul>\n</div>`;
}

function section(title: string, parts: readonly string[]): string[] {
  return parts.length > 0 ? [`<section>\n<h2>${title}</h2>\n${parts.join("\n")}\n</section>`] : [];
}

function list(lines: readonly string[]): string {
  return lines.length > 0 ? `<ul>\n${lines.map((line) => `<li>${text(capital(line))}</li>`).join("\n")}\n</ul>` : "";
}

function text(plain: string): string {
  return escapeHtml(plain.replace(/[\r\n]+/g, " "));
}
