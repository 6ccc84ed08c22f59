/** What is bought of one stock or ice: what is needed with its waste, whole packs, and what they cost. */
import type { Entry } from "../../grammar/tree.ts";
import type { House } from "./house.ts";
import { boughtAs, type NeedUnit, type Pack } from "./packs.ts";
import type { Scope } from "./scope.ts";
import { settingsOf } from "./settings.ts";

export interface Purchase {
  readonly entry: Entry;
  readonly unit: NeedUnit;
  /** With what is wasted of it. */
  readonly needed: number;
  /** The drinks and preps that call for it. */
  readonly by: readonly string[];
  /** Why `needed` is only what of it is known; empty where that is all. */
  readonly because: readonly string[];
  /** Absent where nobody says how it is bought; `noPack` then says so. */
  readonly pack?: Pack;
  readonly noPack?: string;
  readonly packs: number | null;
  readonly leftOver: number | null;
  /** Of the packs, and of what is needed out of them. */
  readonly cost: number | null;
  readonly used: number | null;
}

interface Needed extends Pick<Purchase, "unit" | "by" | "because"> {
  /** Without waste. */
  readonly amount: number;
}

/** Absent for what is had for nothing. Of what only the larder knows, as much is wasted as where it is used. */
export function purchaseOf(house: House, scope: Scope, entry: Entry, { unit, amount, by, because }: Needed): Purchase | undefined {
  const { pack, because: noPack, waste: own, free } = boughtAs(house, entry);
  if (free) return undefined;
  const waste = house.isLarder(entry) ? (settingsOf(house, scope).waste?.value ?? 0) : own;
  const needed = amount / (1 - waste);
  const none = { packs: null, leftOver: null, cost: null, used: null };
  const whole = { entry, unit, needed, by, because };
  if (!pack || pack.unit !== unit) return { ...whole, ...(noPack !== undefined && { noPack }), ...none };
  // A bottle too many for the last bit of a sum is no bottle.
  const packs = Math.ceil(needed / pack.size - 1e-9);
  return {
    ...whole,
    pack,
    packs,
    leftOver: Math.max(0, packs * pack.size - needed),
    cost: packs * pack.price,
    used: (needed / pack.size) * pack.price,
  };
}
