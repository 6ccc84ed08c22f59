/** `mutchkin diff` for a terminal: drinks, then what moved them, then menus. */
import {
  brokenLine,
  drinkLines,
  groupsOf,
  headings,
  hurtsOf,
  menuLines,
  rewrittenLine,
  summaryOf,
  thingLines,
  titleOf,
} from "./diff-lines.ts";
import type { DiffDrink, DiffReport } from "./diff-schema.ts";
import { type Look, readable, wrap } from "./sheet.ts";

export function diffText(report: DiffReport, look: Look): string {
  const { told, moved, rewritten } = groupsOf(report);
  const drinksOf = (drinks: readonly DiffDrink[]) => drinks.map((drink) => drinkText(drink, look));
  const things = report.things.map((thing) => {
    const { said, through } = thingLines(thing);
    return listed(wrap(`${thing.kind} ${thing.name}, ${thing.how}`, look.width), said, through, look);
  });
  const menus = report.menus.map((menu) => listed(wrap(`${menu.name}, ${menu.how}`, look.width), menuLines(menu), [], look));
  const parts = [
    look.strong(readable(`${report.before} → ${report.after}: ${summaryOf(report)}`)),
    ...hurtPart(hurtsOf(report), look),
    ...report.broken.map((one) => wrap(`${brokenLine(one)}.`, look.width)),
    ...drinksOf(told),
    ...section(headings.moved, drinksOf(moved), look),
    ...section(headings.things, things, look),
    ...section(headings.menus, menus, look),
    ...(rewritten.length > 0 ? [wrap(rewrittenLine(rewritten), look.width)] : []),
  ];
  return `${parts.join("\n\n")}\n`;
}

function hurtPart(hurts: readonly string[], look: Look): string[] {
  return hurts.length > 0 ? [hurts.map((line) => look.severity("warning", bullet(line, look, "!"))).join("\n")] : [];
}

function drinkText(drink: DiffDrink, look: Look): string {
  const { hurt, said, through } = drinkLines(drink);
  const title = wrap(titleOf(drink), look.width);
  const head = [hurt.length > 0 ? look.severity("warning", title) : look.strong(title), ...hurt.map((line) => bullet(line, look, "!"))];
  return listed(head.join("\n"), said, through, look);
}

function listed(head: string, said: readonly string[], through: readonly string[], look: Look): string {
  return [head, ...said.map((line) => bullet(line, look)), ...through.map((line) => look.faint(bullet(line, look)))].join("\n");
}

function section(title: string, parts: readonly string[], look: Look): string[] {
  return parts.length > 0 ? [look.faint(title), ...parts] : [];
}

function bullet(text: string, look: Look, mark = "·"): string {
  return wrap(text, look.width, "    ", `  ${mark} `);
}
