/** `npm run montecarlo [-- --drinks 10000 --draws 20 --seed 1]`: how often each figure's ± holds it. Proves the propagation, not the model. */
import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import esbuild from "esbuild";

process.chdir(fileURLToPath(new URL("../../", import.meta.url)));
const outfile = ".bench/montecarlo.js";
await esbuild.build({
  bundle: true,
  platform: "node",
  target: "node20",
  entryPoints: ["tests/reference/montecarlo.ts"],
  outfile,
  logLevel: "warning",
});
process.exitCode = spawnSync(process.execPath, [outfile, ...process.argv.slice(2)], { stdio: "inherit" }).status ?? 1;
