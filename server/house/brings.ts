/** What so much of an ingredient brings to a drink, in grams. */
import { liquidOf } from "../engine/composition.ts";
import { at, sugarOf } from "../engine/liquid.ts";
import { type Amount, type Model, sugarKinds } from "../engine/plan.ts";
import { sugars } from "../engine/substances.ts";

/** Grams, but where the name says otherwise; null where it is unknown, `because` says why. */
export interface Brings {
  readonly g: number;
  /** As it is measured at 20 °C; null where the weight of a millilitre is unknown. */
  readonly ml: number | null;
  readonly ethanolG: number | null;
  readonly sugarG: number | null;
  /** The weight of sucrose that is as sweet. */
  readonly sweetnessG: number | null;
  /** Titratable, as citric. */
  readonly acidG: number | null;
  readonly waterG: number | null;
  readonly saltG: number | null;
  readonly caffeineMg: number | null;
  readonly because: readonly string[];
}

/** The amount in both measures, and what is in it. Answers the reason where the amount itself is unknown. */
export function bringsOf(model: Model, amount: Amount): Brings | { readonly unknown: string } {
  const known = "ml" in amount ? amount.ml : amount.g;
  if ("because" in known) return { unknown: known.because };
  const liquid = liquidOf(model);
  const weighed = "g" in amount;
  const reasons = weighed ? liquid.reasonsWeighed : liquid.reasons;
  if (!weighed && reasons.volume.length > 0) return { unknown: reasons.volume[0]! };
  const g = weighed ? known.value : known.value * liquid.gPerMl;
  const of = (index: number) => g * liquid.perGram[index]!;
  const when = (topic: keyof typeof reasons, value: number) => (reasons[topic].length > 0 ? null : value);
  return {
    g,
    ml: weighed ? when("volume", g / liquid.gPerMl) : known.value,
    ethanolG: when("ethanol", of(at.ethanol)),
    sugarG: when("sugar", g * sugarOf(liquid.perGram)),
    sweetnessG: when(
      "sugar",
      sugarKinds.reduce((sum, kind) => sum + of(at[kind]) * sugars[kind].sweetness.value, 0),
    ),
    acidG: when("acid", of(at.titratable)),
    waterG: reasons.ethanol.length + reasons.sugar.length > 0 ? null : of(at.water),
    saltG: when("salt", of(at.salt)),
    caffeineMg: when("caffeine", of(at.caffeineMg)),
    because: [...new Set([...reasons.ethanol, ...reasons.sugar, ...reasons.acid, ...reasons.salt, ...reasons.caffeine])],
  };
}
