/**
 * A drink with everything it inherits: the pours of the drink it is a riff of, changed line by line,
 * and the fields that a riff takes over. Changes are matched against the flattened parent.
 */
import type { Entry, Name, Pour, Quantity } from "../../grammar/tree.ts";
import type { Stage } from "../engine/plan.ts";
import { isCyclic } from "./cycles.ts";
import type { Place } from "./document.ts";
import { type FieldAt, findFieldIn } from "./entry.ts";
import type { House } from "./house.ts";
import { type Ingredient, ingredientOf } from "./ingredient.ts";
import { has } from "./modifiers.ts";
import { fold } from "./names.ts";
import type { ModifierText, Scope } from "./scope.ts";
import { isNone } from "./values.ts";

export interface FlatPour {
  /** The entry and the line that it is written on: a riff's inherited pours stand in the parent. */
  readonly entry: Entry;
  readonly line: number;
  readonly lead?: Pour["lead"];
  readonly quantity?: Quantity;
  readonly name: Name;
  readonly ingredient: Ingredient;
  readonly modifiers: readonly ModifierText[];
  readonly alternatives: readonly Alternative[];
  readonly stage: Stage;
}

export interface Alternative {
  readonly entry: Entry;
  readonly line: number;
  readonly quantity?: Quantity;
  readonly name: Name;
  readonly ingredient: Ingredient;
}

/** A line of a riff (or an `or`) that changes nothing, and why. */
export interface RiffProblem extends Place {
  readonly kind: "missing" | "ambiguous" | "orphan-or" | "unreadable";
  readonly name: string;
}

export interface FlatDrink {
  readonly entry: Entry;
  /** The drink it is a riff of, where `from:` names one that is declared. */
  readonly parent?: FlatDrink;
  readonly pours: readonly FlatPour[];
  readonly problems: readonly RiffProblem[];
  /** The drink's own field, else the inherited one; absent where there is none or it is `none`. */
  field(name: string): FieldAt | undefined;
  /** As `field`, but a `none` is answered as written. */
  statedField(name: string): FieldAt | undefined;
}

/** The fields that a riff takes from its parent. */
export const inherited: ReadonlySet<string> = new Set([
  "family",
  "glass",
  "method",
  "ice",
  "rim",
  "garnish",
  "serves",
  "total",
  "part",
  "parts by",
]);

export function flatten(house: House, entry: Entry): FlatDrink {
  return house.recall(entry, "flat", () => {
    const scope = house.scopeOf(entry);
    const from = findFieldIn(entry, "from")?.field.value?.text;
    const parentEntry = from && !isCyclic(house, entry) ? house.lookup(scope, "drink", from)[0]?.entry : undefined;
    const parent = parentEntry && parentEntry !== entry ? flatten(house, parentEntry) : undefined;
    const { pours, problems } = poursOf(house, scope, entry, parent?.pours ?? []);
    const statedField = (name: string): FieldAt | undefined =>
      findFieldIn(entry, name) ?? (inherited.has(name) ? parent?.statedField(name) : undefined);
    return {
      entry,
      ...(parent && { parent }),
      pours,
      problems,
      statedField,
      field(name) {
        const at = statedField(name);
        return at && !isNone(at.field) ? at : undefined;
      },
    };
  });
}

function poursOf(house: House, scope: Scope, entry: Entry, parents: readonly FlatPour[]): { pours: FlatPour[]; problems: RiffProblem[] } {
  const pours = [...parents];
  const problems: RiffProblem[] = [];
  const whole = (line: number, kind: RiffProblem["kind"], name = ""): RiffProblem => {
    const { text } = entry.lines[line]!;
    return { line, start: text.length - text.trimStart().length, end: text.trimEnd().length, kind, name };
  };
  let last = -1;
  for (const [line, { content }] of entry.lines.entries()) {
    if (content.kind === "pour" && content.pour.name) {
      last = place(house, scope, entry, line, content.pour, pours, parents.length > 0);
    } else if (content.kind === "swap") {
      const reading = content.readings.find(({ out }) => out.name && matching(house, scope, pours, out).length > 0) ?? content.readings[0];
      const found = reading?.out.name ? matching(house, scope, pours, reading.out) : [];
      if (found.length === 1 && reading!.in.name) {
        pours[found[0]!] = swapped(house, scope, entry, line, pours[found[0]!]!, reading!.in);
        last = found[0]!;
      } else {
        problems.push(whole(line, !reading ? "unreadable" : found.length > 1 ? "ambiguous" : "missing", reading?.out.name?.text));
        last = -1;
      }
    } else if (content.kind === "without" && content.pour?.name) {
      const found = matching(house, scope, pours, content.pour);
      if (found.length === 1 || (content.all && found.length > 0)) {
        for (const index of found.reverse()) pours.splice(index, 1);
      } else problems.push(whole(line, found.length > 1 ? "ambiguous" : "missing", content.pour.name.text));
      last = -1;
    } else if (content.kind === "or" && content.pour?.name) {
      const above = pours[last];
      if (above)
        pours[last] = { ...above, alternatives: [...above.alternatives, alternative(house, scope, entry, line, content.pour, above)] };
      else problems.push(whole(line, "orphan-or", content.pour.name.text));
    }
  }
  return { pours, problems };
}

