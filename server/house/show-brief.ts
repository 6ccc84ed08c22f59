/** Figures in as few words as stand behind a name: each with the digits that its uncertainty leaves true, and without it. */
import type { Figure } from "../engine/plan.ts";
import type { Assessment } from "./drink.ts";
import { perServe } from "./serve.ts";
import { type Measure, mlIn, showValue } from "./show.ts";

/** `21 % vol`, `105 ml`, `8.9`: strength, volume of one serve, ratio of sweetness to acid. What is unknown is left out. */
export function showBriefly({ outcome, plan, proportional }: Assessment, measure: Measure): string[] {
  const volume = perServe(outcome.figure("afterVolumeMl"), plan.serves);
  const ratio = outcome.figure("ratio");
  return [
    showStrengthBriefly(outcome.figure("strengthPct")),
    volume.value !== null && !proportional && showVolumeBriefly(volume, measure),
    ratio.value !== null && showValue(ratio, 1),
  ].flatMap((text) => text || []);
}

/** `21 % vol`; absent where it is unknown. */
export function showStrengthBriefly(strength: Figure): string | undefined {
  return strength.value === null ? undefined : `${showValue(strength, 1)} % vol`;
}

/** `105 ml`, `3.5 oz`. */
export function showVolumeBriefly({ value, plusMinus }: Figure, measure: Measure): string {
  if (value === null) return "unknown";
  const size = mlIn(measure);
  return `${showValue({ value: value / size, plusMinus: (plusMinus ?? 0) / size }, 2)} ${measure.units}`;
}
