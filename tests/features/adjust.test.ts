import { describe, expect, test } from "vitest";
import { targetsAt, waysAt } from "../../server/features/adjust.ts";
import { applied, fixtureOf } from "./cursor.ts";

const untied = "drink Untied\n  glass: none\n  method: shake 12 s\n  50 ml rum\n  23 ml lime<> juice\n  21 ml plain syrup\n";
const syrup = "prep syrup\n  200 g sugar\n  100 g wa<>ter\n";

const targets = (text: string) => {
  const { house, document, position } = fixtureOf(text);
  return targetsAt(house, document, position);
};
const ways = (text: string, id: string, value: string, pour?: string) => {
  const fixture = fixtureOf(text);
  return { fixture, ...waysAt(fixture.house, fixture.document, fixture.position, id, value, pour) };
};

describe("what there is to choose", () => {
  test("of a prep, with an example that is typed as it stands", () => {
    expect(targets(syrup)!.targets.map(({ label, description, example }) => [label, description, example])).toEqual([
      ["Sugar", "sugar, by weight", "66 brix"],
      ["Acid", "as citric, in 100 ml", "of lime juice"],
      ["Acid", "as citric, by weight", "6 g/100 g"],
      ["Salt", "by weight", "20 %"],
      ["Strength", "by volume", "20 %"],
    ]);
    for (const { id, example } of targets(syrup)!.targets) expect(ways(syrup, id, example).problem).toBeUndefined();
  });
  test("what is unknown says why, and offers no number to start from", () => {
    const [ratio] = targets("drink d\n  50 ml bil<>ge\n  20 ml lime juice\n")!.targets;
    expect(ratio).toMatchObject({ detail: expect.stringMatching(/^unknown: bilge is in neither/), present: "" });
  });
  test.each(["stock r<>um\n  kind: spirit\n", "<>\n", "menu Card\n  - L<>antern 12\n"])("nothing in %j", (text) =>
    expect(targets(text)).toBeUndefined(),
  );
});

describe("what is typed", () => {
  test.each([
    ["strengthPct", "18", 18],
    ["strengthPct", "18 % vol", 18],
    ["strengthPct", "strength 18 %", 18],
    ["sweetnessGPer100Ml", "7", 7],
    ["afterVolumeMl", "120", 120],
  ])("%s: %s", (id, value, expected) => {
    const { reached } = { reached: ways(untied, id, value).ways.find(({ fix }) => fix) };
    expect(reached!.detail).toMatch(/: [\d.]+ (?:g\/100 ml |% vol )?(?:above|below)|nothing to speak of/);
    expect(Number(/[\d.]+/.exec(reached!.detail)![0]) / expected).toBeCloseTo(1, 0);
  });
  test("a bare volume is in the house's unit", () =>
    expect(ways(`house h\n  units: oz\n\n${untied}`, "afterVolumeMl", "5", "water").ways[0]!.detail).toMatch(
      /^Volume (?:5|4\.9|5\.\d) ± [\d.]+ oz/,
    ));
});

test("the first way is one that changes something, though the drink is nearly there", () => {
  const { fixture, ways: found } = ways(untied, "ratio", targets(untied)!.targets[0]!.present);
  expect(found[0]).toMatchObject({ label: "lime juice", description: "22.5 ml in place of 23 ml" });
  expect(applied(fixture, found[0]!.fix!)).toBe(untied.replace("<>", "").replace("23 ml", "22.5 ml"));
});

test("weighing a strong acid carries the usual caution", () => {
  const { ways: found } = ways("prep p\n  1 l orange ju<>ice\n", "acidGPer100Ml", "of lime juice", "citric acid");
  expect(found[0]).toMatchObject({ description: expect.stringMatching(/ g, new$/), detail: expect.stringContaining("eyes and hands") });
});
