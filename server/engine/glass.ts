/** What a glass does to the drink that is poured into it: heat passes until both are as warm. It melts no ice in the tin. */

import type { Uncertain } from "./plan.ts";
import { type Mixture, temperatureOf } from "./slush.ts";

/**
 * J/K of glass for each ml of drink in it: 0.6 g of glass touches a millilitre, from a thin bowl's 0.4 to
 * a thick tumbler's 0.9 (practice, no source), of 0.84 J/(g K) (soda-lime glass, engineering tables). A
 * glass from the back bar warms a cold drink by an eighth of the way between them, about 3 K.
 */
export const glassHeat: Uncertain = { value: 0.5, u: 0.15, why: "how much of the glass a drink touches, practice" };

/** Brings a mixture and a glass of that many J/K at °C together, as a moment after pouring; answers how warm both are then, °C. */
export function meetGlass(mixture: Mixture, jPerK: number, glassC: number): number {
  const given = (tC: number): number => jPerK * (glassC - tC);
  const temperatureC = temperatureOf(mixture, given);
  mixture.heatJ += given(temperatureC);
  return temperatureC;
}
