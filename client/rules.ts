/** The rules, to which findings point, as texts in the editor: a browser would take the page's address for a download. */
import * as vscode from "vscode";

/** As the server names the page when it is a worker; what a rule's code is appended to as the fragment. */
const scheme = "mutchkin";

export function showRules({ extensionUri }: vscode.ExtensionContext): vscode.Disposable {
  const page = vscode.Uri.joinPath(extensionUri, "server/rules/README.md");
  return vscode.workspace.registerTextDocumentContentProvider(scheme, {
    provideTextDocumentContent: async ({ fragment }) =>
      sectionOf(new TextDecoder().decode(await vscode.workspace.fs.readFile(page)), fragment),
  });
}

/** What is under a heading; the whole page where there is no such heading. */
function sectionOf(page: string, heading: string): string {
  const start = page.indexOf(`\n## ${heading}\n`);
  if (start < 0) return page;
  const end = page.indexOf("\n## ", start + 1);
  return page.slice(start + 1, end < 0 ? undefined : end + 1);
}
