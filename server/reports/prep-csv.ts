/** The same sheet as CSV: one table, what is made before what is bought, then what cannot be told. */
import { csvText } from "./csv.ts";
import type { PrepSheet } from "./prep-schema.ts";

const head = [
  "what",
  "name",
  "needed",
  "unit",
  "batches or packs",
  "of",
  "comes to",
  "left over",
  "cost",
  "currency",
  "use by",
  "why unknown",
];

export function prepCsv({ preps, purchases, untold, currency }: PrepSheet): string {
  return csvText(head, [
    ...preps.map(({ name, needed, unit, batches, makes, leftOver, useBy }) => {
      return ["make", name, needed, unit, batches, null, makes, leftOver, null, null, useBy, null];
    }),
    ...purchases.map(({ name, needed, unit, packs, pack, leftOver, cost, because }) => {
      const whole = packs !== null && pack ? packs * pack.size : null;
      return [
        "buy",
        name,
        needed,
        unit,
        packs,
        pack?.text ?? null,
        whole,
        leftOver,
        cost,
        cost === null ? null : currency,
        null,
        because.join("; "),
      ];
    }),
    ...untold.map(({ name, of, because }) => ["not told", name, null, null, null, of, null, null, null, null, null, because]),
  ]);
}
