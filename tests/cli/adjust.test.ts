import { chmodSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { disk, Unwritable } from "../../server/cli/files.ts";
import { type AdjustReport, adjustSchema } from "../../server/reports/adjust-schema.ts";
import { folderOf, mutchkin, soundHouse } from "./command.ts";

const preps = `=== preps.drink
stock plain sugar
  kind: sugar
  abv: 0 %
  sugar: 100 g/100 g sucrose
  acid: none

prep round syrup
  200 g plain sugar
  100 g water

prep sharp orange
  1 l orange juice
`;

async function adjusted(folder: string, ...argv: string[]): Promise<AdjustReport> {
  const { out, err } = await mutchkin(folder, ["adjust", "--format", "json", ...argv]);
  expect(err).toBe("");
  return adjustSchema.parse(JSON.parse(out));
}

describe("what it prints", () => {
  test("a named pour: now and then, what is left over, and the line that changes", async () => {
    const folder = folderOf(soundHouse);
    const { code, out, err } = await mutchkin(folder, ["adjust", "--drink", "Slack Rope", "--to", "ratio 6", "--with", "lime juice"]);
    expect({ code, err }).toEqual({ code: 0, err: "" });
    expect(out).toMatch(
      /^Slack Rope: ratio 6 {2}sour, bar\.drink:8\n\nLime juice: ([\d.]+) ml in place of 30 ml\. Ratio [\d.]+ ± [\d.]+: /,
    );
    expect(out).toMatch(/\nRatio +[\d.]+ ± [\d.]+ +[\d.]+ ± [\d.]+ +4 to 13\n/);
    const amount = /Lime juice: ([\d.]+) ml/.exec(out)![1];
    expect(out).toContain(`\nbar.drink:15\n-   30 ml lime juice\n+   ${amount} ml lime juice\n\nNothing was written. Add \`--write\``);
  });

  test("without a pour each that does it, the smallest change first, and what does not with its reason", async () => {
    const { ways } = await adjusted(folderOf(soundHouse), "--drink", "Slack Rope", "--to", "strength 12 %");
    const met = ways.flatMap(({ with: pour, reached }) => (reached ? [pour] : []));
    expect(met.length).toBeGreaterThan(1);
    expect(ways.slice(met.length).every(({ problem }) => problem)).toBe(true);
    for (const { reached } of ways) if (reached) expect(reached.after.strengthPct!.value! - 12).toBeCloseTo(reached.leftOver, 3);
  });

  test("a target that is not reached ends with 1, and says how near it comes", async () => {
    const { code, out } = await mutchkin(folderOf(soundHouse), [
      "adjust",
      "--drink",
      "Slack Rope",
      "--to",
      "strength 60 %",
      "--with",
      "lime juice",
    ]);
    expect(code).toBe(1);
    expect(out).toMatch(/Even without any lime juice the strength is [\d.]+ % vol\./);
  });

  test("the data say the same as the text", async () => {
    const report = await adjusted(folderOf(soundHouse), "--drink", "Slack Rope", "--to", "ratio 6", "--with", "lime juice");
    expect(report).toMatchObject({ name: "Slack Rope", kind: "drink", file: "bar.drink", line: 8, family: "sour", written: false });
    expect(report.target).toEqual({ figure: "ratio", unit: "", value: 6, asked: "ratio 6" });
    expect(report.usual.ratio).toEqual({ low: 4, high: 13 });
    const { reached, present } = report.ways[0]!;
    expect(present).toBe("30 ml");
    expect(reached!.step).toBe(2.5);
    expect(reached!.amount / 2.5).toBe(Math.round(reached!.amount / 2.5));
    expect(Math.abs(reached!.exact - reached!.amount)).toBeLessThan(2.5);
    expect(reached!.change).toEqual({ line: 15, before: "  30 ml lime juice", after: `  ${reached!.text} lime juice` });
  });

  test("a prep by weight: 66 °Bx on 100 g of water are 66 ÷ 34 × 100 = 194.1 g of sugar", async () => {
    const { ways, now } = await adjusted(folderOf(soundHouse + preps), "--prep", "round syrup", "--to", "66 brix", "--with", "plain sugar");
    expect(now.brix!.value).toBeCloseTo(66.6667, 3);
    expect(ways[0]!.reached).toMatchObject({ amount: 194.1, unit: "g", step: 0.1 });
    expect(ways[0]!.reached!.exact).toBeCloseTo(194.118, 2);
  });

  test("something new goes on a line of its own", async () => {
    const { ways } = await adjusted(
      folderOf(soundHouse + preps),
      "--prep",
      "sharp orange",
      "--to",
      "acid of lime juice",
      "--with",
      "citric acid",
    );
    expect(ways[0]).toMatchObject({ with: "citric acid", present: null });
    expect(ways[0]!.reached!.change).toEqual({ line: 13, before: null, after: `  ${ways[0]!.reached!.text} citric acid` });
  });
});

describe("what it writes", () => {
  test.each([
    ["LF", (text: string) => text],
    ["CRLF, a byte order mark and no last line break", (text: string) => `\uFEFF${text.trimEnd().replaceAll("\n", "\r\n")}`],
    ["CR", (text: string) => text.replaceAll("\n", "\r")],
  ])("with %s every other byte stays", async (_, change) => {
    const folder = folderOf(soundHouse);
    const file = join(folder, "bar.drink");
    writeFileSync(file, change(readFileSync(file, "utf8").replace("30 ml lime juice", "30 ml  lime juice,  frozen \t # 🍋 tart")));
    const before = readFileSync(file);
    const report = await adjusted(folder, "--drink", "Slack Rope", "--to", "ratio 6", "--with", "lime juice", "--write");
    expect(report.written).toBe(true);
    const { amount } = report.ways[0]!.reached!;
    expect(readFileSync(file, "utf8")).toBe(before.toString("utf8").replace("30 ml  lime", `${amount} ml  lime`));
    const again = await adjusted(folder, "--drink", "Slack Rope", "--to", "ratio 6", "--with", "lime juice", "--write");
    expect(again).toMatchObject({ written: false, ways: [{ present: `${amount} ml`, reached: { change: null } }] });
  });

  test("a new line takes the file's own break and depth", async () => {
    const folder = folderOf(
      `=== a.drink\r\ndrink Rope\r\n    50 ml gin\r\n    top to 150 ml soda water\r\n`.replace("=== a.drink\r\n", "=== a.drink\n"),
    );
    const report = await adjusted(folder, "--drink", "Rope", "--to", "sweetness 4 g/100 ml", "--with", "sugar", "--write");
    const { text } = report.ways[0]!.reached!;
    expect(readFileSync(join(folder, "a.drink"), "utf8")).toBe(
      `drink Rope\r\n    50 ml gin\r\n    ${text} sugar\r\n    top to 150 ml soda water\r\n`,
    );
  });

  test("the file keeps who may read it, and what cannot be written is as it was", async () => {
    const folder = folderOf(soundHouse);
    const file = join(folder, "bar.drink");
    chmodSync(file, 0o660);
    const { mode } = statSync(file);
    const argv = ["adjust", "--drink", "Slack Rope", "--to", "ratio 6", "--with", "lime juice", "--write"];
    const write = () => {
      throw new Unwritable("the disk is full");
    };
    expect(await mutchkin(folder, argv, { files: { ...disk, write } })).toEqual({
      code: 2,
      out: "",
      err: "“bar.drink” could not be written: the disk is full.\nIt is as it was.\n",
    });
    expect((await mutchkin(folder, argv)).out).toMatch(/\nWritten\.\n$/);
    expect(statSync(file).mode).toBe(mode);
  });
});

test.each([
  [["--to", "ratio 6"], "Name one drink or one prep."],
  [["--drink", "Slack Rope", "--prep", "x", "--to", "ratio 6"], "Name one drink or one prep."],
  [["--drink", "Slak Rope", "--to", "ratio 6"], "There is no drink “Slak Rope” here.\nDid you mean “Slack Rope”?"],
  [["--drink", "Slack Rope"], "--to"],
  [["--drink", "Slack Rope", "--to", "ratio 6", "--write"], "`--write` needs to know which pour to change."],
  [["--drink", "Slack Rope", "--to", "ratoi 9"], "“ratoi” is nothing that a drink can be brought to. Did you mean “ratio”?"],
  [["--drink", "Slack Rope", "--to", "9"], "“9” does not say of what."],
  [["--drink", "Slack Rope", "--to", "acid 6 %"], "Acid is not counted in “%”."],
  [["--drink", "Slack Rope", "--to", "ratio 6", "--with", "lim juice"], "Did you mean “lime juice”?"],
  [["--drink", "Slack Rope", "--to", "ratio 6", "--with", "story: none"], "is nothing that goes into the liquid"],
])("%j ends with 2 and says what to do", async (argv, words) => {
  const { code, out, err } = await mutchkin(folderOf(soundHouse), ["adjust", ...argv]);
  expect({ code, out }).toEqual({ code: 2, out: "" });
  expect(err).toContain(words);
});
