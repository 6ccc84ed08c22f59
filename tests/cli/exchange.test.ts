/** `mutchkin export` and `mutchkin import`. */
import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { parse } from "csv-parse/sync";
import { expect, test } from "vitest";
import { importSchema } from "../../server/reports/import-schema.ts";
import { plainLook } from "../../server/reports/sheet.ts";
import { folderOf, mutchkin, soundHouse } from "./command.ts";

const sheet = `${soundHouse}=== sheet.csv
name;kind;abv;colour
navy rum;spirit;54,5 %;dark
cheap rum;spirit;strong;
`;

test.each([
  ["stock", [["name"], ["plain spirit"]]],
  ["specs", [["drink"], ["Slack Rope"], ["Slack Rope"], ["Slack Rope"]]],
])("export %s prints the table of the asked files alone", async (what, firstColumn) => {
  const { code, out, err } = await mutchkin(folderOf(sheet), ["export", what, "bar.drink"]);
  expect({ code, err }).toEqual({ code: 0, err: "" });
  expect(parse(out).map((row: string[]) => row.slice(0, 1))).toEqual(firstColumn);
});

test("export recipes prints one object, and says what it leaves out", async () => {
  const folder = folderOf(soundHouse.replace("  garnish: none", "  garnish: none\n  price: 12"));
  const { code, out, err } = await mutchkin(folder, ["export", "recipes"]);
  expect({ code, err }).toEqual({ code: 0, err: "Recipes have no place for these fields, which are not in the file: price.\n" });
  expect(JSON.parse(out)["@graph"].map(({ name }: { name: string }) => name)).toEqual(["Slack Rope"]);
});

test("what was exported is imported, and comes to the same table", async () => {
  const folder = folderOf(soundHouse);
  for (const what of ["stock", "specs"]) {
    const { out: table } = await mutchkin(folder, ["export", what, "--out", `${what}.csv`, "bar.drink"]);
    expect(table).toBe("");
    mkdirSync(join(folder, what));
    expect(await mutchkin(folder, ["import", `${what}.csv`, "--out", what])).toEqual({
      code: 0,
      out: `Wrote 1 entry to ${what}/${what}.drink\n`,
      err: "",
    });
    const { out } = await mutchkin(folder, ["export", what, what]);
    expect(out).toBe(readFileSync(join(folder, `${what}.csv`), "utf8"));
  }
});

test("import prints the specs, and on standard error everything that was not understood; then it ends with 1", async () => {
  const { code, out, err } = await mutchkin(folderOf(sheet), ["import", "sheet.csv"]);
  expect(code).toBe(1);
  expect(out).toBe(
    "stock navy rum\n  kind: spirit\n  abv: 54.5 %\n\n  # not understood, colour: dark\n\nstock cheap rum\n  kind: spirit\n\n  # not understood, abv: strong\n",
  );
  expect(
    err,
  ).toBe(`row 3, column “abv”: “strong” – This needs an amount, such as \`43 %\`. Write one amount with its unit. It is kept as a comment.
column “colour”, 1 cell from row 2 on: “dark” – The table has no such column, or has it twice. It is kept as a comment.
1 decimal comma is written as a point.
2 things not understood; nothing is left out.
`);
});

test("somebody who watches is told in lines that fit", async () => {
  const { err } = await mutchkin(folderOf(sheet), ["import", "sheet.csv"], { watched: true, look: { ...plainLook, width: 60 } });
  for (const line of err.split("\n")) expect(line.length).toBeLessThanOrEqual(60);
});

test("the report is there for another program, too", async () => {
  const { code, err } = await mutchkin(folderOf(sheet), ["import", "sheet.csv", "--report", "json"]);
  const { entries, misread } = importSchema.parse(JSON.parse(err));
  expect({ code, entries }).toEqual({ code: 1, entries: 2 });
  expect(misread[0]).toEqual({
    where: "row 3, column “abv”",
    text: "strong",
    why: "This needs an amount, such as `43 %`. Write one amount with its unit.",
    done: "It is kept as a comment.",
  });
});

test("neither writes over anything", async () => {
  const folder = folderOf(sheet);
  const before = readFileSync(join(folder, "bar.drink"), "utf8");
  for (const argv of [
    ["export", "stock", "--out", "bar.drink"],
    ["import", "sheet.csv", "--out", "bar.drink"],
  ]) {
    expect(await mutchkin(folder, argv)).toEqual({
      code: 2,
      out: "",
      err: "“bar.drink” is there already, and may have been worked on.\nName another file, or take that one away first.\n",
    });
  }
  expect(readFileSync(join(folder, "bar.drink"), "utf8")).toBe(before);
});

test.each([
  [["import", "nowhere.csv"], "There is no file “nowhere.csv”."],
  [["import", "sheet.csv", "--out", "specs.txt"], "“specs.txt” is no name for specs."],
  [["import", "latin.csv"], "it is not text in UTF-8"],
  [["import", "odd.csv"], "The first row names no table"],
  [["import", "sheet.csv", "--as", "recipes"], "This does not read as JSON"],
  [["export", "menus"], "Allowed choices are stock, specs, recipes."],
])("%j ends with 2 and says why", async (argv, words) => {
  const folder = folderOf(`${sheet}=== odd.csv\nbottle,size\n`);
  // “name\nÉté” as Windows-1252 writes it.
  writeFileSync(join(folder, "latin.csv"), Buffer.from([0x6e, 0x61, 0x6d, 0x65, 0x0a, 0xc9, 0x74, 0xe9, 0x0a]));
  const { code, out, err } = await mutchkin(folder, argv);
  expect({ code, out }).toEqual({ code: 2, out: "" });
  expect(err).toContain(words);
  expect(existsSync(join(folder, "specs.txt"))).toBe(false);
});

test("a recipe is known by its text, whatever the file is called", async () => {
  const folder = folderOf(`=== slip.txt\n{"@type":"Recipe","name":"Slip","recipeIngredient":["50 ml gin"]}\n`);
  expect(await mutchkin(folder, ["import", "slip.txt"])).toEqual({ code: 0, out: "drink Slip\n  50 ml gin\n", err: "" });
});
