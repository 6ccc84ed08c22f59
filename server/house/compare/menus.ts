/** What became of the menus: which drinks they list, and for how much. */
import type { Entry } from "../../../grammar/tree.ts";
import { linesOf } from "../entry.ts";
import type { House } from "../house.ts";
import { menuEntryOf, menuPriceOf } from "../menu.ts";
import { fold } from "../names.ts";
import { salesOf } from "../sales.ts";
import { settingsOf } from "../settings.ts";
import { type Houses, type Pair, pairsOf } from "./pair.ts";

export interface MenuCompared {
  readonly name: string;
  readonly before?: Entry;
  readonly after?: Entry;
  readonly how: "added" | "removed" | "changed";
  /** Absent where the house names none. */
  readonly currency?: string;
  readonly added: readonly string[];
  readonly removed: readonly string[];
  /** What is on it as before, under another name. */
  readonly renamed: readonly { readonly before: string; readonly after: string }[];
  readonly prices: readonly { readonly drink: string; readonly before: number | null; readonly after: number | null }[];
  /** The least and the most that is asked, before and after; absent where nothing has a price. */
  readonly rangeBefore?: readonly [number, number];
  readonly rangeAfter?: readonly [number, number];
}

/** Those on which something is another. `drinks` tells which were renamed. */
export function compareMenus(houses: Houses, drinks: readonly Pair[]): MenuCompared[] {
  const { before, after } = houses;
  const newNames = new Map(
    drinks.flatMap((pair) => (pair.before && pair.after && pair.before !== pair.after ? [[pair.before, fold(pair.after.name!.text)]] : [])),
  );
  return pairsOf(houses, "menu").flatMap((pair): MenuCompared[] => {
    const now = pair.after ? listed(after, pair.after) : new Map<string, Listed>();
    const nameNow = (entry: Entry) => [newNames.get(entry)].find((name) => name !== undefined && now.has(name));
    const old = pair.before ? listed(before, pair.before, nameNow) : new Map<string, Listed>();
    const name = (pair.after ?? pair.before)!.name!.text;
    const added = [...now].filter(([key]) => !old.has(key)).map(([, { drink }]) => drink);
    const removed = [...old].filter(([key]) => !now.has(key)).map(([, { drink }]) => drink);
    const prices = [...now].flatMap(([key, { drink, price }]) => {
      const was = old.get(key);
      return was && was.price !== price ? [{ drink, before: was.price, after: price }] : [];
    });
    const renamed = [...now].flatMap(([key, { drink }]) => {
      const was = old.get(key);
      return was && fold(was.drink) !== fold(drink) ? [{ before: was.drink, after: drink }] : [];
    });
    const how = !pair.before ? "added" : !pair.after ? "removed" : "changed";
    if (how === "changed" && added.length + removed.length + prices.length + renamed.length === 0) return [];
    const [rangeBefore, rangeAfter] = [rangeOf(old), rangeOf(now)];
    const [house, menu] = pair.after ? [after, pair.after] : [before, pair.before!];
    const { currency } = settingsOf(house, house.scopeOf(menu));
    return [
      {
        ...pair,
        name,
        how,
        ...(currency && { currency }),
        added,
        removed,
        renamed,
        prices,
        ...(rangeBefore && { rangeBefore }),
        ...(rangeAfter && { rangeAfter }),
      },
    ];
  });
}

interface Listed {
  readonly drink: string;
  readonly price: number | null;
}

/** The menus whose price for a drink is another than before. */
export function repricedOn(houses: Houses, before: Entry, after: Entry): { kind: Entry["kind"]; name: string }[] {
  const old = new Map(salesOf(houses.before, before).map(({ menu, price }) => [menu && fold(menu.name?.text ?? ""), price]));
  return salesOf(houses.after, after).flatMap(({ menu, price }) => {
    const name = menu?.name?.text;
    const was = name === undefined ? undefined : old.get(fold(name));
    return name !== undefined && was !== undefined && was !== price ? [{ kind: "menu", name }] : [];
  });
}

/** By the drink's name, folded, or what `keyOf` answers; one that nobody declares goes by its line's words. */
function listed(house: House, menu: Entry, keyOf: (drink: Entry) => string | undefined = () => undefined): Map<string, Listed> {
  const found = new Map<string, Listed>();
  for (const { content } of linesOf(menu, "menu")) {
    const entry = menuEntryOf(house, house.scopeOf(menu), content)?.entry;
    const drink = entry?.name?.text ?? content.priced?.name.text ?? content.whole?.text;
    if (drink) found.set((entry && keyOf(entry)) ?? fold(drink), { drink, price: menuPriceOf(content)?.amount ?? null });
  }
  return found;
}

function rangeOf(drinks: ReadonlyMap<string, Listed>): [number, number] | undefined {
  const prices = [...drinks.values()].flatMap(({ price }) => (price === null ? [] : [price]));
  return prices.length > 0 ? [Math.min(...prices), Math.max(...prices)] : undefined;
}
