/** The forms that other programs read, each held against what its readers expect. */
import schema from "@microsoft/jest-sarif/lib/schemas/sarif-2.1.0-rtm.5.json";
import Ajv from "ajv-draft-04";
import addFormats from "ajv-formats";
import fc from "fast-check";
import { expect, test } from "vitest";
import { parseStringPromise } from "xml2js";
import { version } from "../../package.json";
import type { Checked } from "../../server/reports/check.ts";
import { checkCheckstyle } from "../../server/reports/check-checkstyle.ts";
import { checkGithub } from "../../server/reports/check-github.ts";
import { checkJunit } from "../../server/reports/check-junit.ts";
import { checkSarif } from "../../server/reports/check-sarif.ts";
import { checkSchema } from "../../server/reports/check-schema.ts";
import { rules } from "../../server/rules/all.ts";
import { entryNamed, houseOf } from "../house/make.ts";
import { folderOf, mutchkin, soundHouse } from "./command.ts";

/** The schema as its committee published it (OASIS SARIF TC, 2.1.0-rtm.5, the last before the standard), from the package of its editors. */
// One of its patterns is none with the `u` flag.
const ajv = new Ajv({ strict: false, allErrors: true, unicodeRegExp: false });
addFormats(ajv);
const isSarif = ajv.compile(schema);

/** A name with everything that a URI, a workflow command or XML would trip over. */
const odd = "bar/50%2C #1, “sour” & <fizz>.drink";
const wrong = `${soundHouse}=== ${odd}
drink Wet Rope
  from: Slack Rope
  swap lime juice for 10 ml “🍋 & <zest>”, frozn
drink Bare Rope
  10 ml
drink Loose Rope
  family: sour
  glass: small coupe
  method: shake 12 s; fine strain

  60 ml plain spirit
  30 ml lime juice
  17,5 ml rich sugar syrup
`;

const printed = async (format: string) => {
  const folder = folderOf(wrong);
  const { findings, summary } = checkSchema.parse(JSON.parse((await mutchkin(folder, ["check", "--format", "json"])).out));
  const { code, out, err } = await mutchkin(folder, ["check", "--format", format]);
  expect({ code, err }).toEqual({ code: 1, err: "" });
  expect(new Set(findings.map(({ severity }) => severity)).size).toBeGreaterThanOrEqual(2);
  return { findings, summary, out };
};

test("the SARIF is what the published schema wants", async () => {
  const { findings, out } = await printed("sarif");
  const log = JSON.parse(out);
  isSarif(log);
  expect(isSarif.errors ?? []).toEqual([]);
  const [run] = log.runs;
  expect(run.tool.driver).toMatchObject({ name: "Mutchkin", version });
  expect(run.invocations).toEqual([{ executionSuccessful: true }]);
  expect(run.results).toHaveLength(findings.length);
});

test("the schema is one that finds fault", () => {
  expect(isSarif({ version: "2.1.0", runs: [{ tool: { driver: {} } }] })).toBe(false);
});

test("each result of the SARIF leads to its place and its rule, and every rule has help", async () => {
  const { findings, out } = await printed("sarif");
  const [{ results, tool, columnKind, artifacts }] = JSON.parse(out).runs;
  expect(columnKind).toBe("utf16CodeUnits");
  for (const [index, { code, line, column, endColumn, severity }] of findings.entries()) {
    const { ruleId, ruleIndex, level, locations } = results[index];
    const { artifactLocation, region } = locations[0].physicalLocation;
    expect(tool.driver.rules[ruleIndex].id).toBe(ruleId);
    expect({ ruleId, level }).toEqual({
      ruleId: code,
      level: { error: "error", warning: "warning", information: "note", hint: "note" }[severity],
    });
    expect(region).toEqual({ startLine: line, startColumn: column, endLine: line, endColumn });
    // RFC 3986: `#` would start a fragment, `%` an escape.
    expect(artifactLocation.uri).toBe("bar/50%252C%20%231%2C%20%E2%80%9Csour%E2%80%9D%20%26%20%3Cfizz%3E.drink");
    expect(new URL(artifactLocation.uri, "file:///checkout/").pathname.split("/").map(decodeURIComponent).join("/")).toBe(
      `/checkout/${odd}`,
    );
    expect(artifacts[artifactLocation.index].location.uri).toBe(artifactLocation.uri);
  }
  expect(tool.driver.rules.map(({ id }: { id: string }) => id)).toEqual(rules.map(({ code }) => code));
  for (const { help, shortDescription } of tool.driver.rules) expect(`${shortDescription.text}${help.markdown}`).toMatch(/.+Put right:/s);
});

test("a file outside the current folder has a whole address", async () => {
  const folder = folderOf(`${wrong}=== elsewhere/list.txt\n`);
  const { out } = await mutchkin(`${folder}/elsewhere`, ["check", "--format", "sarif", ".."]);
  const log = JSON.parse(out);
  isSarif(log);
  expect(isSarif.errors ?? []).toEqual([]);
  const { uri, uriBaseId } = log.runs[0].results[0].locations[0].physicalLocation.artifactLocation;
  expect({ path: decodeURIComponent(new URL(uri).pathname), uriBaseId }).toEqual({ path: `${folder}/${odd}`, uriBaseId: undefined });
});

test("a fingerprint stays when lines move, and differs for each finding", async () => {
  const prints = async (text: string) => {
    const [{ results }] = JSON.parse((await mutchkin(folderOf(text), ["check", "--format", "sarif"])).out).runs;
    return results.map(({ partialFingerprints }: { partialFingerprints: object }) => JSON.stringify(partialFingerprints));
  };
  const before = await prints(wrong);
  expect(new Set(before).size).toBe(before.length);
  expect(await prints(wrong.replace("drink Wet Rope", "# Moved down,\n# by two lines.\ndrink Wet Rope"))).toEqual(before);
  const twice = `${soundHouse}=== a.drink\ndrink Twin\n  from: Slack Rope\n  10 ml tar\n  10 ml tar\n`;
  const same = await prints(twice);
  expect(same.length).toBeGreaterThanOrEqual(2);
  expect(new Set(same).size).toBe(same.length);
});

