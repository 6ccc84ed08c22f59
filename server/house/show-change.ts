/** How a riff differs from its parent, in words. */
import type { Figure } from "../engine/plan.ts";
import type { FigureChange, PourChange, Replaced } from "./riff-changes.ts";
import { type Measure, mlIn, showFigure, showList, showMoney, showValue } from "./show.ts";
import { showPour, showPourAmount } from "./show-pour.ts";

/** `17.8 (−3.2 ± 0.2)`, `105 (about the same)`: the parent's, and how far from it the riff lies. */
export function showChange({ before, change }: FigureChange, finest?: number): string {
  return `${showValue(before, finest)} (${signed(change, (size) => showFigure(size, "", finest))})`;
}

/** The same of a volume in the house's unit. */
export function showVolumeChange({ before, change }: FigureChange, measure: Measure): string {
  const size = mlIn(measure);
  const scaled = ({ value, plusMinus }: Figure): Figure => ({ value: value! / size, plusMinus: plusMinus! / size });
  return showChange({ before: scaled(before), change: scaled(change) }, measure.units === "ml" ? 0 : 2);
}

/** The same of money. */
export function showMoneyChange({ before, change }: FigureChange, currency: string | undefined): string {
  const money = (shown: Parameters<typeof showMoney>[0]) => showMoney(shown, currency);
  return `${money(before.value!)} (${signed(change, money)})`;
}

/** Less than its own uncertainty is no difference that anybody could tell. */
function signed({ value, plusMinus }: Figure, show: (size: Figure) => string): string {
  if (value === null) return "unknown";
  if (value === 0) return "the same";
  if (Math.abs(value) <= plusMinus!) return "about the same";
  return `${value < 0 ? "−" : "+"}${show({ value: Math.abs(value), plusMinus })}`;
}

/** `60 ml oloroso sherry for 50 ml aged rum; without egg white; another method and garnish`. Empty where all is the same. */
export function showChanges(pours: readonly PourChange[], fields: readonly string[]): string {
  return [showPourChanges(pours), fields.length > 0 && `another ${showList(fields)}`].filter(Boolean).join("; ");
}

/** `60 ml oloroso sherry for 50 ml aged rum; lemon juice 15 ml, not 22.5 ml; without egg white; with 15 ml fino sherry`. Empty where all is the same. */
export function showPourChanges(changes: readonly PourChange[]): string {
  const replaced = changes.flatMap((one) => (one.how === "swapped" || one.how === "changed" ? showReplaced(one) : []));
  const without = changes.flatMap((one) => (one.how === "left out" ? one.before.ingredient.resolution.text : []));
  const added = changes.flatMap((one) => (one.how === "added" ? showPour(one.after, one.after.ingredient) : []));
  return [...replaced, without.length > 0 && `without ${showList(without)}`, added.length > 0 && `with ${showList(added)}`]
    .filter(Boolean)
    .join("; ");
}

function showReplaced({ how, before, after }: Replaced): string {
  if (how === "swapped") return `${showPour(after, after.ingredient)} for ${showPour(before, before.ingredient)}`;
  const name = after.ingredient.resolution.text;
  const amounts = [after, before].map(showPourAmount);
  if (amounts[0] !== amounts[1] && amounts.every(Boolean)) return `${name} ${amounts[0]}, not ${amounts[1]}`;
  return [showPour(after, after.ingredient), ...after.modifiers.map(({ text }) => text)].join(", ");
}
