/** A menu's costs as a sheet: a row for each drink, the range of their shares, and what other prices would change. */
import { moneyFormat } from "../house/currency.ts";
import { showCount, showFigure, showList, showMoney, showValue } from "../house/show.ts";
import type { FigureReport } from "./assess-schema.ts";
import type { CostedReport, CostReport, MenuCost } from "./cost-schema.ts";
import { type Column, type Look, labelled, type Row, readable, table, wrap } from "./sheet.ts";

export function costText({ menus }: CostReport, look: Look): string {
  const parts = menus.flatMap((menu) => menuParts(menu, look));
  if (menus.some(({ drinks }) => drinks.length > 0)) parts.push(look.faint(wrap(reading, look.width)));
  return `${parts.join("\n\n")}\n`;
}

const reading =
  "Cost is of what the price buys, with waste, garnish and paid ice; share is of the price without tax. ± is one standard uncertainty, of how much is poured: what is paid for a bottle is certain. Nothing is added up, since how often each drink is sold stands nowhere.";

function menuParts(menu: MenuCost, look: Look): string[] {
  const { drinks, supposed } = menu;
  const title = look.strong(wrap(`${menu.menu}: ${showCount(drinks.length, "drink")}`, look.width));
  if (drinks.length === 0) return [title];
  const parts = [title, costTable(menu, look), summaryText(menu, look)];
  if (supposed.length === 0) return parts;
  const changes = supposed.map(({ stock, before, after }) => `${stock} at ${after}${before === null ? "" : `, not ${before}`}`);
  const moved = drinks.filter((drink) => drink.supposed);
  const heading = `With ${changes.join("; ")}: ${moved.length > 0 ? `${showCount(moved.length, "drink")} of ${drinks.length} cost something else` : "no drink costs anything else"}`;
  return [
    ...parts,
    look.strong(wrap(heading, look.width)),
    ...(moved.length > 0 ? [movedTable(menu, moved, look), crossings(menu, moved, look)] : []),
  ];
}

function costTable(menu: MenuCost, look: Look): string {
  const money = menu.currency ?? undefined;
  const unit = menu.currency ?? "";
  const isWide = look.width >= besideFrom;
  const columns: Column[] = [
    ["Price", unit],
    ...(menu.taxRate === null ? [] : [["Tax", unit] as const]),
    ["Cost", unit],
    ...(isWide ? [["", "±"] as const] : []),
    ["Share", "%"],
    ["Margin", unit],
  ];
  const rows = menu.drinks.flatMap((drink, index): Row[] => [
    ...headingOf(menu.drinks, index),
    {
      name: readable(drink.name),
      ...(drink.serves > 1 && { under: `for ${drink.serves}` }),
      numbers: [
        coins(drink.price, money),
        ...(menu.taxRate === null ? [] : [coins(drink.tax, money)]),
        ...spread(drink.cost, money, look, isWide),
        shareCell(drink),
        coins(drink.margin.value, money),
      ],
    },
    ...notesOf(drink, money).map((note) => ({ note })),
  ]);
  return table(["Drink", ""], columns, rows, look);
}

function headingOf(drinks: readonly CostedReport[], index: number): Row[] {
  const { section } = drinks[index]!;
  return section !== null && section !== drinks[index - 1]?.section ? [{ heading: section }] : [];
}

/** Why cost, price or share is not known, each reason once. */
export function reasonsOf({ cost, share, because }: CostedReport): string[] {
  return [...new Set([...(cost.because ?? []), ...because, ...(share.because ?? [])])];
}

function notesOf(drink: CostedReport, money: string | undefined): string[] {
  const reasons = reasonsOf(drink);
  const least = drink.cost.value === null && drink.known > 0 ? `costs at least ${showMoney(drink.known, money)}; ` : "";
  return [
    reasons.length > 0 && `? ${least}${reasons.join("; ")}`,
    drink.without.length > 0 && `without ${showList(drink.without)}, of no known price`,
    drink.others.length > 0 && `${drink.others.join(" and ")} not costed: how much that buys is not stated`,
  ].filter((note) => note !== false);
}

/** A mark, since a colour alone would be lost on paper. */
function shareCell({ share, over }: Pick<CostedReport, "share" | "over">): string {
  if (share.value === null) return "?";
  return `${showValue({ value: 100 * share.value, plusMinus: 100 * (share.plusMinus ?? 0) }, 1)}${over ? "*" : ""}`;
}

