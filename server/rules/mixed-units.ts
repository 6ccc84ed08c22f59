/** Ounces and millilitres in one drink. */
import type { Entry } from "../../grammar/tree.ts";
import { findUnit } from "../../grammar/units.ts";
import type { Edit, Fix } from "../house/finding.ts";
import { isMeasurable, isPoured, nearestMeasurable, stepOf, writtenNumber } from "../house/measurable.ts";
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
    const poured = [...poursWritten(entry)].filter(({ pour }) => pour.quantity?.unit && isPoured(pour.quantity.unit.unit));
    const strange = poured.filter((one) => isOunces(one) !== (settings.units === "oz"));
    if (strange.length === 0 || strange.length === poured.length) return;
    const { line, pour } = strange[0]!;
    const { quantity } = pour;
    yield {
      place: { line, start: quantity!.start, end: quantity!.end },
      what: `This drink is measured in ${isOunces(strange[0]!) ? "ounces here and millilitres" : "millilitres here and ounces"} elsewhere, so the hand has to change jiggers.`,
      todo: `Write all of it in ${settings.units}, as the house does.`,
      fixes: () => conversions(entry, strange, settings),
    };
  },
};

function isOunces({ pour }: WrittenPour): boolean {
  return pour.quantity?.unit?.unit.id === "oz";
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
