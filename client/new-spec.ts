/** A new text with a drink to fill in. */
import * as vscode from "vscode";

export async function newSpec(): Promise<void> {
  const document = await vscode.workspace.openTextDocument({ language: "mutchkin" });
  await vscode.window.showTextDocument(document);
  await vscode.commands.executeCommand("editor.action.insertSnippet", { langId: "mutchkin", name: "Drink" });
}
