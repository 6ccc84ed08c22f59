/** What `mutchkin diff` tells, line by line: the same in the terminal, in Markdown and on a page. */
import { showCount, showList, showMoney } from "../house/show.ts";
import type { DiffDrink, DiffReport, DiffThing } from "./diff-schema.ts";
import { arrivalHurtLines, arrivalLines, changeLines, dietLines, effectLines, fieldLine, hurtLines, outLines } from "./diff-words.ts";

type DiffMenu = DiffReport["menus"][number];

/** The drinks that somebody changed, those that moved, and those in which only blanks and comments differ. */
export function groupsOf({ drinks }: DiffReport) {
  const of = (...hows: DiffDrink["how"][]) => drinks.filter(({ how }) => hows.includes(how));
  return { told: of("added", "removed", "renamed", "changed"), moved: of("moved"), rewritten: of("rewritten") };
}

/** `drinks: 2 added, 1 renamed, 3 changed, 4 moved; 1 other change; 1 menu`. */
export function summaryOf({ summary, menus, things }: DiffReport): string {
  const drinks = Object.entries(summary)
    .filter(([, count]) => count > 0)
    .map(([how, count]) => `${count} ${how === "rewritten" ? "only rewritten" : how}`);
  const others = [
    ...(things.length > 0 ? [showCount(things.length, "other change")] : []),
    ...(menus.length > 0 ? [showCount(menus.length, "menu")] : []),
  ];
  return [drinks.length > 0 ? `drinks: ${drinks.join(", ")}` : "no drink differs", ...others].join("; ");
}

/** `Lantern Sour, renamed from Lamp Sour (on Winter card)`. */
export function titleOf({ name, oldName, how, menus }: DiffDrink): string {
  const what = how === "renamed" ? `${name}, renamed from ${oldName}` : how === "moved" ? name : `${name}, ${how}`;
  return menus.length > 0 ? `${what} (on ${allOf(menus)})` : what;
}

/** `renamed from Lamp Sour`, `changed`. */
export function howOf({ how, oldName }: DiffDrink): string {
  return how === "renamed" ? `renamed from ${oldName}` : how;
}

/** What of a drink is to be looked at: whom it could hurt and whether it can be poured in full, the rest by a word each. */
export function concernsOf(drink: DiffDrink): { readonly grave: readonly string[]; readonly others: readonly string[] } {
  const { effects, how } = drink;
  const grave = [...drinkLines(drink).hurt, ...(effects ? outLines(effects) : [])];
  const words: [boolean, string][] = [
    [Boolean(effects?.cost), "money"],
    [(effects?.figures.length ?? 0) > 0, "taste"],
    [effects ? dietLines(effects).length > 0 : false, "diets"],
  ];
  const others = words.flatMap(([holds, word]) => (holds ? [word] : []));
  return { grave, others: grave.length + others.length === 0 && how === "changed" ? ["how it is written"] : others };
}

/** Whom it could hurt, what was changed and what that does, and through what. `rest` is what of it is no figure, `changed` what was written otherwise. */
export function drinkLines(drink: DiffDrink) {
  const { effects, arrival, because, how, pours } = drink;
  // An untouched riff pours what its parent was given, and what it could not take out any more.
  const changes = how === "moved" ? (pours ? [pours] : []) : changeLines(drink);
  return {
    hurt: [...(effects ? hurtLines(effects) : []), ...(arrival ? arrivalHurtLines(arrival) : [])],
    said: [...changes, ...(effects ? effectLines(effects) : []), ...(arrival ? arrivalLines(arrival) : [])],
    changed: [...changes, ...(effects ? outLines(effects) : [])],
    rest: [...(effects ? dietLines(effects) : []), ...(arrival ? arrivalLines(arrival) : [])],
    through: because.length > 0 ? [`through ${allOf(because)}`] : [],
  };
}

/**
 * `now contains nuts: Lantern Sour and Fog Signal`: what a guest could be hurt by, before all else, whether somebody
 * changed the drink or it moved. Empty where the first drink of the telling says all of it.
 */
export function hurtsOf(report: DiffReport): string[] {
  const { told, moved } = groupsOf(report);
  const drinks = [...told, ...moved].map((drink) => ({ drink, hurt: drinkLines(drink).hurt }));
  const hurting = drinks.filter(({ hurt }) => hurt.length > 0);
  if (hurting.length === 1 && hurting[0] === drinks[0]) return [];
  const names = new Map<string, string[]>();
  for (const { drink, hurt } of hurting) for (const line of hurt) names.set(line, [...(names.get(line) ?? []), drink.name]);
  return [...names].map(([line, those]) => `${line}: ${allOf(those)}`);
}

/** What became of it, which drinks that moved, and the menus that those are on. */
export function thingLines({ fields, pours, moved, also, menus }: DiffThing): { readonly said: string[]; readonly through: string[] } {
  return {
    said: [
      ...(pours ? [pours] : []),
      ...fields.map(fieldLine),
      ...moved.map(({ drink, what, with: others }) => `${drink}${others.length > 0 ? `, with ${allOf(others)}` : ""}: ${what}`),
      ...(also.length > 0 ? [`also in ${allOf(also)}, changed ${also.length === 1 ? "itself" : "themselves"}`] : []),
    ],
    through: menus.length > 0 ? [`on ${allOf(menus)}`] : [],
  };
}

export function menuLines({ currency, added, removed, renamed, prices, rangeBefore, rangeAfter }: DiffMenu): string[] {
  const money = (value: number) => showMoney(value, currency ?? undefined);
  const price = (value: number | null) => (value === null ? "no price" : money(value));
  const range = (of: DiffMenu["rangeBefore"]) => (of ? `${money(of[0])} to ${money(of[1])}` : "no prices");
  const isOther = JSON.stringify(rangeBefore) !== JSON.stringify(rangeAfter);
  return [
    ...(added.length > 0 ? [`on it now: ${allOf(added)}`] : []),
    ...(removed.length > 0 ? [`no longer on it: ${allOf(removed)}`] : []),
    ...renamed.map(({ before, after }) => `${before} is called ${after} now`),
    ...prices.map(({ drink, before, after }) => `${drink} ${price(before)} → ${price(after)}`),
    ...(isOther ? [`prices ${range(rangeBefore)} → ${range(rangeAfter)}`] : []),
  ];
}

export function brokenLine({ file, side, lines }: DiffReport["broken"][number]): string {
  const which = `${lines.length === 1 ? "line" : "lines"} ${showList(lines.map(String))}`;
  return `${file}, ${side}: ${which} could not be read, and so not compared; mutchkin check says what to do`;
}

export const rewrittenLine = (rewritten: readonly DiffDrink[]) =>
  `Only blanks and comments differ: ${allOf(rewritten.map(({ name }) => name))}.`;

/** Nothing is left out of a list that somebody relies on. */
export const allOf = (names: readonly string[]) => showList(names, Number.POSITIVE_INFINITY);

/** What stands first in a telling that would not fit. */
export const shortened =
  "Too long for a comment: of what moved and could hurt nobody only the names are told here. mutchkin diff tells all.";

/** The headings, in the order of the telling. */
export const headings = {
  page: "What became of the drinks",
  changed: "Changed",
  moved: "Moved, though nobody touched them",
  things: "Behind them",
  menus: "Menus",
};
