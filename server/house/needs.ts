/** From what is called for to what is bought: which stock it comes out of, and how much of it in the unit of its pack. */
import type { Entry } from "../../grammar/tree.ts";
import { liquidOf } from "../engine/composition.ts";
import type { Call, Size } from "./calls.ts";
import { type Cut, cutFrom, shareOfFruit } from "./cut-fruit.ts";
import type { House } from "./house.ts";
import { iceFacts } from "./method.ts";
import { boughtAs, type NeedUnit } from "./packs.ts";
import { type Piece, pieceOf } from "./piece.ts";
import type { Scope } from "./scope.ts";
import { type StockFacts, stockFacts } from "./stock.ts";

/** So much of an entry, not yet rounded to anything; waste is not in it. */
export interface Need {
  readonly entry: Entry;
  readonly unit: NeedUnit;
  /** Null where it cannot be told. */
  readonly amount: number | null;
  readonly because?: string;
}

/** What a call for a stock or an ice takes of what is bought where it is made. */
export function needOf(house: House, scope: Scope, { entry, name, size, juiced, model }: Call & { readonly entry: Entry }): Need {
  if (entry.kind === "ice") return needOfIce(house, entry, size);
  const facts = stockFacts(house, entry);
  const { pack, free } = boughtAs(house, entry);
  const cut = !pack && !free ? cutFrom(house, scope, facts) : undefined;
  if (cut && boughtAs(house, cut.fruit.entry).pack) return needOfWhole(house, cut, facts, size);
  const unit = pack?.unit ?? unitOf(size);
  if ("because" in size) return { entry, unit, amount: null, because: size.because };
  if (juiced && !("pieces" in size)) return fruitsFor(house, entry, size);
  const amount = inUnit(size, unit, facts, model);
  return typeof amount === "number" ? { entry, unit, amount } : { entry, unit, amount: null, because: `${amount.because} (${name})` };
}

function needOfWhole(house: House, cut: Cut, of: StockFacts, size: Size): Need {
  const { fruit, form } = cut;
  const { entry } = fruit;
  const unit = boughtAs(house, entry).pack!.unit;
  if ("because" in size) return { entry, unit, amount: null, because: size.because };
  if (form === "juice") {
    const ml = inUnit(size, "ml", of, of.model);
    return typeof ml === "number" ? fruitsFor(house, entry, { ml }) : { entry, unit, amount: null, because: ml.because };
  }
  const count = inUnit(size, "piece", of, of.model);
  if (typeof count !== "number") return { entry, unit, amount: null, because: count.because };
  const share = shareOfFruit(cut, of);
  if (share === undefined) return { entry, unit, amount: null, because: `how many of ${of.name} one ${fruit.name} gives is not known` };
  const amount = inUnit({ pieces: count * share }, unit, fruit, fruit.model);
  return typeof amount === "number" ? { entry, unit, amount } : { entry, unit, amount: null, because: amount.because };
}

/** Fruit for so much juice, in the unit of its pack. */
function fruitsFor(house: House, entry: Entry, size: { readonly ml: number } | { readonly g: number }): Need {
  const facts = stockFacts(house, entry);
  const unit = boughtAs(house, entry).pack?.unit ?? "piece";
  const gives = pieceOf(facts, "juiced", "yield");
  const ml = "ml" in size ? size.ml : size.g / liquidOf(facts.model).gPerMl;
  if (!gives?.volume) return { entry, unit, amount: null, because: `how much juice one ${facts.name} gives is not given` };
  const amount = inUnit({ pieces: ml / gives.one.value }, unit, facts, facts.model);
  return typeof amount === "number" ? { entry, unit, amount } : { entry, unit, amount: null, because: amount.because };
}

function needOfIce(house: House, entry: Entry, size: Size): Need {
  const { pack } = boughtAs(house, entry);
  const unit = pack?.unit ?? "g";
  if ("because" in size) return { entry, unit, amount: null, because: size.because };
  const g = "g" in size ? size.g : 0;
  const piece = iceFacts(house, house.scopeOf(entry), entry.name?.text ?? "")?.pieceG?.value;
  if (unit === "g") return { entry, unit, amount: g };
  if (unit === "piece" && piece) return { entry, unit, amount: g / piece };
  return { entry, unit, amount: null, because: `what one ${entry.name?.text} weighs is not given` };
}

function unitOf(size: Size): NeedUnit {
  return "ml" in size ? "ml" : "pieces" in size ? "piece" : "g";
}

/** The same amount in another unit, or why that cannot be told. */
export function inUnit(
  size: Exclude<Size, { because: string }>,
  unit: NeedUnit,
  facts: StockFacts | undefined,
  model: Call["model"],
): number | { readonly because: string } {
  if (unit === "piece" ? "pieces" in size : unit in size) return Object.values(size)[0] as number;
  const name = facts?.name ?? model.name;
  const each: Piece | undefined = facts && pieceOf(facts, undefined, "each");
  if ("pieces" in size) {
    if (!each) return { because: `what one ${name} weighs is not given` };
    const whole = size.pieces * each.one.value;
    return inUnit(each.volume ? { ml: whole } : { g: whole }, unit, facts, model);
  }
  if (unit === "piece") {
    if (!each) return { because: `what one ${name} weighs is not given` };
    const same = inUnit(size, each.volume ? "ml" : "g", facts, model);
    return typeof same === "number" ? same / each.one.value : same;
  }
  const liquid = liquidOf(model);
  const [reason] = unit === "g" ? liquid.reasons.volume : liquid.reasonsWeighed.volume;
  if (reason) return { because: reason };
  return "ml" in size ? size.ml * liquid.gPerMl : size.g / liquid.gPerMl;
}
