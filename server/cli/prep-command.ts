/** `mutchkin prep`: what to make and what to buy for an evening. */
import { resolve } from "node:path";
import type { Entry } from "../../grammar/tree.ts";
import { settingsOf } from "../house/settings.ts";
import { later } from "../house/use-by.ts";
import { prepCsv } from "../reports/prep-csv.ts";
import { prepMarkdown } from "../reports/prep-markdown.ts";
import { prepText } from "../reports/prep-text.ts";
import { countedOn } from "../reports/prep-words.ts";
import { prepSheet } from "../reports/preparation.ts";
import { exitCodes } from "./exit-codes.ts";
import { Unreadable } from "./files.ts";
import { openMenus } from "./menus-asked.ts";
import type { Terminal } from "./terminal.ts";
import { UsageError } from "./usage-error.ts";

export const prepFormats = ["text", "markdown", "csv", "json"] as const;

export interface PrepOptions {
  readonly format: (typeof prepFormats)[number];
  readonly covers: number;
  readonly drinksPerCover: number;
  /** A file. */
  readonly mix?: string;
  /** Such as `2026-11-28`; absent: today. */
  readonly date?: string;
}

/** Prints the sheet; answers the exit code. */
export function prepCommand(asked: readonly string[], options: PrepOptions, terminal: Terminal): number {
  const date = dayOf(options.date ?? terminal.today());
  const session = openMenus(asked, terminal);
  const { house } = session;
  const menu = onlyMenu(session.menus);
  const mix = options.mix === undefined ? undefined : readText(options.mix, terminal);
  const sheet = prepSheet(house, menu, {
    covers: options.covers,
    drinksPerCover: options.drinksPerCover,
    date,
    ...(mix !== undefined && { mix }),
  });
  if ("problem" in sheet) throw new UsageError(`Line ${sheet.line} of “${options.mix}” cannot be used: ${sheet.problem}.`, mixForm);
  if (sheet.mix && sheet.drinks.every(({ serves }) => serves === 0))
    throw new UsageError(`“${options.mix}” gives no drink of ${sheet.menu} a share.`, mixForm);
  const complete = session.finish();
  const measure = settingsOf(house, house.scopeOf(menu));
  // A table has no place for it, and nothing is dropped in silence.
  if (options.format === "csv") for (const text of countedOn(sheet)) terminal.complain(`${text}\n`);
  const printed = {
    text: () => prepText(sheet, measure, terminal.look),
    markdown: () => prepMarkdown(sheet, measure),
    csv: () => prepCsv(sheet),
    json: () => `${JSON.stringify(sheet, null, 2)}\n`,
  };
  terminal.print(printed[options.format]());
  return complete ? exitCodes.clean : exitCodes.failed;
}

const mixForm = "Write `Its Name: 3` on a line for each drink, or CSV with the name first and the share second.";

function dayOf(text: string): string {
  if (/^\d{4}-\d{2}-\d{2}$/.test(text) && later(text, 0) === text) return text;
  throw new UsageError(`“${text}” is no day.`, "Write it as year, month and day: `--date 2026-11-28`.");
}

function onlyMenu(menus: readonly Entry[]): Entry {
  const [menu, ...more] = menus;
  if (menu && more.length === 0) return menu;
  throw new UsageError(`There is more than one menu here: ${menus.map((one) => `“${one.name?.text}”`).join(", ")}.`, "Name one of them.");
}

function readText(path: string, { files, currentFolder }: Terminal): string {
  const at = resolve(currentFolder, path);
  if (files.kindOf(at) !== "file") throw new UsageError(`There is no file “${path}”.`, mixForm);
  try {
    return files.read(at);
  } catch (cause) {
    if (!(cause instanceof Unreadable)) throw cause;
    throw new UsageError(`“${path}” could not be read: ${cause.message}.`, "Put it right, or leave `--mix` out.");
  }
}
