/**
 * The floors: an import only ever points down. `tests/floors.test.ts` holds these rules, and plants a
 * breach of each to see that it is found.
 *
 *   4  server/lsp    server/cli                       touch the outside
 *   3  server/rules  server/features  server/reports  pure functions of the house
 *   2  server/house  (and the larder's text)
 *   1  grammar       server/engine                    know nothing of each other
 *
 *   client stands apart and speaks to the server over the protocol only.
 */
const product = "^(grammar|server|client)/";
const outside = "^(server/lsp|server/cli|client)/";

/** @type {import("dependency-cruiser").IConfiguration} */
module.exports = {
  forbidden: [
    rule("grammar-knows-no-drink", { path: "^grammar/" }, { path: "^(server|client|tests)/" }),
    rule("engine-knows-no-text", { path: "^server/engine/" }, { path: "^(grammar|client|tests|server/(?!engine/))" }),
    rule("house-points-down", { path: "^server/(house|larder)/" }, { path: "^(client|tests|server/(?!house/|engine/|larder/))" }),
    rule("pure-functions-point-down", { path: "^server/(rules|features|reports)/" }, { path: "^(client|tests|server/(lsp|cli)/)" }),
    rule("wiring-stands-alone", { path: "^server/(lsp|cli)/" }, { path: "^(client|tests)/" }),
    rule("client-speaks-the-protocol-only", { path: "^client/" }, { path: "^(grammar|server|tests)/" }),
    rule("only-the-wiring-touches-the-outside", { path: product, pathNot: outside }, { dependencyTypes: ["core"] }),
    rule(
      "only-the-wiring-holds-a-connection",
      { path: product, pathNot: outside },
      { path: "node_modules/(fdir|commander|vscode-jsonrpc|vscode-languageclient|vscode-languageserver)/" },
    ),
    // A type is erased: what counts here is a circle that has to be run. (Floors count types too, above.)
    rule("no-cycle", {}, { circular: true, viaOnly: { dependencyTypesNot: ["type-only"] } }),
    rule("nothing-missing", {}, { couldNotResolve: true, pathNot: "^vscode$" }),
    rule("no-tool-in-the-product", { path: product }, { dependencyTypes: ["npm-dev"], pathNot: "node_modules/@types/vscode/" }),
  ],
  options: {
    tsConfig: { fileName: "tsconfig.json" },
    // Types count: a floor that only borrows a shape from above still depends on it.
    tsPreCompilationDeps: true,
    doNotFollow: { path: "node_modules" },
    exclude: { path: "^(dist|\\.editor|\\.bench|coverage)/" },
    enhancedResolveOptions: {
      extensions: [".ts", ".js", ".mjs", ".cjs", ".json", ".drink"],
      exportsFields: ["exports"],
      conditionNames: ["import", "require", "node", "types"],
    },
  },
};

function rule(name, from, to) {
  return { name, severity: "error", from, to };
}
