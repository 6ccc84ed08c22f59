import * as vscode from "vscode";

/** Not awaited: a message may stand for hours. */
export function say(message: string): void {
  void vscode.window.showInformationMessage(message);
}
