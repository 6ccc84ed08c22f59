/** Drinks of no bar, as text, and what they come to: for what must hold of any drink. */
import fc from "fast-check";
import { figureNames, type Outcome } from "../../../server/engine/plan.ts";
import { assessDrink } from "../../../server/house/drink.ts";
import type { House } from "../../../server/house/house.ts";
import { suitabilityOf } from "../../../server/house/suitability.ts";
import { entryNamed } from "../../house/make.ts";

const amount = fc.oneof(
  fc.integer({ min: 1, max: 24 }).map((steps) => `${2.5 * steps} ml`),
  fc.integer({ min: 1, max: 90 }).map((tenths) => `${tenths / 10} cl`),
  fc.constantFrom("1 oz", "1 1/2 oz", "3/4 oz", "2 dashes", "1 barspoon", "10 to 15 ml", "about 20 ml", "5ml"),
);
const liquid = fc.constantFrom(
  "dry gin",
  "aged rum",
  "rye whiskey",
  "sweet vermouth",
  "orange liqueur",
  "aromatic bitters",
  "lemon juice",
  "lime juice",
  "simple syrup",
  "honey",
  "water",
  "cream",
);
const modifier = fc.constantFrom("", "", "", ", frozen", ", chilled", ", optional", ", after", "  # as it comes");
const counted = fc.constantFrom("1 egg white", "6 mint leaves, muddled", "2 cherries", "1 pinch sea salt", "1 lime, juiced");
const alternative = fc.option(fc.tuple(fc.constantFrom("", "20 ml "), fc.constantFrom("verjus", "lime juice", "agave syrup")), { freq: 5 });
const above = fc.constantFrom("", "", "", "", "  # first things\n", "\n");

const pour = fc
  .tuple(
    above,
    fc.oneof(
      { weight: 6, arbitrary: fc.tuple(amount, liquid, modifier).map(([a, b, c]) => `${a} ${b}${c}`) },
      { weight: 1, arbitrary: counted },
    ),
    alternative,
  )
  .map(([before, text, or]) => `${before}  ${text}\n${or ? `    or ${or.join("")}\n` : ""}`);
const last = fc.constantFrom("", "", "  top soda water\n", "  top to 180 ml soda water\n", "  rinse absinthe, discarded\n");
const fields = fc.constantFrom(
  "  glass: coupe\n  method: shake 12 s; fine strain\n",
  "  glass: highball\n  method: build over 120 g cubed ice\n  garnish: 1 lime wheel; 3 cloves\n",
  "  glass: rocks, chilled\n  method: stir 30 s; strain over large cube\n  price: 12.50\n  serves: 2\n",
  "  family: sour\n  glass: coupe\n",
  "  method: blend with 150 g crushed ice\n  rim: sea salt, half\n",
);

/** The lines of a drink below its head. */
export const anyBody = fc
  .tuple(fields, fc.array(pour, { minLength: 2, maxLength: 6 }), last)
  .map(([above, pours, end]) => `${above}\n${pours.join("")}${end}`);

/** Names that read as something else where they are not quoted, and plain ones. */
export const anyName = fc.constantFrom(
  "Slip",
  "12 Bells",
  "Top Rope",
  "Gin for Two",
  "Over # Under",
  "Or Else",
  "Été 🍋",
  "Lantern, Low",
  "A; B",
);

export function outcomeOf(house: House, name: string): Outcome {
  return assessDrink(house, entryNamed(house, name)).outcome;
}

/** All figures, and what it holds for a guest: what a change that keeps a drink keeps. */
export function meaningOf(house: House, name: string) {
  const outcome = outcomeOf(house, name);
  return {
    figures: Object.fromEntries(figureNames.map((figure) => [figure, outcome.value(figure)?.toPrecision(9)])),
    suitability: suitabilityOf(house, entryNamed(house, name)),
  };
}
