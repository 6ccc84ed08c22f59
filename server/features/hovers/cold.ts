/** Where something starts to freeze, and whether it still pours from the freezer. */
import type { Entry } from "../../../grammar/tree.ts";
import { inTheCold } from "../../engine/cold.ts";
import type { Model } from "../../engine/plan.ts";
import type { Assessment } from "../../house/drink.ts";
import { batchOfDrink, isSolid } from "../../house/frozen.ts";
import type { House } from "../../house/house.ts";
import { settingsOf } from "../../house/settings.ts";
import { showShare, showTemperature } from "../../house/show.ts";

/** `from −6.2 ± 0.3 °C; 50 ± 3 % of it is ice at −18 °C, and it does not pour`; absent where it is unknown. */
export function showFreezing(house: House, entry: Entry, model: Model): string | undefined {
  const { freezerC } = settingsOf(house, house.scopeOf(entry));
  const cold = inTheCold(model, freezerC);
  const { value } = cold.iceShare;
  if (value === null) return undefined;
  const there = `at ${showTemperature(freezerC.value)}`;
  const ice = `${showShare(cold.iceShare)} of it is ice ${there}${isSolid(cold) ? ", and it does not pour" : ""}`;
  return `from ${showTemperature(cold.freezingC)}; ${value === 0 ? `liquid ${there}` : ice}`;
}

/** Of a drink that is diluted beforehand, or held in the cold: it is made to stand there. */
export function describeBatch(house: House, assessment: Assessment): string | undefined {
  const { plan, flat } = assessment;
  if (!plan.steps.some(({ technique }) => technique.dilutes || technique.id === "hold")) return undefined;
  const batch = batchOfDrink(assessment);
  const freezing = batch && showFreezing(house, flat.entry, batch);
  return freezing && `Batched, it freezes ${freezing}.`;
}
