/** What became of a drink, in words: figure by figure and field by field. */
import { showFigure, showList, showMoney, showNumber, showShare, showValue } from "../house/show.ts";
import type { DiffArrival, DiffDrink, DiffEffects } from "./diff-schema.ts";

type Gained = DiffEffects["allergens"];

/** What a guest could be hurt by; never left out. */
export function hurtLines({ allergens, notStated }: DiffEffects): string[] {
  return [
    ...said(allergens, "now contains", "no longer contains"),
    ...said(notStated, "allergens not stated for", "allergens no longer open for"),
  ];
}

/** What else it comes to otherwise, in order: money, taste, the rest. `briefly`: without the ±, which only the digits tell of then. */
export function effectLines(effects: DiffEffects, briefly = false): string[] {
  const { cost, figures } = effects;
  return [
    ...outLines(effects),
    ...(cost ? [costLine(cost)] : []),
    ...figures.map((figure) => figureLine(figure, briefly)),
    ...dietLines(effects),
  ];
}

export function outLines({ out }: DiffEffects): string[] {
  return said(out, "cannot be poured:", "can be poured again; before,");
}

export function dietLines({ diets }: DiffEffects): string[] {
  return said(diets, "now suits", "no longer suits");
}

/** What a guest could be hurt by in a drink that was not there before. */
export function arrivalHurtLines({ contains, notStated }: DiffArrival): string[] {
  const all = (names: readonly string[]) => showList(names, Number.POSITIVE_INFINITY);
  return [
    ...(contains.length > 0 ? [`contains ${all(contains)}`] : []),
    ...(notStated.length > 0 ? [`allergens not stated for ${all(notStated)}`] : []),
  ];
}

/** What else it brings, in order: money, taste. */
export function arrivalLines({ pours, strengthPct, cost }: DiffArrival): string[] {
  const share = cost?.share === null || !cost ? [] : [`${showShare(cost.share)} of the price`];
  return [
    ...(pours.length > 0 ? [pours.join(", ")] : []),
    ...(cost
      ? [
          [`costs ${cost.perServe === null ? "nobody knows what" : showMoney(cost.perServe, cost.currency ?? undefined)}`, ...share].join(
            ", ",
          ),
        ]
      : []),
    `strength ${showFigure(strengthPct, "% vol")}`,
  ];
}

/** What was written otherwise. */
export function changeLines({ pours, reordered, fields, preps }: DiffDrink): string[] {
  return [
    ...(pours ? [pours] : []),
    ...(reordered ? ["pours in another order"] : []),
    ...fields.map(fieldLine),
    ...(preps.gained.length > 0 ? [`needs ${showList(preps.gained)} made now`] : []),
    ...(preps.lost.length > 0 ? [`needs no ${showList(preps.lost)} any more`] : []),
  ];
}

export function fieldLine({ field, before, after }: DiffDrink["fields"][number]): string {
  if (before === null && after === null) return `another ${field}`;
  return `${field}: ${before ?? "nothing"} → ${after ?? "nothing"}`;
}

/** One figure beside itself. */
export interface Parts {
  readonly label: string;
  readonly before: string;
  readonly after: string;
  /** Whether it has left or entered its window; empty where it has not. */
  readonly note: string;
}

export function figureParts({ label, unit, before, after, window }: DiffEffects["figures"][number], briefly = false): Parts {
  const percent = (of: typeof before) => ({ value: of.value === null ? null : 100 * of.value, plusMinus: 100 * (of.plusMinus ?? 0) });
  const plain = (of: typeof before) => (unit === "%" ? showValue(percent(of), 0) : showValue(of));
  const full = unit === "%" ? showShare(after) : showFigure(after, unit);
  const shown = briefly && after.value !== null ? `${plain(after)} ${unit}`.trimEnd() : full;
  const note = window
    ? `${window.crossed === "left" ? "out of" : "back in"} its ${showNumber(window.low)} to ${showNumber(window.high)}`
    : "";
  return { label, before: plain(before), after: shown, note };
}

/** What of a cost is another: its sum, its share of the price, or both. */
export function costParts({ currency, before, after, shareBefore, shareAfter }: NonNullable<DiffEffects["cost"]>): Parts[] {
  const money = (value: number | null) => (value === null ? "unknown" : showMoney(value, currency ?? undefined));
  const share = (value: number | null) => (value === null ? "" : showShare(value));
  const parts = [
    { label: "cost", before: money(before), after: money(after), note: "" },
    { label: "share of the price", before: share(shareBefore), after: share(shareAfter), note: "" },
  ];
  return parts.filter((one) => one.before && one.after && one.before !== one.after);
}

function figureLine(figure: DiffEffects["figures"][number], briefly: boolean): string {
  const { label, before, after, note } = figureParts(figure, briefly);
  return [`${label} ${before} → ${after}`, note].filter(Boolean).join(", ");
}

function costLine(cost: NonNullable<DiffEffects["cost"]>): string {
  const parts = costParts(cost).map(({ label, before, after }) => `${before} → ${after}${label === "cost" ? "" : " of the price"}`);
  return `cost ${parts.join(", ")}`;
}

function said({ gained, lost }: Gained, more: string, less: string): string[] {
  return [
    ...(gained.length > 0 ? [`${more} ${showList(gained, Number.POSITIVE_INFINITY)}`] : []),
    ...(lost.length > 0 ? [`${less} ${showList(lost, Number.POSITIVE_INFINITY)}`] : []),
  ];
}
