/**
 * Bundles the programs into dist/: the editor's client and the language server, each for Node and for a
 * browser, and the command line.
 *
 * `node build.mjs` for development (source maps), `--ship` for the package (minified, no maps),
 * `--watch` to build again on every change.
 */
import esbuild from "esbuild";

const ship = process.argv.includes("--ship");

/** @type {import("esbuild").BuildOptions} */
const program = {
  bundle: true,
  platform: "node",
  // The oldest editor that the manifest allows runs extensions on Node 20.
  target: "node20",
  format: "cjs",
  // Only the editor can provide this one.
  external: ["vscode"],
  // The larder is written in the language itself and travels inside the bundle.
  loader: { ".drink": "text" },
  // A bundled module (fdir) makes its own `require` from where it stands, which CommonJS names otherwise.
  define: { "import.meta.url": "__filename" },
  minify: ship,
  sourcemap: ship ? false : "linked",
  logLevel: "warning",
};

/** For an editor that runs in a browser. Nothing stands in for Node: what wants it fails to build. */
const browser = { ...program, platform: "browser", target: "es2022", define: {} };

const programs = [
  { ...program, entryPoints: ["client/extension.ts"], outfile: "dist/client.js" },
  { ...program, entryPoints: ["server/lsp/main.ts"], outfile: "dist/server.js" },
  { ...program, entryPoints: ["server/cli/main.ts"], outfile: "dist/cli.js", banner: { js: "#!/usr/bin/env node" } },
  { ...browser, entryPoints: ["client/browser.ts"], outfile: "dist/browser.js" },
  { ...browser, entryPoints: ["server/lsp/worker.ts"], outfile: "dist/worker.js", format: "iife", plugins: [plainTables()] },
];

if (process.argv.includes("--watch")) {
  console.log("build: started");
  const contexts = await Promise.all(
    programs.map((options) => esbuild.context({ ...options, plugins: [...(options.plugins ?? []), report()] })),
  );
  await Promise.all(contexts.map((context) => context.watch()));
} else {
  await Promise.all(programs.map((options) => esbuild.build(options)));
}

/** Tables are never coloured in a browser, and what would colour them, an optional package of cli-table3's, is Node's. */
function plainTables() {
  return {
    name: "plain-tables",
    setup(build) {
      build.onResolve({ filter: /^@colors\/colors\/safe$/ }, ({ path }) => ({ path, namespace: "plain" }));
      build.onLoad({ filter: /./, namespace: "plain" }, () => ({ contents: "module.exports = {};" }));
    },
  };
}

/** Says when a build ends, so that the editor's background task knows that F5 may go on. */
function report() {
  return {
    name: "report",
    setup: (build) => build.onEnd((result) => console.log(`build: ended with ${result.errors.length} errors`)),
  };
}
