/** How a drink that stands outside its windows is put right by the amount of one pour. */
import type { FigureName } from "../engine/plan.ts";
import { type Adjustment, nearestAdjustments } from "../house/adjust.ts";
import { asWritten, nameOf } from "../house/bring-to.ts";
import type { Assessment } from "../house/drink.ts";
import { type Family, isInside, type WindowField } from "../house/family.ts";
import type { Fix } from "../house/finding.ts";
import type { House } from "../house/house.ts";
import { settingsOf } from "../house/settings.ts";
import type { Measure } from "../house/show.ts";
import { goals, showTarget } from "../house/targets.ts";
import type { Found } from "./rule.ts";

/** At most so many ways are offered. */
const most = 3;

/**
 * What to do and how it is done: the windows of these fields are to hold, and nothing that stands inside its
 * window now is to be driven out. `otherwise` where no one pour does it.
 */
export function putRight(
  house: House,
  assessment: Assessment,
  { windows }: Family,
  fields: readonly WindowField[],
  mayChange: Parameters<typeof nearestAdjustments>[3],
  otherwise: string,
): Pick<Found, "todo" | "fixes"> {
  const kept = [...windows.values()].filter((window) => fields.includes(window.field) || isInside(assessment.outcome, window));
  const ways = nearestAdjustments(house, assessment, kept, mayChange)
    .filter(({ weakens }) => !weakens)
    .slice(0, most);
  return {
    todo: ways[0] ? `${inWords(ways[0])} puts it right.` : otherwise,
    fixes: () => ways.map((way) => fixOf(way, fields, settingsOf(house, house.scopeOf(assessment.flat.entry)))),
  };
}

function inWords({ text, pour }: Adjustment): string {
  return `${text} ${nameOf(pour)} in place of ${asWritten(pour)}`;
}

/** With what the first of the figures that is known comes to. */
function fixOf(way: Adjustment, fields: readonly WindowField[], measure: Measure): Fix {
  const reached = fields.flatMap((field) => {
    const goal = goals.find(({ of, window }) => of === "drink" && window === field)!;
    const value = way.outcome.value(goal.figure as FigureName);
    return value === null ? [] : [showTarget({ goal, value }, measure)];
  });
  return { title: `${inWords(way)} (${reached[0]})`, safe: false, edits: [way.edit] };
}
