/** `mutchkin batch`, on folders as a bar would have them. */
import { expect, test } from "vitest";
import { batchSchema } from "../../server/reports/batch-schema.ts";
import { folderOf, mutchkin } from "./command.ts";

const bar = `=== bar/house.drink
house Test Room
  bottle: 500 ml

stock plain spirit
  kind: spirit
  abv: 40 %

stock plain syrup
  kind: syrup
  sugar: 60 g/100 ml
  abv: 0 %
  keeps: 14 days chilled

=== bar/stirred.drink
drink Slack Rope
  method: stir 30 s; strain
  50 ml plain spirit
  10 ml plain syrup

drink Long Rope
  method: shake 12 s
  50 ml plain spirit
  25 ml lemon juice
`;
const batch = (...argv: string[]) => mutchkin(folderOf(bar), ["batch", ...argv]);

test("prints the page with today's date, and ends with 0", async () => {
  const { code, out, err } = await batch("Slack Rope", "--serves", "20");
  expect({ code, err }).toEqual({ code: 0, err: "" });
  expect(out).toMatch(/^Slack Rope: a batch for 20 serves {2}Test Room, bar\/stirred\.drink:1\n\nIn the bottle/);
  expect(out).toMatch(/^\| Made 2026-11-28\. Use by 2026-12-12\.$/m);
  expect(out).toMatch(/^plain spirit +1000 ml/m);
});

test("as JSON it has the published shape", async () => {
  const { out } = await batch("slack rope", "bar", "--fill", "--bottle", "1 l", "--made", "2026-02-28", "--format", "json");
  const report = batchSchema.parse(JSON.parse(out));
  expect(report).toMatchObject({
    name: "Slack Rope",
    made: "2026-02-28",
    bottles: { sizeMl: 1000, count: 1 },
    useBy: { date: "2026-03-14" },
  });
  expect(report.volumeMl.value).toBeLessThanOrEqual(970);
  expect((await batch("Slack Rope", "--fill", "--format", "json")).out).toContain('"sizeMl": 500');
});

test("a volume is filled; water goes in or stays out as asked", async () => {
  const dry = batchSchema.parse(JSON.parse((await batch("Slack Rope", "--volume", "5 l", "--no-water", "--format", "json")).out));
  expect(dry.volumeMl.value).toBeCloseTo(5000, -2);
  expect(dry.water).toMatchObject({ exactMl: 0, measured: null, why: "left out, as asked" });
  const wet = batchSchema.parse(JSON.parse((await batch("Long Rope", "--serves", "4", "--water", "--format", "json")).out));
  expect(wet.water.exactMl).toBeGreaterThan(50);
});

test("a bottle that still wants juice or a rinse is not ready to serve, one that wants only an option is", async () => {
  const more = `${bar}
drink Salted Rope
  from: Slack Rope
  1 pinch sea salt, optional

drink Rinsed Rope
  from: Slack Rope
  rinse plain spirit, discarded
`;
  const label = async (name: string) =>
    (await mutchkin(folderOf(more), ["batch", name, "--serves", "4", "--water"])).out.split("\n").find((line) => line.startsWith("| "));
  expect(await label("Long Rope")).toBe("| Long Rope, to be finished at the bar");
  expect(await label("Rinsed Rope")).toBe("| Rinsed Rope, to be finished at the bar");
  expect(await label("Slack Rope")).toBe("| Slack Rope, ready to serve");
  expect(await label("Salted Rope")).toBe("| Salted Rope, ready to serve");
});

test("the garnish of a bowl is for all its serves, a label says of what nobody states the allergens, and one thing alone is no mixture", async () => {
  const bowl = `${bar}
stock fino
  kind: fortified wine
  allergens: sulphites
  abv: 15 %

drink Bowl
  serves: 8
  garnish: 8 lemon wheels
  method: stir 20 s
  200 ml plain spirit
  200 ml fino

drink Alone
  method: shake 12 s
  50 ml plain spirit
  25 ml lemon juice
`;
  const { out } = await mutchkin(folderOf(bowl), ["batch", "Bowl", "--serves", "16"]);
  expect(out).toContain("- Garnish, for 8: 8 lemon wheels.\n");
  expect(out).toContain("| Contains sulphites.\n| Allergens not stated for plain spirit.\n");
  expect(out).not.toContain("nothing to mix");
  expect((await mutchkin(folderOf(bowl), ["batch", "Alone", "--serves", "16"])).out).toContain(
    "! Nothing but plain spirit can go in: pour it from its own bottle, there is nothing to mix.\n",
  );
});

test("the schema of the report is there to be printed", async () => {
  const { out, code } = await mutchkin(folderOf(bar), ["schema", "batch"]);
  expect(code).toBe(0);
  expect(JSON.parse(out)).toMatchObject({ description: "A drink mixed ahead.", type: "object" });
});

test.each([
  [["Slack Rope"], "Say how much is to be made, in one way.\n"],
  [["Slack Rope", "--serves", "4", "--fill"], "Say how much is to be made, in one way.\n"],
  [["Slack Rop", "--serves", "4"], "There is no drink “Slack Rop” here.\n"],
  [["Slack Rope", "--serves", "4 l"], "“4 l” is no number of serves.\n"],
  [["Slack Rope", "--serves", "0"], "Nothing can be scaled to 0."],
  [["Slack Rope", "--serves", "2,000"], "“2,000” is no size."],
  [["Slack Rope", "--volume", "4"], "“4” is no volume.\n"],
  [["Slack Rope", "--volume", "a lot"], "“a lot” is no size."],
  [["Slack Rope", "--fill", "--bottle", "3"], "“3” is no size of a bottle."],
  [["Slack Rope", "--fill", "--bottle", "30 ml"], "A bottle of 30 ml does not hold one serve"],
  [["Slack Rope", "--serves", "4", "--made", "28.11.2026"], "“28.11.2026” is no day."],
  [["Slack Rope", "--serves", "4", "--made", "2026-02-30"], "“2026-02-30” is no day."],
  [["Slack Rope", "nowhere", "--serves", "4"], "There is no file or folder “nowhere”.\n"],
])("what cannot be made ends with 2 and says why: %j", async (argv, words) => {
  const { code, out, err } = await batch(...argv);
  expect({ code, out }).toEqual({ code: 2, out: "" });
  expect(err).toContain(words);
});
