/** How far from its target a figure stays, in words. */
import { findUnit } from "../../grammar/units.ts";
import type { Figure } from "../engine/plan.ts";
import type { Reached } from "./bring-to.ts";
import { unitText } from "./measurable.ts";
import { capital, type Measure, showNumber } from "./show.ts";
import { showGoal, type Target } from "./targets.ts";

/** `0.3 above`, in the digits that the figure itself is shown in; absent where nothing is left that would be read. */
export function offText(leftOver: number, { value, plusMinus }: Figure, show: (value: number) => string): string | undefined {
  const size = Math.abs(leftOver);
  const off = plusMinus ? Number(size.toFixed(Math.max(0, -Math.floor(Math.log10(plusMinus / 2))))) : Number(size.toPrecision(2));
  return off < 1e-3 * Math.abs(value ?? 0) ? undefined : `${show(off)} ${leftOver > 0 ? "above" : "below"}`;
}

/** `Ratio 8.7 ± 0.5: 0.3 below; 19.3 ml would meet it, in steps of 2.5 ml.` */
export function leftOverText({ goal }: Target, { after, leftOver, exact, amount, step, unit }: Reached, measure: Measure): string {
  const figure = after.figure(goal.figure);
  const then = `${capital(goal.word)} ${showGoal(goal, figure, measure)}`;
  if (step === undefined) return `${then}; nothing here measures ${unit.id}, so this is exact.`;
  const off = offText(leftOver, figure, (value) => showGoal(goal, value, measure));
  if (!off) return `${then}: nothing to speak of is left over.`;
  const isExact = showNumber(exact) === showNumber(amount);
  const why = isExact ? "" : `; ${inUnit(exact, unit.id)} would meet it, in steps of ${inUnit(step, unit.id)}`;
  return `${then}: ${off}${why}.`;
}

function inUnit(value: number, unit: string): string {
  return `${showNumber(value)} ${unitText(findUnit(unit)!, unit, value)}`;
}