/** With room for a column of its own the ± stands beside the cost, so that a menu stays on one screen; else below it. */
const besideFrom = 72;

function spread({ value, plusMinus }: FigureReport, money: string | undefined, look: Look, isWide: boolean): string[] {
  const [, shown] = value === null ? [] : showMoney({ value, plusMinus }, money).split(" ± ");
  if (isWide) return [coins(value, money), shown ? look.faint(shown) : ""];
  return [`${coins(value, money)}${shown ? `\n${look.faint(`± ${shown}`)}` : ""}`];
}

/** Without the sign, which stands above. */
function coins(value: number | null, money: string | undefined): string {
  if (value === null) return "?";
  return value.toFixed(moneyFormat(money).resolvedOptions().maximumFractionDigits ?? 2).replace("-", "−");
}

function summaryText({ summary, drinks, target, taxRate }: MenuCost, look: Look): string {
  const { shares, shared, costed } = summary;
  const over = drinks.filter((drink) => drink.over);
  const near = drinks.filter((drink) => drink.near).map(({ name }) => name);
  const known = costed < drinks.length ? `; the cost of ${drinks.length - costed} is not known` : "";
  const among = shares && shared > 1 ? `${percent(shares.low)} to ${percent(shares.high)} %, the middle one of ${shared} at ` : "";
  const range = shares && `${among}${percent(shares.median)} %${known}`;
  const lines: [string, string | false | null][] = [
    ["Share", range],
    [
      "Target",
      target !== null && `${percent(target)} %: ${over.length > 0 ? `* ${showCount(over.length, "drink")} above it` : "no drink above it"}`,
    ],
    ["Near it", near.length > 0 && `${showList(near, 6)}: within twice the ±, so on either side`],
    ["Tax", taxRate !== null && `${percent(taxRate)} %`],
  ];
  return lines.flatMap(([label, text]) => (text ? [labelled(label, text, look)] : [])).join("\n");
}

function movedTable(menu: MenuCost, moved: readonly CostedReport[], look: Look): string {
  const money = menu.currency ?? undefined;
  const unit = menu.currency ?? "";
  const columns: Column[] = [
    ["Cost", unit ? `now, ${unit}` : "now"],
    ["", "then"],
    ["Share", "now, %"],
    ["", "then"],
    ["Margin", "change"],
  ];
  const rows = moved.map((drink): Row => {
    const then = drink.supposed!;
    const cost = (figure: FigureReport, known: number) => (figure.value === null ? `≥ ${coins(known, money)}` : coins(figure.value, money));
    const share = (figure: FigureReport) => (figure.value === null ? "?" : (100 * figure.value).toFixed(1));
    const margins = [then.margin.value, drink.margin.value];
    const change = margins[0] === null || margins[1] === null ? null : margins[0]! - margins[1]!;
    return {
      name: readable(drink.name),
      ...(drink.serves > 1 && { under: `for ${drink.serves}` }),
      numbers: [
        cost(drink.cost, drink.known),
        cost(then.cost, then.known),
        share(drink.share),
        `${share(then.share)}${then.crosses === "up" ? "*" : ""}`,
        change !== null && change > 0 ? `+${coins(change, money)}` : coins(change, money),
      ],
    };
  });
  return table(["Drink", ""], columns, rows, look);
}

function crossings({ target }: MenuCost, moved: readonly CostedReport[], look: Look): string {
  if (target === null) return look.faint("The house sets no `target cost`.");
  const crossing = (way: "up" | "down") => moved.filter(({ supposed }) => supposed?.crosses === way).map(({ name }) => name);
  const [up, down] = [crossing("up"), crossing("down")];
  const texts = [
    up.length > 0 && labelled("Now above", `* the target of ${percent(target)} %: ${up.join("; ")}`, look),
    down.length > 0 && labelled("Now below", `the target of ${percent(target)} %: ${down.join("; ")}`, look),
  ].filter(Boolean);
  return texts.join("\n") || labelled("Target", `no drink crosses the ${percent(target)} %`, look);
}

function percent(share: number): string {
  return showFigure(100 * share, "", 1);
}
