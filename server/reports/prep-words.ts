/** The sentences of a preparation sheet that its text and its Markdown share. */

import { type Measure, showCount, showList, showMoney, showNumber } from "../house/show.ts";
import { showAmount } from "../house/show-amount.ts";
import type { PrepSheet } from "./prep-schema.ts";

type MadeReport = PrepSheet["preps"][number];
type PurchaseReport = PrepSheet["purchases"][number];

/** `Winter card: 80 covers at 1.5 drinks each, 120 drinks, made on 2026-11-28`. */
export function titleOf({ menu, covers, drinksPerCover, serves, date }: PrepSheet): string {
  const each = drinksPerCover === 1 ? "one drink each" : `${showNumber(drinksPerCover)} drinks each`;
  return `${menu}: ${showCount(covers, "cover")} at ${each}, so ${showNumber(serves, 1)}; made on ${date}`;
}

/** What was counted on, and what was not. */
export function countedOn({ mix, drinks, unknown, serves }: PrepSheet): string[] {
  const counted = drinks.filter((drink) => drink.serves > 0);
  const each = mix ? "By the mix" : "Each drink is as likely as the others";
  const strange =
    mix?.unlisted.map(({ name, line, near }) => `“${name}” (line ${line}${near.length > 0 ? `; “${near.join("” or “")}”?` : ""})`) ?? [];
  const off = counted.filter((drink) => drink.off).map(({ name }) => name);
  return [
    counted.length > 0 &&
      `${each}, ${showCount(counted.length, "drink")} share ${showNumber(serves, 1)} serves${mix ? "" : `, ${showNumber(serves / counted.length, 1)} each`}.`,
    strange.length > 0 && `Not on the menu, so nothing is counted for it: ${strange.join(", ")}.`,
    mix && mix.without.length > 0 && `Not in the mix, so none is counted on: ${mix.without.join("; ")}.`,
    unknown.length > 0 && `On the menu, but no drink of that name is known: ${unknown.join("; ")}.`,
    off.length > 0 && `Off tonight, and counted all the same: ${off.join("; ")}.`,
  ].filter((text) => text !== false && text !== null && text !== undefined);
}

/** `2 batches: 640 ml`, `560 g`. */
export function toMake({ batches, makes, unit }: MadeReport, measure: Measure): string {
  if (makes === null) return "?";
  return batches === null
    ? showAmount(makes, unit, measure)
    : `${showCount(batches, "batch", "batches")}: ${showAmount(makes, unit, measure)}`;
}

/** `white sugar 280 g, water 280 g`. */
export function madeOf({ parts }: MadeReport, measure: Measure): string {
  return parts
    .map(({ name, amount, unit }) => (unit ? `${showAmount(amount!, unit, measure)} ${name}` : `${name}, of unknown amount`))
    .join(", ");
}

/** `to be begun in time: infuse 24 hours`; empty where nothing takes long. */
export function begunInTime({ long }: MadeReport): string {
  return long.length > 0 ? `to be begun in time: ${long.join("; ")}` : "";
}

/** `2026-12-12`, or what is known instead. */
export function useBy({ useBy: date, shortest }: MadeReport): string {
  if (date) return date;
  return shortest ? `not stated; ${shortest.name} in it keeps ${shortest.keeps}` : "not stated";
}

/** `3 × 700 ml`, `14`; a case in brackets. */
export function packsOf({ packs, pack }: PurchaseReport): string {
  if (packs === null || !pack) return "?";
  if (/^1$/.test(pack.text)) return String(packs);
  return `${packs} × ${/\sx\s/.test(pack.text) ? `(${pack.text.replace(" x ", " × ")})` : pack.text}`;
}

/** What is left of the packs, as finely as what is taken from them is known: an average to three digits. */
export function leftOf({ leftOver, needed, unit }: PurchaseReport, measure: Measure): string {
  if (leftOver === null) return "?";
  const step = 10 ** (Math.floor(Math.log10(leftOver + needed)) - 2);
  return showAmount(needed > 0 ? Math.round(leftOver / step) * step : leftOver, unit, measure);
}

/** Less than this share of what is needed is no reserve: practice, no source. */
const tight = 0.05;

/** What whole packs just about cover, though one more is a good deal more; empty where nothing is. */
export function tightText({ purchases }: PrepSheet): string {
  const close = purchases.filter(
    ({ leftOver, needed, pack }) => pack && leftOver !== null && leftOver < tight * needed && pack.size > tight * needed,
  );
  const names = showList(
    close.map(({ name }) => name),
    Number.POSITIVE_INFINITY,
  );
  return names && `${names}: less than ${showNumber(100 * tight)} % left over, and what is poured is an average`;
}

export function totalText({ total, currency }: PrepSheet): string {
  const money = (value: number) => showMoney(value, currency ?? undefined);
  const least = total.complete ? "" : "at least ";
  return `${least}${money(total.cost)} for whole packs, of which ${least}${money(total.used)} is used that evening`;
}

/** Grouped by the reason, since one is often that of many: `lime wedge in A; B: why`. */
export function untoldTexts({ untold, purchases }: PrepSheet): string[] {
  const unpriced = purchases.filter(({ pack }) => !pack).flatMap(({ because }) => because.map((reason) => ({ reason, what: "" })));
  const reasons = new Map<string, string[]>();
  for (const { name, of, because } of untold) reasons.set(because, [...(reasons.get(because) ?? []), `${name} in ${of}`]);
  const known = [...reasons].map(([because, where]) => `${showList([...new Set(where)], 6)}: ${because}`);
  return [...new Set([...known, ...unpriced.map(({ reason }) => reason).filter((reason) => !reasons.has(reason))])];
}

export const worth =
  "As if nothing were there: take off what stands on the shelf. Amounts are what is poured on average, with waste and garnish; packs and batches are rounded up, and nothing else is added. Options and `or` lines are not counted, nor is ice that has no price.";
