/** What a menu offers, line by line: the drink, the section that it stands in, and what is asked for it. */
import type { Entry, MenuPrice } from "../../grammar/tree.ts";
import { isOf } from "./currency.ts";
import type { House } from "./house.ts";
import { menuEntryOf, menuPriceOf } from "./menu.ts";
import { netOf, ownSale } from "./sales.ts";
import { type Settings, settingsOf } from "./settings.ts";
import { showMoney } from "./show.ts";

export interface Listed {
  /** The line's number within the menu. */
  readonly line: number;
  /** Absent above the first section. */
  readonly section: string | undefined;
  /** As the menu writes it. */
  readonly name: string;
  /** Absent where nothing of that name is declared. */
  readonly drink: Entry | undefined;
  /** As the guest reads it; null where neither the menu nor the drink names one that can be counted. */
  readonly price: number | null;
  /** In the price or on top of it; null where the house states none. */
  readonly tax: number | null;
  readonly net: number | null;
  /** Why there is no price, or no tax. */
  readonly because: readonly string[];
  /** Further prices of the line, for sizes that are not the drink as it is written: `45.00 carafe`. */
  readonly others: readonly string[];
}

/** In the menu's order. */
export function listedOn(house: House, menu: Entry): readonly Listed[] {
  const scope = house.scopeOf(menu);
  const settings = settingsOf(house, scope);
  const listed: Listed[] = [];
  let section: string | undefined;
  for (const [line, { content }] of menu.lines.entries()) {
    if (content.kind === "section") section = content.title?.text;
    if (content.kind !== "menu" || !content.whole) continue;
    const found = menuEntryOf(house, scope, content);
    // A name that is declared with its number has no price behind it.
    const isWhole = found?.name === content.whole;
    const name = found?.name.text ?? content.priced?.name.text ?? content.whole.text;
    const asked = isWhole ? undefined : menuPriceOf(content);
    const others = isWhole ? [] : (content.priced?.prices ?? []).filter((price) => price !== asked);
    listed.push({
      line,
      section,
      name,
      drink: found?.entry,
      ...(asked ? priced(asked, settings) : ownPriceOf(found?.entry, settings)),
      others: others.map(({ amount, label }) => [showMoney(amount, settings.currency), label?.text].filter(Boolean).join(" ")),
    });
  }
  return listed;
}

type Asked = Pick<Listed, "price" | "tax" | "net" | "because">;
const unpriced = { price: null, tax: null, net: null };

function priced({ amount, currency }: MenuPrice, settings: Settings): Asked {
  if (isOf(currency?.text, settings.currency)) return taxed(amount, settings);
  return { ...unpriced, because: [`its price is in ${currency!.text}, and the house's are in ${settings.currency}`] };
}

function ownPriceOf(drink: Entry | undefined, settings: Settings): Asked {
  const own = drink && ownSale(drink, settings);
  return own ? taxed(own.price, settings) : { ...unpriced, because: ["no price is given"] };
}

/** What is asked is what the guest pays, where prices hold the tax; else the tax comes on top. */
function taxed(price: number, settings: Settings): Asked {
  const net = netOf(price, settings);
  if (net === null) return { price, tax: null, net, because: ["the house's prices hold a tax that it does not state"] };
  if (settings.tax === undefined) return { price, tax: null, net, because: [] };
  return { price, tax: settings.pricesWithTax === false ? net * settings.tax : price - net, net, because: [] };
}
