import { expect, test } from "vitest";
import { changeHints } from "../../server/features/change-hints.ts";
import { compareAhead, movedAhead } from "../../server/house/compare/touched.ts";
import type { House } from "../../server/house/house.ts";
import { documentsOf, houseOf, root } from "../house/make.ts";

const bar = `house The Slip
  currency: GBP

stock pier spirit
  kind: spirit
  abv: 40 %
  price: 20.00 per 1 l

stock nut cordial
  kind: syrup
  sugar: 60 g/100 ml
  allergens: nuts
  price: 10.00 per 1 l
=== card.drink
drink Slip # short
  glass: none
  method: none
  50 ml pier spirit
  50 ml water

drink Rope
  from: Slip
  10 ml water

menu Winter
  - Slip 10.00
=== other.drink
drink Hawser
  glass: none
  method: none
  30 ml pier spirit
`;
const everywhere = { start: { line: 0, character: 0 }, end: { line: 99, character: 0 } };

/** The hints of a file whose text was another, `then`; the rest of the house is as it is. */
function hintsIn(file: string, then: string, now: string, range = everywhere) {
  const after = houseOf(now);
  const before: House = after.supposing(documentsOf(then).filter(({ uri }) => uri === `${root}/${file}`));
  const houses = { before, after };
  for (const _piece of compareAhead(houses));
  const moved = [...movedAhead(houses)].filter((entry) => entry !== undefined);
  return changeHints(houses, after.document(`${root}/${file}`)!, range, moved);
}
const labels = (...asked: Parameters<typeof hintsIn>) => hintsIn(...asked).map(({ position: { line }, label }) => `${line} ${label}`);

test("a changed drink and a riff that nobody touched, behind their names", () => {
  // 20 ml of 40 % in 100 ml is 20 %; 12 ml in 80 ml is 15 %. A litre at £20 is 2p a millilitre.
  const then = bar.replace("50 ml pier", "30 ml pier");
  expect(labels("card.drink", then, bar)).toEqual([
    expect.stringMatching(/^0 cost £0\.60 → £1\.00, 6 % → 10 % of the price · strength 15 → 20 % vol · volume 80 → 100 ml · \d more$/),
    expect.stringMatching(/^6 cost £0\.60 → £1\.00 · strength /),
  ]);
  const [hint] = hintsIn("card.drink", then, bar);
  expect(hint!.position.character).toBe("drink Slip".length);
  expect(hint!.tooltip).toMatchObject({ value: expect.stringContaining("pier spirit 50 ml, not 30 ml") });
});

test("what could hurt a guest stands first, and is never cut", () => {
  const now = bar.replace("  50 ml water", "  50 ml nut cordial");
  const [first] = labels("card.drink", bar, now);
  expect(first).toMatch(/^0 now contains nuts/);
});

test("a stock says how many drinks it moves, wherever they stand", () => {
  const hints = hintsIn("spec.drink", bar.replace("abv: 40 %", "abv: 43 %"), bar);
  expect(hints.map(({ label }) => label)).toEqual(["moves 3 drinks"]);
  expect(hints[0]!.position).toEqual({ line: 3, character: "stock pier spirit".length });
  expect(hints[0]!.tooltip).toMatchObject({ value: expect.stringMatching(/- Slip\n- Rope\n- Hawser$/) });
});

test("a menu, a new drink and another name", () => {
  const now = bar
    .replace("Slip 10.00", "Slip 12.00")
    .replace("menu Winter", "drink Oar\n  30 ml pier spirit\n  10 ml nut cordial\n\nmenu Winter");
  expect(labels("card.drink", bar, now)).toEqual([
    "0 cost 10 % → 8 % of the price",
    "10 contains nuts · allergens not stated for pier spirit · new",
    "14 Slip £10.00 → £12.00 · prices £10.00 to £10.00 → £12.00 to £12.00",
  ]);
  expect(labels("other.drink", bar, bar.replace("Hawser", "Cable"))).toEqual(["0 was Hawser"]);
});

test("nothing where nothing changed, where only blanks did, and outside the range", () => {
  expect(labels("card.drink", bar, bar)).toEqual([]);
  expect(labels("card.drink", bar, bar.replace("# short", "#  shorter"))).toEqual([]);
  expect(labels("card.drink", bar.replace("50 ml pier", "30 ml pier"), bar, { ...everywhere, start: { line: 7, character: 0 } })).toEqual(
    [],
  );
  expect(labels("card.drink", "=== card.drink\n)(:\n\n- \n", bar).length).toBeGreaterThan(0);
});
