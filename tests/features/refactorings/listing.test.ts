/** What is offered is asked on every move of the cursor: no drink is computed for it. */
import { expect, test } from "vitest";
import { refactoringsAt } from "../../../server/features/refactorings/all.ts";
import { assessDrink } from "../../../server/house/drink.ts";
import { houseIn } from "../../house/make.ts";

test("on no line of the demo house a drink is assessed to list what is offered there", () => {
  const house = houseIn("samples/halyard-room");
  const drinks = [...house.documents()].flatMap(({ tree }) => tree.entries.filter(({ kind }) => kind === "drink"));
  let offers = 0;
  for (const document of house.documents()) {
    for (let line = 0; line < document.tree.lineCount; line++) {
      const at = (further: number) => ({ start: { line, character: 0 }, end: { line: line + further, character: 1 } });
      for (const range of [at(0), at(1), at(2)]) offers += refactoringsAt(house, document, range, true).length;
    }
  }
  expect(offers).toBeGreaterThan(100);
  const isAssessed = (drink: (typeof drinks)[number]) => house.recall(drink, "assessment", () => undefined) !== undefined;
  expect(drinks.filter(isAssessed)).toEqual([]);
  // What is looked for is where it would be.
  const other = houseIn("samples/halyard-room");
  const [drink] = [...other.documents()].flatMap(({ tree }) => tree.entries.filter(({ kind }) => kind === "drink"));
  assessDrink(other, drink!);
  expect(other.recall(drink!, "assessment", () => undefined)).toBeDefined();
});
