/** Every figure that is shown of the demo house's drinks and of every family's: no digit that its uncertainty denies. */
import { describe, expect, test } from "vitest";
import type { Entry } from "../../grammar/tree.ts";
import type { Figure, FigureName } from "../../server/engine/plan.ts";
import { describeDrink } from "../../server/features/hovers/drink.ts";
import { assessDrink } from "../../server/house/drink.ts";
import type { House } from "../../server/house/house.ts";
import { assessEntries } from "../../server/reports/assess.ts";
import type { DrinkReport } from "../../server/reports/assess-schema.ts";
import { assessText } from "../../server/reports/assess-text.ts";
import { drinkText } from "../../server/reports/drink-text.ts";
import { plainLook } from "../../server/reports/sheet.ts";
import { rules } from "../../server/rules/all.ts";
import { checkDigits } from "../house/digits.ts";
import { houseIn, houseOf } from "../house/make.ts";
import { found, passing, textOf } from "../rules/family-specs.ts";

const measure = { units: "ml", ounceMl: 30 } as const;
const asking = {
  rules,
  pathOf: (uri: string) => uri,
  report: (code: string, cause: unknown) => {
    throw new Error(code, { cause });
  },
};

const demo = houseIn("samples/halyard-room");
const drinksIn = (house: House): [name: string, house: House, entry: Entry][] =>
  [...house.documents()].flatMap(({ tree }) =>
    tree.entries
      .filter(({ kind, name }) => kind === "drink" && name)
      .map((entry): [string, House, Entry] => [entry.name!.text, house, entry]),
  );
const drinks = [
  ...drinksIn(demo),
  ...[...passing, ...found].flatMap((spec) =>
    drinksIn(houseOf(textOf(spec))).map(([, house, entry]): [string, House, Entry] => [spec.slice(2).join(", "), house, entry]),
  ),
];

/** The lines of the sheet, and the figures that stand on each in order, split by commas. */
const sheet: Readonly<
  Record<string, (drink: DrinkReport) => readonly (readonly [figure: Pick<Figure, "value" | "plusMinus">, scale?: number])[]>
> = {
  "Before the ice": ({ before }) => [[before.volumeMl], [before.strengthPct], [before.massG]],
  "Water added": ({ dilution }) => [[dilution.waterMl], [dilution.share, 100]],
  "As served": ({ after }) => [[after.volumeMl], [after.strengthPct], [after.temperatureC]],
  "Sweet and sour": ({ after }) => [[after.sweetnessGPer100Ml], [after.acidGPer100Ml], [after.ratio]],
  "Sugar and salt": ({ after }) => [[after.sugarGPer100Ml], [after.saltGPer100Ml]],
  Glass: ({ glass }) => (glass.capacityMl.value === null ? [] : [[glass.capacityMl], [glass.fillShare, 100]]),
};

/** Where each figure stands in the hover's table. */
const hover: readonly (readonly [where: RegExp, figure: FigureName, scale?: number])[] = [
  [/\| strength +\| ([^|]*?% vol)/, "strengthPct"],
  [/\| strength +\|[^|]*?, ([\d.]+) before/, "beforeStrengthPct"],
  [/\| dilution +\|[^|]*? water, (\d+) %/, "dilutionShare", 100],
  [/\| volume +\|[^|]*? at (.*?°C)/, "temperatureC"],
  [/\| volume +\|[^|]*?°C, (\d+) % of/, "fillShare", 100],
  [/\| sugar +\| ([^|]*?g\/100 ml)/, "sugarGPer100Ml"],
  [/\| sugar +\|[^|]*? as sweet as ([\d.]+)/, "sweetnessGPer100Ml"],
  [/\| acid +\| ([^|]*?g\/100 ml)/, "acidGPer100Ml"],
  [/\| ratio \| ([^|]*)/, "ratio"],
  [/\| salt +\| ([^|]*?g\/100 ml)/, "saltGPer100Ml"],
];

test("each figure is found on some hover and some sheet", () => {
  const hovers = drinks.map(([, house, entry]) => describeDrink(house, entry, measure));
  for (const [where] of hover)
    expect(
      hovers.some((text) => where.test(text)),
      String(where),
    ).toBe(true);
  const report = assessEntries(
    demo,
    drinksIn(demo).map(([, , entry]) => entry),
    asking,
  );
  const sheets = report.drinks.map((drink) => drinkText(drink, measure, plainLook)).join("\n");
  for (const label of Object.keys(sheet)) expect(sheets).toMatch(new RegExp(`^${label} .*\\d ± \\d`, "m"));
});

describe.each(drinks)("%s", (_name, house, entry) => {
  const { outcome } = assessDrink(house, entry);
  const report = assessEntries(house, [entry], { ...asking, explained: true });

  test("on the sheet", () => {
    const text = drinkText({ ...report.drinks[0]!, explanation: undefined }, measure, { ...plainLook, width: 1000 });
    for (const [label, figures] of Object.entries(sheet)) {
      const line =
        text
          .split("\n")
          .find((one) => one.startsWith(label))
          ?.slice(label.length) ?? "";
      const parts = line.split(", ");
      for (const [index, [figure, scale]] of figures(report.drinks[0]!).entries()) {
        // A litre or more of weight is shown in kilograms.
        checkDigits(parts[index] ?? "", figure, parts[index]?.endsWith(" kg") ? 0.001 : scale);
      }
    }
  });

  test("in the hover", () => {
    const text = describeDrink(house, entry, measure);
    for (const [where, name, scale] of hover) {
      const shown = where.exec(text)?.[1];
      if (shown !== undefined) checkDigits(shown, outcome.figure(name), scale);
    }
    expect(text).toMatch(/\| strength +\|/);
  });

  test("in every sentence, an uncertainty has as many decimals as its value, and one digit, or two under 20", () => {
    const texts = [describeDrink(house, entry, measure), assessText(report, { measure, atLength: true, cautions: new Map() }, plainLook)];
    for (const [pair, value, spread] of texts.join("\n").matchAll(/(?<![£$€\d.])(\d+(?:\.\d+)?) ± (\d+(?:\.\d+)?)/g)) {
      const decimals = (number: string) => number.split(".")[1]?.length ?? 0;
      expect(decimals(value!), pair).toBe(decimals(spread!));
      expect(spread!.replace(".", "").replace(/^0+/, "").replace(/0+$/, ""), pair).toMatch(/^(?:\d|1\d)?$/);
    }
  });
});
