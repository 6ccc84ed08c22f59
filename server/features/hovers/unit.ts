/** A unit: what it is, and for a bar measure how large it is here. */
import type { Quantity } from "../../../grammar/tree.ts";
import type { Unit } from "../../../grammar/units.ts";
import { sizeOf } from "../../house/amounts.ts";
import type { Settings } from "../../house/settings.ts";
import { type Measure, showNumber, showVolume, showWeight } from "../../house/show.ts";
import type { StockFacts } from "../../house/stock.ts";
import { asText, bold, paragraphs } from "../markdown.ts";

/** `facts`: the stock that is poured, which may have a dash of its own. */
export function describeUnit(unit: Unit, settings: Settings, measure: Measure, quantity?: Quantity, facts?: StockFacts): string {
  const size = sizeOf(unit, facts, settings);
  const here = unit.bar
    ? `Here: ${amount(unit, size.value, size.u)}, ${asText(size.why)}.`
    : unit.id === "oz" && `Here: ${showNumber(settings.ounceMl)} ml.`;
  const value = quantity?.value;
  const middle = value === undefined ? undefined : (value + (quantity?.upTo ?? value)) / 2;
  const all = middle !== undefined && size.value > 0 && inMeasure(unit, middle * size.value, measure);
  return paragraphs(`${bold(unit.id)} · ${unit.doc}`, here, all && `${asText(quantity!.numeral.text)} ${unit.id} = ${all}`);
}

function amount(unit: Unit, value: number, u: number): string {
  return unit.dimension === "mass" ? showWeight({ value, u }) : showVolume({ value, u }, { units: "ml", ounceMl: 1 });
}

/** In ml and in the house's unit; nothing where it is written so already. */
function inMeasure(unit: Unit, value: number, measure: Measure): string {
  if (unit.dimension === "mass") return unit.id === "g" ? "" : showWeight(value);
  const texts = [
    unit.id !== "ml" && `${showNumber(value)} ml`,
    measure.units !== "ml" && unit.id !== measure.units && showVolume(value, measure),
  ];
  return texts.filter(Boolean).join(" = ");
}
