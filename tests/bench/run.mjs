/**
 * `npm run bench`: installs what is compared with, builds the servers and the benchmark, runs it.
 *
 * --sizes 1,100,1000,10000   how many files the houses have
 * --edits 200                how many edits are timed at each size
 * --engine                   the engine alone, a few seconds
 * --print                    print the figures only, leave README.md as it is
 * --write-house N FOLDER     only write a house of N files to a folder, to look at or to profile with
 */
import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import esbuild from "esbuild";

process.chdir(fileURLToPath(new URL("../../", import.meta.url)));
await import("./setup.mjs");
await import("../../build.mjs");
const options = { bundle: true, platform: "node", target: "node20", logLevel: "warning", loader: { ".drink": "text" } };
// Bundled like the others, so that starting up is compared with like.
await esbuild.build({ ...options, entryPoints: ["tests/bench/bare-server.mjs"], outfile: ".bench/bare-server.js" });
await esbuild.build({ ...options, entryPoints: ["tests/bench/main.ts"], outfile: ".bench/bench.js" });
const { status } = spawnSync(process.execPath, [".bench/bench.js", ...process.argv.slice(2)], { stdio: "inherit" });
process.exitCode = status ?? 1;
// The page was written by the run; the project's formatter has the last word on its tables.
if (status === 0) spawnSync("npx", ["biome", "format", "--write", "tests/bench/README.md"], { stdio: "inherit" });
