/** The built program, run as a shell runs it. */
import { spawn, spawnSync } from "node:child_process";
import { copyFileSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { assessSchema } from "../../server/reports/assess-schema.ts";
import { checkSchema } from "../../server/reports/check-schema.ts";
import { folderOf, soundHouse } from "./command.ts";
import { repositoryOf } from "./repository.ts";

const project = fileURLToPath(new URL("../../", import.meta.url));
const program = join(project, "dist", "cli.js");

function shell(argv: readonly string[], folder = project, env: Record<string, string> = {}) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [program, ...argv], {
    cwd: folder,
    encoding: "utf8",
    env: { ...process.env, ...env },
  });
  return { status, stdout, stderr };
}

test("the demo house is checked and assessed in one go, and both end with 0", () => {
  const checked = shell(["check", "samples/halyard-room"]);
  expect(checked).toEqual({
    status: 0,
    stdout: expect.stringMatching(/^\d+ files checked: (?:nothing found|\d+ for information)\.$/m),
    stderr: "",
  });
  const assessed = shell(["assess", "samples/halyard-room"]);
  expect(assessed).toEqual({ status: 0, stdout: expect.stringMatching(/^The Halyard Room: \d+ drinks and \d+ preps\n/), stderr: "" });
});

test("the samples' mistakes end with 1", () => {
  const { status, stdout } = shell(["check", "samples/mistakes", "--format", "json"]);
  expect(status).toBe(1);
  expect(checkSchema.parse(JSON.parse(stdout)).findings.length).toBeGreaterThan(20);
});

test("all samples assess to the published shape, whole through a pipe", () => {
  const { status, stdout } = shell(["assess", "samples", "--format", "json"]);
  expect(status).toBe(0);
  expect(assessSchema.parse(JSON.parse(stdout)).drinks.length).toBeGreaterThanOrEqual(40);
});

test("what is off tonight is listed, and is no fault", () => {
  const { status, stdout } = shell(["check", "--out", "samples/mistakes"]);
  expect({ status, stdout }).toEqual({
    status: 0,
    stdout: expect.stringMatching(/^\d+ drinks: 1 off\.\n\nOff +Bare Hook: kelp cordial is out\n$/),
  });
});

test("a usage error ends with 2", () => {
  const { status, stdout, stderr } = shell(["check", "nowhere"]);
  expect({ status, stdout }).toEqual({ status: 2, stdout: "" });
  expect(stderr).toMatch(/^There is no file or folder “nowhere”\.\n/);
});

test("nothing printed to a pipe is coloured or moves the cursor", () => {
  const { stdout, stderr } = shell(["check", "samples/mistakes"], project, { FORCE_COLOR: "1" });
  expect(stdout + stderr).not.toContain("\u001b");
});

test("a reader that stops early is no fault", async () => {
  const child = spawn(process.execPath, [program, "assess", "samples", "--format", "json"], { cwd: project });
  let complained = "";
  child.stderr.on("data", (data) => {
    complained += data;
  });
  child.stdout.once("data", () => child.stdout.destroy());
  const status = await new Promise((ended) => child.on("exit", ended));
  expect({ status, complained }).toEqual({ status: 0, complained: "" });
});

test("it can be run by its own name", () => {
  expect(readFileSync(program, "utf8").split("\n")[0]).toBe("#!/usr/bin/env node");
});

test("`lsp --stdio` is the language server, and lives until it is told to go", async () => {
  const child = spawn(process.execPath, [program, "lsp", "--stdio"], { cwd: folderOf(soundHouse) });
  const send = (message: object) => {
    const body = JSON.stringify({ jsonrpc: "2.0", ...message });
    child.stdin.write(`Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`);
  };
  let heard = "";
  const answered = new Promise<void>((done) => {
    child.stdout.on("data", (data) => {
      heard += data;
      if (heard.includes('"serverInfo"')) done();
    });
  });
  const ended = new Promise((done) => child.on("exit", done));
  send({ id: 1, method: "initialize", params: { processId: process.pid, rootUri: null, capabilities: {} } });
  await answered;
  expect(heard).toContain('"name":"Mutchkin"');
  send({ id: 2, method: "shutdown" });
  send({ method: "exit" });
  expect(await ended).toBe(0);
});

test("the bundle checks a branch with git, in a form for a review, from a single copied file", () => {
  const { folder, write } = repositoryOf(
    `${soundHouse}=== old.drink\ndrink Old Rope\n  from: Slack Rope\n  swap lime juice for 30,0 ml lime juice\n`,
  );
  copyFileSync(program, join(folder, "mutchkin.js"));
  write("new.drink", "drink New Rope\n  from: Slack Rope\n  swap lime juice for 30,0 ml lime juice\n");
  const run = (...argv: string[]) => spawnSync(process.execPath, ["mutchkin.js", "check", ...argv], { cwd: folder, encoding: "utf8" });
  const { status, stdout, stderr } = run("--changed-since", "HEAD", "--format", "github");
  expect({ status, stderr }).toEqual({ status: 1, stderr: "1 finding from before the change is not shown.\n" });
  expect(stdout).toMatch(
    /^::warning file=new\.drink,line=3,endLine=3,col=23,endColumn=27,title=decimal-comma::.*\n4 files checked: 1 warning\.\n$/,
  );
  expect(JSON.parse(run("--format", "sarif").stdout).runs[0].results).toHaveLength(2);
  expect(run("--format", "junit").stdout).toContain('failures="2"');
  expect(run("--fix", "--format", "checkstyle")).toMatchObject({
    status: 0,
    stderr: expect.stringContaining("Put right in new.drink: decimal-comma."),
  });
});
