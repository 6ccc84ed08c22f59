/** The house rules of the code: imports point down, and only the wiring touches the outside. */
import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import ts from "typescript";
import { afterAll, expect, test } from "vitest";

const root = fileURLToPath(new URL("../", import.meta.url));

test("no import climbs a floor, none goes round in a circle, none reaches outside", () => expect(breaches(root)).toEqual([]));

test("a breach of each rule is found", () => {
  const planted: Record<string, string> = {
    "grammar/line.ts": 'import "../server/house/house.ts";',
    "server/engine/density.ts": 'import "../../grammar/units.ts";',
    "server/house/house.ts": 'import "../rules/a.ts";',
    "server/house/disk.ts": 'import "node:fs";',
    "server/rules/a.ts": 'import "../lsp/main.ts";',
    "server/rules/b.ts": 'import "vscode-languageserver/node";',
    "server/rules/c.ts": 'import "./nowhere.ts";',
    "server/features/tool.ts": 'import "typescript";',
    "server/lsp/main.ts": 'import "../../client/extension.ts";',
    "client/extension.ts": 'import "../grammar/units.ts";',
    "grammar/units.ts": 'import "./spelling.ts";',
    "grammar/spelling.ts": 'import "./units.ts";',
  };
  expect([...new Set(breaches(plant(planted)).map((breach) => breach.split(":")[0]))]).toEqual([
    "client-speaks-the-protocol-only",
    "engine-knows-no-text",
    "grammar-knows-no-drink",
    "house-points-down",
    "no-cycle",
    "no-tool-in-the-product",
    "nothing-missing",
    "only-the-wiring-holds-a-connection",
    "only-the-wiring-touches-the-outside",
    "pure-functions-point-down",
    "wiring-stands-alone",
  ]);
});

test("only the wiring knows the clock, chance, the environment, timers and the console", () => {
  const found = ["grammar", "server"]
    .flatMap((folder) => readdirSync(join(root, folder), { recursive: true, encoding: "utf8" }).map((file) => join(folder, file)))
    .filter((file) => file.endsWith(".ts") && !/^server[\\/](lsp|cli)[\\/]/.test(file))
    .flatMap((file) => reachesOutside(readFileSync(join(root, file), "utf8")).map((what) => `${file}: ${what}`));
  expect(found).toEqual([]);
});

test.each([
  ["const now = Date.now();", ["Date.now"]],
  ["const now = new Date();", ["new Date"]],
  ["const home = process.env.HOME;", ["process"]],
  ["console.log(1);", ["console"]],
  ["setTimeout(run, 5);", ["setTimeout"]],
  ["const any = Math.random();", ["Math.random"]],
  ["const now = globalThis.performance.now();", ["globalThis"]],
  ["// Date.now\nconst text = 'process.env'; step.process(text); const day = { console: Date.UTC(2026, 1, 1) };", []],
])("%j", (code, expected) => expect(reachesOutside(code)).toEqual(expected));

const planted: string[] = [];
afterAll(() => {
  for (const folder of planted) rmSync(folder, { recursive: true, force: true });
});

/** A small tree of files that uses this one's packages. */
function plant(files: Readonly<Record<string, string>>): string {
  const folder = mkdtempSync(join(tmpdir(), "mutchkin-floors-"));
  planted.push(folder);
  for (const [file, text] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, file)), { recursive: true });
    writeFileSync(join(folder, file), `${text}\nexport const here = 1;\n`);
  }
  for (const shared of ["node_modules", "package.json", "tsconfig.json"]) symlinkSync(join(root, shared), join(folder, shared));
  return folder;
}

/** `rule: from → to` for each import that breaks one, by the alphabet. */
function breaches(folder: string): string[] {
  const cruiser = join(root, "node_modules/dependency-cruiser/bin/dependency-cruise.mjs");
  const config = join(root, ".dependency-cruiser.cjs");
  const folders = ["grammar", "server", "client"];
  const { stdout, stderr } = spawnSync(process.execPath, [cruiser, ...folders, "--config", config, "--output-type", "json"], {
    cwd: folder,
    encoding: "utf8",
    maxBuffer: 1e9,
  });
  if (!stdout) throw new Error(stderr);
  const { summary } = JSON.parse(stdout) as {
    summary: { totalCruised: number; violations: { rule: { name: string }; from: string; to: string }[] };
  };
  expect(summary.totalCruised).toBeGreaterThan(10);
  return summary.violations.map(({ rule, from, to }) => `${rule.name}: ${from} → ${to}`).sort();
}

/** What a piece of code takes from the world around it, as it is written there. */
function reachesOutside(code: string): string[] {
  const outside = new Set(["process", "console", "setTimeout", "setInterval", "setImmediate", "performance", "fetch", "globalThis"]);
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    const isReference = ts.isIdentifier(node) && !namesMember(node);
    if (isReference && outside.has(node.text)) found.push(node.text);
    if (ts.isPropertyAccessExpression(node) && /^(Date\.now|Math\.random)$/.test(node.getText(file))) found.push(node.getText(file));
    if (ts.isNewExpression(node) && node.expression.getText(file) === "Date") found.push("new Date");
    ts.forEachChild(node, visit);
  };
  const file = ts.createSourceFile("code.ts", code, ts.ScriptTarget.Latest, true);
  visit(file);
  return found;
}

/** `step.process` and `{ console: 1 }` only share a word with the world. */
function namesMember(node: ts.Identifier): boolean {
  const { parent } = node;
  return (
    (ts.isPropertyAccessExpression(parent) && parent.name === node) ||
    ((ts.isPropertyAssignment(parent) || ts.isPropertySignature(parent) || ts.isPropertyDeclaration(parent)) && parent.name === node) ||
    ((ts.isVariableDeclaration(parent) || ts.isParameter(parent)) && parent.name === node)
  );
}
