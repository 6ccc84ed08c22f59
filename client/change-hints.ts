/** In a diff editor: behind the name of what changed, what that does, in the place of what it comes to now. */
import * as vscode from "vscode";
import { type BaseLanguageClient, InlayHintRequest, type Middleware } from "vscode-languageclient";
import { documents } from "./documents.ts";

const method = "mutchkin/changeHints";
type Hints = Parameters<BaseLanguageClient["protocol2CodeConverter"]["asInlayHints"]>[0];

/** `client`: asked for late, since it is made with this. */
export function hintsOfChanges(client: () => BaseLanguageClient): Pick<Middleware, "provideInlayHints"> {
  const hintsFor = async (document: vscode.TextDocument, range: vscode.Range, token: vscode.CancellationToken) => {
    const original = originalOf(document.uri);
    const before = original && (await vscode.workspace.openTextDocument(original).then(undefined, () => undefined));
    if (!before || token.isCancellationRequested) return [];
    const { code2ProtocolConverter: to, protocol2CodeConverter: from } = client();
    const asked = { textDocument: to.asTextDocumentIdentifier(document), range: to.asRange(range), before: before.getText() };
    const hints = await client().sendRequest<Hints>(method, asked, token);
    return (await from.asInlayHints(hints, token)) ?? [];
  };
  return {
    async provideInlayHints(document, range, token, next) {
      const [usual, changes] = await Promise.all([next(document, range, token), hintsFor(document, range, token).catch(() => [])]);
      const told = new Set(changes.map(({ position }) => position.line));
      return [...changes, ...(usual ?? []).filter(({ position }) => !told.has(position.line))];
    },
  };
}

/** Has hints asked for again when a text comes to stand beside an earlier one, when that changes, and when it goes. */
export function watchDiffs(client: BaseLanguageClient): vscode.Disposable {
  let shown = diffs();
  const refresh = () => {
    const document = vscode.workspace.textDocuments.find((one) => vscode.languages.match(documents, one) > 0);
    if (document) client.getFeature(InlayHintRequest.method)?.getProvider(document)?.onDidChangeInlayHints.fire();
  };
  return vscode.Disposable.from(
    vscode.window.tabGroups.onDidChangeTabs(() => {
      const before = shown;
      shown = diffs();
      const gone = [...before.keys()].filter((uri) => !shown.has(uri));
      if (gone.length === 0 && [...shown.keys()].every((uri) => before.has(uri))) return;
      for (const uri of gone) forget(client, uri);
      refresh();
    }),
    vscode.workspace.onDidChangeTextDocument(({ document: { uri } }) => {
      if ([...shown.values()].some((original) => original.toString() === uri.toString())) refresh();
    }),
  );
}

/** The server keeps a house for the earlier text, which nobody needs any more. */
function forget(client: BaseLanguageClient, uri: string): void {
  if (!client.isRunning()) return;
  const nowhere = { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } };
  client.sendRequest(method, { textDocument: { uri }, range: nowhere }).catch(() => undefined);
}

function originalOf(uri: vscode.Uri): vscode.Uri | undefined {
  return diffs().get(uri.toString());
}

/**
 * The texts that stand beside an earlier state of themselves, and where that is. Two files beside each other are
 * not one that changed.
 */
function diffs(): Map<string, vscode.Uri> {
  const found = new Map<string, vscode.Uri>();
  for (const { tabs } of vscode.window.tabGroups.all) {
    for (const { input } of tabs) {
      if (input instanceof vscode.TabInputTextDiff && input.original.scheme !== input.modified.scheme)
        found.set(input.modified.toString(), input.original);
    }
  }
  return found;
}
