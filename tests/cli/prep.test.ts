/** `mutchkin prep`. Prices are invented; the sums are done by hand. */
import { parse } from "csv-parse/sync";
import { expect, test } from "vitest";
import { prepSchema } from "../../server/reports/prep-schema.ts";
import { plainLook } from "../../server/reports/sheet.ts";
import { folderOf, mutchkin } from "./command.ts";

const bar = `=== bar.drink
house Test Room
  currency: GBP

stock plain gin
  kind: spirit
  abv: 40 %
  price: 28.00 per 700 ml

stock white sugar
  kind: sugar
  price: 1.30 per kg

stock fizz water
  kind: mixer
  price: 8.40 per 24 x 200 ml

prep plain syrup
  100 g white sugar
  100 g water
  keeps: 14 days chilled

drink Slack Rope
  garnish: none
  50 ml plain gin
  20 g plain syrup

drink Taut Rope, Twice
  garnish: none
  50 ml plain gin
  200 ml fizz water
  10 ml rum

menu Card
  - Slack Rope 12.00
  - Taut Rope, Twice 14.00
  - Nobody 9.00
=== friday.txt
# three to one, and one that is none of ours
Slack Rope: 3
Taut Rope, Twice: 1
Slak Rope: 5
=== friday.csv
drink,share
Slack Rope,3
"Taut Rope, Twice",1
=== broken.csv
Slack Rope,lots
Taut Rope,more
`;
const prep = ["prep", "--covers", "20"];

test("the text says what is made and bought, in 80 columns", async () => {
  const { code, out } = await mutchkin(folderOf(bar), [...prep, "--drinks-per-cover", "2", "--date", "2026-11-28"], {
    look: { ...plainLook, width: 80 },
  });
  expect(code).toBe(0);
  for (const line of out.split("\n")) expect(line.length).toBeLessThanOrEqual(80);
  expect(out).toContain("Card: 20 covers at 2 drinks each, so 40; made on 2026-11-28");
  expect(out).toContain("Each drink is as likely as the others, 2 drinks share 40 serves, 20 each.");
  expect(out).toContain("On the menu, but no drink of that name is known: Nobody.");
  // 20 × 20 = 400 g, in batches of 200; 40 × 50 = 2 l in three bottles; 20 × 200 = 4 l in one case of 4.8
  expect(out).toMatch(/^plain syrup +400 g +2 batches: 400 g +2026-12-12$/m);
  expect(out).toMatch(/^plain gin +2 l +3 × 700 ml +100 ml +84\.00$/m);
  expect(out).toMatch(/^fizz water +4 l +1 × \(24 × 200 ml\) +800 ml +8\.40$/m);
  expect(out).toMatch(/^white sugar +200 g +1 × 1 kg +800 g +1\.30$/m);
  // 84.00 + 8.40 + 1.30; 80.00 + 7.00 + 0.26
  expect(out).toContain("at least £93.70 for whole packs, of which at least £87.26 is");
  expect(out).toContain("no price of rum says in what size it is bought");
});

test("what whole packs just about cover is said, with no digit of what is left that an average does not have", async () => {
  const tight = async (covers: string) => (await mutchkin(folderOf(bar), ["prep", "--covers", covers])).out.replace(/\n +/g, " ");
  // 27 × 50 = 1350 ml in two bottles leave 50 ml, 3.7 %; 26 leave 100 ml, 7.7 %
  expect(await tight("27")).toContain("Tight           plain gin: less than 5 % left over, and what is poured is an average\n");
  expect(await tight("26")).not.toContain("Tight");
  // 27 × 51.833 = 1399.49 ml leave half a millilitre of 1400, which is known to 10 ml
  const odd = bar.replace(/50 ml plain gin/g, "51.833 ml plain gin");
  expect((await mutchkin(folderOf(odd), ["prep", "--covers", "27"])).out).toMatch(/^plain gin +1\.4 l +2 × 700 ml +0 ml/m);
  const markdown = (await mutchkin(folderOf(bar), ["prep", "--covers", "27", "--format", "markdown"])).out;
  expect(markdown).toContain("Tight: plain gin: less than 5 % left over, and what is poured is an average.\n");
});

