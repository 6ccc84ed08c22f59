/** What is pressed out of a fruit or cut from one, where nobody buys it by itself: bought and charged alike. */
import { findUnit } from "../../grammar/units.ts";
import type { House } from "./house.ts";
import { pieceOf } from "./piece.ts";
import type { Scope } from "./scope.ts";
import { type StockFacts, stockFacts } from "./stock.ts";

/** Forms that are cut off the peel: a fruit is out of peel long before it is out of weight. */
const peelForms: ReadonlySet<string> = new Set(["zest", "twist", "peel"]);
/** Broad strips that one fruit gives: practice, no source. */
export const peelsOfOne = 6;

export interface Cut {
  readonly fruit: StockFacts;
  /** `juice`, or the unit of the piece: `wedge`. */
  readonly form: string;
}

/** Lime juice is pressed from limes, and a wedge is cut from one: by its name, which says both. */
export function cutFrom(house: House, scope: Scope, { name }: StockFacts): Cut | undefined {
  const at = name.lastIndexOf(" ");
  if (at < 0) return undefined;
  const form = name.slice(at + 1).toLowerCase();
  const unit = findUnit(form);
  if (form !== "juice" && unit?.dimension !== "piece") return undefined;
  const found = house.lookup(scope, "ingredient", name.slice(0, at))[0]?.entry;
  return found?.kind === "stock" ? { fruit: stockFacts(house, found), form: unit?.id ?? form } : undefined;
}

export function isPeel({ form }: Cut): boolean {
  return peelForms.has(form);
}

/** How much of a fruit one piece takes: a peel its share of all peels, anything else by weight. Absent where that is not known. */
export function shareOfFruit(cut: Cut, piece: StockFacts): number | undefined {
  if (isPeel(cut)) return 1 / peelsOfOne;
  const [one, all] = [pieceOf(piece, undefined, "each"), pieceOf(cut.fruit, undefined, "each")];
  return one && all && one.volume === all.volume ? one.one.value / all.one.value : undefined;
}
