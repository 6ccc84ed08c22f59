/** Where running prose says how much of something the one drink of its section pours. */
import type { Entry } from "../../../grammar/tree.ts";
import type { House } from "../house.ts";
import { fold } from "../names.ts";
import type { Poured } from "./amount.ts";
import { poursOf } from "./pours.ts";
import { proseOn } from "./prose.ts";
import { amountsOn, type ProseAmount } from "./prose-amounts.ts";
import { sectionOf } from "./section.ts";

export interface PouredInProse {
  readonly line: number;
  readonly amount: ProseAmount;
  readonly drink: Entry;
  /** What it is called in the drink. */
  readonly name: string;
  /** Every pour of it there, alternatives too. */
  readonly pours: readonly Poured[];
}

/** In the order written. What the drink does not pour, or another recipe of the section pours as well, is left out. */
export function pouredInProse(house: House, entry: Entry): readonly PouredInProse[] {
  return house.recall(entry, "poured in prose", () => {
    const amounts = entry.lines.flatMap((line, index) => amountsOn(line).map((amount) => ({ line: index, amount })));
    const section = amounts.length > 0 ? sectionOf(house, entry) : undefined;
    if (!section) return [];
    return amounts.flatMap(({ line, amount }): PouredInProse[] => {
      const below = entry.lines[line + 1];
      const behind = `${proseOn(entry.lines[line]!).slice(amount.end)} ${below ? proseOn(below).replace(/^[\s>]*/, "") : ""}`;
      const named = namedBehind(house, section.drink, behind);
      if (!named || section.others.some((other) => poursIn(house, other, named.is).length > 0)) return [];
      return [{ line, amount, drink: section.drink, ...named }];
    });
  });
}

/** Most words that a name of an ingredient has. */
const mostWords = 6;

/** What the drink pours and the text starts with; absent where the longest name that it starts with is of something else. */
function namedBehind(house: House, drink: Entry, text: string) {
  const [, phrase = ""] = /^\s+(?:of\s+)?(?:the\s+|fresh\s+)?([\p{L}\p{N}'’ -]+)/u.exec(text) ?? [];
  const words = phrase.trim().split(/\s+/).slice(0, mostWords);
  const scope = house.scopeOf(drink);
  for (let count = words.length; count > 0; count--) {
    const reading = words.slice(0, count).join(" ");
    const declared = (["ingredient", "drink"] as const).flatMap((nameClass) => house.find(scope, nameClass, reading)?.entry ?? [])[0];
    const is = (pour: Named) => {
      const { found, text: called } = pour.ingredient.resolution;
      return declared ? found?.entry === declared : !found && fold(called) === fold(reading);
    };
    const pours = poursIn(house, drink, is);
    if (pours.length > 0 && madeOfIt.has(words[count]?.toLowerCase() ?? "")) return undefined;
    if (pours.length > 0) return { name: pours[0]!.ingredient.resolution.text, pours, is };
    if (declared) return undefined;
  }
  return undefined;
}

/** What a name goes on with where it is of something else that nobody declared: lemon juice cordial. */
const madeOfIt: ReadonlySet<string> = new Set(
  "cordial syrup liqueur powder foam sherbet shrub bitters vinegar wine beer tea jelly salt sugar solution mix blend".split(" "),
);

type Named = ReturnType<typeof poursOf>[number]["alternatives"][number];

function poursIn(house: House, recipe: Entry, is: (pour: Named) => boolean): Named[] {
  return poursOf(house, recipe)
    .flatMap((pour) => [pour, ...pour.alternatives])
    .filter(is);
}
