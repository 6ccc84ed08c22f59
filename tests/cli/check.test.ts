import { symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { disk } from "../../server/cli/files.ts";
import { checkSchema } from "../../server/reports/check-schema.ts";
import { rules } from "../../server/rules/all.ts";
import { folderOf, mutchkin, soundHouse } from "./command.ts";

const twoWarnings = `${soundHouse}=== wrong.drink
drink Loose Rope
  family: sour
  glass: small coupe
  method: shake 12 s; fine strain
  garnish: none

  60 ml plain spirit
  30 ml lime juice
  17,5 ml rich sugar syrup

drink Slippery Rope
  from: Slack Rope
  swap lime juice for 30 ml lime joice
`;

test("a house with nothing wrong ends with 0", async () => {
  const ended = await mutchkin(folderOf(soundHouse), ["check"]);
  expect(ended).toEqual({ code: 0, out: "2 files checked: nothing found.\n", err: "" });
});

test("warnings end with 1, each on a line to jump to, with what to do below", async () => {
  const { code, out } = await mutchkin(folderOf(twoWarnings), ["check"]);
  const lines = out.split("\n");
  expect(code).toBe(1);
  expect(lines[0]).toBe("wrong.drink:9:3  warning  17,5 is written with a decimal comma; it is read as 17.5. [decimal-comma]");
  expect(lines[1]).toBe("    Write 17.5.");
  expect(lines[2]).toMatch(/^wrong\.drink:13:\d+ {2}warning {2}.*lime joice.*\[unknown-ingredient\]$/);
  expect(lines[3]).toMatch(/^ {4}Did you mean “lime juice”/);
  expect(lines.slice(-2)).toEqual(["3 files checked: 2 warnings.", ""]);
});

test.each([
  ["1", 1],
  ["2", 0],
  ["3", 0],
])("two warnings with %s let pass end with %d", async (allowed, code) => {
  expect((await mutchkin(folderOf(twoWarnings), ["check", "--max-warnings", allowed])).code).toBe(code);
});

test("an error ends with 1 however many warnings are let pass", async () => {
  const folder = folderOf(`${soundHouse}=== wrong.drink\ndrink Frayed Rope\n  method: build\n  glass: none\n  garnish: none\n  10 ml\n`);
  const { code, out } = await mutchkin(folder, ["check", "--max-warnings", "99"]);
  expect(out).toContain("  error  ");
  expect(code).toBe(1);
});

test("hints and information alone end with 0", async () => {
  const house = twoWarnings.replace("  jigger: 2.5 ml", "  severity: decimal-comma hint\n  severity: unknown-ingredient information");
  const { code, out } = await mutchkin(folderOf(house), ["check"]);
  expect(out).toContain("3 files checked: 1 for information, 1 hint.");
  expect(code).toBe(0);
});

test("a mark of each severity stands in the text, so that nothing is told by colour alone", async () => {
  const bare = { strong: (text: string) => text, faint: (text: string) => text, severity: () => "(coloured)", width: 100 };
  const { out } = await mutchkin(folderOf(twoWarnings), ["check"], { look: bare });
  expect(out.match(/\(coloured\)/g)).toHaveLength(2);
});

test("long lines are broken for somebody who watches, and whole for a pipe", async () => {
  const folder = folderOf(twoWarnings);
  const narrow = { width: 60, strong: asItIs, faint: asItIs, severity: (_: unknown, text: string) => text };
  const watched = (await mutchkin(folder, ["check"], { watched: true, look: narrow })).out.split("\n");
  const piped = (await mutchkin(folder, ["check"], { look: narrow })).out.split("\n");
  expect(Math.max(...watched.map((line) => line.length))).toBeLessThanOrEqual(60);
  expect(watched.length).toBeGreaterThan(piped.length);
});

test("the JSON has the published shape, and its places are the file's own", async () => {
  const { code, out } = await mutchkin(folderOf(twoWarnings), ["check", "--format", "json"]);
  const report = checkSchema.parse(JSON.parse(out));
  expect(code).toBe(1);
  expect(report.summary).toEqual({ files: 3, errors: 0, warnings: 2, information: 0, hints: 0 });
  expect(report.findings[0]).toEqual({
    file: "wrong.drink",
    line: 9,
    column: 3,
    endColumn: 7,
    code: "decimal-comma",
    severity: "warning",
    message: "17,5 is written with a decimal comma; it is read as 17.5.",
    todo: "Write 17.5.",
    docs: "server/rules/README.md#decimal-comma",
  });
});

test("columns are UTF-16 units: an emoji before the finding counts two", async () => {
  const text = `${soundHouse}=== wrong.drink\ndrink Wet Rope\n  from: Slack Rope\n  swap lime juice for 10 ml “🍋”, frozn\n`;
  const { out } = await mutchkin(folderOf(text), ["check", "--format", "json"]);
  const found = checkSchema.parse(JSON.parse(out)).findings.find(({ code }) => code === "unknown-ingredient");
  const line = "  swap lime juice for 10 ml “🍋”, frozn";
  expect(found && line.slice(found.column - 1, found.endColumn - 1)).toBe("“🍋”");
});

test("one file is checked with the house, the stock and the glasses around it, and only it is reported", async () => {
  const folder = folderOf(twoWarnings);
  const { code, out } = await mutchkin(folder, ["check", "bar.drink"]);
  expect({ code, out }).toEqual({ code: 0, out: "1 file checked: nothing found.\n" });
});

test("a folder inside a house is checked as part of it, from anywhere", async () => {
  const folder = folderOf(`${soundHouse}=== cards/winter/ropes.drink\ndrink Tarred Rope\n  from: Slack Rope\n  25 ml lime juice\n`);
  const inside = await mutchkin(join(folder, "cards"), ["check", "winter"]);
  expect({ code: inside.code, out: inside.out }).toEqual({ code: 0, out: "1 file checked: nothing found.\n" });
});

test("a house is not looked for above the checkout", async () => {
  const folder = folderOf(
    `=== house.drink\nhouse Above\n  severity: decimal-comma off\n=== checkout/.git/HEAD\n=== checkout/a.drink\ndrink Short Rope\n  glass: none\n  garnish: none\n  method: build\n  2,5 cl rum\n`,
  );
  const { out } = await mutchkin(join(folder, "checkout"), ["check", "a.drink"]);
  expect(out).toContain("[decimal-comma]");
});

test("two houses side by side do not see each other", async () => {
  const one = soundHouse.replaceAll("=== ", "=== one/");
  const other = "=== two/house.drink\nhouse Other Room\n=== two/b.drink\ndrink Lost Rope\n  from: Slack Rope\n";
  const { out } = await mutchkin(folderOf(one + other), ["check", "--format", "json"]);
  expect(checkSchema.parse(JSON.parse(out)).findings.map(({ file }) => file)).toContain("two/b.drink");
});

test.each([
  ["a byte order mark", (text: string) => text.replace("=== wrong.drink\n", "=== wrong.drink\n\uFEFF")],
  ["CRLF", (text: string) => text.replaceAll("\n", "\r\n").replaceAll(/(=== .*)\r\n/g, "$1\n")],
])("%s changes no finding and no place", async (_, change) => {
  const places = async (text: string) => {
    const report = checkSchema.parse(JSON.parse((await mutchkin(folderOf(text), ["check", "--format", "json"])).out));
    return report.findings.map(({ file, line, code }) => `${file}:${line} ${code}`);
  };
  expect(await places(change(twoWarnings))).toEqual(await places(twoWarnings));
});

test("a house behind a byte order mark is found from a file below it", async () => {
  const folder = folderOf(
    `${soundHouse.replace("house Test Room", "\uFEFFhouse Test Room")}=== cards/a.drink\ndrink Tarred Rope\n  from: Slack Rope\n`,
  );
  expect((await mutchkin(folder, ["check", "cards/a.drink"])).out).toBe("1 file checked: nothing found.\n");
});

test("a file that cannot be read is named, the others are checked, and the end is 2", async () => {
  const folder = folderOf(twoWarnings);
  symlinkSync(join(folder, "nowhere"), join(folder, "gone.drink"));
  const { code, out, err } = await mutchkin(folder, ["check"]);
  expect(code).toBe(2);
  expect(err).toBe("“gone.drink” could not be read: it is a link to something that is not there.\n");
  expect(out).toContain("2 warnings");
});

test("a file in another encoding is not guessed at", async () => {
  const folder = folderOf(soundHouse);
  writeFileSync(join(folder, "latin.drink"), Buffer.from("drink Caf\xe9\n", "latin1"));
  const { code, err } = await mutchkin(folder, ["check"]);
  expect(code).toBe(2);
  expect(err).toBe("“latin.drink” could not be read: it is not text in UTF-8; save it again with that encoding.\n");
});

const whatHoldsSpecs = "Name a file that ends in .drink, a Markdown file with blocks tagged `drink`, or a folder that holds some.\n";

test.each([
  [["check", "nowhere"], "There is no file or folder “nowhere”.\nCheck the spelling, or leave the path out to take the current folder.\n"],
  [
    ["check", "bar.drink/x"],
    "There is no file or folder “bar.drink/x”.\nCheck the spelling, or leave the path out to take the current folder.\n",
  ],
  [["check", "list.txt"], `“list.txt” is not a spec.\n${whatHoldsSpecs}`],
  [["check", "empty"], `There are no specs in “empty”.\n${whatHoldsSpecs}`],
])("%j ends with 2 and says what to do", async (argv, err) => {
  const folder = folderOf(`${soundHouse}=== list.txt\nrope\n=== empty/list.txt\n=== empty/read.md\ndrink Slip\n`);
  expect(await mutchkin(folder, argv)).toEqual({ code: 2, out: "", err });
});

test("installed packages and built files are passed over", async () => {
  const folder = folderOf(`${soundHouse}=== node_modules/a/b.drink\ndrnk\n=== dist/c.drink\ndrnk\n`);
  expect((await mutchkin(folder, ["check"])).out).toBe("2 files checked: nothing found.\n");
});

test("a rule that fails is named, the others go on, and the end is 2", async () => {
  const rule = rules.find(({ code }) => code === "unknown-ingredient")!;
  const check = rule.check;
  Object.assign(rule, {
    check: () => {
      throw new Error("a knot");
    },
  });
  try {
    const { code, out, err } = await mutchkin(folderOf(twoWarnings), ["check"]);
    expect(code).toBe(2);
    expect(err).toBe("The rule “unknown-ingredient” failed, so it found nothing here; the others went on. Please report it.\n");
    expect(out).toContain("[decimal-comma]");
  } finally {
    Object.assign(rule, { check });
  }
});

test.each([
  [false, /^Mutchkin itself failed: a knot\nNo file was changed\. [^\n]*\n[^\n]*MUTCHKIN_DEBUG=1[^\n]*\n$/],
  [true, /^Mutchkin itself failed: a knot\n.*\nError: a knot\n\s+at /s],
])("an internal error is one plain sentence, with its place only where asked for (%s)", async (debug, expected) => {
  const list = () => {
    throw new Error("a knot");
  };
  const { code, err } = await mutchkin(folderOf(soundHouse), ["check"], { debug, files: { ...disk, list } });
  expect(code).toBe(2);
  expect(err).toMatch(expected);
});

test("an internal error behind a write does not say that nothing was changed", async () => {
  const folder = folderOf("=== a.drink\ndrink Slip\n   50ml gin\n=== b.drink\ndrink Rope\n   50ml gin\n");
  const write: typeof disk.write = (path, text) => {
    if (path.endsWith("b.drink")) throw new Error("a knot");
    disk.write(path, text);
  };
  const { code, err } = await mutchkin(folder, ["format"], { files: { ...disk, write } });
  expect(code).toBe(2);
  expect(err).toMatch(/^Mutchkin itself failed: a knot\nFiles were written before that: look at what changed in them\. /);
});

test("somebody who watches is told how far it is, and the line is taken away at the end", async () => {
  const told: string[] = [];
  await mutchkin(folderOf(soundHouse), ["check"], { progress: (text) => told.push(text) });
  expect(told).toEqual(["Reading 0 of 2", "Reading 1 of 2", "Computing 0 of 2", "Computing 1 of 2", ""]);
});

function asItIs(text: string): string {
  return text;
}
