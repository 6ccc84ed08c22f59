/** The extension in a browser: the server is a worker. */
import * as vscode from "vscode";
import { BrowserMessageReader, BrowserMessageWriter, LanguageClient } from "vscode-languageclient/browser";
import { showRules } from "./rules.ts";
import { run } from "./run.ts";

export { deactivate } from "./run.ts";

/** A browser's own. The types that all is checked with are Node's, which do not know it. */
interface Worker {
  onmessage: () => void;
  onerror: (fault: { readonly message: string }) => void;
  terminate(): void;
}
declare const Worker: new (script: string) => Worker;

export function activate(context: vscode.ExtensionContext): Promise<void> {
  const script = vscode.Uri.joinPath(context.extensionUri, "dist/worker.js").toString(true);
  let worker: Worker | undefined;
  const start = async () => {
    worker?.terminate();
    worker = new Worker(script);
    await isUp(worker);
    // Not the worker alone: the editor may wrap it, and then the library does not know it for one.
    return { reader: new BrowserMessageReader(worker), writer: new BrowserMessageWriter(worker) };
  };
  context.subscriptions.push(showRules(context), { dispose: () => worker?.terminate() });
  return run(context, (options) => new LanguageClient("mutchkin", "Mutchkin", start, options));
}

/** A worker that cannot be loaded would be waited for without end: so it says one thing before it listens. */
function isUp(worker: Worker): Promise<void> {
  return new Promise((resolve, reject) => {
    worker.onmessage = resolve;
    worker.onerror = ({ message }) => reject(new Error(`The server's worker did not come up: ${message}`));
    setTimeout(() => reject(new Error("The server's worker has said nothing for a minute.")), 60_000);
  });
}