test("the workflow commands say what was found where, and a log reader gets the sum", async () => {
  const { findings, out } = await printed("github");
  const lines = out.trimEnd().split("\n");
  const commands = lines.slice(0, -1).map((line) => {
    const [, command, properties, message] = /^::(\w+) (.*?)::(.*)$/.exec(line)!;
    return {
      command,
      message: unescaped(message!),
      ...Object.fromEntries(properties!.split(",").map((one) => one.split(/=(.*)/s).slice(0, 2).map(unescaped))),
    };
  });
  expect(commands).toEqual(
    findings.map(({ severity, file, line, column, endColumn, code, message, todo }) => ({
      command: { error: "error", warning: "warning", information: "notice", hint: "notice" }[severity],
      ...{ file, line: `${line}`, endLine: `${line}`, col: `${column}`, endColumn: `${endColumn}`, title: code },
      message: `${message} ${todo}`.trim(),
    })),
  );
  expect(lines.at(-1)).toMatch(/^3 files checked: .*\d+ warnings?/);
});

/** As the runner takes it back (actions/runner, `ActionCommand`; from memory). */
function unescaped(text: string): string {
  return text.replaceAll("%0D", "\r").replaceAll("%0A", "\n").replaceAll("%3A", ":").replaceAll("%2C", ",").replaceAll("%25", "%");
}

test("JUnit counts a failure for each error and warning, and a file with nothing as a test that passed", async () => {
  const { summary, out } = await printed("junit");
  const { testsuites } = await parseStringPromise(out);
  const suites = testsuites.testsuite;
  expect(suites.map((suite: Xml) => suite.$.name)).toEqual(["bar.drink", odd, "house.drink"]);
  expect(Number(testsuites.$.failures)).toBe(summary.errors + summary.warnings);
  for (const suite of suites) {
    expect(suite.testcase).toHaveLength(Number(suite.$.tests));
    expect(suite.testcase.filter(({ failure }: Xml) => failure)).toHaveLength(Number(suite.$.failures));
  }
  expect(suites[0].testcase[0].$).toMatchObject({ name: "nothing found", file: "bar.drink" });
  expect(suites[1].testcase.find(({ failure }: Xml) => failure?.[0].$.type.includes("unknown-ingredient")).failure[0].$.message).toContain(
    "🍋 & <zest>",
  );
});

test("Checkstyle names every file, and each finding in it by line", async () => {
  const { findings, out } = await printed("checkstyle");
  const { checkstyle } = await parseStringPromise(out);
  expect(checkstyle.file.map((file: Xml) => file.$.name)).toEqual(["bar.drink", odd, "house.drink"]);
  expect(checkstyle.file[1].error.map(({ $ }: Xml) => $)).toEqual(
    findings.map(({ line, column, severity, code, message, todo }) => ({
      line: `${line}`,
      column: `${column}`,
      // Checkstyle's own levels: error, warning, info, ignore.
      severity: { error: "error", warning: "warning", information: "info", hint: "info" }[severity],
      message: `${message} ${todo}`.trim(),
      source: `mutchkin.${code}`,
    })),
  );
});

// biome-ignore lint/suspicious/noExplicitAny: what a reader of XML makes of a text has no shape of its own.
type Xml = any;

test("whatever a name and a message hold, all forms can be read", async () => {
  const entry = entryNamed(houseOf("drink Knot\n"), "Knot");
  const any = fc.string({ unit: "binary", minLength: 1 });
  await fc.assert(
    fc.asyncProperty(any, any, async (file, message) => {
      const finding = { file, line: 1, column: 1, endColumn: 1, code: "x", severity: "warning", message, todo: "", docs: "" } as const;
      const checked: Checked = { files: [file], findings: [{ finding, entry, fingerprint: message }] };
      expect((await parseStringPromise(checkJunit(checked))).testsuites.testsuite).toHaveLength(1);
      expect((await parseStringPromise(checkCheckstyle(checked))).checkstyle.file).toHaveLength(1);
      expect(checkGithub(checked).split(/\r\n|\r|\n/)).toHaveLength(3);
      isSarif(JSON.parse(checkSarif(checked, { rules: [], version: "1.0.0", complete: true })));
      expect(isSarif.errors ?? []).toEqual([]);
    }),
  );
});

test.each([
  ["sarif", /"results": \[\]/],
  ["github", /^2 files checked: nothing found\.\n$/],
  ["junit", /tests="2" failures="0"/],
  ["checkstyle", /<checkstyle version="4.3">\s*<file name="bar.drink"\/>\s*<file name="house.drink"\/>\s*<\/checkstyle>/],
])("%s of a house with nothing wrong ends with 0", async (format, expected) => {
  const { code, out, err } = await mutchkin(folderOf(soundHouse), ["check", "--format", format]);
  expect({ code, err }).toEqual({ code: 0, err: "" });
  expect(out).toMatch(expected);
});

test.each([["--format", "sarif"], ["--fix"], ["--baseline", "x"], ["--changed-since", "HEAD"], ["--max-warnings", "3"]])(
  "`--out` does not go with %s",
  async (...more) => {
    const { code, err } = await mutchkin(folderOf(soundHouse), ["check", "--out", ...more]);
    expect({ code, err }).toEqual({ code: 2, err: expect.stringContaining("`--out` only lists what is off.") });
  },
);
