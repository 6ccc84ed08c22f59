/** `mutchkin diff` as Markdown, fit for a comment on a pull request; the page that is printed is made of it. */
import type { DiffDrink, DiffReport, DiffThing } from "./diff-schema.ts";
import { menuLines, summaryOf, titleOf } from "./diff-text.ts";
import { changeLines, effectLines, fieldLine, hurtLines } from "./diff-words.ts";

export function diffMarkdown(report: DiffReport): string {
  const { drinks, things, menus, broken } = report;
  const told = drinks.filter(({ how }) => how !== "rewritten" && how !== "moved");
  const moved = drinks.filter(({ how, effects }) => how === "moved" && effects);
  const rewritten = drinks.filter(({ how }) => how === "rewritten");
  const parts = [
    `## Drinks: ${plain(report.before)} → ${plain(report.after)}`,
    `${plain(capital(summaryOf(report)))}.`,
    ...(broken.length > 0
      ? [
          bullets(
            broken.map(({ file, side, lines }) => `${file}, ${side}: lines ${lines.join(", ")} do not read and could not be compared`),
          ),
        ]
      : []),
    ...(told.length > 0 ? ["### Changed", ...told.map(drinkPart)] : []),
    ...(moved.length > 0 ? ["### Moved, though nobody touched them", ...moved.map(drinkPart)] : []),
    ...(things.length > 0 ? ["### Behind them", ...things.map(thingPart)] : []),
    ...menus.flatMap(({ name, how, ...menu }) => [`### ${plain(name)}, ${how}`, bullets(menuLines(menu))]),
    ...(rewritten.length > 0 ? [`Only blanks and comments differ: ${rewritten.map(({ name }) => plain(name)).join(", ")}.`] : []),
  ];
  return `${parts.filter(Boolean).join("\n\n")}\n`;
}

function drinkPart(drink: DiffDrink): string {
  const { effects, because, how } = drink;
  const hurt = effects ? hurtLines(effects) : [];
  const rest = effects ? effectLines(effects).slice(hurt.length) : [];
  const lines = [
    ...hurt.map((line) => `**${plain(capital(line))}**`),
    ...[...(how === "moved" ? [] : changeLines(drink)), ...rest, ...(because.length > 0 ? [`through ${because.join(", ")}`] : [])].map(
      plain,
    ),
  ];
  return [`#### ${plain(titleOf(drink))}`, lines.map((line) => `- ${line}`).join("\n")].filter(Boolean).join("\n\n");
}

function thingPart({ kind, name, how, fields, moved, menus }: DiffThing): string {
  const lines = [
    ...fields.map(fieldLine),
    ...moved.map(({ drink, what }) => `${drink}: ${what}`),
    ...(menus.length > 0 ? [`on ${menus.join(", ")}`] : []),
  ];
  return [`#### ${plain(`${kind} ${name}, ${how}`)}`, bullets(lines)].filter(Boolean).join("\n\n");
}

const bullets = (lines: readonly string[]) => lines.map((line) => `- ${plain(line)}`).join("\n");
const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

/** A spec's text is no markup: what Markdown or HTML would read in it is written so that it stands as it is. */
function plain(text: string): string {
  return text.replace(/[\r\n]+/g, " ").replace(/[\\`*_{}[\]<>|#~&@]/g, (sign) => (sign === "@" ? "@\u200b" : `\\${sign}`));
}
