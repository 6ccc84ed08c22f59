/** `mutchkin check --baseline` and `--write-baseline`: old findings that are let stand. */
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { folderOf, mutchkin, soundHouse } from "./command.ts";

const loose = "drink Loose Rope\n  from: Slack Rope\n  swap lime juice for 30 ml lime joice\n  12,5 ml lemon juice\n";
const house = `${soundHouse}=== cards/wrong.drink\n${loose}`;

async function withBaseline(text = house): Promise<string> {
  const folder = folderOf(text);
  const { code, err } = await mutchkin(folder, ["check", "--write-baseline", "old.json"]);
  expect({ code, err }).toEqual({ code: 0, err: "" });
  return folder;
}

test("it is a small file in order, a line for each finding", async () => {
  const folder = folderOf(house);
  const { code, out } = await mutchkin(folder, ["check", "--write-baseline", "old.json"]);
  expect({ code, out }).toEqual({ code: 0, out: "2 findings written to old.json.\n" });
  expect(readFileSync(join(folder, "old.json"), "utf8")).toBe(`{
  "baseline": 1,
  "findings": [
    {"file":"cards/wrong.drink","severity":"warning","finding":"decimal-comma | drink Loose Rope | 12,5"},
    {"file":"cards/wrong.drink","severity":"warning","finding":"unknown-ingredient | drink Loose Rope | lime joice"}
  ]
}
`);
});

test("what it lists is let stand, and counted", async () => {
  const { code, out } = await mutchkin(await withBaseline(), ["check", "--baseline", "old.json"]);
  expect({ code, out }).toEqual({ code: 0, out: "3 files checked: nothing found.\n2 old findings let stand by old.json.\n" });
});

test("it holds when lines move, when figures change, and in another file", async () => {
  const folder = await withBaseline();
  writeFileSync(join(folder, "cards/wrong.drink"), "# Moved.\n");
  writeFileSync(join(folder, "moved.drink"), `# Ropes.\n\n${loose.replace("30 ml", "25 ml")}`);
  const { code, out } = await mutchkin(folder, ["check", "--baseline", "old.json"]);
  expect({ code, out }).toEqual({ code: 0, out: "4 files checked: nothing found.\n2 old findings let stand by old.json.\n" });
});

test("one more of the same is one too many", async () => {
  const folder = await withBaseline();
  writeFileSync(join(folder, "cards/wrong.drink"), `${loose}  12,5 ml orange juice\n`);
  const { code, out } = await mutchkin(folder, ["check", "--baseline", "old.json"]);
  expect(code).toBe(1);
  expect(out).toMatch(/^cards\/wrong\.drink:5:3 {2}warning {2}12,5 .*\[decimal-comma\]$/m);
  expect(out).toContain("3 files checked: 1 warning.\n2 old findings let stand by old.json.\n");
});

test("what has become graver comes up again and is not said to be gone; what has become less grave does not", async () => {
  const folder = await withBaseline();
  const house = join(folder, "house.drink");
  writeFileSync(house, `${readFileSync(house, "utf8")}  severity: decimal-comma error\n`);
  const { code, out } = await mutchkin(folder, ["check", "--baseline", "old.json"]);
  expect(code).toBe(1);
  expect(out).toMatch(/^cards\/wrong\.drink:4:3 {2}error {2}12,5 .*\[decimal-comma\]$/m);
  expect(out).toMatch(/1 error\.\n1 old finding let stand by old\.json\.\n$/);
  writeFileSync(house, readFileSync(house, "utf8").replace("comma error", "comma hint"));
  expect((await mutchkin(folder, ["check", "--baseline", "old.json"])).out).toContain("2 old findings let stand by old.json.\n");
});

test("a baseline that says nothing of how grave its findings were lets them stand", async () => {
  const folder = await withBaseline();
  const old = join(folder, "old.json");
  writeFileSync(old, readFileSync(old, "utf8").replaceAll('"severity":"warning",', ""));
  expect((await mutchkin(folder, ["check", "--baseline", "old.json"])).out).toContain("2 old findings let stand by old.json.\n");
});

test("what is gone is said, so that it stays away", async () => {
  const folder = await withBaseline();
  writeFileSync(join(folder, "cards/wrong.drink"), loose.replace("12,5", "12.5"));
  const { code, out } = await mutchkin(folder, ["check", "--baseline", "old.json"]);
  expect(code).toBe(0);
  expect(out).toBe(
    "3 files checked: nothing found.\n1 old finding let stand by old.json.\n" +
      "1 finding of old.json is gone. Write it again with `--write-baseline old.json`, so that it stays away.\n",
  );
});

test("of files that are not asked for nothing is said", async () => {
  const { out } = await mutchkin(await withBaseline(), ["check", "--baseline", "old.json", "bar.drink"]);
  expect(out).toBe("1 file checked: nothing found.\n");
});

test("it can lie in another folder, and be used from another", async () => {
  const folder = folderOf(house);
  mkdirSync(join(folder, "tools"));
  await mutchkin(folder, ["check", "--write-baseline", "tools/old.json"]);
  expect(readFileSync(join(folder, "tools/old.json"), "utf8")).toContain('{"file":"../cards/wrong.drink",');
  const { code, out } = await mutchkin(join(folder, "cards"), ["check", "--baseline", "../tools/old.json"]);
  expect({ code, out }).toEqual({ code: 0, out: "1 file checked: nothing found.\n2 old findings let stand by ../tools/old.json.\n" });
});

test("in a form for other programs the notes go to the other stream", async () => {
  const { out, err } = await mutchkin(await withBaseline(), ["check", "--baseline", "old.json", "--format", "json"]);
  expect(JSON.parse(out).findings).toEqual([]);
  expect(err).toBe("2 old findings let stand by old.json.\n");
});

test.each([
  [
    ["--baseline", "none.json"],
    "There is no file “none.json”.\n`mutchkin check --write-baseline none.json` writes one of what is found now.\n",
  ],
  [["--baseline", "bar.drink"], "“bar.drink” is not a baseline of findings.\n"],
  [["--baseline", "list.json"], "“list.json” is not a baseline of findings.\n"],
  [["--write-baseline", "none/old.json"], "There is no folder for “none/old.json”.\nMake the folder first.\n"],
  [["--write-baseline", "a.json", "--baseline", "b.json"], "A baseline is written of all that is found.\n"],
  [["--write-baseline", "a.json", "--changed-since", "HEAD"], "A baseline is written of all that is found.\n"],
])("%j ends with 2 and says what to do", async (options, words) => {
  const { code, out, err } = await mutchkin(folderOf(`${house}=== list.json\n{"baseline": 1, "findings": [{"file": "a"}]}\n`), [
    "check",
    ...options,
  ]);
  expect({ code, out }).toEqual({ code: 2, out: "" });
  expect(err).toContain(words);
});
