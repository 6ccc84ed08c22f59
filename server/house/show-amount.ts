/** An amount to buy or to make in words. */
import { type Measure, showNumber, showVolume, showWeight } from "./show.ts";

/** `4.12 l`, `560 g`, `1.2 kg`, `14`; pieces have no unit. */
export function showAmount(amount: number, unit: "ml" | "g" | "piece", measure: Measure): string {
  if (unit === "piece") return showNumber(amount, 1);
  if (unit === "g") return showWeight(amount);
  return measure.units !== "oz" && amount >= 1000 ? `${showNumber(amount / 1000, 2)} l` : showVolume(amount, measure);
}
