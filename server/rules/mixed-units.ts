/** Ounces and millilitres in one drink. */
import type { Entry, Quantity } from "../../grammar/tree.ts";
import { findUnit } from "../../grammar/units.ts";
import type { Edit, Fix } from "../house/finding.ts";
import { isMeasurable, isPoured, nearestMeasurable, stepOf, writtenNumber } from "../house/measurable.ts";
import { flatten } from "../house/riff.ts";
import { type Settings, settingsOf } from "../house/settings.ts";
import { poursWritten, type WrittenPour } from "./pours.ts";
import type { Rule } from "./rule.ts";
import { shaken, specimen } from "./specimen.ts";

export const mixedUnits: Rule = {
  code: "mixed-units",
  severity: "warning",
  entries: ["drink"],
  docs: {
    title: "Ounces and millilitres in one drink",
    why: "A bar measures with one set of jiggers. Between two a hand goes to the wrong one, and a `2` that is read as millilitres is no drink.",
    bad: specimen(["2 oz gin", "30 ml dry vermouth"], { ...shaken, method: "stir 30 s; strain" }),
    good: specimen(["60 ml gin", "30 ml dry vermouth"], { ...shaken, method: "stir 30 s; strain" }),
  },
  *check(house, entry) {
    const settings = settingsOf(house, house.scopeOf(entry));
    const strange = poursWritten(entry).filter(({ pour }) => isStrange(pour.quantity, settings));
    if (strange.length === 0) return;
    // What a riff inherits is measured beside what it writes.
    const all = [...flatten(house, entry).pours, ...poursWritten(entry).map(({ pour }) => pour)];
    if (!all.some(({ quantity }) => isMeasured(quantity) && !isStrange(quantity, settings))) return;
    const { line, pour } = strange[0]!;
    const { quantity } = pour;
    yield {
      place: { line, start: quantity!.start, end: quantity!.end },
      what: `This drink is measured in ${settings.units === "oz" ? "millilitres here and ounces" : "ounces here and millilitres"} elsewhere, so the hand has to change jiggers.`,
      todo: `Write all of it in ${settings.units}, as the house does.`,
      fixes: () => conversions(entry, strange, settings),
    };
  },
};

function isMeasured(quantity: Quantity | undefined): boolean {
  return quantity?.unit !== undefined && isPoured(quantity.unit.unit);
}

/** Measured with the jiggers that the house does not write in. */
function isStrange(quantity: Quantity | undefined, settings: Settings): boolean {
  return isMeasured(quantity) && (quantity!.unit!.unit.id === "oz") !== (settings.units === "oz");
}

/** To the house's unit: exactly, and to the nearest mark of the jigger where that is something else. */
function conversions(entry: Entry, strange: readonly WrittenPour[], settings: Settings): Fix[] {
  const unit = findUnit(settings.units)!;
  const step = stepOf(unit, settings)!;
  const size = unit.id === "oz" ? settings.ounceMl : unit.ml!;
  const amounts = strange.flatMap(({ line, pour: { quantity } }) => {
    const from = quantity!.unit!.unit;
    const factor = (from.id === "oz" ? settings.ounceMl : from.ml!) / size;
    return quantity!.value === undefined
      ? []
      : [
          {
            line,
            quantity: quantity!,
            values: [quantity!.value, quantity!.upTo].filter((value) => value !== undefined).map((value) => value * factor),
          },
        ];
  });
  const fix = (title: string, change: (value: number) => number): Fix => {
    const edits = amounts.map(({ line, quantity, values }): Edit => {
      const text = values.map((value) => writtenNumber(change(value), unit)).join("-");
      return { entry, line, start: quantity.numeral.start, end: quantity.end, text: `${text} ${unit.id}` };
    });
    return { title, safe: false, edits };
  };
  const exact = fix(`Write it in ${unit.id}, exactly`, (value) => Number(value.toPrecision(4)));
  if (amounts.every(({ values }) => values.every((value) => isMeasurable(value, step)))) return [exact];
  return [fix(`Write it in ${unit.id}, rounded to the jigger`, (value) => nearestMeasurable(value, step)), exact];
}
