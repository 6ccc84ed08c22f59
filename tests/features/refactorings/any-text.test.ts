/** On any text, however broken: nothing throws, edits do not overlap, and no two offers say the same. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { refactoringsAt } from "../../../server/features/refactorings/all.ts";
import { scaleAt } from "../../../server/features/refactorings/scale.ts";
import { anyText } from "../../grammar/texts.ts";
import { houseOf } from "../../house/make.ts";
import { anyBody } from "./drinks.ts";
import { textAfter } from "./offered.ts";

test("each offer is made or says why not", () => {
  const text = fc.oneof(
    anyText,
    fc.tuple(anyBody, anyText, anyBody).map(([one, other, last]) => `drink Slip\n${one}${other}\ndrink Ebb\n  from: Slip\n${last}`),
  );
  fc.assert(
    fc.property(text, fc.nat(30), fc.nat(6), fc.string({ maxLength: 8 }), (typed, at, further, size) => {
      const house = houseOf(typed);
      for (const document of house.documents()) {
        const range = { start: { line: at, character: 0 }, end: { line: at + further, character: 2 } };
        for (const where of [range, { ...range, end: range.start }]) {
          const offers = refactoringsAt(house, document, where, true);
          expect(new Set(offers.map(({ title }) => title)).size).toBe(offers.length);
          for (const { title, edits } of offers) {
            const made = edits();
            if ("because" in made) expect(made.because).toMatch(/\.$/);
            else textAfter(house, document, { title, edits: made, safe: false });
          }
        }
        const scaled = scaleAt(house, document, at, size);
        if ("problem" in scaled) expect(scaled.problem).toMatch(/\.$/);
      }
    }),
    { numRuns: 150 },
  );
});
