/** What `mutchkin diff` tells of changes that a client makes to a card: each of them once, where it belongs, and through what. */
import { expect, test } from "vitest";
import type { DiffReport } from "../../server/reports/diff-schema.ts";
import { mutchkin } from "./command.ts";
import { repositoryOf } from "./repository.ts";

const bar = `house The Halyard Room
  country: GB
  currency: GBP
  tax: 20 %
  prices: with tax

stock pier spirit
  kind: spirit
  abv: 40 %
  allergens: none
  price: 20.00 per 1 l

stock fog spirit
  kind: spirit
  abv: 40 %
  allergens: none
  price: 30.00 per 1 l

stock almond cordial
  kind: syrup
  sugar: 60 g/100 ml
  allergens: nuts
  price: 10.00 per 1 l

stock salted nut
  kind: fruit
  each: 2 g
  allergens: none
  price: 20.00 per 1 kg

prep plain syrup
  1 part white sugar
  1 part water
  parts by: weight

drink Slip
  glass: none
  garnish: none
  method: none
  50 ml pier spirit
  50 ml water

drink Rope
  glass: none
  garnish: 3 salted nuts
  method: none
  50 ml fog spirit
  20 ml plain syrup

menu Card
  - Slip 12.00
  - Rope 11.00
`;

type Change = readonly [from: string | RegExp, to: string];

async function compared(...changes: readonly Change[]): Promise<{ report: DiffReport; out: string }> {
  const { folder, write } = repositoryOf(`=== bar.drink\n${bar}`);
  const now = changes.reduce((text, [from, to]) => text.replace(from, to), bar);
  expect(now).not.toBe(bar);
  write("bar.drink", now);
  const { out } = await mutchkin(folder, ["diff"]);
  return { report: JSON.parse((await mutchkin(folder, ["diff", "--format", "json"])).out), out };
}

test("a drink that got another name keeps its line on the menu, with what that asks now", async () => {
  const { report, out } = await compared(["drink Slip", "drink Old Slip"], ["- Slip 12.00", "- Old Slip 13.00"]);
  expect(report.menus).toMatchObject([
    { added: [], removed: [], renamed: [{ before: "Slip", after: "Old Slip" }], prices: [{ drink: "Old Slip", before: 12, after: 13 }] },
  ]);
  expect(out).toContain("  · Slip is called Old Slip now\n  · Old Slip £12.00 → £13.00\n");
});

test("a price on a menu moves the share, through that menu; a drink off the menu has not moved", async () => {
  const { report } = await compared(["- Slip 12.00", "- Slip 9.00"], ["  - Rope 11.00\n", ""]);
  // By hand: 50 ml at 20.00 a litre are 1.00; of 12.00 and 9.00 less a tax of 20 % that is 1/10 and 1/7.5.
  expect(report.drinks).toMatchObject([{ name: "Slip", how: "moved", because: ["menu Card"] }]);
  expect(report.drinks[0]!.effects!.cost).toMatchObject({ before: 1, after: 1 });
  expect(report.drinks[0]!.effects!.cost!.shareBefore).toBeCloseTo(0.1, 5);
  expect(report.drinks[0]!.effects!.cost!.shareAfter).toBeCloseTo(1 / 7.5, 5);
});

test("a prep's changed pours are told, and no share that reads the same", async () => {
  const { report, out } = await compared(["1 part white sugar", "2 parts white sugar"]);
  expect(report.things).toMatchObject([{ name: "plain syrup", pours: "white sugar 2 parts, not 1 part", moved: [{ drink: "Rope" }] }]);
  expect(out).not.toMatch(/(\d+ %) → \1 of the price/);
});

test("what is out takes drinks off, and says so before it says what they cost", async () => {
  const { report, out } = await compared(["stock pier spirit", "stock pier spirit\n  status: out"]);
  expect(report.drinks).toMatchObject([{ name: "Slip", how: "moved", effects: { out: { gained: ["pier spirit is out"], lost: [] } } }]);
  expect(out).toContain("Slip (on Card)\n  · cannot be poured: pier spirit is out\n  · through stock pier spirit\n");
});

test("an added drink says what it contains, first of all", async () => {
  const { report, out } = await compared(
    [/$/, "\ndrink Net\n  glass: none\n  method: none\n  garnish: none\n  40 ml pier spirit\n  10 ml almond cordial\n"],
    ["- Slip 12.00", "- Slip 9.00"],
  );
  expect(report.drinks.map(({ name }) => name)).toEqual(["Net", "Slip"]);
  // By hand: 40 ml at 20.00 and 10 ml at 10.00 a litre; 40 ml of 40 % vol in 50 ml, but for what mixing takes.
  expect(report.drinks[0]!.arrival).toMatchObject({ contains: ["nuts"], notStated: [], cost: { currency: "GBP" } });
  expect(report.drinks[0]!.arrival!.cost!.perServe).toBeCloseTo(0.9, 5);
  expect(report.drinks[0]!.arrival!.strengthPct.value).toBeCloseTo(32, 0);
  expect(out).toMatch(
    /Net, added\n {2}! contains nuts\n {2}· 40 ml pier spirit, 10 ml almond cordial\n {2}· costs £0\.90\n {2}· strength 32/,
  );
});

