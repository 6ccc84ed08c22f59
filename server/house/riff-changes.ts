/** What a riff makes different: its pours beside its parent's, and how far its figures lie from the parent's. */
import type { Entry, FieldLine, Quantity } from "../../grammar/tree.ts";
import { difference } from "../engine/difference.ts";
import { type Figure, type FigureName, figures, type Outcome } from "../engine/plan.ts";
import type { Assessment } from "./drink.ts";
import { findFieldIn } from "./entry.ts";
import type { House } from "./house.ts";
import { ingredientOf } from "./ingredient.ts";
import { type FlatDrink, type FlatPour, inherited, sameIngredient, sameQuantity } from "./riff.ts";
import { perServe } from "./serve.ts";
import { isNone } from "./values.ts";

/** One pour in place of another: something else, or the same in another way. */
export interface Replaced {
  readonly how: "swapped" | "changed";
  readonly before: FlatPour;
  readonly after: FlatPour;
}

/** A pour of the parent, of the riff, or one in place of the other. */
export type PourChange =
  | Replaced
  | { readonly how: "left out"; readonly before: FlatPour }
  | { readonly how: "added"; readonly after: FlatPour };

/** In the order of the riff's pours, what it leaves out last; empty for a drink that is no riff. */
export function pourChanges(house: House, { entry, parent, pours }: FlatDrink): readonly PourChange[] {
  if (!parent) return [];
  const left = parent.pours.filter((pour) => !pours.some((one) => one.entry === pour.entry && one.line === pour.line));
  const take = (index: number): FlatPour | undefined => (index < 0 ? undefined : left.splice(index, 1)[0]);
  const changes = pours.flatMap((after): PourChange[] => {
    if (after.entry !== entry) return [];
    const out = outOf(house, entry, after);
    const swapped = out && take(left.findIndex((pour) => isMeant(pour, out)));
    if (swapped) return [{ how: "swapped", before: swapped, after }];
    const before = out ? undefined : take(left.findIndex((pour) => sameIngredient(pour, after.ingredient)));
    return [before ? { how: "changed", before, after } : { how: "added", after }];
  });
  return [...changes, ...left.map((before): PourChange => ({ how: "left out", before }))];
}

interface Out {
  readonly ingredient: FlatPour["ingredient"];
  readonly quantity?: Quantity;
}

/** What the line of a swap takes out for this pour; absent where the line is none. */
function outOf(house: House, entry: Entry, { line, name }: FlatPour): Out | undefined {
  const content = entry.lines[line]?.content;
  const out = content?.kind === "swap" ? content.readings.find((reading) => reading.in.name === name)?.out : undefined;
  if (!out?.name) return undefined;
  return { ingredient: ingredientOf(house, house.scopeOf(entry), out.name), ...(out.quantity && { quantity: out.quantity }) };
}

function isMeant(pour: FlatPour, { ingredient, quantity }: Out): boolean {
  return sameIngredient(pour, ingredient) && (!quantity || sameQuantity(pour.quantity, quantity));
}

/** The fields that a riff would take from its parent and says something of its own in. */
export function otherFields({ entry, parent }: FlatDrink): readonly string[] {
  const textOf = (field: FieldLine | undefined) => (field && !isNone(field) ? (field.value?.text ?? "") : "");
  if (!parent) return [];
  return [...inherited].filter((name) => {
    const own = findFieldIn(entry, name)?.field;
    return own !== undefined && textOf(own) !== textOf(parent.field(name)?.field);
  });
}

/** A figure of the parent, and the riff's less the parent's; what both are computed from is not doubted twice. */
export interface FigureChange {
  readonly before: Figure;
  readonly change: Figure;
}

/** What grows with the drink is of one serve. Absent where either is unknown, or means nothing for parts without a size. */
export function figureChange(riff: Assessment, parent: Assessment, name: FigureName): FigureChange | undefined {
  const grows = figures[name].grows ?? false;
  if (grows && (riff.proportional || parent.proportional)) return undefined;
  const scaled = grows && !costs.has(name);
  const figuresOf = (one: Assessment) => (scaled ? ofOneServe(one) : one.outcome);
  const there = figuresOf(parent);
  const change = difference(figuresOf(riff), there, name);
  return change.value === null ? undefined : { before: there.figure(name), change };
}

/** They are of one serve as they come. */
const costs: ReadonlySet<FigureName> = new Set(["costPerServe", "pricedPerServe", "fillShare"]);

function ofOneServe({ outcome, plan }: Assessment): Pick<Outcome, "figure" | "gradient"> {
  return {
    figure: (name) => perServe(outcome.figure(name), plan.serves),
    gradient: (name) => new Map([...outcome.gradient(name)].map(([source, slope]) => [source, slope / plan.serves])),
  };
}
