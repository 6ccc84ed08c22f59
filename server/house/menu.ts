/** What a line of a menu names, and what it asks for it. */
import type { Entry, MenuLine, MenuPrice, Name } from "../../grammar/tree.ts";
import { linesOf } from "./entry.ts";
import type { House } from "./house.ts";
import { fold } from "./names.ts";
import type { Scope } from "./scope.ts";

/** The longest reading that is a declared drink. */
export function menuEntryOf(house: House, scope: Scope, { whole, priced }: MenuLine): { entry: Entry; name: Name } | undefined {
  for (const name of [whole, priced?.name]) {
    const entry = name && house.lookup(scope, "drink", name.text)[0]?.entry;
    if (entry) return { entry, name };
  }
  return undefined;
}

/** What a line asks for the drink as it is written: its first price without a word of its own (`45.00 carafe`), else its first. */
export function menuPriceOf({ priced }: MenuLine): MenuPrice | undefined {
  return priced?.prices.find(({ label }) => !label) ?? priced?.prices[0];
}

interface PricedLine {
  readonly line: number;
  readonly content: MenuLine;
  readonly price: MenuPrice;
}

const indexes = new WeakMap<Entry, ReadonlyMap<string, PricedLine>>();

/** The first line of a menu that puts a price to a drink of this name; found without reading the others again. */
export function findPriced(menu: Entry, drink: string): PricedLine | undefined {
  let index = indexes.get(menu);
  if (!index) {
    const found = new Map<string, PricedLine>();
    for (const { line, content } of linesOf(menu, "menu")) {
      const price = menuPriceOf(content);
      const key = content.priced && fold(content.priced.name.text);
      if (price && key && !found.has(key)) found.set(key, { line, content, price });
    }
    index = found;
    indexes.set(menu, index);
  }
  return index.get(fold(drink));
}
