/** What is off tonight, among the drinks of some texts of a house. */
import type { Entry } from "../../grammar/tree.ts";
import { linesOf } from "../house/entry.ts";
import type { House } from "../house/house.ts";
import { menuEntryOf } from "../house/menu.ts";
import { isOff, isRetired, missingIn } from "../house/out.ts";
import type { OutDrink, OutReport } from "./out-schema.ts";

/** The drinks in the order of the menus that list them, then the others; a drink of several menus stands once. */
export function outReport(house: House, entries: readonly Entry[], pathOf: (uri: string) => string): OutReport {
  const menus = new Map<Entry, string[]>();
  for (const menu of entries) {
    if (menu.kind !== "menu") continue;
    for (const { content } of linesOf(menu, "menu")) {
      const drink = menuEntryOf(house, house.scopeOf(menu), content)?.entry;
      const names = drink && (menus.get(drink) ?? []);
      const name = menu.name?.text ?? "a menu without a name";
      if (names && !names.includes(name)) menus.set(drink, [...names, name]);
    }
  }
  const looked = entries.filter((entry) => entry.kind === "drink" && entry.name && !isRetired(entry));
  const inOrder = [...[...menus.keys()].filter((drink) => looked.includes(drink)), ...looked.filter((drink) => !menus.has(drink))];
  const drinks = inOrder.flatMap((drink) => outDrink(house, drink, menus.get(drink) ?? [], pathOf));
  const off = drinks.filter(({ state }) => state === "off").length;
  return { drinks, summary: { drinks: looked.length, off, fallBack: drinks.length - off } };
}

function outDrink(house: House, drink: Entry, menus: readonly string[], pathOf: (uri: string) => string): OutDrink[] {
  const missing = missingIn(house, drink);
  if (missing.length === 0) return [];
  return [
    {
      name: drink.name!.text,
      file: pathOf(house.getDocumentOf(drink).uri),
      line: house.getLineOf(drink) + 1,
      state: isOff(missing) ? "off" : "falls back",
      missing: missing.map(({ out, through = null, instead }) => ({
        out: out.name?.text ?? "",
        through,
        instead: instead?.ingredient.resolution.text ?? null,
      })),
      menus: [...menus],
    },
  ];
}
