/** What to make and buy for an evening, as a sheet for the kitchen and the cellar. */
import { moneyFormat } from "../house/currency.ts";
import type { Measure } from "../house/show.ts";
import { showAmount } from "../house/show-amount.ts";
import type { PrepSheet } from "./prep-schema.ts";
import {
  begunInTime,
  countedOn,
  leftOf,
  madeOf,
  packsOf,
  tightText,
  titleOf,
  toMake,
  totalText,
  untoldTexts,
  useBy,
  worth,
} from "./prep-words.ts";
import { type Look, labelled, noteIndent, type Row, readable, table, wrap } from "./sheet.ts";

export function prepText(sheet: PrepSheet, measure: Measure, look: Look): string {
  const untold = untoldTexts(sheet);
  const parts = [
    look.strong(wrap(titleOf(sheet), look.width)),
    countedOn(sheet)
      .map((text) => wrap(text, look.width))
      .join("\n"),
    sheet.preps.length > 0 && makeTable(sheet, measure, look),
    sheet.purchases.length > 0 && buyTable(sheet, measure, look),
    sheet.purchases.length > 0 &&
      [labelled("Cost", totalText(sheet), look), tightText(sheet) && labelled("Tight", tightText(sheet), look)].filter(Boolean).join("\n"),
    untold.length > 0 && [look.strong("Not told"), ...untold.map((text) => wrap(text, look.width, noteIndent))].join("\n"),
    look.faint(wrap(worth, look.width)),
  ];
  return `${parts.filter(Boolean).join("\n\n")}\n`;
}

function makeTable({ preps }: PrepSheet, measure: Measure, look: Look): string {
  const rows = preps.flatMap((prep): Row[] => [
    {
      name: readable(prep.name),
      numbers: [showAmount(prep.needed, prep.unit, measure), toMake(prep, measure), prep.useBy ?? "not stated"],
    },
    ...[madeOf(prep, measure), begunInTime(prep), prep.useBy === null && prep.shortest ? `use by ${useBy(prep)}` : ""]
      .filter(Boolean)
      .map((note) => ({ note })),
  ]);
  return table(["To make, in this order"], [["Needed"], ["Make"], ["Use by"]], rows, look);
}

function buyTable({ purchases, currency }: PrepSheet, measure: Measure, look: Look): string {
  const places = moneyFormat(currency ?? undefined).resolvedOptions().maximumFractionDigits ?? 2;
  const rows = purchases.map((purchase): Row => {
    const { name, unit, needed, cost, because } = purchase;
    const least = because.length > 0 && purchase.pack ? "≥ " : "";
    return {
      name: readable(name),
      numbers: [`${least}${showAmount(needed, unit, measure)}`, packsOf(purchase), leftOf(purchase, measure), cost?.toFixed(places) ?? "?"],
    };
  });
  return table(["To buy"], [["Needed"], ["Packs"], ["Left"], [currency ? `Cost, ${currency}` : "Cost"]], rows, look);
}
