/**
 * Installs what the benchmark compares with into the git-ignored .bench/, once: the JSON language
 * server of VS Code as npm has it, and a bundle of it, as an editor would ship it.
 */
import { execFileSync } from "node:child_process";
import { existsSync, mkdirSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import esbuild from "esbuild";

const folder = fileURLToPath(new URL("../../.bench/", import.meta.url));
const server = `${folder}node_modules/vscode-langservers-extracted/lib/json-language-server/node/jsonServerMain.js`;
const bundle = `${folder}json-server.js`;

if (!existsSync(server)) {
  mkdirSync(folder, { recursive: true });
  const dependencies = { "vscode-langservers-extracted": "4.10.0", "vscode-json-languageservice": "5.7.2" };
  writeFileSync(`${folder}package.json`, JSON.stringify({ private: true, dependencies }));
  console.log("Installing the JSON language server into .bench/ …");
  execFileSync("npm", ["install", "--ignore-scripts", "--no-audit", "--no-fund", "--loglevel=error"], { cwd: folder, stdio: "inherit" });
}
if (!existsSync(bundle))
  await esbuild.build({
    entryPoints: [server],
    outfile: bundle,
    bundle: true,
    platform: "node",
    target: "node20",
    // The main files of its libraries are UMD, whose inner imports a bundler cannot see.
    mainFields: ["module", "main"],
    logLevel: "error",
  });
