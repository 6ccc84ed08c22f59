/** Texts as they once were, to be read and not written; and the places that a comparison leads to. */
import * as vscode from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";

const scheme = "mutchkin-then";
export const openPlaceCommand = "mutchkin.openPlace";
export const openBesideCommand = "mutchkin.openBeside";

/** A line of a text, as it stands now, or in a commit. */
export interface Spot {
  readonly uri: string;
  readonly line: number;
  readonly commit?: string;
}

interface Answer {
  readonly text?: string;
  readonly problem?: string;
}

export function showPastTexts(client: BaseLanguageClient): vscode.Disposable {
  return vscode.Disposable.from(
    vscode.workspace.registerTextDocumentContentProvider(scheme, {
      async provideTextDocumentContent({ query }) {
        const { text, problem } = await client.sendRequest<Answer>("mutchkin/pastText", JSON.parse(query));
        return text ?? `# ${problem}\n`;
      },
    }),
    vscode.commands.registerCommand(openPlaceCommand, openPlace),
    vscode.commands.registerCommand(openBesideCommand, openBeside),
  );
}

/** Beside the page that leads there, in the group where texts are. */
async function openPlace(spot: Spot): Promise<void> {
  const text = vscode.window.visibleTextEditors.find(({ viewColumn }) => viewColumn !== undefined);
  await vscode.window.showTextDocument(uriOf(spot), { ...at(spot), viewColumn: text?.viewColumn ?? vscode.ViewColumn.Beside });
}

async function openBeside(was: Required<Spot>, now: Spot): Promise<void> {
  const uri = uriOf(now);
  const title = `${uri.path.replace(/.*\//, "")} (${was.commit.slice(0, 7)} ↔ now)`;
  const text = vscode.window.visibleTextEditors.find(({ viewColumn }) => viewColumn !== undefined);
  const viewColumn = text?.viewColumn ?? vscode.ViewColumn.Beside;
  await vscode.commands.executeCommand("vscode.diff", uriOf(was), uri, title, { ...at(now), viewColumn });
}

/** With the path that it had, so that the editor colours it as what it is. */
function uriOf({ uri, commit }: Spot): vscode.Uri {
  const now = vscode.Uri.parse(uri, true);
  return commit === undefined ? now : vscode.Uri.from({ scheme, path: now.path, query: JSON.stringify({ uri, commit }) });
}

function at({ line }: Spot): vscode.TextDocumentShowOptions {
  return { selection: new vscode.Range(line, 0, line, 0) };
}
