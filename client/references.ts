/** Shows the places that a lens has counted. The server is asked for them only when the lens is clicked. */
import * as vscode from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";

type Location = Parameters<BaseLanguageClient["protocol2CodeConverter"]["asLocation"]>[0];

/** What the server puts behind a lens; more is its own business. */
interface LensData {
  readonly uri: string;
  readonly line: number;
}

export const showReferencesCommand = "mutchkin.showReferences";

export function showReferences(client: BaseLanguageClient): vscode.Disposable {
  return vscode.commands.registerCommand(showReferencesCommand, async (data: LensData) => {
    const found = await client.sendRequest<Location[]>("mutchkin/placesOfLens", data);
    const { asLocation, asUri } = client.protocol2CodeConverter;
    const position = new vscode.Position(data.line, 0);
    await vscode.commands.executeCommand("editor.action.showReferences", asUri(data.uri), position, found.map(asLocation));
  });
}
