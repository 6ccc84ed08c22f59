import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { assessDrink } from "../../server/house/drink.ts";
import { flatten } from "../../server/house/riff.ts";
import { figureChange, pourChanges } from "../../server/house/riff-changes.ts";
import { showChange, showMoneyChange, showPourChanges, showVolumeChange } from "../../server/house/show-change.ts";
import { entryNamed, houseOf } from "./make.ts";

const parent = `drink Slip
  method: shake 12 s
  50 ml gin
  25 ml lemon juice
  20 ml sugar syrup
  1 egg white
  top soda water
`;
const riffOf = (...lines: string[]) => riffIn(parent, ...lines);
const riffIn = (text: string, ...lines: string[]) => {
  const house = houseOf([`${text}drink Rope`, "from: Slip", ...lines].join("\n  "));
  return { house, flat: flatten(house, entryNamed(house, "Rope")) };
};
const said = (...lines: string[]) => {
  const { house, flat } = riffOf(...lines);
  return showPourChanges(pourChanges(house, flat));
};

describe("what is poured otherwise", () => {
  test.each([
    [[], ""],
    [["swap gin for aged rum"], "50 ml aged rum for 50 ml gin"],
    [["swap gin for 60 ml aged rum, frozen"], "60 ml aged rum for 50 ml gin"],
    [["22.5 ml lemon juice"], "lemon juice 22.5 ml, not 25 ml"],
    [["25 ml lemon juice, chilled"], "25 ml lemon juice, chilled"],
    [["without egg white", "without sugar syrup"], "without sugar syrup and egg white"],
    [["2 dashes clove bitters", "10 ml honey"], "with 2 dashes clove bitters and 10 ml honey"],
    [
      ["swap gin for aged rum", "15 ml lemon juice", "without egg white", "5 ml honey"],
      "50 ml aged rum for 50 ml gin; lemon juice 15 ml, not 25 ml; without egg white; with 5 ml honey",
    ],
    [["swap moonlight for aged rum"], ""], // it takes out nothing that is there
    [["swap lemon juice for lime juice", "without lime juice"], "without lemon juice"],
    [["top ginger beer"], "with top ginger beer"],
  ])("%j", (lines, expected) => expect(said(...lines)).toBe(expected));

  test("of two pours of one thing the one that is named by its amount", () => {
    const house = houseOf("drink Slip\n  30 ml gin\n  10 ml gin\ndrink Rope\n  from: Slip\n  swap 10 ml gin for 15 ml aged rum\n");
    expect(showPourChanges(pourChanges(house, flatten(house, entryNamed(house, "Rope"))))).toBe("15 ml aged rum for 10 ml gin");
  });

  test("none for a drink that is no riff", () => {
    const { house } = riffOf();
    expect(pourChanges(house, flatten(house, entryNamed(house, "Slip")))).toEqual([]);
  });

  test("whatever the lines: what went and what came make the riff of the parent", () => {
    const line = fc.constantFrom(
      "swap gin for aged rum",
      "swap aged rum for gin",
      "swap lemon juice for 5 ml gin",
      "without gin",
      "without all gin",
      "without lemon juice",
      "without egg white",
      "10 ml gin",
      "60 ml aged rum, frozen",
      "or 5 ml gin",
      "top soda water",
    );
    fc.assert(
      fc.property(fc.array(line, { maxLength: 6 }), (lines) => {
        const { house, flat } = riffOf(...lines);
        const changes = pourChanges(house, flat);
        const count = (how: string) => changes.filter((one) => one.how === how).length;
        expect(flat.parent!.pours.length - count("left out") + count("added")).toBe(flat.pours.length);
        const after = changes.flatMap((one) => ("after" in one ? [one.after] : []));
        expect(new Set(after)).toEqual(new Set(flat.pours.filter(({ entry }) => entry === flat.entry)));
      }),
    );
  });
});

describe("how far the figures lie from the parent's", () => {
  const changeOf = (figure: Parameters<typeof figureChange>[2], ...lines: string[]) => {
    const { house, flat } = riffIn(parent.replace("  top soda water\n", ""), ...lines);
    return figureChange(assessDrink(house, flat.entry), assessDrink(house, flat.parent!.entry), figure);
  };

  test("nothing where nothing is changed, however unsure the figure is", () => {
    const same = changeOf("strengthPct")!;
    expect(same.before.plusMinus).toBeGreaterThan(0);
    expect(same.change.value).toBe(0); // two glasses of it may still differ by the hand that measures
    expect(same.change.plusMinus!).toBeLessThan(same.before.plusMinus! * Math.SQRT2);
    expect(showChange(same, 1)).toMatch(/^[\d.]+ \(the same\)$/);
  });

  test("less unsure than the two are by themselves: most of what they are made of is the same", () => {
    const { before, change } = changeOf("afterVolumeMl", "22.5 ml lemon juice")!;
    expect(change.value).toBeLessThan(0);
    expect(change.plusMinus!).toBeLessThan(before.plusMinus!);
  });

  test("of one serve, however many each makes", () => {
    const one = changeOf("ethanolG", "60 ml gin")!;
    const four = changeOf("ethanolG", "serves: 4", "240 ml gin", "100 ml lemon juice", "80 ml sugar syrup", "4 egg white")!;
    expect(four.change.value! / one.change.value!).toBeCloseTo(1, 6);
    expect(four.before.value).toBe(one.before.value);
  });

  test("none of what is unknown, or of parts without a size", () => {
    expect(changeOf("strengthPct", "10 ml moonlight")).toBeUndefined();
    expect(changeOf("afterVolumeMl", "2 parts gin", "1 part lemon juice")).toBeUndefined();
  });

  test("in words: with a sign, and none where it is less than its own uncertainty", () => {
    const of = (value: number, u: number, change: number, changeU: number) => ({
      before: { value, plusMinus: u },
      change: { value: change, plusMinus: changeU },
    });
    expect(showChange(of(17.84, 0.5, -3.21, 0.2), 1)).toBe("17.8 (−3.2 ± 0.2)");
    expect(showChange(of(17.84, 0.5, 0.1, 0.2), 1)).toBe("17.8 (about the same)");
    expect(showVolumeChange(of(105, 3, 15, 2), { units: "cl", ounceMl: 30 })).toBe("10.5 (+1.5 ± 0.2)");
    expect(showVolumeChange(of(105, 3, -15, 2), { units: "oz", ounceMl: 30 })).toBe("3.5 (−0.50 ± 0.07)");
    expect(showMoneyChange(of(2.14, 0.03, -0.9, 0.04), "GBP")).toBe("£2.14 (−£0.90 ± 0.04)");
  });
});
