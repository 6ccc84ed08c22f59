/** Whatever stands in a file, costing and preparation come out whole, in their published shapes and as tables that no spreadsheet runs. */
import { parse } from "csv-parse/sync";
import fc from "fast-check";
import { expect, test } from "vitest";
import { linesOf } from "../../server/house/entry.ts";
import { costCsv } from "../../server/reports/cost-csv.ts";
import { costSchema } from "../../server/reports/cost-schema.ts";
import { costText } from "../../server/reports/cost-text.ts";
import { costReport } from "../../server/reports/costing.ts";
import { csvText } from "../../server/reports/csv.ts";
import { prepCsv } from "../../server/reports/prep-csv.ts";
import { prepMarkdown } from "../../server/reports/prep-markdown.ts";
import { prepSchema } from "../../server/reports/prep-schema.ts";
import { prepText } from "../../server/reports/prep-text.ts";
import { prepSheet } from "../../server/reports/preparation.ts";
import { plainLook } from "../../server/reports/sheet.ts";
import { houseOf } from "../house/make.ts";

const esc = "\u001b";
const measure = { units: "ml", ounceMl: 30 } as const;
const look = { ...plainLook, width: 80 };

const written = fc.constantFrom(
  "drink Knot",
  "drink Knot, Twice",
  "drink =1+1",
  "prep knot syrup",
  "stock knot spirit",
  "stock lime",
  "house Knot Room",
  "menu Card",
  "  section On deck",
  "  - Knot 12.00",
  "  - Knot, Twice 9.00 / 40.00 carafe",
  "  - =1+1 £8.00",
  "  - Nobody",
  "  from: Knot",
  "  serves: 4",
  "  total: 90 ml",
  "  currency: GBP",
  "  currency: JPY",
  "  tax: 20 %",
  "  prices: with tax",
  "  target cost: 22 %",
  "  waste: 5 %",
  "  waste: 100 %",
  "  price: 20.00 per 700 ml",
  "  price: €3 per 1",
  "  price: 0.00",
  "  keeps: 2 to 3 days chilled",
  "  yield: juiced 25 ml",
  "  each: 80 g; wedge 10 g",
  "  garnish: 1 lime wedge; @sum(a1)",
  "  rim: salt, half",
  "  50 ml knot spirit",
  "  1/2 lime, juiced",
  "  25 ml lime juice",
  "  2 parts lime juice",
  "  1 part knot syrup",
  "  30 g knot syrup",
  "  100 g sugar",
  "  20 ml Knot",
  "  top soda water",
  "  to 500 ml water",
  "  some mint",
  "  rinse knot spirit, discarded",
  "  method: infuse 2 days; reduce by half; strain",
  "  swap knot spirit for white rum",
  `  note: “slowly” 🍋 ${esc}[31m`,
  `  30 ml ${esc}[31mred`,
  `  - ${esc}[31mred 4.00`,
);

test("any house is costed and prepared for", () =>
  fc.assert(
    fc.property(fc.array(written, { maxLength: 40 }), fc.integer({ min: 0, max: 200 }), (lines, covers) => {
      const house = houseOf(["menu Card", "  - Knot 12.00", ...lines].join("\n"));
      const menus = [...house.documents()].flatMap(({ tree }) => tree.entries).filter(({ kind, name }) => kind === "menu" && name);
      const report = costReport(house, menus, {
        ifs: ["lime 3 per 1"].filter(() => lines.includes("stock lime")),
        pathOf: () => "spec.drink",
      });
      if ("problem" in report) return;
      costSchema.parse(report);
      const costed = report.menus.flatMap(({ drinks }) => drinks);
      const listed = menus.flatMap((menu) => [...linesOf(menu, "menu")].filter(({ content }) => content.whole));
      expect(costed.length).toBe(listed.length);
      for (const { cost, because, share } of costed) {
        if (cost.value === null) expect(cost.because).not.toEqual([]);
        if (share.value === null) expect([...(share.because ?? []), ...because]).not.toEqual([]);
      }
      const texts = [costText(report, look), costCsv(report)];
      const sheet = prepSheet(house, menus[0]!, { covers, drinksPerCover: 1.5, date: "2026-11-28" });
      if ("problem" in sheet) throw new Error(sheet.problem);
      prepSchema.parse(sheet);
      texts.push(prepText(sheet, measure, look), prepMarkdown(sheet, measure), prepCsv(sheet));
      for (const text of texts) {
        expect(text).not.toMatch(/NaN|undefined|Infinity/);
        expect(text).not.toContain(esc);
      }
      for (const csv of [costCsv(report), prepCsv(sheet)])
        for (const row of parse(csv) as string[][]) for (const cell of row) expect(cell).not.toMatch(/^(?:[=+@]|-(?!\d))/);
    }),
  ));

test("a table is CSV, and what a spreadsheet would run is marked as text; numbers are numbers", () =>
  expect(
    csvText(
      ["name", "n"],
      [
        ['=cmd("x")', -1.5],
        ["+1", 2],
        ["-1", null],
        ["@a, b", 3],
        ["Slack, Rope\u0007", 0],
      ],
    ),
  ).toBe('name,n\r\n"\'=cmd(""x"")",-1.5\r\n\'+1,2\r\n\'-1,\r\n"\'@a, b",3\r\n"Slack, Rope ",0\r\n'));
