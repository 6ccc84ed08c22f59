/** Findings about water and temperature that the method brings, or does not say. */
import { describe, expect, test } from "vitest";
import { shaken, specimen } from "../../server/rules/specimen.ts";
import { apply, codesIn, findIn, findOne } from "./check.ts";

const pours = ["60 ml gin", "10 ml dry vermouth"];
const stirred = (seconds: number, dilution: string, more: Record<string, string> = {}) =>
  specimen(pours, { ...shaken, method: `stir ${seconds} s; strain`, dilution, ...more });

describe("dilution outside its window", () => {
  test("far outside is a warning, a little outside information, a draft's a hint", () => {
    const severity = (text: string) => findOne(text, "dilution-outside").located.finding.severity;
    expect(severity(stirred(90, "10 to 30 %"))).toBe("warning");
    expect(severity(specimen(["80 ml gin"], { ...shaken, method: "pre-dilute 20 %", dilution: "22 to 30 %" }))).toBe("information");
    expect(severity(stirred(90, "10 to 30 %", { status: "draft" }))).toBe("hint");
  });

  test("says which way and by how much, in per cent", () => {
    const { what } = findOne(stirred(90, "10 to 30 %"), "dilution-outside").located.finding;
    expect(what).toMatch(/more diluted than .*: water added is \d+ ± \d+ % of the volume before, where 10 to 30 % is usual/);
    expect(
      findOne(specimen(["80 ml gin"], { ...shaken, method: "pre-dilute 5 %", dilution: "22 to 30 %" }), "dilution-outside").located.finding
        .what,
    ).toContain("less diluted");
  });

  test("within twice the uncertainty, and without a window, nothing is said", () => {
    expect(codesIn(stirred(30, "30 to 38 %"))).toEqual([]);
    expect(codesIn(specimen(pours, { ...shaken, method: "stir 10 min; strain" }))).toEqual([]);
  });

  test("a house's family may ask for it, and the finding stands on the family", () => {
    const family = "family our stirred\n  dilution: 10 to 20 %\n\n";
    const { located } = findOne(
      family + specimen(pours, { ...shaken, method: "stir 60 s; strain", family: "our stirred" }),
      "dilution-outside",
    );
    expect(located.finding.what).toContain("“our stirred”");
    expect(located.finding.place.line).toBeGreaterThan(0);
  });
});

describe("a step that lacks its figure", () => {
  const bottled = (method: string) => specimen(pours, { ...shaken, method });

  test.each([
    ["pre-dilute 25; hold at -5 C", "pre-dilute 25 %"],
    ["pre-dilute 25 %; hold at -5", "hold at -5 C"],
  ])("%s is put right by its unit", (method, right) => {
    const { house, located } = findOne(bottled(method), "incomplete-step");
    apply(house, located.finding.fixes!()[0]!);
    expect(findIn(house)).toEqual([]);
    expect(
      [...house.documents()].some(({ tree }) => tree.entries.some(({ lines }) => lines.some(({ text }) => text.includes(right)))),
    ).toBe(true);
  });

  test.each([
    ["pre-dilute with 30 ml water", "or pour the water as a pour"],
    ["pre-dilute 250 %", "such as `pre-dilute 25 %`"],
    ["hold 2 hours", "such as `hold at -5 C`"],
    ["heat", "such as `heat to 65 C`"],
  ])("%s is found, and no fix is guessed", (method, todo) => {
    const { located } = findOne(bottled(method), "incomplete-step");
    expect(located.finding.todo).toContain(todo);
    expect(located.finding.fixes!()).toEqual([]);
  });

  test.each(["warm the glass", "chill", "freeze", "hold at 23 F", "pre-dilute 20 to 25 %"])("%s lacks nothing", (method) =>
    expect(codesIn(bottled(method))).toEqual([]),
  );
});
