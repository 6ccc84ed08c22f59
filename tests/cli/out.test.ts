/** `mutchkin check --out`, on folders as a bar would have them. */
import { expect, test } from "vitest";
import { outSchema } from "../../server/reports/out-schema.ts";
import { folderOf, mutchkin } from "./command.ts";

const bar = (...out: string[]) => {
  const stock = (name: string, kind: string) => `stock ${name}\n  kind: ${kind}\n${out.includes(name) ? "  status: out\n" : ""}\n`;
  return `=== bar/house.drink
house Test Room

${stock("plain gin", "spirit")}${stock("quince juice", "juice")}${stock("apple juice", "juice")}
prep quince cordial
  100 g quince juice
  100 g white sugar

=== bar/long.drink
drink Slack Rope
  50 ml plain gin
  20 ml quince cordial

drink Slack Rope, Short
  from: Slack Rope
  without quince cordial

drink Bare Hook
  50 ml plain gin
  30 ml quince juice
    or apple juice

drink Old Rope
  status: retired
  50 ml plain gin
  30 ml quince juice
=== bar/menu.drink
menu Early card
  - Bare Hook 9.00
  - Slack Rope 10.00

menu Late card
  - Slack Rope 11.00
`;
};

test("says which drinks are off and which fall back, menu by menu, and ends with 0", async () => {
  const ended = await mutchkin(folderOf(bar("quince juice")), ["check", "--out"]);
  expect(ended).toEqual({
    code: 0,
    err: "",
    out: `3 drinks: 1 off, 1 with something to fall back on.

Early card
Off             Slack Rope: quince cordial needs quince juice, which is out
Falls back      Bare Hook: quince juice is out: apple juice instead

Late card
Off             Slack Rope: quince cordial needs quince juice, which is out
`,
  });
});

test("where the alternative is out too the drink is off; what is on no menu stands last", async () => {
  const { out } = await mutchkin(folderOf(bar("quince juice", "apple juice", "plain gin")), ["check", "--out", "bar"]);
  expect(out).toMatch(/^3 drinks: 3 off\.\n/);
  expect(out).toMatch(/Off +Bare Hook: plain gin is out; quince juice is out\n/);
  expect(out).toMatch(/\n\nOn no menu\nOff +Slack Rope, Short: plain gin is out\n$/);
});

test("a house that has everything says so in one line", async () => {
  const { out, code } = await mutchkin(folderOf(bar()), ["check", "--out"]);
  expect({ out, code }).toEqual({ code: 0, out: "3 drinks: nothing is out that one of them needs.\n" });
});

test("one file is asked for with all that its names mean; without menus there are no headings", async () => {
  const { out } = await mutchkin(folderOf(bar("quince juice")), ["check", "--out", "bar/long.drink"]);
  expect(out).toMatch(/^3 drinks: .*\n\nOff +Slack Rope: .*\nFalls back +Bare Hook: .*\n$/);
});

test("as JSON it has the published shape, each drink once with its menus", async () => {
  const { out } = await mutchkin(folderOf(bar("quince juice")), ["check", "--out", "--format", "json"]);
  const report = outSchema.parse(JSON.parse(out));
  expect(report.summary).toEqual({ drinks: 3, off: 1, fallBack: 1 });
  expect(report.drinks).toEqual([
    {
      name: "Bare Hook",
      file: "bar/long.drink",
      line: 9,
      state: "falls back",
      missing: [{ out: "quince juice", through: null, instead: "apple juice" }],
      menus: ["Early card"],
    },
    {
      name: "Slack Rope",
      file: "bar/long.drink",
      line: 1,
      state: "off",
      missing: [{ out: "quince juice", through: "quince cordial", instead: null }],
      menus: ["Early card", "Late card"],
    },
  ]);
});

test("a path where nothing stands ends with 2", async () => {
  const { code, err } = await mutchkin(folderOf(bar()), ["check", "--out", "nowhere"]);
  expect({ code, err: err.split("\n")[0] }).toEqual({ code: 2, err: "There is no file or folder “nowhere”." });
});