test("a garnish is a cause, what somebody only noted is none, and who was changed besides is named", async () => {
  const { report, out } = await compared(
    ["each: 2 g\n  allergens: none", "each: 2 g\n  allergens: nuts"],
    ["stock fog spirit", "stock fog spirit\n  notes: Better than it was."],
    ["20 ml plain syrup", "25 ml plain syrup"],
  );
  expect(report.drinks).toMatchObject([{ name: "Rope", how: "changed", because: ["stock salted nut"] }]);
  expect(report.things).toMatchObject([
    { name: "salted nut", moved: [], also: ["Rope"] },
    { name: "fog spirit", also: [] },
  ]);
  expect(out).toContain("  · also in Rope, changed itself\n");
});

test("an entry of which nobody knows what it is, and a pour of nothing, are said to be not compared", async () => {
  const { report } = await compared(["drink Slip", "drnik Slip"], ["50 ml fog spirit", "50 ml"]);
  const lines = bar.split("\n");
  const at = ["drink Slip", "  50 ml fog spirit"].map((line) => lines.indexOf(line) + 1);
  expect(report.broken).toEqual([{ side: "after", file: "bar.drink", lines: at }]);
});

test("two houses that both have a gin and a sour of that name are kept apart", async () => {
  const house = (name: string) => `=== ${name}/bar.drink\n${bar.replace("The Halyard Room", name)}`;
  const { folder, write } = repositoryOf(`${house("east")}${house("west")}`);
  write("west/bar.drink", bar.replace("The Halyard Room", "west").replace("abv: 40 %", "abv: 50 %").replace("50 ml fog", "45 ml fog"));
  const report: DiffReport = JSON.parse((await mutchkin(folder, ["diff", "--format", "json"])).out);
  expect(report.drinks.map(({ name, how, after }) => `${name} ${how} ${after!.file}`).sort()).toEqual([
    "Rope changed west/bar.drink",
    "Slip moved west/bar.drink",
  ]);
  expect(report.things).toMatchObject([{ name: "pier spirit", after: { file: "west/bar.drink" }, moved: [{ drink: "Slip" }] }]);
});

test("the page has it all at a glance first, gravest first, and every line of that leads to its part", async () => {
  const { folder, write } = repositoryOf(`=== bar.drink\n${bar}`);
  write(
    "bar.drink",
    bar.replace("50 ml pier spirit", "50 ml pier spirit\n  10 ml fog spirit").replace("20 ml plain syrup", "20 ml almond cordial"),
  );
  const { out } = await mutchkin(folder, ["diff", "--format", "html"]);
  const rows = [...out.matchAll(/<tr><th scope="row"><a href="#(\w+)">([^<]+)<\/a><\/th><td>(\w+)<\/td><td>(.*?)<\/td>/g)];
  expect(rows.map(([, , name, how, concerns]) => [name, how, concerns])).toEqual([
    ["Rope", "changed", '<span class="grave">Now contains nuts</span><br>Money, taste'],
    ["Slip", "changed", "Money, taste"],
  ]);
  for (const [, id] of rows) expect(out.split(`id="${id}"`)).toHaveLength(2);
  expect(out.indexOf("At a glance")).toBeLessThan(out.indexOf("<article"));
  expect(out).toContain("<strong>Allergens</strong>");
});

test("a comment that would be too long is shortened by what hurts nobody, and says so", async () => {
  const many = Array.from({ length: 400 }, (_, index) => `drink Rope ${index}\n  from: Rope\n`).join("\n");
  const { folder, write } = repositoryOf(`=== bar.drink\n${bar}\n${many}\ndrink Net\n  from: Slip\n  10 ml almond cordial\n`);
  const changed = bar.replace("1 part white sugar", "2 parts white sugar").replace("allergens: nuts", "allergens: nuts, milk");
  write("bar.drink", `${changed}\n${many}\ndrink Net\n  from: Slip\n  10 ml almond cordial\n`);
  const { out } = await mutchkin(folder, ["diff", "--format", "markdown"]);
  expect(out.length).toBeLessThan(60_000);
  expect(out).toContain("Too long for a comment");
  expect(out).toContain("- Net: **now contains milk**");
  for (const name of ["Rope 0", "Rope 399"]) expect(out).toContain(name);
  const { out: page } = await mutchkin(folder, ["diff", "--format", "html"]);
  expect(page).not.toContain("Too long");
});

test("whom it could hurt is said before all else, though nobody touched the drinks", async () => {
  const { out } = await compared(
    ["kind: spirit\n  abv: 40 %\n  allergens: none", "kind: spirit\n  abv: 40 %\n  allergens: nuts"],
    [/(stock fog spirit[\s\S]*?allergens: )none/, "$1milk"],
    ["20 ml plain syrup", "25 ml plain syrup"],
  );
  const [, hurts, first] = out.split("\n\n");
  expect(hurts).toBe("  ! now contains milk: Rope\n  ! now contains nuts: Slip");
  expect(first).toMatch(/^Rope, changed/);
});
