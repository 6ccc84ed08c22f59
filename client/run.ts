/**
 * The editor's side, whether the server is a process or a worker: starts it, shows how it is doing and
 * answers its questions for files. No drink is known here: whatever is shown was said by the server.
 */
import * as vscode from "vscode";
import { type BaseLanguageClient, type LanguageClientOptions, State } from "vscode-languageclient";
import { adjust } from "./adjust.ts";
import { batchCommand, batchPages } from "./batch.ts";
import { hintsOfChanges, watchDiffs } from "./change-hints.ts";
import { compareAgainCommand, compareCommand, comparisons } from "./compare.ts";
import { goOn } from "./completion.ts";
import { documents, pastSchemes } from "./documents.ts";
import { answerForFiles } from "./files.ts";
import { answerLenses } from "./lenses.ts";
import { answerAdded, showAdded } from "./new-entry.ts";
import { newHouse } from "./new-house.ts";
import { newSpec } from "./new-spec.ts";
import { showPastTexts } from "./past-texts.ts";
import { chapterPreview, previewCommand } from "./preview.ts";
import { convert, refactor, refactorings, scale } from "./refactor.ts";
import { say } from "./say.ts";
import { type ServerStatus, showStatus } from "./status.ts";
import { whenWanted } from "./wanted.ts";

let client: BaseLanguageClient;
let status: ServerStatus;
/** Starting and stopping wait for each other, however fast the commands follow. */
let turn: Promise<void> = Promise.resolve();

/** Runs the client that `create` makes. */
export function run(context: vscode.ExtensionContext, create: (options: LanguageClientOptions) => BaseLanguageClient): Promise<void> {
  const output = vscode.window.createOutputChannel("Mutchkin", { log: true });
  status = showStatus(documents);
  const pages = batchPages();
  const compared = comparisons();
  const preview = chapterPreview();
  client = create({
    documentSelector: documents,
    outputChannel: output,
    traceOutputChannel: output,
    middleware: {
      ...goOn,
      ...showAdded,
      ...hintsOfChanges(() => client),
      didOpen: async (document, next) => {
        if (!pastSchemes.includes(document.uri.scheme)) await next(document);
      },
    },
  });
  context.subscriptions.push(
    output,
    status,
    answerForFiles(client),
    answerLenses(client),
    answerAdded(),
    watchDiffs(client),
    showPastTexts(client),
    client.onDidChangeState(({ newState }) => {
      status.set(newState);
      // Menus of a Markdown text show what a spec can have done to it only where specs are served.
      void vscode.commands.executeCommand("setContext", "mutchkin.isServing", newState === State.Running);
    }),
    vscode.commands.registerCommand("mutchkin.startServer", () => inTurn(start)),
    vscode.commands.registerCommand("mutchkin.stopServer", () => inTurn(stop)),
    vscode.commands.registerCommand("mutchkin.restartServer", () => inTurn(() => stop().then(start))),
    vscode.commands.registerCommand("mutchkin.showOutput", () => output.show()),
    pages,
    compared,
    preview,
    asking(compareCommand, compared.compare),
    asking(compareAgainCommand, compared.again),
    asking(previewCommand, preview.show),
    asking("mutchkin.adjust", adjust),
    asking(batchCommand, pages.batch),
    asking("mutchkin.newHouse", newHouse),
    asking("mutchkin.scale", scale),
    asking("mutchkin.convert", convert),
    ...refactorings.map((name) => asking(`mutchkin.${name}`, refactor(name))),
    vscode.commands.registerCommand("mutchkin.newSpec", newSpec),
  );
  return whenWanted(context.subscriptions, () => inTurn(start));
}

/** A command that asks the server, which is started for it. Never rejects: what went wrong is said to the person. */
function asking(command: string, act: (client: BaseLanguageClient, argument?: unknown) => Promise<void>): vscode.Disposable {
  return vscode.commands.registerCommand(command, async (argument?: unknown) => {
    try {
      if (!client.isRunning()) await inTurn(start);
      if (!client.isRunning()) return say("Mutchkin's server is not running, so nothing can be computed.");
      await act(client, argument);
    } catch (cause) {
      client.outputChannel.error(cause instanceof Error ? cause : String(cause));
      say("Mutchkin's server did not answer. The output says why.");
    }
  });
}

/** What the editor calls when it closes. */
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
