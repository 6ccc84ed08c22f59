/** The same sheet in Markdown, to be put beside the rota or printed with it. */
import { asText as inMarkdown, table } from "../features/markdown.ts";
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
import { readable } from "./sheet.ts";

export function prepMarkdown(sheet: PrepSheet, measure: Measure): string {
  const { preps, purchases, currency } = sheet;
  const places = moneyFormat(currency ?? undefined).resolvedOptions().maximumFractionDigits ?? 2;
  const untold = untoldTexts(sheet);
  const parts = [
    `# ${asText(titleOf(sheet))}`,
    ...countedOn(sheet).map(asText),
    preps.length > 0 && "## To make, in this order",
    preps.length > 0 &&
      table(
        ["Prep", "Needed", "Make", "Of", "Use by"],
        preps.map((prep) =>
          [
            prep.name,
            showAmount(prep.needed, prep.unit, measure),
            toMake(prep, measure),
            [madeOf(prep, measure), begunInTime(prep)].filter(Boolean).join("; "),
            useBy(prep),
          ].map(asText),
        ),
      ),
    purchases.length > 0 && "## To buy",
    purchases.length > 0 &&
      table(
        ["Stock", "Needed", "Packs", "Left", currency ? `Cost, ${currency}` : "Cost"],
        purchases.map((purchase) => {
          const needed = showAmount(purchase.needed, purchase.unit, measure);
          const cells = [purchase.name, needed, packsOf(purchase), leftOf(purchase, measure)];
          return [...cells, purchase.cost?.toFixed(places) ?? "?"].map(asText);
        }),
      ),
    purchases.length > 0 && `Cost: ${asText(totalText(sheet))}.`,
    tightText(sheet) && `Tight: ${asText(tightText(sheet))}.`,
    untold.length > 0 && `## Not told\n\n${untold.map((text) => `- ${asText(text)}`).join("\n")}`,
    asText(worth),
  ];
  return `${parts.filter(Boolean).join("\n\n")}\n`;
}

function asText(text: string): string {
  return inMarkdown(readable(text));
}
