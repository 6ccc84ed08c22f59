/** `mutchkin diff` for a terminal: drinks, then what moved them, then menus. */
import { showCount, showList } from "../house/show.ts";
import type { DiffDrink, DiffReport, DiffThing } from "./diff-schema.ts";
import { changeLines, effectLines, fieldLine, hurtLines } from "./diff-words.ts";
import { type Look, readable, wrap } from "./sheet.ts";

export function diffText(report: DiffReport, look: Look): string {
  const { drinks, things, menus, broken } = report;
  const told = drinks.filter(({ how }) => how !== "rewritten" && how !== "moved");
  const moved = drinks.filter(({ how, effects }) => how === "moved" && effects);
  const rewritten = drinks.filter(({ how }) => how === "rewritten");
  const parts = [
    look.strong(readable(`${report.before} → ${report.after}: ${summaryOf(report)}`)),
    ...broken.map(({ file, side, lines }) =>
      wrap(
        `${file}, ${side}: ${showCount(lines.length, "line")} that do not read (${showList(lines.map(String))}) could not be compared.`,
        look.width,
      ),
    ),
    ...told.map((drink) => drinkText(drink, look)),
    ...(moved.length > 0
      ? [
          section(
            "Moved, though nobody touched them",
            moved.map((drink) => drinkText(drink, look)),
            look,
          ),
        ]
      : []),
    ...(things.length > 0
      ? [
          section(
            "Behind them",
            things.map((thing) => thingText(thing, look)),
            look,
          ),
        ]
      : []),
    ...(menus.length > 0
      ? [
          section(
            "Menus",
            menus.map((menu) => menuText(menu, look)),
            look,
          ),
        ]
      : []),
    ...(rewritten.length > 0 ? [wrap(`Only blanks and comments differ: ${listOf(rewritten.map(({ name }) => name))}.`, look.width)] : []),
  ];
  return `${parts.join("\n\n")}\n`;
}

/** `2 added, 1 renamed, 3 changed, 4 moved`. */
export function summaryOf({ summary, menus, things }: DiffReport): string {
  const drinks = Object.entries(summary)
    .filter(([, count]) => count > 0)
    .map(([how, count]) => `${count} ${how === "rewritten" ? "only rewritten" : how}`);
  const others = [
    ...(things.length > 0 ? [showCount(things.length, "other change")] : []),
    ...(menus.length > 0 ? [showCount(menus.length, "menu")] : []),
  ];
  if (drinks.length === 0 && others.length === 0) return "no drink differs";
  return [drinks.length > 0 ? `drinks: ${drinks.join(", ")}` : "no drink differs", ...others].join("; ");
}

/** `Lantern Sour, renamed from Lamp Sour`, on its menus. */
export function titleOf({ name, oldName, how, menus }: DiffDrink): string {
  const what = how === "renamed" ? `${name}, renamed from ${oldName}` : how === "moved" ? name : `${name}, ${how}`;
  return menus.length > 0 ? `${what} (on ${listOf(menus)})` : what;
}

const listOf = (names: readonly string[]) => showList(names, Number.POSITIVE_INFINITY);

function drinkText(drink: DiffDrink, look: Look): string {
  const { effects, because, how } = drink;
  const hurt = effects ? hurtLines(effects) : [];
  const rest = effects ? effectLines(effects).slice(hurt.length) : [];
  const lines = [
    ...hurt.map((line) => bullet(line, look, "!")),
    ...(how === "moved" ? [] : changeLines(drink)).map((line) => bullet(line, look)),
    ...rest.map((line) => bullet(line, look)),
    ...(because.length > 0 ? [look.faint(bullet(`through ${listOf(because)}`, look))] : []),
  ];
  const { severity } = look;
  const title = wrap(titleOf(drink), look.width);
  return [hurt.length > 0 ? severity("warning", title) : look.strong(title), ...lines].join("\n");
}

function thingText({ kind, name, how, fields, moved, menus }: DiffThing, look: Look): string {
  const ripple = moved.map(({ drink, what }) => bullet(`${drink}: ${what}`, look));
  const onMenus = menus.length > 0 ? [look.faint(bullet(`on ${listOf(menus)}`, look))] : [];
  return [wrap(`${kind} ${name}, ${how}`, look.width), ...fields.map((one) => bullet(fieldLine(one), look)), ...ripple, ...onMenus].join(
    "\n",
  );
}

function menuText({ name, how, added, removed, prices, rangeBefore, rangeAfter }: DiffReport["menus"][number], look: Look): string {
  return [
    wrap(`${name}, ${how}`, look.width),
    ...menuLines({ added, removed, prices, rangeBefore, rangeAfter }).map((line) => bullet(line, look)),
  ].join("\n");
}

export function menuLines({
  added,
  removed,
  prices,
  rangeBefore,
  rangeAfter,
}: Omit<DiffReport["menus"][number], "name" | "how">): string[] {
  const price = (value: number | null) => (value === null ? "no price" : value.toFixed(2));
  const range = (of: readonly [number, number] | null) => (of ? `${of[0].toFixed(2)} to ${of[1].toFixed(2)}` : "no prices");
  const isOther = JSON.stringify(rangeBefore) !== JSON.stringify(rangeAfter);
  return [
    ...(added.length > 0 ? [`on it now: ${listOf(added)}`] : []),
    ...(removed.length > 0 ? [`no longer on it: ${listOf(removed)}`] : []),
    ...prices.map(({ drink, before, after }) => `${drink} ${price(before)} → ${price(after)}`),
    ...(isOther ? [`prices ${range(rangeBefore)} → ${range(rangeAfter)}`] : []),
  ];
}

function section(title: string, parts: readonly string[], look: Look): string {
  return [look.faint(title), ...parts].join("\n\n");
}

function bullet(text: string, look: Look, mark = "·"): string {
  return wrap(text, look.width, "    ", `  ${mark} `);
}
