/** An amount between two marks of the jigger. */
import type { Entry } from "../../grammar/tree.ts";
import type { Fix } from "../house/finding.ts";
import type { House } from "../house/house.ts";
import { isMeasurable, isPoured, nearestMeasurable, stepOf, writtenNumber } from "../house/measurable.ts";
import { flatten } from "../house/riff.ts";
import { type Settings, settingsOf } from "../house/settings.ts";
import { showShare, showVolume } from "../house/show.ts";
import { isWrong, readQuantity } from "../house/values.ts";
import { isFaulty } from "./places.ts";
import { poursWritten, type WrittenPour } from "./pours.ts";
import type { Found, Rule } from "./rule.ts";
import { specimen } from "./specimen.ts";

/** Rounding by more than this share makes another drink of it, and is not offered. */
const mostRounding = 0.25;

export const unmeasurable: Rule = {
  code: "unmeasurable",
  severity: "information",
  entries: ["drink"],
  docs: {
    title: "No jigger measures this",
    why: "An amount between two marks is poured by eye, and every hand pours another. The marks are the house's `jigger:`, 2.5 ml where it states none. What is weighed, counted, dashed or given in parts is not looked at, nor what is poured for several serves at once.",
    bad: specimen(["51 ml gin"]),
    good: specimen(["50 ml gin"]),
  },
  *check(house, entry) {
    if (isForSeveral(house, entry)) return;
    const settings = settingsOf(house, house.scopeOf(entry));
    for (const written of poursWritten(entry)) {
      const found = foundIn(entry, written, settings);
      if (found) yield found;
    }
  },
};

/** Jugs and bottles measure what is poured for several at once. */
function isForSeveral(house: House, entry: Entry): boolean {
  const serves = flatten(house, entry).field("serves")?.field;
  const read = serves && readQuantity(serves, "1");
  return read !== undefined && !isWrong(read) && read.value.value !== 1;
}

function foundIn(entry: Entry, { line, pour }: WrittenPour, settings: Settings): Found | undefined {
  const { quantity, lead } = pour;
  const unit = quantity?.unit?.unit;
  if (!quantity?.value || !unit || !isPoured(unit) || quantity.upTo !== undefined || quantity.about || lead) return undefined;
  const step = stepOf(unit, settings)!;
  if (isMeasurable(quantity.value, step) || isFaulty(entry.lines[line]!)) return undefined;
  const nearest = nearestMeasurable(quantity.value, step);
  const text = writtenNumber(nearest, unit, quantity);
  const off = nearest / quantity.value - 1;
  const size = unit.id === "oz" ? settings.ounceMl : unit.ml!;
  const fix: Fix = {
    title: `Round to ${text} ${unit.id} (${off > 0 ? "+" : "−"}${showShare(Math.abs(off))})`,
    safe: false,
    edits: [{ entry, line, start: quantity.numeral.start, end: quantity.numeral.end, text }],
  };
  const rounds = Math.abs(off) <= mostRounding;
  return {
    place: { line, start: quantity.start, end: quantity.end },
    what: `No jigger here measures ${quantity.numeral.text} ${quantity.unit!.text}: its marks are ${showVolume(step * size, settings)} apart, so this is poured by eye.`,
    todo: rounds ? `The nearest mark is ${text} ${unit.id}.` : "Write so small an amount in dashes, drops or barspoons, or weigh it.",
    fixes: () => (rounds ? [fix] : []),
  };
}
