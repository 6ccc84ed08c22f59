/** A liquid in the cold: where it starts to freeze, how much of it is ice then, and whether that still pours. */

import { liquidOf } from "./composition.ts";
import { massOf } from "./liquid.ts";
import type { Figure, Model, Uncertain } from "./plan.ts";
import { mergeTexts } from "./reasons.ts";
import { iceWithin } from "./slush.ts";
import { differentiate, read, type Shift, sourcesOf, spreadsOf } from "./uncertainty.ts";

export interface InTheCold {
  /** °C. */
  readonly freezingC: Figure;
  /** Grams of ice in a gram of it. */
  readonly iceShare: Figure;
}

/** From this share of ice by weight a bottle that stood still does not pour: practice, no source. */
export const mostIceThatPours = 0.2;

/**
 * At this temperature, −40…0 °C. So much of the water is ice as leaves a liquid that freezes just there; that
 * no sugar or salt falls out beside it is taken for granted, which holds for what is poured. Unknown where
 * strength, sugar or volume are.
 */
export function inTheCold(model: Model, temperatureC: Uncertain): InTheCold {
  const { reasons } = liquidOf(model);
  const because = [reasons.volume, reasons.ethanol, reasons.sugar].reduce(mergeTexts);
  const unknown: Figure = { value: null, plusMinus: null, because };
  if (because.length > 0) return { freezingC: unknown, iceShare: unknown };
  const figures = (shift?: Shift): number[] => {
    const { perGram, freezingC } = liquidOf(model, shift);
    return [freezingC, iceWithin(perGram, read(temperatureC, shift)) / massOf(perGram)];
  };
  const [freezingC, iceShare] = figures() as [number, number];
  const [ofFreezing, ofIce] = spreadsOf(differentiate([...sourcesOf(model), temperatureC], figures), 2) as [number, number];
  return {
    freezingC: { value: freezingC, plusMinus: ofFreezing },
    iceShare: { value: iceShare, plusMinus: ofIce },
  };
}
