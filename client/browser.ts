/** The extension in a browser: the server is a worker. */
import * as vscode from "vscode";
import { BrowserMessageReader, BrowserMessageWriter, LanguageClient, type MessageTransports } from "vscode-languageclient/browser";
import { showRules } from "./rules.ts";
import { run } from "./run.ts";

export { deactivate } from "./run.ts";

/** A browser's own. The types that all is checked with are Node's, which do not know it. */
interface Worker {
  addEventListener(event: "error", act: () => void): void;
  terminate(): void;
}
declare const Worker: new (script: string) => Worker;

export function activate(context: vscode.ExtensionContext): Promise<void> {
  const script = vscode.Uri.joinPath(context.extensionUri, "dist/worker.js").toString(true);
  let worker: Worker | undefined;
  const server = async (): Promise<MessageTransports> => {
    worker?.terminate();
    worker = new Worker(script);
    return { reader: new WorkerReader(worker), writer: new BrowserMessageWriter(worker) };
  };
  context.subscriptions.push(showRules(context), { dispose: () => worker?.terminate() });
  return run(context, (options) => new LanguageClient("mutchkin", "Mutchkin", server, options));
}

/** A worker that fails, or that never came up, goes on being there and saying nothing: here its failure is its end, as a process's is. */
class WorkerReader extends BrowserMessageReader {
  constructor(worker: Worker) {
    super(worker);
    worker.addEventListener("error", () => {
      worker.terminate();
      this.fireClose();
    });
  }
}
