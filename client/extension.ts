/** The extension where there is Node: the server is a process. */
import type * as vscode from "vscode";
import { LanguageClient, TransportKind } from "vscode-languageclient/node";
import { run } from "./run.ts";

export { deactivate } from "./run.ts";

export function activate(context: vscode.ExtensionContext): Promise<void> {
  const server = { module: context.asAbsolutePath("dist/server.js"), transport: TransportKind.ipc };
  return run(context, (options) => new LanguageClient("mutchkin", "Mutchkin", server, options));
}
