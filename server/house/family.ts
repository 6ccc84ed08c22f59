/** The windows that a drink is held against: its family's, each replaced by the drink's own where it states one. */
import type { FigureName, Outcome } from "../engine/plan.ts";
import { type FieldAt, findFieldIn } from "./entry.ts";
import type { House } from "./house.ts";
import type { FlatDrink } from "./riff.ts";
import { isWrong, readWindow, type Window } from "./values.ts";

/** The fields that hold windows, and the figure that each is about. One row each. */
export const windowFields = [
  { field: "ratio", figure: "ratio", scale: 1, unit: "" },
  { field: "strength", figure: "strengthPct", scale: 1, unit: "% vol" },
  { field: "sugar", figure: "sweetnessGPer100Ml", scale: 1, unit: "g/100 ml" },
  { field: "acid", figure: "acidGPer100Ml", scale: 1, unit: "g/100 ml" },
  { field: "salt", figure: "saltGPer100Ml", scale: 1, unit: "g/100 ml" },
  { field: "dilution", figure: "dilutionShare", scale: 0.01, unit: "" },
] as const satisfies readonly { field: string; figure: FigureName; scale: number; unit: string }[];

export type WindowField = (typeof windowFields)[number]["field"];

export interface FamilyWindow extends Window {
  readonly field: WindowField;
  readonly figure: FigureName;
  /** Where it is stated: the drink's own line or the family's. */
  readonly at: FieldAt;
}

/** Whether the plain figure stands inside. What is unknown is in no window. */
export function isInside(outcome: Pick<Outcome, "value">, { figure, low, high }: FamilyWindow): boolean {
  const value = outcome.value(figure);
  return value !== null && value >= low && value <= high;
}

export interface Family {
  readonly name: string;
  readonly windows: ReadonlyMap<WindowField, FamilyWindow>;
}

/** The family that a drink names with its windows; a drink without a family has only windows of its own. */
export function familyOf(house: House, flat: FlatDrink): Family {
  return house.recall(flat.entry, "family", () => {
    const named = flat.field("family")?.field.value?.text ?? "";
    const entry = named ? house.lookup(house.scopeOf(flat.entry), "family", named)[0]?.entry : undefined;
    const windows = new Map<WindowField, FamilyWindow>();
    for (const { field, figure, scale } of windowFields) {
      const at = findFieldIn(flat.entry, field) ?? (entry && findFieldIn(entry, field));
      const read = at && readWindow(at.field, "4 to 13");
      if (!read || isWrong(read) || !read.value) continue;
      windows.set(field, { field, figure, at, low: read.value.low * scale, high: read.value.high * scale });
    }
    return { name: entry?.name?.text ?? named, windows };
  });
}
