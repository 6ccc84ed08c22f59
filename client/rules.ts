/** The rules' page, to which findings point, as a text in the editor: a browser would open its address as a download. */
import * as vscode from "vscode";

/** The server names the page by this scheme when it is a worker. */
const scheme = "mutchkin";

export function showRules({ extensionUri }: vscode.ExtensionContext): vscode.Disposable {
  const page = vscode.Uri.joinPath(extensionUri, "server/rules/README.md");
  return vscode.workspace.registerTextDocumentContentProvider(scheme, {
    provideTextDocumentContent: async () => new TextDecoder().decode(await vscode.workspace.fs.readFile(page)),
  });
}
