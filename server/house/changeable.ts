/** A drink or a prep as something of which one amount can be changed: what there is to change, and what it comes to then. */
import { readLine } from "../../grammar/line.ts";
import type { Entry, Pour } from "../../grammar/tree.ts";
import type { Unit } from "../../grammar/units.ts";
import { plannedAmount, withAmount as planWith } from "../engine/adjust.ts";
import { assess } from "../engine/assess.ts";
import type { Figure, FigureName, PrepFigureName } from "../engine/plan.ts";
import { assessPrep } from "../engine/prep.ts";
import { type Assessment, assessDrink, assessFlat } from "./drink.ts";
import { findFieldIn, linesOf } from "./entry.ts";
import type { House } from "./house.ts";
import { isPoured, stepOf } from "./measurable.ts";
import { assessPrepEntry, isProportional, prepModel, prepPour, prepPours } from "./prep.ts";
import { type FlatPour, flatPour } from "./riff.ts";
import { type Settings, settingsOf } from "./settings.ts";

/** A pour of a drink or of a prep, on the line where it stands; a new one stands on the entry's head. */
export type ChangedPour = Pick<FlatPour, "entry" | "line" | "lead" | "quantity" | "name" | "ingredient">;

export interface Computed {
  value(name: FigureName | PrepFigureName): number | null;
  figure(name: FigureName | PrepFigureName): Figure;
}

export interface Changeable {
  readonly entry: Entry;
  readonly settings: Settings;
  /** As it stands. */
  readonly now: Computed;
  /** What is in the liquid. */
  readonly pours: readonly ChangedPour[];
  /** What is written too and is none of it: options, rims, what stays behind. */
  readonly aside: readonly ChangedPour[];
  /** The pours are for so many serves. */
  readonly serves: number;
  /** Written in parts without a size: there are shares and no amounts. */
  readonly proportional: boolean;
  /** Written in parts of a stated total. */
  readonly shared: boolean;
  /** With so many of a pour's unit, new or in the place of what stands. */
  with(pour: ChangedPour, amount: number): Computed;
  /** The same for many amounts of one pour, quickly: only the values are right, not how sure they are. */
  by(pour: ChangedPour): (amount: number) => Pick<Computed, "value">;
  /** A pour as the entry would take it: its text is a line of a spec. Absent where it brings nothing to the liquid. */
  read(text: string): ChangedPour | undefined;
}

/** Absent for an entry of another kind. */
export function changeable(house: House, entry: Entry): Changeable | undefined {
  if (entry.kind === "drink") return changeableDrink(house, assessDrink(house, entry));
  return entry.kind === "prep" ? changeablePrep(house, entry) : undefined;
}

export function changeableDrink(house: House, assessment: Assessment): Changeable {
  const { flat, outcome, pours, plan, proportional } = assessment;
  const { entry } = flat;
  const replaced = (pour: FlatPour): readonly FlatPour[] => {
    const index = flat.pours.findIndex((one) => one.entry === pour.entry && one.line === pour.line);
    return index < 0 ? [...flat.pours, pour] : flat.pours.with(index, pour);
  };
  const changed = (pour: FlatPour) => assessFlat(house, { ...flat, pours: replaced(pour) });
  const shared = flat.field("total") !== undefined && flat.field("part") === undefined;
  return {
    entry,
    settings: settingsOf(house, house.scopeOf(entry)),
    now: outcome,
    pours,
    aside: flat.pours.filter((pour) => !pours.includes(pour)),
    serves: plan.serves,
    proportional,
    shared,
    with: (pour, amount) => changed(withAmount(pour as FlatPour, amount)).outcome as Computed,
    by(pour) {
      const whole = isNew(pour) ? changed(pour as FlatPour) : assessment;
      const index = whole.pours.findIndex((one) => one.name === pour.name);
      const size = plannedAmount(whole.plan, index);
      // Parts of a stated total share it out anew.
      if (size === undefined || shared) return (amount) => changed(withAmount(pour as FlatPour, amount)).outcome as Computed;
      const one = size / pour.quantity!.value!;
      return (amount) => assess(planWith(whole.plan, index, amount * one)) as Computed;
    },
    read(text) {
      const pour = pourIn(text);
      const fresh = pour && flatPour(house, house.scopeOf(entry), entry, 0, pour);
      return fresh && changed(fresh).pours.includes(fresh) ? fresh : undefined;
    },
  };
}

