/** All safe fixes at once: they end what they fix, keep every drink what it was, and run dry. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { textAfter, toTextEdits } from "../../server/features/edits.ts";
import { fixAll } from "../../server/features/fix-all.ts";
import { assessDrink } from "../../server/house/drink.ts";
import type { House } from "../../server/house/house.ts";
import { anyText } from "../grammar/texts.ts";
import { houseOf, root } from "../house/make.ts";
import { findIn } from "../rules/check.ts";

const uri = `${root}/spec.drink`;

/** The text after one go; the same text where nothing is safe. */
function fixed(text: string): string {
  const house = houseOf(text);
  const document = house.document(uri);
  const fix =
    document &&
    fixAll(
      house,
      document,
      findIn(house).map(({ finding }) => finding),
    );
  return document && fix ? textAfter(document, toTextEdits(house, document, fix)) : text;
}

test("several findings are put right in one go, and what is not safe is left", () => {
  expect(fixed("drink Slip\n50ml gin\n  2,5 cl lemon juice\n  20 ml sugr syrup\n")).toBe(
    "drink Slip\n  50ml gin\n  2.5 cl lemon juice\n  20 ml sugr syrup\n",
  );
  expect(fixed("drink Slip\n  50 ml gin\n")).toBe("drink Slip\n  50 ml gin\n");
});

/** What the drinks come to, by name; a text's own numbers where they are known. */
function figures(house: House): unknown[] {
  return [...house.documents()].flatMap(({ tree }) =>
    tree.entries.flatMap((entry) => {
      if (entry.kind !== "drink") return [];
      const { outcome } = assessDrink(house, entry);
      return [[entry.name?.text, outcome.value("strengthPct")?.toFixed(6), outcome.value("afterVolumeMl")?.toFixed(6)]];
    }),
  );
}

test("on any text: drinks stay what they are, it reads, and after a few goes nothing safe is left", () => {
  fc.assert(
    fc.property(anyText, (text) => {
      let now = text;
      for (let go = 0; go < 12; go++) {
        const next = fixed(now);
        if (next === now) return;
        const [before, after] = [houseOf(now), houseOf(next)];
        const known = figures(before).filter((one) => !(one as unknown[]).includes(undefined));
        for (const figure of known) expect(figures(after)).toContainEqual(figure);
        now = next;
      }
      expect(`${JSON.stringify(now)} is still being put right`).toBe("");
    }),
    { numRuns: 250 },
  );
});
