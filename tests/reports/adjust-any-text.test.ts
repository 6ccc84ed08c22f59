/** Whatever stands in a file, what is adjusted comes out whole, and a change that is offered does what it says. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { toTextEdits } from "../../server/features/edits.ts";
import { type Way, waysTo, wayWith } from "../../server/house/bring-to.ts";
import { changeable } from "../../server/house/changeable.ts";
import { readTarget, type Target } from "../../server/house/targets.ts";
import { adjustReport } from "../../server/reports/adjust.ts";
import { adjustSchema } from "../../server/reports/adjust-schema.ts";
import { adjustText } from "../../server/reports/adjust-text.ts";
import { plainLook } from "../../server/reports/sheet.ts";
import { applied } from "../features/cursor.ts";
import { houseOf, root } from "../house/make.ts";

const written = fc.constantFrom(
  "drink Knot",
  "drink Knot, Twice",
  "prep knot syrup",
  "stock knot spirit\n  kind: spirit\n  abv: 40 %",
  "house Knot Room\n  units: oz\n  jigger: 1/4 oz",
  "  from: Knot",
  "  from: Knot, Twice",
  "  glass: coupe, chilled",
  "  method: shake 12 s; fine strain",
  "  method: infuse 2 days; strain",
  "  serves: 4",
  "  total: 90 ml",
  "  parts by: weight",
  "  50 ml white rum, frozen  # 🍋",
  "  2 oz white rum",
  "  2 parts lime juice",
  "  1 part plain syrup",
  "  22.5 ml lime juice",
  "    or lemon juice",
  "  2 dashes saline",
  "  1 pinch salt, optional",
  "  about 20 g sugar",
  "  100 g sugar",
  "  1.5 ml knot syrup",
  "  top soda water",
  "  top to 150 ml soda water",
  "  to 500 ml water",
  "  to 100 g water",
  "  swap white rum for knot spirit",
  "  swap lime juice for 15 ml lemon juice",
  "  without lime juice",
  "  steps:",
  "    Stir “slowly” \u001b[31m",
  "",
);
const line = fc.oneof({ weight: 8, arbitrary: written }, { weight: 1, arbitrary: fc.string({ unit: "grapheme" }) });
const drinkTargets = ["ratio 7", "strength 15 %", "sweetness 6", "acid 0.8", "salt 0.3", "volume 130 ml", "ratio of Knot"];
const prepTargets = ["60 brix", "acid of lime juice", "acid 5 %", "salt 10 %", "strength 20 %", "acid of knot syrup"];

test("any lines are adjusted", { timeout: 60_000 }, () => {
  fc.assert(
    fc.property(
      fc.array(line, { maxLength: 30 }),
      fc.nat(),
      fc.constantFrom("water", "sugar", "citric acid", "lime juice", "knot"),
      (lines, at, pour) => {
        const text = lines.join("\n");
        const house = houseOf(text);
        for (const document of [...house.documents()]) {
          for (const [index, entry] of document.tree.entries.entries()) {
            const of = changeable(house, entry);
            if (!of) continue;
            const asked = entry.kind === "drink" ? drinkTargets : prepTargets;
            const target = readTarget(house, entry, asked[at % asked.length]!);
            if ("problem" in target) continue;
            const named = wayWith(house, of, target, pour);
            const all = [waysTo(of, target), ...("pour" in named ? [[named]] : [])];
            for (const ways of all) {
              const report = adjustSchema.parse(adjustReport(house, of, target, ways, { pathOf: (uri) => uri, written: false }));
              const printed = adjustText(report, of.settings, plainLook);
              expect(printed.replaceAll("\n", "")).not.toMatch(/\p{Cc}/u);
              expect(printed).not.toMatch(/NaN|Infinity|undefined/);
            }
            for (const way of all.flat()) expectDone(text, document.uri, index, target, way);
          }
        }
      },
    ),
    { numRuns: 100 },
  );
});

/** The changed text comes to what was said of it. */
function expectDone(text: string, uri: string, index: number, { goal }: Target, { reached }: Way) {
  if (!reached?.edit) return;
  const house = houseOf(text);
  const document = house.document(uri)!;
  const edit = { ...reached.edit, entry: document.tree.entries[index]! };
  const fix = { title: "", safe: false, edits: [edit] };
  expect(toTextEdits(house, document, fix)).toHaveLength(1);
  const after = houseOf(`=== ${uri.slice(root.length + 1)}\n${applied({ house, document }, fix)}`);
  const now = changeable(after, after.document(uri)!.tree.entries[index]!)!.now;
  expect(now.value(goal.figure)).toBeCloseTo(reached.after.value(goal.figure)!, 6);
}
