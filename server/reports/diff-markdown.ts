/** `mutchkin diff` as Markdown, fit for a comment on a pull request; the page that is printed is made of it. */
import { capital } from "../house/show.ts";
import { brokenLine, drinkLines, groupsOf, headings, menuLines, rewrittenLine, summaryOf, thingLines, titleOf } from "./diff-lines.ts";
import type { DiffDrink, DiffReport } from "./diff-schema.ts";

export function diffMarkdown(report: DiffReport): string {
  const { told, moved, rewritten } = groupsOf(report);
  const things = report.things.map((thing) => {
    const { said, through } = thingLines(thing);
    return listed(`#### ${plain(`${thing.kind} ${thing.name}, ${thing.how}`)}`, [...said, ...through].map(plain));
  });
  const parts = [
    `## Drinks: ${plain(report.before)} → ${plain(report.after)}`,
    `${plain(capital(summaryOf(report)))}.`,
    listed(
      "",
      report.broken.map((one) => plain(brokenLine(one))),
    ),
    ...section(headings.changed, told.map(drinkPart)),
    ...section(headings.moved, moved.map(drinkPart)),
    ...section(headings.things, things),
    ...report.menus.map((menu) => listed(`### ${plain(`${menu.name}, ${menu.how}`)}`, menuLines(menu).map(plain))),
    ...(rewritten.length > 0 ? [plain(rewrittenLine(rewritten))] : []),
  ];
  return `${parts.filter(Boolean).join("\n\n")}\n`;
}

function drinkPart(drink: DiffDrink): string {
  const { hurt, said, through } = drinkLines(drink);
  return listed(`#### ${plain(titleOf(drink))}`, [
    ...hurt.map((line) => `**${plain(capital(line))}**`),
    ...[...said, ...through].map(plain),
  ]);
}

function section(title: string, parts: readonly string[]): string[] {
  return parts.length > 0 ? [`### ${title}`, ...parts] : [];
}

function listed(head: string, lines: readonly string[]): string {
  return [head, lines.map((line) => `- ${line}`).join("\n")].filter(Boolean).join("\n\n");
}

/** A spec's text is no markup: what Markdown or HTML would read in it is written so that it stands as it is. */
function plain(text: string): string {
  return text.replace(/[\r\n]+/g, " ").replace(/[\\`*_{}[\]<>|#~&@]/g, (sign) => (sign === "@" ? "@\u200b" : `\\${sign}`));
}
