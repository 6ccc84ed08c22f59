/** A word behind an amount that is one slip away from a unit, or a unit that measures no pour. */
import type { Pour, Words } from "../../grammar/tree.ts";
import { type Dimension, type Unit, units } from "../../grammar/units.ts";
import type { House } from "../house/house.ts";
import { slipsBetween } from "../house/nearest.ts";
import type { Scope } from "../house/scope.ts";
import { poursNamed } from "./pours.ts";
import type { Rule } from "./rule.ts";

const pourable: ReadonlySet<Dimension> = new Set(["volume", "mass", "part", "piece"]);

export const unknownUnit: Rule = {
  code: "unknown-unit",
  severity: "warning",
  entries: ["drink", "prep"],
  docs: {
    title: "A unit that is not known",
    why: "A unit that is misspelt is read as part of the name: `50 mll gin` is fifty pieces of something called “mll gin”, and nothing is known of that.",
    bad: "drink Slip Water\n  glass: highball\n  method: build over cubed ice\n  garnish: none\n  50 mll gin\n",
    good: "drink Slip Water\n  glass: highball\n  method: build over cubed ice\n  garnish: none\n  50 ml gin\n",
  },
  *check(house, entry) {
    for (const { line, pour, ingredient } of poursNamed(house, entry)) {
      const unit = pour.quantity?.unit;
      if (unit && !pourable.has(unit.unit.dimension)) {
        yield {
          place: { line, start: unit.start, end: unit.end },
          what: `“${unit.text}” measures no pour, so nothing can be computed from this line.`,
          todo: "Write how much goes in, in ml, cl, oz, g or parts.",
        };
        continue;
      }
      const slip = ingredient.resolution.found ? undefined : slippedUnit(house, house.scopeOf(entry), pour);
      if (!slip) continue;
      const { word, near } = slip;
      yield {
        place: { line, start: word.start, end: word.end },
        what: `“${word.text}” is no unit, so this reads as so many pieces of “${pour.name!.text}”.`,
        todo: `Did you mean ${near.map(({ id }) => `“${id}”`).join(" or ")}?`,
        fixes: () =>
          near.map(({ id }) => ({
            title: `Change to “${id}”`,
            safe: false,
            edits: [{ entry, line, start: word.start, end: word.end, text: id }],
          })),
      };
    }
  },
};

/** Whether this rule finds fault with the pour's unit. */
export function hasStrangeUnit(house: House, scope: Scope, pour: Pour): boolean {
  const unit = pour.quantity?.unit;
  return (unit && !pourable.has(unit.unit.dimension)) || slippedUnit(house, scope, pour) !== undefined;
}

/** The first word of a counted pour's name, where it was probably meant as a unit: what follows it is a known name, and the whole is none. */
export function slippedUnit(house: House, scope: Scope, pour: Pour): { word: Words; near: readonly Unit[] } | undefined {
  const { quantity, name } = pour;
  if (!quantity || quantity.unit || !name || name.quoted) return undefined;
  const match = /^(\S+)\s+(?:of\s+)?/i.exec(name.text);
  if (!match) return undefined;
  const text = match[1]!.replace(/\.$/, "");
  const near = nearUnits(text);
  if (near.length === 0 || house.resolve(scope, ["ingredient", "drink"], name).found) return undefined;
  const from = name.start + match[0].length;
  const rest = { start: from, end: name.end, text: name.text.slice(match[0].length), commas: name.commas.filter((comma) => comma > from) };
  if (!house.resolve(scope, ["ingredient", "drink"], rest).found) return undefined;
  return { word: { start: name.start, end: name.start + match[1]!.length, text: match[1]! }, near };
}

/** The units one slip away, the ones that bars use most first. */
function nearUnits(written: string): Unit[] {
  const word = written.toLowerCase();
  const spellings = ({ id, also }: Unit) => [id, ...also];
  return units
    .filter((unit) => pourable.has(unit.dimension) && spellings(unit).some((one) => one.length > 1 && slipsBetween(one, word) === 1))
    .slice(0, 2);
}
