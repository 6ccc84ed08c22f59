/** What lenses run: commands of this editor, of which the server is told that they are here. */
import * as vscode from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import { batchCommand } from "./batch.ts";
import { compareCommand } from "./compare.ts";
import { showReferences, showReferencesCommand } from "./references.ts";

const insertFrame = "mutchkin.insertFrame";

/** Call before the client is started. */
export function answerLenses(client: BaseLanguageClient): vscode.Disposable {
  client.registerFeature({
    fillClientCapabilities(capabilities) {
      capabilities.experimental = {
        ...capabilities.experimental,
        commands: [showReferencesCommand, insertFrame, batchCommand, compareCommand],
      };
    },
    initialize: () => undefined,
    getState: () => ({ kind: "static" }),
    clear: () => undefined,
  });
  return vscode.Disposable.from(
    showReferences(client),
    vscode.commands.registerCommand(insertFrame, (name: string) =>
      vscode.commands.executeCommand("editor.action.insertSnippet", { langId: "mutchkin", name }),
    ),
  );
}
