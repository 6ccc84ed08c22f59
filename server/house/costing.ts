/** What each drink of a menu costs and brings in, and what changed prices of stock would do to that. */
import type { Entry } from "../../grammar/tree.ts";
import type { Figure } from "../engine/plan.ts";
import { isCyclic } from "./cycles.ts";
import { assessDrink } from "./drink.ts";
import type { House } from "./house.ts";
import { type Listed, listedOn } from "./listed.ts";
import { madeFromItself, notDeclared } from "./reasons.ts";
import { costShare } from "./sales.ts";

/** Costs, price, net price and margin are of all that the price buys: of a bowl for eight, of the bowl. */
export interface CostedDrink extends Listed {
  readonly serves: number;
  readonly cost: Figure;
  /** What of the cost has a price: known even where the whole is not. */
  readonly known: number;
  /** Garnish, rim and leaves of no known price: the cost is without them. */
  readonly without: readonly string[];
  /** Of the net price, 0…1. */
  readonly share: Figure;
  /** What of the net price is left. */
  readonly margin: Figure;
}

/** Each line of a menu with its cost, in the menu's order. */
export function costedOn(house: House, menu: Entry): readonly CostedDrink[] {
  return listedOn(house, menu).map((listed) => costed(house, listed));
}

function costed(house: House, listed: Listed): CostedDrink {
  const { drink, net, because } = listed;
  const nothing = (reason: string) => {
    const none = unknown([reason]);
    return { ...listed, serves: 1, cost: none, known: 0, without: [], share: none, margin: none };
  };
  if (!drink) return nothing(notDeclared(listed.name));
  if (isCyclic(house, drink)) return nothing(madeFromItself(listed.name));
  const assessment = assessDrink(house, drink);
  const { outcome, plan, unpriced, proportional } = assessment;
  if (plan.pours.length === 0) return nothing(`${listed.name} pours nothing`);
  if (proportional) return nothing("its parts have no size");
  const cost = times(outcome.figure("costPerServe"), plan.serves);
  const share = net === null ? unknown(because) : costShare(assessment, net);
  const margin =
    net === null || cost.value === null ? unknown([...because, ...(cost.because ?? [])]) : { ...cost, value: net - cost.value };
  return { ...listed, serves: plan.serves, cost, known: outcome.value("pricedPerServe")! * plan.serves, without: unpriced, share, margin };
}

export interface CostSummary {
  /** Lines of the menu, those whose cost is known, and those whose share is. */
  readonly drinks: number;
  readonly costed: number;
  readonly shared: number;
  /** Of the known shares; null where there is none. */
  readonly shares: { readonly low: number; readonly median: number; readonly high: number } | null;
}

/** Only what means something without knowing how often each drink is sold. */
export function summaryOf(drinks: readonly CostedDrink[]): CostSummary {
  const shares = drinks.flatMap(({ share }) => share.value ?? []).sort((one, other) => one - other);
  const middle = (shares.length - 1) / 2;
  const median = (shares[Math.floor(middle)]! + shares[Math.ceil(middle)]!) / 2;
  return {
    drinks: drinks.length,
    costed: drinks.filter(({ cost }) => cost.value !== null).length,
    shared: shares.length,
    shares: shares.length > 0 ? { low: shares[0]!, median, high: shares.at(-1)! } : null,
  };
}

/** Where a share stands beside what the house means it to be. */
export interface Standing {
  readonly over: boolean;
  /** It is nearer to the target than twice its uncertainty, so that it may be on either side. */
  readonly near: boolean;
}

/** Absent without a target, and where the share is unknown. */
export function standingOf({ share }: Pick<CostedDrink, "share">, target: number | undefined): Standing | undefined {
  if (target === undefined || share.value === null) return undefined;
  const above = share.value - target;
  return { over: above > 1e-12, near: Math.abs(above) <= 2 * share.plusMinus! };
}

/** A drink that changed prices move. */
export interface Moved {
  readonly before: CostedDrink;
  readonly after: CostedDrink;
  /** Across the house's target. */
  readonly crosses: "up" | "down" | undefined;
}

/** What is different between two costings of one menu; lines whose cost stays are left out. */
export function movedBetween(before: readonly CostedDrink[], after: readonly CostedDrink[], target: number | undefined): Moved[] {
  return before.flatMap((one, index): Moved[] => {
    const other = after[index];
    if (!other || !isMoved(one, other)) return [];
    const [was, is] = [standingOf(one, target), standingOf(other, target)];
    return [{ before: one, after: other, crosses: !was || !is || was.over === is.over ? undefined : is.over ? "up" : "down" }];
  });
}

/** By more than the rounding of a sum: a ten-thousandth of the smallest coin. */
function isMoved(one: CostedDrink, other: CostedDrink): boolean {
  return Math.abs(other.known - one.known) > 1e-6 || (one.cost.value === null) !== (other.cost.value === null);
}

function unknown(because: readonly string[]): Figure {
  return { value: null, plusMinus: null, because: [...new Set(because)] };
}

function times(figure: Figure, by: number): Figure {
  return figure.value === null ? figure : { value: figure.value * by, plusMinus: figure.plusMinus! * by };
}
