/** What to make and what to buy for an evening: a menu, so many serves of each of its drinks, and all that they call for. */
import type { Entry } from "../../grammar/tree.ts";
import { type Batch, batchFor, type Call, callsOfDrink } from "./calls.ts";
import { isCyclic } from "./cycles.ts";
import { assessDrink } from "./drink.ts";
import type { House } from "./house.ts";
import { listedOn } from "./listed.ts";
import { inUnit, needOf } from "./needs.ts";
import type { NeedUnit } from "./packs.ts";
import { type Purchase, purchaseOf } from "./purchase.ts";
import { madeFromItself, notDeclared } from "./reasons.ts";
import type { Scope } from "./scope.ts";
import { stockFacts } from "./stock.ts";
import { longStepsOf, type UseBy, useByOf } from "./use-by.ts";

export interface Evening {
  /** Serves of all drinks together. */
  readonly serves: number;
  /** The day on which it is made, such as `2026-11-28`. */
  readonly date: string;
  /** How often each drink is asked for beside the others; absent: each as often. A drink without one is not asked for. */
  readonly shares?: ReadonlyMap<Entry, number>;
}

export interface Preparation {
  /** In the menu's order, each once. */
  readonly drinks: readonly { readonly drink: Entry; readonly serves: number }[];
  /** What is needed first stands first. */
  readonly preps: readonly Made[];
  readonly purchases: readonly Purchase[];
  /** What cannot be told, and why; `of` is what calls for it. */
  readonly untold: readonly Untold[];
}

export interface Untold {
  readonly name: string;
  readonly of: string;
  readonly because: string;
}

/** A prep, or a drink that is poured in drinks. */
export interface Made {
  readonly entry: Entry;
  readonly unit: "ml" | "g";
  readonly needed: number;
  /** Absent where a batch may be of any size, and where its size is not known. */
  readonly batches?: number;
  /** How much is made of it in the end; null where that is not known. */
  readonly makes: number | null;
  /** What goes into all of it. */
  readonly parts: readonly { readonly name: string; readonly size: Call["size"] }[];
  readonly useBy: UseBy;
  /** The steps that take an hour or longer, as they are written: `infuse 24 hours`. */
  readonly long: readonly string[];
}

/** The drinks of a menu that can be asked for, each once, in its order. */
export function drinksOn(house: House, menu: Entry): Entry[] {
  return [...new Set(listedOn(house, menu).flatMap(({ drink }) => drink ?? []))];
}

export function prepare(house: House, menu: Entry, { serves, date, shares }: Evening): Preparation {
  const listed = drinksOn(house, menu);
  const shareOf = (drink: Entry) => (shares ? (shares.get(drink) ?? 0) : 1);
  const all = listed.reduce((sum, drink) => sum + shareOf(drink), 0);
  const drinks = listed.map((drink) => ({ drink, serves: all > 0 ? (serves * shareOf(drink)) / all : 0 }));
  const ledger = new Ledger(house, house.scopeOf(menu));
  for (const { drink, serves: count } of drinks) {
    if (!(count > 0)) continue;
    if (isCyclic(house, drink)) ledger.giveUp(nameOf(drink), nameOf(menu), madeFromItself(nameOf(drink)));
    else ledger.take(drink, callsOfDrink(house, drink), count / assessDrink(house, drink).plan.serves);
  }
  // Whoever pours it comes before it, so that all of it is known by then.
  const order = inOrderOfMaking(
    house,
    drinks.filter(({ serves: count }) => count > 0).map(({ drink }) => drink),
  );
  const preps = [...order].reverse().flatMap((entry) => ledger.make(entry, date) ?? []);
  return { drinks, preps: preps.reverse(), purchases: ledger.purchases(), untold: ledger.untold };
}

/** The preps and poured drinks behind some drinks, each after all that it is made of. What is made from itself is left out. */
export function inOrderOfMaking(house: House, drinks: readonly Entry[]): Entry[] {
  const seen = new Set<Entry>();
  const order: Entry[] = [];
  const visit = (calls: readonly Call[]) => {
    for (const { entry } of calls) {
      if (!entry || !isMade(entry) || seen.has(entry) || isCyclic(house, entry)) continue;
      seen.add(entry);
      visit(batchFor(house, entry).calls);
      order.push(entry);
    }
  };
  for (const drink of drinks) if (!isCyclic(house, drink)) visit(callsOfDrink(house, drink));
  return order;
}

interface Demand {
  ml: number;
  g: number;
}

/** What is called for so far. */
class Ledger {
  readonly untold: Untold[] = [];
  private readonly made = new Map<Entry, Demand>();
  private readonly bought = new Map<Entry, { unit: NeedUnit; amount: number; by: Set<string>; because: Set<string> }>();

  constructor(
    private readonly house: House,
    private readonly scope: Scope,
  ) {}

