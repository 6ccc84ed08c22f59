/** What is shipped for a browser finds nothing of Node there. */
import { readdirSync, readFileSync } from "node:fs";
import { builtinModules } from "node:module";
import { join } from "node:path";
import { expect, test } from "vitest";

/** What a bundle asks for by name. What hangs on something (`module.require`) is tried there, and gone without. */
function required(code: string): string[] {
  return [...new Set([...code.matchAll(/(?<![.\w$])(?:__)?(?:require|import)\(\s*["']([^"']+)["']\s*\)/g)].map((found) => found[1]!))];
}

const ofNode = (name: string) => name.startsWith("node:") || builtinModules.includes(name);

test("the worker asks for nothing, and the browser's client for the editor only", () => {
  expect(required(readFileSync("dist/worker.js", "utf8"))).toEqual([]);
  expect(required(readFileSync("dist/browser.js", "utf8"))).toEqual(["vscode"]);
});

test("in the bundles for Node it would be seen", () => {
  expect(required(readFileSync("dist/server.js", "utf8")).filter(ofNode)).not.toEqual([]);
  expect(required(readFileSync("dist/client.js", "utf8")).filter(ofNode)).not.toEqual([]);
});

/** Globals that only Node has. The floors below the wiring have none of any kind, as `floors.test.ts` holds. */
const nodesOwn = /(?<![.\w])(?:setImmediate|process|Buffer|__dirname|__filename)(?=[.(,)])/;

test("the wiring uses nothing that only Node has, but where the server is a process", () => {
  const found = readdirSync("server/lsp").filter(
    (file) => file.endsWith(".ts") && nodesOwn.test(readFileSync(join("server/lsp", file), "utf8")),
  );
  expect(found).toEqual(["disk.ts", "git.ts", "main.ts"]);
});
