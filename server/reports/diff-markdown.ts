/** `mutchkin diff` as Markdown, fit for a comment on a pull request. */
import { capital } from "../house/show.ts";
import {
  allOf,
  brokenLine,
  concernsOf,
  drinkLines,
  groupsOf,
  headings,
  hurtsOf,
  menuLines,
  rewrittenLine,
  shortened,
  summaryOf,
  thingLines,
  titleOf,
} from "./diff-lines.ts";
import type { DiffDrink, DiffReport } from "./diff-schema.ts";

/** A comment on the usual services holds 65,536 signs; somebody's own words go before it. */
const mostSigns = 60_000;

/** Shortened where it would not fit a comment: what a guest could be hurt by is told in full all the same. */
export function diffMarkdown(report: DiffReport, most = mostSigns): string {
  const whole = markdownOf(report, false);
  return whole.length <= most ? whole : markdownOf(report, true);
}

function markdownOf(report: DiffReport, isShort: boolean): string {
  const { told, moved, rewritten } = groupsOf(report);
  const things = report.things.map((thing) => {
    const { said, through } = thingLines(isShort ? { ...thing, moved: [] } : thing);
    return listed(`#### ${plain(`${thing.kind} ${thing.name}, ${thing.how}`)}`, [...said, ...through].map(plain));
  });
  const parts = [
    `## Drinks: ${plain(report.before)} → ${plain(report.after)}`,
    `${plain(capital(summaryOf(report)))}.`,
    listed(
      "",
      hurtsOf(report).map((line) => `**${plain(capital(line))}**`),
    ),
    listed(
      "",
      report.broken.map((one) => plain(brokenLine(one))),
    ),
    ...(isShort ? [plain(shortened)] : []),
    ...section(
      headings.changed,
      told.map((drink) => drinkPart(drink)),
    ),
    ...section(headings.moved, isShort ? movedShortly(moved) : moved.map((drink) => drinkPart(drink))),
    ...section(headings.things, things),
    ...report.menus.map((menu) => listed(`### ${plain(`${menu.name}, ${menu.how}`)}`, menuLines(menu).map(plain))),
    ...(rewritten.length > 0 ? [plain(rewrittenLine(rewritten))] : []),
  ];
  return `${parts.filter(Boolean).join("\n\n")}\n`;
}

/** Whom it could hurt in full, and of the rest the names. */
function movedShortly(moved: readonly DiffDrink[]): string[] {
  const isGrave = (drink: DiffDrink) => concernsOf(drink).grave.length > 0;
  const others = moved.filter((drink) => !isGrave(drink)).map(({ name }) => name);
  const grave = moved.filter(isGrave).map((drink) => `- ${plain(titleOf(drink))}: **${plain(concernsOf(drink).grave.join("; "))}**`);
  return [grave.join("\n"), others.length > 0 ? plain(`${grave.length > 0 ? "Besides" : "These"}: ${allOf(others)}.`) : ""].filter(Boolean);
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
