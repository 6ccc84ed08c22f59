/**
 * Whether there is anything for a server to do. The extension is woken by any Markdown text, most of
 * which hold no spec: those start nothing.
 */
import * as vscode from "vscode";

/** Starts at once where there is a spec, in the folders or in an open text; else when there is. */
export async function whenWanted(subscriptions: vscode.Disposable[], start: () => Promise<void>): Promise<void> {
  if (vscode.workspace.textDocuments.some(isSpec)) return start();
  const specs = await vscode.workspace.findFiles("**/*.drink", "**/node_modules/**", 1).then(undefined, () => []);
  if (specs.length > 0) return start();
  const look = (document: vscode.TextDocument) => {
    if (!isSpec(document)) return;
    for (const listener of listeners) listener.dispose();
    void start();
  };
  const listeners = [
    vscode.workspace.onDidOpenTextDocument(look),
    vscode.workspace.onDidChangeTextDocument(({ document }) => look(document)),
  ];
  subscriptions.push(...listeners);
}

function isSpec(document: vscode.TextDocument): boolean {
  const { languageId } = document;
  return languageId === "mutchkin" || (languageId === "markdown" && /(?:```|~~~)[ \t]*drink\b/.test(document.getText()));
}
