/** Prose that measures in units which the book does not show. */

import { bookOfChapter } from "../../house/book/printed.ts";
import { amountsOn } from "../../house/book/prose-amounts.ts";
import { styleOf } from "../../house/book/style.ts";
import type { Rule } from "../rule.ts";
import { chapter } from "./chapter.ts";
import { systemOf } from "./systems.ts";

export const strangeUnits: Rule = {
  code: "strange-units",
  severity: "hint",
  entries: ["text"],
  docs: {
    title: "The text measures in units that the book does not show",
    why: "A reader whose jigger is marked in millilitres cannot pour an ounce, and the recipes of this book give no ounces to compare it with. `units shown:` of the `book` says which systems it prints; spoons and dashes are in both.",
    bad: chapter("Keep two ounces of syrup back.", ["units shown: metric"]),
    good: chapter("Keep sixty millilitres of syrup back.", ["units shown: metric"]),
  },
  *check(house, entry) {
    let shown: readonly string[] | undefined;
    for (const [line, one] of entry.lines.entries()) {
      for (const { start, end, unit } of amountsOn(one)) {
        const system = systemOf(unit);
        if (!system || (unit.g && system === "metric")) continue;
        shown ??= bookOfChapter(house, entry) ? styleOf(house, house.scopeOf(entry)).systems : [];
        if (shown.length === 0 || shown.includes(system)) continue;
        yield {
          place: { line, start, end },
          what: `This is measured in ${system === "US" ? "US" : "metric"} units, and the book shows ${system === "US" ? "metric" : "US"} ones alone.`,
          todo: "Say it in the book's units, or by `:pour[…]`, which does.",
        };
      }
    }
  },
};