  giveUp(name: string, of: string, because: string): void {
    if (this.untold.some((one) => one.name === name && one.of === of && one.because === because)) return;
    this.untold.push({ name, of, because });
  }

  /** So many times what an entry calls for. */
  take(by: Entry, calls: readonly Call[], times: number): void {
    for (const call of calls) {
      const { entry, name, size } = call;
      if (!entry) this.giveUp(name, nameOf(by), notDeclared(name));
      else if (!isMade(entry)) this.buy(by, { ...call, entry }, times);
      else if (isCyclic(this.house, entry)) this.giveUp(nameOf(entry), nameOf(by), madeFromItself(nameOf(entry)));
      else if ("because" in size) this.giveUp(name, nameOf(by), size.because);
      else if ("pieces" in size) this.giveUp(name, nameOf(by), `what one ${name} is cannot be told`);
      else {
        const demand = this.made.get(entry) ?? { ml: 0, g: 0 };
        if ("ml" in size) demand.ml += size.ml * times;
        else demand.g += size.g * times;
        this.made.set(entry, demand);
      }
    }
  }

  /** All of an entry that was called for until now, and with it what that calls for in turn. */
  make(entry: Entry, date: string): Made | undefined {
    const demand = this.made.get(entry);
    if (!demand) return undefined;
    const batch = batchFor(this.house, entry);
    const sum = this.inOneUnit(entry, demand);
    if (!sum) return undefined;
    const times = timesFor(sum, batch);
    const made = {
      entry,
      unit: sum.unit,
      needed: sum.amount,
      useBy: useByOf(this.house, entry, date),
      long: longStepsOf(this.house, entry),
    };
    if (times === undefined) {
      this.giveUp(nameOf(entry), "its batch", batch.because[0] ?? `how much a batch of it makes in ${sum.unit} is not known`);
      return { ...made, makes: null, parts: [] };
    }
    this.take(entry, batch.calls, times);
    const parts = batch.calls.map(({ name, size }) => ({ name, size: timesSize(size, times) }));
    const makes = batch.size[sum.unit]! * times;
    return { ...made, ...(!batch.anySize && { batches: times }), makes, parts };
  }

  /** In the order of the names; water from the tap is nothing that is bought. */
  purchases(): Purchase[] {
    const all = [...this.bought].flatMap(([entry, { unit, amount, by, because }]) => {
      return purchaseOf(this.house, this.scope, entry, { unit, amount, by: [...by], because: [...because] }) ?? [];
    });
    return all.sort((one, other) => nameOf(one.entry).localeCompare(nameOf(other.entry), "en"));
  }

  private buy(by: Entry, call: Call & { readonly entry: Entry }, times: number): void {
    const need = needOf(this.house, this.house.scopeOf(by), call);
    const known = this.bought.get(need.entry) ?? { unit: need.unit, amount: 0, by: new Set(), because: new Set() };
    this.bought.set(need.entry, known);
    known.by.add(nameOf(by));
    const facts = need.entry.kind === "stock" ? stockFacts(this.house, need.entry) : undefined;
    const same =
      need.amount !== null && need.unit !== known.unit
        ? inUnit(sizeOf(need.amount, need.unit), known.unit, facts, call.model)
        : need.amount;
    if (typeof same === "number") known.amount += same * times;
    else {
      const because = need.because ?? same?.because ?? "";
      known.because.add(because);
      this.giveUp(call.name, nameOf(by), because);
    }
  }

  /** Millilitres where all is poured by volume, else grams. */
  private inOneUnit(entry: Entry, { ml, g }: Demand): { unit: "ml" | "g"; amount: number } | undefined {
    if (g === 0) return { unit: "ml", amount: ml };
    if (ml === 0) return { unit: "g", amount: g };
    const weighed = inUnit({ ml }, "g", undefined, this.house.modelOf(entry));
    if (typeof weighed === "number") return { unit: "g", amount: g + weighed };
    this.giveUp(nameOf(entry), "its batch", weighed.because);
    return undefined;
  }
}

/** Batches, whole ones unless any size will do. */
function timesFor({ unit, amount }: { unit: "ml" | "g"; amount: number }, { size, anySize }: Batch): number | undefined {
  const one = size[unit];
  if (one === null || !(one > 0)) return undefined;
  // A batch too many for the last bit of a sum is no batch.
  return anySize ? amount / one : Math.ceil(amount / one - 1e-9);
}

function timesSize(size: Call["size"], by: number): Call["size"] {
  if ("because" in size) return size;
  if ("ml" in size) return { ml: size.ml * by };
  return "g" in size ? { g: size.g * by } : { pieces: size.pieces * by };
}

function sizeOf(amount: number, unit: NeedUnit) {
  return unit === "ml" ? { ml: amount } : unit === "g" ? { g: amount } : { pieces: amount };
}

function isMade({ kind }: Entry): boolean {
  return kind === "prep" || kind === "drink";
}

function nameOf({ name }: Entry): string {
  return name?.text ?? "";
}
