import { execFileSync } from "node:child_process";
import { expect, test } from "vitest";
import { version } from "../../package.json";
import { assessSchema } from "../../server/reports/assess-schema.ts";
import { folderOf, mutchkin, soundHouse } from "./command.ts";

test("the help fits one screen, and holds every command, the examples and the exit codes", async () => {
  const { code, out } = await mutchkin(folderOf(soundHouse), ["--help"]);
  const lines = out.trimEnd().split("\n");
  expect(code).toBe(0);
  expect(lines.length).toBeLessThanOrEqual(40);
  expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(100);
  for (const word of [
    "check",
    "assess",
    "adjust",
    "diff",
    "card",
    "cost",
    "prep",
    "format",
    "schema",
    "lsp",
    "Examples:",
    "Exit codes:",
    "--help",
    "--version",
  ])
    expect(out).toContain(word);
});

test("every example in the help runs on a house that has what it names", async () => {
  const { out } = await mutchkin(folderOf(soundHouse), ["--help"]);
  const bar = soundHouse
    .replaceAll("=== ", "=== bar/")
    .replace("bar.drink", "sours.drink")
    .replace("Slack Rope", "Lantern Sour")
    .concat("\nmenu Winter card\n  - Lantern Sour 12.50\n");
  const examples = [...out.matchAll(/^ {2}mutchkin (.*?) {2}/gm)].map(([, text]) => text!);
  expect(examples.length).toBeGreaterThanOrEqual(4);
  for (const example of examples) {
    const argv = [...example.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, plain]) => quoted ?? plain!);
    const folder = folderOf(bar);
    const git = (...args: string[]) =>
      execFileSync("git", ["-c", "user.name=Bar", "-c", "user.email=bar@halyard.invalid", ...args], { cwd: folder });
    git("init", "-q", "-b", "main");
    git("add", ".");
    git("commit", "-qm", "One");
    expect({ example, code: (await mutchkin(folder, argv)).code }).toEqual({ example, code: 0 });
  }
});

test("the version is the package's", async () => {
  expect(await mutchkin(folderOf(soundHouse), ["--version"])).toEqual({ code: 0, out: `${version}\n`, err: "" });
});

test.each([
  [[], "Usage: mutchkin"],
  [["chek"], "Unknown command 'chek'\n(Did you mean check?)"],
  [["check", "--formt"], "Unknown option '--formt'\n(Did you mean --format?)"],
  [["check", "--format", "xml"], "Allowed choices are text, json, sarif, github, junit, checkstyle."],
  [["check", "--max-warnings", "-1"], "Give a whole number, such as 3."],
  [["check", "--max-warnings", "few"], "Give a whole number, such as 3."],
  [["schema", "nothing"], "Allowed choices are assess, check"],
  [["lsp"], "--stdio"],
])("a command line that cannot be read ends with 2 and says why: %j", async (argv, words) => {
  const { code, out, err } = await mutchkin(folderOf(soundHouse), argv);
  expect({ code, out }).toEqual({ code: 2, out: "" });
  expect(err).toContain(words);
});

test.each(["assess", "check", "adjust", "out", "cost", "prep", "diff", "card", "import"])(
  "the schema of %s is JSON Schema that says what each property is",
  async (report) => {
    const { code, out } = await mutchkin(folderOf(soundHouse), ["schema", report]);
    const schema = JSON.parse(out);
    expect(code).toBe(0);
    expect(schema.$schema).toBe("https://json-schema.org/draft/2020-12/schema");
    expect(schema.type).toBe("object");
    expect(schema.required).toEqual(Object.keys(schema.properties));
    expect(schema.additionalProperties).toBe(false);
  },
);

test("the schema without a name is that of assess, with the figure described once", async () => {
  const { out } = await mutchkin(folderOf(soundHouse), ["schema"]);
  const schema = JSON.parse(out);
  expect(Object.keys(schema.properties)).toEqual(Object.keys(assessSchema.shape));
  expect(Object.keys(schema.$defs)).toEqual(["figure"]);
  expect(schema.$defs.figure.required).toEqual(["value", "plusMinus"]);
});

test("the server is started by its command and by no other", async () => {
  let started = 0;
  const startServer = () => {
    started++;
  };
  await mutchkin(folderOf(soundHouse), ["check"], { startServer });
  expect(started).toBe(0);
  await mutchkin(folderOf(soundHouse), ["lsp", "--stdio"], { startServer });
  expect(started).toBe(1);
});
