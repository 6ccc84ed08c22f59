/**
 * The editor's side: starts the server and shows how it is doing. The server itself asks for
 * settings and changed files. No drink is known here: whatever is shown was said by the server.
 */
import * as vscode from "vscode";
import { LanguageClient, State, TransportKind } from "vscode-languageclient/node";
import { adjust } from "./adjust.ts";
import { type ServerStatus, showStatus } from "./status.ts";

/** No scheme is named, so that untitled, remote and virtual documents are served too. */
const documents = [{ language: "mutchkin" }];

let client: LanguageClient;
let status: ServerStatus;
/** Starting and stopping wait for each other, however fast the commands follow. */
let turn: Promise<void> = Promise.resolve();

export function activate(context: vscode.ExtensionContext): Promise<void> {
  const output = vscode.window.createOutputChannel("Mutchkin", { log: true });
  const module = context.asAbsolutePath("dist/server.js");
  status = showStatus(documents);
  client = new LanguageClient(
    "mutchkin",
    "Mutchkin",
    { module, transport: TransportKind.ipc },
    {
      documentSelector: documents,
      outputChannel: output,
      traceOutputChannel: output,
    },
  );
  context.subscriptions.push(
    output,
    status,
    client.onDidChangeState(({ newState }) => status.set(newState)),
    vscode.commands.registerCommand("mutchkin.startServer", () => inTurn(start)),
    vscode.commands.registerCommand("mutchkin.stopServer", () => inTurn(stop)),
    vscode.commands.registerCommand("mutchkin.restartServer", () => inTurn(() => stop().then(start))),
    vscode.commands.registerCommand("mutchkin.showOutput", () => output.show()),
    vscode.commands.registerCommand("mutchkin.adjust", () => adjust(client)),
  );
  return inTurn(start);
}

export function deactivate(): Promise<void> {
  return inTurn(stop);
}

function inTurn(act: () => Promise<void>): Promise<void> {
  turn = turn.then(act);
  return turn;
}

/** Never rejects: what went wrong is said to the person, with what they can do. */
async function start(): Promise<void> {
  if (client.state === State.Running) return;
  try {
    await client.start();
  } catch (cause) {
    client.outputChannel.error(cause instanceof Error ? cause : String(cause));
    status.set(State.StartFailed);
    // Not awaited: the message may stand for hours, and other commands must not wait for it.
    void offerHelp("Mutchkin's server did not start. Specs stay coloured, but nothing is checked or computed.");
  }
}

async function stop(): Promise<void> {
  if (client.state !== State.Running) return;
  try {
    await client.stop();
  } catch (cause) {
    client.outputChannel.error(cause instanceof Error ? cause : String(cause));
    void offerHelp("Mutchkin's server did not stop when it was told to, and was ended.");
  }
}

async function offerHelp(message: string): Promise<void> {
  const answer = await vscode.window.showErrorMessage(message, "Try Again", "Show the Output");
  if (answer === "Try Again") await vscode.commands.executeCommand("mutchkin.restartServer");
  if (answer === "Show the Output") await vscode.commands.executeCommand("mutchkin.showOutput");
}