function changeablePrep(house: House, entry: Entry): Changeable {
  const model = prepModel(house, entry);
  const pours = prepPours(house, entry);
  const asChanged = ({ line, pour, ingredient }: (typeof pours)[number]): ChangedPour & { pour: Pour } => {
    return {
      entry,
      line,
      ingredient,
      pour,
      name: pour.name!,
      ...(pour.lead && { lead: pour.lead }),
      ...(pour.quantity && { quantity: pour.quantity }),
    };
  };
  const withPart = (changed: ChangedPour, amount: number) => {
    const { line, pour } = changed as ReturnType<typeof asChanged>;
    const { part } = prepPour(house, entry, line, withAmount(pour, amount))!;
    const index = pours.findIndex((one) => one.line === line);
    const parts = pours.map((one) => one.part);
    const whole = model.type === "prep" ? model : { type: "prep" as const, name: model.name };
    return assessPrep({ ...whole, parts: index < 0 ? [...parts, part] : parts.with(index, part) }) as Computed;
  };
  return {
    entry,
    settings: settingsOf(house, house.scopeOf(entry)),
    now: assessPrepEntry(house, entry) as Computed,
    pours: pours.filter(({ part }) => !part.discarded).map(asChanged),
    aside: pours.filter(({ part }) => part.discarded).map(asChanged),
    serves: 1,
    proportional: isProportional(entry),
    shared: false,
    by: (pour) => (amount) => withPart(pour, amount),
    with: withPart,
    read(text) {
      const pour = pourIn(text);
      const fresh = pour && prepPour(house, entry, 0, pour);
      return fresh && !fresh.part.discarded ? asChanged(fresh) : undefined;
    },
  };
}

function withAmount<P extends { readonly quantity?: ChangedPour["quantity"] }>(pour: P, value: number): P {
  return { ...pour, quantity: { ...pour.quantity!, value } };
}

/** What a line pours; absent where it reads as anything else, or pours nothing of a name. */
function pourIn(text: string): Pour | undefined {
  const { content } = readLine(`  ${text}`);
  return content.kind === "pour" && content.pour.name ? content.pour : undefined;
}

/** Whether the pour stands nowhere yet. */
export function isNew({ line }: ChangedPour): boolean {
  return line === 0;
}

/** Why the amount of a pour cannot be changed as it is written; absent where it can. */
export function whyFixed(
  { proportional }: Pick<Changeable, "proportional">,
  { entry, line, lead, quantity, ingredient }: ChangedPour,
): string | undefined {
  const name = ingredient.resolution.text;
  if (lead?.lead === "top" && !quantity) return `${name} fills up what is left, so it has no amount of its own.`;
  if (!quantity) return `No amount of ${name} is written; write one first.`;
  if (quantity.value === undefined) return `“${quantity.numeral.text}” can be read in two ways; write the amount of ${name} in one.`;
  if (quantity.upTo !== undefined) return `${name} is poured by a range; write one amount first.`;
  const unit = quantity.unit?.unit;
  if (!unit || unit.dimension === "piece") return `${name} is counted, and cannot be measured out finer.`;
  if (proportional && unit.dimension !== "part")
    return `The rest is in parts without a size, beside which an amount of ${name} says nothing.`;
  const isLoose = unit.dimension === "part" && ingredient.facts?.model.solid && !findFieldIn(entry, "parts by");
  if (isLoose && line === 0) return `${name} is a solid: say \`parts by: weight\` or \`volume\` first, and what a part of it is.`;
  return quantity.value > 0 ? undefined : `The amount of ${name} is nothing; write one first.`;
}

/** The step in which a pour of this unit is measured, in that unit: with a jigger one for each serve. Absent where nothing measures it. */
export function stepFor(unit: Unit, settings: Settings, serves: number): number | undefined {
  const step = stepOf(unit, settings);
  return step && isPoured(unit) ? step * Math.max(1, serves) : step;
}

/** The unit that a new pour is written in: the entry's parts or grams, what a solid or bitters are dosed in, else the house's. */
export function usualUnit({ entry, settings }: Changeable, { ingredient }: ChangedPour): string {
  const units = [...linesOf(entry, "pour")].flatMap(({ content }) => content.pour.quantity?.unit?.unit ?? []);
  if (units.some(({ dimension }) => dimension === "part")) return "part";
  if (ingredient.facts?.model.solid) return "g";
  if (ingredient.facts?.kind === "bitters") return "dash";
  return entry.kind === "prep" && units.some(({ dimension }) => dimension === "mass") ? "g" : settings.units;
}
