/** What became of the menus: which drinks they list, and for how much. */
import type { Entry } from "../../../grammar/tree.ts";
import { linesOf } from "../entry.ts";
import type { House } from "../house.ts";
import { menuEntryOf, menuPriceOf } from "../menu.ts";
import { fold } from "../names.ts";
import { settingsOf } from "../settings.ts";
import { type Houses, pairsOf } from "./pair.ts";

export interface MenuCompared {
  readonly name: string;
  readonly before?: Entry;
  readonly after?: Entry;
  readonly how: "added" | "removed" | "changed";
  /** Absent where the house names none. */
  readonly currency?: string;
  readonly added: readonly string[];
  readonly removed: readonly string[];
  readonly prices: readonly { readonly drink: string; readonly before: number | null; readonly after: number | null }[];
  /** The least and the most that is asked, before and after; absent where nothing has a price. */
  readonly rangeBefore?: readonly [number, number];
  readonly rangeAfter?: readonly [number, number];
}

/** Those on which something is another. */
export function compareMenus(houses: Houses): MenuCompared[] {
  const { before, after } = houses;
  return pairsOf(houses, "menu").flatMap((pair): MenuCompared[] => {
    const [old, now] = [pair.before ? listed(before, pair.before) : new Map(), pair.after ? listed(after, pair.after) : new Map()];
    const name = (pair.after ?? pair.before)!.name!.text;
    const added = [...now].filter(([key]) => !old.has(key)).map(([, { drink }]) => drink);
    const removed = [...old].filter(([key]) => !now.has(key)).map(([, { drink }]) => drink);
    const prices = [...now].flatMap(([key, { drink, price }]) => {
      const was = old.get(key);
      return was && was.price !== price ? [{ drink, before: was.price, after: price }] : [];
    });
    const how = !pair.before ? "added" : !pair.after ? "removed" : "changed";
    if (how === "changed" && added.length + removed.length + prices.length === 0) return [];
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

/** By the drink's name, folded; one that nobody declares goes by its line's words. */
function listed(house: House, menu: Entry): Map<string, Listed> {
  const found = new Map<string, Listed>();
  for (const { content } of linesOf(menu, "menu")) {
    const drink = menuEntryOf(house, house.scopeOf(menu), content)?.entry.name?.text ?? content.priced?.name.text ?? content.whole?.text;
    if (drink) found.set(fold(drink), { drink, price: menuPriceOf(content)?.amount ?? null });
  }
  return found;
}

function rangeOf(drinks: ReadonlyMap<string, Listed>): [number, number] | undefined {
  const prices = [...drinks.values()].flatMap(({ price }) => (price === null ? [] : [price]));
  return prices.length > 0 ? [Math.min(...prices), Math.max(...prices)] : undefined;
}