/** A pour of something the parent has replaces its quantity; any other is added last in its stage. Answers its index. */
function place(house: House, scope: Scope, entry: Entry, line: number, pour: Pour, pours: FlatPour[], riff: boolean): number {
  const fresh = flatPour(house, scope, entry, line, pour);
  const same = riff ? pours.findIndex((one) => one.entry !== entry && sameIngredient(one, fresh.ingredient)) : -1;
  if (same >= 0) {
    const old = pours[same]!;
    const named = fresh.modifiers.length > 0;
    pours[same] = {
      ...fresh,
      modifiers: named ? fresh.modifiers : old.modifiers,
      stage: named ? fresh.stage : old.stage,
      alternatives: old.alternatives,
    };
    return same;
  }
  const firstAfter = pours.findIndex((one) => one.stage === "after");
  if (!riff || fresh.stage === "after" || firstAfter < 0) return pours.push(fresh) - 1;
  pours.splice(firstAfter, 0, fresh);
  return firstAfter;
}

function swapped(house: House, scope: Scope, entry: Entry, line: number, old: FlatPour, pour: Pour): FlatPour {
  const fresh = flatPour(house, scope, entry, line, pour);
  const quantity = pour.quantity ?? old.quantity;
  const lead = pour.lead ?? (pour.quantity ? undefined : old.lead);
  const { lead: _lead, quantity: _quantity, ...rest } = fresh;
  return { ...rest, stage: old.stage, ...(lead && { lead }), ...(quantity && { quantity }) };
}

function alternative(house: House, scope: Scope, entry: Entry, line: number, pour: Pour, above: FlatPour): Alternative {
  const quantity = pour.quantity ?? above.quantity;
  return { entry, line, name: pour.name!, ingredient: ingredientOf(house, scope, pour.name!), ...(quantity && { quantity }) };
}

/** A pour on a line of an entry with what its name means there. */
export function flatPour(house: House, scope: Scope, entry: Entry, line: number, pour: Pour): FlatPour {
  const ingredient = ingredientOf(house, scope, pour.name!);
  const { modifiers } = ingredient.resolution;
  return {
    entry,
    line,
    name: pour.name!,
    ingredient,
    modifiers,
    alternatives: [],
    stage: stageOf(pour, ingredient, modifiers),
    ...(pour.lead && { lead: pour.lead }),
    ...(pour.quantity && { quantity: pour.quantity }),
  };
}

/** In the vessel with the method's steps: everything but what tops, rinses, floats, rims, bubbles, or says `after`. */
function stageOf(pour: Pour, ingredient: Ingredient, modifiers: readonly ModifierText[]): Stage {
  const late =
    pour.lead?.lead === "top" ||
    pour.lead?.lead === "rinse" ||
    has(modifiers, "floated") ||
    has(modifiers, "to rim") ||
    has(modifiers, "after");
  return late || ingredient.facts?.fizz ? "after" : "vessel";
}

/** The indexes of the pours that a change means: by what is declared, else by the folded text; a quantity tells two apart. */
function matching(house: House, scope: Scope, pours: readonly FlatPour[], change: Pour): number[] {
  const meant = ingredientOf(house, scope, change.name!);
  const all = pours.flatMap((one, index) => (sameIngredient(one, meant) ? [index] : []));
  if (all.length < 2 || !change.quantity) return all;
  return all.filter((index) => sameQuantity(pours[index]!.quantity, change.quantity!));
}

export function sameIngredient(one: Pick<FlatPour, "ingredient">, other: Ingredient): boolean {
  const found = one.ingredient.resolution.found?.entry;
  const meant = other.resolution.found?.entry;
  if (found || meant) return found === meant;
  return fold(one.ingredient.resolution.text) === fold(other.resolution.text);
}

export function sameQuantity(one: Quantity | undefined, other: Quantity): boolean {
  return one?.value === other.value && one?.upTo === other.upTo && one?.unit?.unit === other.unit?.unit;
}
