/** Texts as they once were, to be read and not written; and the places that a comparison leads to. */
import * as vscode from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import { say } from "./say.ts";
import { openBesideCommand, openPlaceCommand, type Spot, spotFrom } from "./spot.ts";

const scheme = "mutchkin-then";

interface Answer {
  readonly text?: string;
  readonly problem?: string;
}

const nowhere = "That place is in no text that is open here. Open its folder first.";

export function showPastTexts(client: BaseLanguageClient): vscode.Disposable {
  return vscode.Disposable.from(
    vscode.workspace.registerTextDocumentContentProvider(scheme, {
      async provideTextDocumentContent({ query }) {
        const { uri, commit } = placeFrom(parsed(query)) ?? {};
        // Whatever a folder tells git to do is done when git is asked.
        if (!commit || !vscode.workspace.isTrusted) return `# ${nowhere}\n`;
        const { text, problem } = await client.sendRequest<Answer>("mutchkin/pastText", { uri, commit });
        return text ?? `# ${problem}\n`;
      },
    }),
    vscode.commands.registerCommand(openPlaceCommand, openPlace),
    vscode.commands.registerCommand(openBesideCommand, openBeside),
  );
}

/** Beside the page that leads there, in the group where texts are. */
async function openPlace(asked: unknown): Promise<void> {
  const spot = placeFrom(asked);
  if (!spot) return say(nowhere);
  await vscode.window.showTextDocument(uriOf(spot), { ...at(spot), viewColumn: columnOfTexts() });
}

async function openBeside(before: unknown, after: unknown): Promise<void> {
  const [was, now] = [placeFrom(before), placeFrom(after)];
  if (!was?.commit || !now) return say(nowhere);
  const uri = uriOf(now);
  const title = `${uri.path.replace(/.*\//, "")} (${was.commit.slice(0, 7)} ↔ now)`;
  await vscode.commands.executeCommand("vscode.diff", uriOf(was), uri, title, { ...at(now), viewColumn: columnOfTexts() });
}

/** In a folder that is open, or in a text that is: nothing else is anybody's to open from here. */
function placeFrom(value: unknown): Spot | undefined {
  const spot = spotFrom(value);
  const uri = spot && vscode.Uri.parse(spot.uri, true);
  const isOpen = uri && vscode.workspace.textDocuments.some((document) => document.uri.toString() === uri.toString());
  return uri && (isOpen || vscode.workspace.getWorkspaceFolder(uri)) ? spot : undefined;
}

function parsed(json: string): unknown {
  try {
    return { line: 0, ...JSON.parse(json) };
  } catch {
    return undefined;
  }
}

function columnOfTexts(): vscode.ViewColumn {
  return vscode.window.visibleTextEditors.find(({ viewColumn }) => viewColumn !== undefined)?.viewColumn ?? vscode.ViewColumn.Beside;
}

/** With the path that it had, so that the editor colours it as what it is. */
function uriOf({ uri, commit }: Spot): vscode.Uri {
  const now = vscode.Uri.parse(uri, true);
  return commit === undefined ? now : vscode.Uri.from({ scheme, path: now.path, query: JSON.stringify({ uri, commit }) });
}

function at({ line }: Spot): vscode.TextDocumentShowOptions {
  return { selection: new vscode.Range(line, 0, line, 0) };
}