test.each(["friday.txt", "friday.csv"])("%s shares the serves out, and names that are not on the menu are said", async (mix) => {
  const { out } = await mutchkin(folderOf(bar), [...prep, "--mix", mix, "--format", "json"]);
  const sheet = prepSchema.parse(JSON.parse(out));
  expect(sheet.drinks.map(({ name, serves }) => [name, serves])).toEqual([
    ["Slack Rope", 15],
    ["Taut Rope, Twice", 5],
  ]);
  expect(sheet.mix).toEqual({ unlisted: mix === "friday.txt" ? [{ name: "Slak Rope", line: 4, near: ["Slack Rope"] }] : [], without: [] });
});

test("the CSV holds what is made, bought and not told; what has no place in it is said beside it", async () => {
  const { out, err } = await mutchkin(folderOf(bar), [...prep, "--mix", "friday.txt", "--format", "csv", "--date", "2026-11-28"]);
  const rows: Record<string, string>[] = parse(out, { columns: true });
  expect(rows.map(({ what, name, needed, unit, cost }) => [what, name, needed, unit, cost])).toEqual([
    ["make", "plain syrup", "300", "g", ""],
    ["buy", "fizz water", "1000", "ml", "8.4"],
    ["buy", "plain gin", "1000", "ml", "56"],
    ["buy", "rum", "50", "ml", ""],
    ["buy", "white sugar", "200", "g", "1.3"],
  ]);
  expect(err).toContain("Not on the menu, so nothing is counted for it: “Slak Rope” (line 4; “Slack Rope”?).");
});

test("the Markdown holds the same as tables", async () => {
  const { out } = await mutchkin(folderOf(bar), [...prep, "--format", "markdown", "--date", "2026-11-28"]);
  expect(out).toContain("# Card: 20 covers at one drink each, so 20; made on 2026-11-28\n");
  expect(out).toContain("| plain syrup | 200 g | 1 batch: 200 g | 100 g white sugar, 100 g water | 2026-12-12 |");
  expect(out).toContain("| plain gin | 1 l | 2 × 700 ml | 400 ml | 56.00 |");
});

test("a drink that is off tonight is counted, and said", async () => {
  const { out } = await mutchkin(folderOf(bar.replace("  price: 8.40", "  status: out\n  price: 8.40")), prep);
  expect(out).toContain("Off tonight, and counted all the same: Taut Rope, Twice.");
});

test("today is the day, unless one is given", async () => {
  const { out } = await mutchkin(folderOf(bar), [...prep, "--format", "json"], { today: () => "2027-02-27" });
  expect(prepSchema.parse(JSON.parse(out)).preps[0]).toMatchObject({ keeps: "14 days chilled", useBy: "2027-03-13" });
});

test.each([
  [["prep"], "--covers"],
  [["prep", "--covers", "many"], "Give a whole number, such as 3."],
  [[...prep, "--drinks-per-cover", "0"], "Give a number above 0, such as 1.5."],
  [[...prep, "--date", "2026-02-31"], "“2026-02-31” is no day."],
  [[...prep, "--mix", "saturday.txt"], "There is no file “saturday.txt”."],
  [[...prep, "--mix", "broken.csv"], "Line 2 of “broken.csv” cannot be used: “more” behind Taut Rope is no share."],
  [[...prep, "--mix", "bar.drink"], "Line 1 of “bar.drink” cannot be used"],
  [[...prep, "Crd"], "Did you mean “Card”?"],
])("%j ends with 2 and says why", async (argv, words) => {
  const { code, out, err } = await mutchkin(folderOf(bar), argv);
  expect({ code, out }).toEqual({ code: 2, out: "" });
  expect(err).toContain(words);
});

test("of several menus one has to be named", async () => {
  const { code, err } = await mutchkin(
    folderOf(`${bar.replace("=== friday.txt", "menu Late card\n  - Slack Rope 10.00\n=== friday.txt")}`),
    prep,
  );
  expect(code).toBe(2);
  expect(err).toBe("There is more than one menu here: “Card”, “Late card”.\nName one of them.\n");
});
