/** What to make and buy for an evening, as data. */
import type { Entry } from "../../grammar/tree.ts";
import type { Call } from "../house/calls.ts";
import { namesOf } from "../house/declarations.ts";
import type { House } from "../house/house.ts";
import { listedOn } from "../house/listed.ts";
import { type Mix, readMix, type UnreadMix } from "../house/mix.ts";
import { isOff, missingIn } from "../house/out.ts";
import { drinksOn, type Made, prepare } from "../house/preparation.ts";
import type { Purchase } from "../house/purchase.ts";
import { settingsOf } from "../house/settings.ts";
import { rounded } from "./assess.ts";
import type { PrepSheet } from "./prep-schema.ts";

export interface Asked {
  readonly covers: number;
  readonly drinksPerCover: number;
  /** The day on which it is made, such as `2026-11-28`. */
  readonly date: string;
  /** The text of a mix; absent where each drink is as likely as the others. */
  readonly mix?: string;
}

/** The sheet, or what in the mix cannot be counted with. */
export function prepSheet(house: House, menu: Entry, { covers, drinksPerCover, date, mix: text }: Asked): PrepSheet | UnreadMix {
  const listed = listedOn(house, menu);
  const known = drinksOn(house, menu).map((drink) => ({
    drink,
    names: [...namesOf(drink), ...listed.filter((one) => one.drink === drink).map(({ name }) => name)],
  }));
  const mix = text === undefined ? undefined : readMix(text, known);
  if (mix && "problem" in mix) return mix;
  const serves = covers * drinksPerCover;
  const { drinks, preps, purchases, untold } = prepare(house, menu, { serves, date, ...(mix && { shares: mix.shares }) });
  const sum = (of: "cost" | "used") => rounded(purchases.reduce((all, purchase) => all + (purchase[of] ?? 0), 0));
  return {
    menu: nameOf(menu),
    date,
    covers,
    drinksPerCover,
    serves: rounded(serves),
    currency: settingsOf(house, house.scopeOf(menu)).currency ?? null,
    mix: mix ? mixReport(mix, known) : null,
    drinks: drinks.map(({ drink, serves: count }) => ({
      name: nameOf(drink),
      serves: rounded(count),
      off: isOff(missingIn(house, drink)),
    })),
    unknown: listed.filter(({ drink }) => !drink).map(({ name }) => name),
    preps: preps.map(madeReport),
    purchases: purchases.map(purchaseReport),
    untold: [...untold],
    total: {
      cost: sum("cost"),
      used: sum("used"),
      complete: untold.length === 0 && purchases.every(({ cost }) => cost !== null),
    },
  };
}

function mixReport({ shares, strange }: Mix, known: readonly { readonly drink: Entry }[]): NonNullable<PrepSheet["mix"]> {
  return {
    unlisted: strange.map(({ name, line, near }) => ({ name, line, near: [...near] })),
    without: known.filter(({ drink }) => !shares.get(drink)).map(({ drink }) => nameOf(drink)),
  };
}

function madeReport({ entry, unit, needed, batches, makes, parts, useBy, long }: Made): PrepSheet["preps"][number] {
  const { date = null, keeps = null, shortest } = useBy;
  return {
    name: nameOf(entry),
    kind: entry.kind === "drink" ? "drink" : "prep",
    unit,
    needed: rounded(needed),
    batches: batches ?? null,
    makes: makes === null ? null : rounded(makes),
    leftOver: makes === null ? null : rounded(Math.max(0, makes - needed)),
    parts: parts.map(({ name, size }) => ({ name, ...amountIn(size) })),
    long: [...long],
    keeps,
    useBy: date,
    shortest: shortest ? { name: shortest.name, keeps: shortest.text } : null,
  };
}

function amountIn(size: Call["size"]): Omit<PrepSheet["preps"][number]["parts"][number], "name"> {
  if ("because" in size) return { amount: null, unit: null };
  if ("ml" in size) return { amount: rounded(size.ml), unit: "ml" };
  return "g" in size ? { amount: rounded(size.g), unit: "g" } : { amount: rounded(size.pieces), unit: "piece" };
}

function purchaseReport(purchase: Purchase): PrepSheet["purchases"][number] {
  const { entry, unit, needed, by, because, pack, noPack, packs, leftOver, cost, used } = purchase;
  const money = (value: number | null) => (value === null ? null : rounded(value));
  return {
    name: nameOf(entry),
    unit,
    needed: rounded(needed),
    by: [...by],
    pack: pack ? { text: pack.text, size: pack.size, price: pack.price } : null,
    packs,
    leftOver: money(leftOver),
    cost: money(cost),
    used: money(used),
    because: [...because, ...(noPack === undefined ? [] : [noPack])],
  };
}

function nameOf({ name }: Entry): string {
  return name?.text ?? "";
}
