/** Which of a drink's figures stand outside the windows that it is held against, and by how much. */
import type { Entry } from "../../grammar/tree.ts";
import type { Figure, Outcome } from "../engine/plan.ts";
import type { Place } from "../house/document.ts";
import type { Assessment } from "../house/drink.ts";
import { findFieldIn } from "../house/entry.ts";
import type { Family, FamilyWindow } from "../house/family.ts";
import { showFigure, showNumber, showShare } from "../house/show.ts";
import { headPlace } from "./places.ts";
import type { Found } from "./rule.ts";

export interface Outside {
  readonly window: FamilyWindow;
  readonly figure: Figure;
  readonly side: "below" | "above";
  /** So far outside that no taste explains it. */
  readonly far: boolean;
}

/** Below ¾ of a window's lower end or above 1.3 of its upper end a drink is far outside: practice, no source. */
const farBelow = 0.75;
const farAbove = 1.3;

/** Outside by more than twice the uncertainty; absent inside, near the edge, and where the figure is unknown. */
export function findOutside(outcome: Outcome, window: FamilyWindow | undefined): Outside | undefined {
  if (!window) return undefined;
  const { low, high } = window;
  const value = outcome.value(window.figure);
  if (value === null || (value >= low && value <= high)) return undefined;
  const figure = outcome.figure(window.figure);
  const side = value < low ? "below" : "above";
  const by = side === "below" ? low - value : value - high;
  if (by <= 2 * (figure.plusMinus ?? 0)) return undefined;
  return { window, figure, side, far: value < farBelow * low || value > farAbove * high };
}

/** `17.6 ± 0.6 g/100 ml of sugar, where 4 to 10.5 is usual`. */
export function showOutside({ window, figure }: Outside): string {
  if (window.field === "dilution") {
    return `water added is ${showShare(figure)} of the volume before, where ${showNumber(window.low * 100)} to ${showNumber(window.high * 100)} % is usual`;
  }
  const what = names[window.field];
  return `${what.before}${showFigure(figure, what.unit)}${what.after}, where ${showNumber(window.low)} to ${showNumber(window.high)} is usual`;
}

const names: Record<Exclude<FamilyWindow["field"], "dilution">, { before: string; unit: string; after: string }> = {
  ratio: { before: "sweetness is ", unit: "times", after: " the acid" },
  strength: { before: "it holds ", unit: "% vol", after: "" },
  sugar: { before: "sweetness is ", unit: "g/100 ml", after: "" },
  acid: { before: "acid is ", unit: "g/100 ml", after: "" },
  salt: { before: "salt is ", unit: "g/100 ml", after: "" },
};

/** Where a finding about a window stands: on the drink's own window, else on its family, else on its name. */
export function placeOfWindow(entry: Entry, { at }: FamilyWindow): Place {
  const own = at.entry === entry ? at : findFieldIn(entry, "family");
  const words = own?.field.value ?? own?.field.name;
  return own && words ? { line: own.line, start: words.start, end: words.end } : headPlace(entry);
}

/** Information near the window, a warning far from it, a hint for a draft. */
export function severityOf(entry: Entry, outsides: readonly Outside[]): NonNullable<Found["severity"]> {
  if (isDraft(entry)) return "hint";
  return outsides.some(({ far }) => far) ? "warning" : "information";
}

export function isDraft(entry: Entry): boolean {
  return findFieldIn(entry, "status")?.field.value?.text.toLowerCase() === "draft";
}

/** `“egg sour”`, or what it is called where the drink has windows of its own only. */
export function standard({ flat }: Assessment, family: Family): string {
  return family.name ? `“${family.name}”` : `what ${flat.entry.name?.text || "the drink"} asks for`;
}
