/**
 * The water of a bottle: what the drink's own ice would have melted. A drink that is stirred and then served wants
 * it, for it is poured straight from the bottle; one that is shaken, blended or built on ice gets it there.
 */
import { type Measured, measureMl } from "./batch-measure.ts";
import type { Assessment } from "./drink.ts";
import type { Settings } from "./settings.ts";

export interface Water {
  /** 0 for none. */
  readonly exactMl: number;
  /** Its standard uncertainty: how much the ice would have melted is a model's word. */
  readonly plusMinus: number;
  readonly measured?: Measured;
  /** Why it is there, or why not. */
  readonly why: string;
}

/** `marked`: the spec says by itself what is batched. `isAll`: all that meets the ice is in the bottle. */
export function waterOf(
  { outcome, plan, steps }: Assessment,
  { marked, isAll }: { readonly marked: boolean; readonly isAll: boolean },
  asked: boolean | undefined,
  serves: number,
  settings: Settings,
): Water {
  const none = (why: string): Water => ({ exactMl: 0, plusMinus: 0, why });
  const water = outcome.figure("waterMl");
  if (asked === false) return none("left out, as asked");
  const atIce = steps.flatMap(({ technique }) => (technique?.chill ? [technique] : []));
  const iced = atIce.find(({ id }) => id !== "stir");
  if (asked === undefined) {
    if (iced) return none(`none: each is still to ${iced.words[0]} with ice, which brings it`);
    if (atIce.length > 0 && marked) return none("none: the ice brings it at service, with what is poured beside");
    if (atIce.length > 0 && !isAll) return none("none: it is still stirred with what stands apart, and the ice brings it");
    if (marked && !isAll) return none("none: what the method adds is poured at service");
  }
  if (water.value === null) return none(`how much the ice would have given is unknown: ${water.because?.join("; ")}`);
  if (!(water.value > 0)) return none("none: no ice meets it");
  const exactMl = (water.value * serves) / plan.serves;
  const plusMinus = (water.plusMinus! * serves) / plan.serves;
  // A millilitre of water is a gram, as near as anybody pours it.
  return { exactMl, plusMinus, measured: measureMl(exactMl, 1, undefined, settings), why: "for what the ice would have melted" };
}
